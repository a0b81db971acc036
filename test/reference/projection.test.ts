/** The one projection against an independent camera matrix and published values. */
import { assert, property, record } from 'fast-check'
import { mat4, vec4 } from 'gl-matrix'
import { describe, expect, test } from 'vitest'
import { aimAt } from '#core/frame/aim.ts'
import { NEAREST_DEPTH, type View, imageDistance, projectEarth, projectLocal } from '#core/frame/projection.ts'
import { type LocalPoint, localFrame, toLocal } from '#core/geo/local-frame.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { number } from '#test/help/arbitrary.ts'
import { viewWith } from '#test/help/views.ts'

const PLACE = { lat: -41.2, lon: 12.4 }

function view(parts: Parameters<typeof viewWith>[0] = {}): View {
  return viewWith({ frame: localFrame(PLACE, 10), ...parts })
}

/**
 * The same camera as graphics programs build it: a look-at matrix and a perspective matrix (the pinhole model of OpenGL).
 * East, up, south are its x, y, z. gl-matrix computes in 64-bit numbers here, since single precision would not reach 1e-9.
 */
function byMatrix(seen: View, point: LocalPoint): { x: number; y: number } {
  const b = (seen.bearing * Math.PI) / 180
  const p = (seen.pitch * Math.PI) / 180
  const toward: [number, number, number] = [Math.sin(b) * Math.cos(p), Math.sin(p), -Math.cos(b) * Math.cos(p)]
  const wide = () => new Float64Array(16) as unknown as mat4
  const look = mat4.lookAt(wide(), [0, 0, 0], toward, [0, 1, 0])
  const fovY = 2 * Math.atan(seen.frameHeight / (2 * seen.imageDistance))
  const lens = mat4.perspective(wide(), fovY, seen.frameWidth / seen.frameHeight, 0.1, 100_000)
  const all = mat4.multiply(wide(), lens, look)
  const at = new Float64Array([point.east, point.up, -point.north, 1]) as unknown as vec4
  const clip = vec4.transformMat4(new Float64Array(4), at, all)
  return { x: clip[0] / clip[3] / 2, y: clip[1] / clip[3] / 2 }
}

describe('against an independent camera matrix', () => {
  test('every point before the lens falls on the same place of the frame, to 1e-9 of its side', () => {
    let compared = 0
    assert(
      property(
        number(0, 360),
        number(-80, 80),
        number(10, 800),
        number(5, 60),
        number(5, 60),
        record({ right: number(-1, 1), up: number(-1, 1), depth: number(0.5, 20_000) }),
        (bearing, pitch, focal, frameWidth, frameHeight, where) => {
          const seen = view({ bearing: wrapBearing(bearing), pitch, imageDistance: focal, frameWidth, frameHeight })
          const right = where.right * where.depth
          const up = where.up * where.depth
          const { sinBearing, cosBearing, sinPitch, cosPitch } = seen
          const ahead = cosPitch * where.depth - sinPitch * up
          const point = {
            east: cosBearing * right + sinBearing * ahead,
            north: -sinBearing * right + cosBearing * ahead,
            up: cosPitch * up + sinPitch * where.depth,
          }
          const ours = projectLocal(seen, point)
          const theirs = byMatrix(seen, point)
          if (ours === null) throw new Error('a point before the lens has an image')
          compared++
          const size = Math.max(1, Math.abs(theirs.x), Math.abs(theirs.y))
          expect(Math.abs(ours.x - theirs.x) / size).toBeLessThan(1e-9)
          expect(Math.abs(ours.y - theirs.y) / size).toBeLessThan(1e-9)
        },
      ),
      { numRuns: 2000 },
    )
    expect(compared).toBe(2000)
  })

  test('what lies behind the lens has no image', () => {
    expect(projectLocal(view(), { east: 0, north: -5, up: 0 })).toBeNull()
    expect(projectLocal(view(), { east: 0, north: 0, up: 0 })).toBeNull()
    // From the nearest depth on there is one.
    expect(projectLocal(view(), { east: 0, north: NEAREST_DEPTH, up: 0 })).toEqual({ x: 0, y: 0, depth: NEAREST_DEPTH })
    expect(projectLocal(view(), { east: 0, north: NEAREST_DEPTH * 0.999, up: 0 })).toBeNull()
  })
})

describe('published values', () => {
  // Pinhole model; the clip-space figures from the perspective matrix of the OpenGL specification (gluPerspective).
  test('a point 3 m right, 1.5 m up, 20 m ahead at 50 mm on 36 x 24', () => {
    const at = projectLocal(view(), { east: 3, north: 20, up: 1.5 })
    expect((at?.x ?? 0) * 36).toBeCloseTo(7.5, 12)
    expect((at?.y ?? 0) * 24).toBeCloseTo(3.75, 12)
    expect(3000 + (at?.x ?? 0) * 6000).toBeCloseTo(4250, 9)
    expect(2000 - (at?.y ?? 0) * 4000).toBeCloseTo(1375, 9)
    expect((at?.x ?? 0) * 2).toBeCloseTo(0.416_667, 6)
    // 4.166667 x 1.5 / 20; in pixels 625 of 2000 above the middle.
    expect((at?.y ?? 0) * 2).toBeCloseTo(0.3125, 12)
    const fovY = 2 * Math.atan(24 / 100)
    expect((fovY * 180) / Math.PI).toBeCloseTo(26.991_47, 5)
    const lens = mat4.perspective(mat4.create(), fovY, 1.5, 0.1, 100)
    expect(lens[0]).toBeCloseTo(2.777_778, 5)
    expect(lens[5]).toBeCloseTo(4.166_667, 5)
  })

  // The reference camera itself against printed figures: WebGL lessons' 45 degrees on 640 x 480 (far plane 100: printed there).
  test('the reference matrix gives the figures printed for it', () => {
    const far200 = mat4.perspective(mat4.create(), Math.PI / 4, 640 / 480, 0.1, 200)
    const far100 = mat4.perspective(mat4.create(), Math.PI / 4, 640 / 480, 0.1, 100)
    expect(far200[0]).toBeCloseTo(1.810_660_2, 6)
    expect(far200[5]).toBeCloseTo(2.414_213_6, 6)
    expect(far200[10]).toBeCloseTo(-1.001_000_5, 6)
    expect(far200[14]).toBeCloseTo(-0.200_100_1, 6)
    expect(far100[10]).toBeCloseTo(-1.002_002, 6)
    expect(far100[14]).toBeCloseTo(-0.200_200_2, 6)
  })

  // Definition of the rectilinear projection, r = f tan(theta): 0.57735 at 30 degrees, where an equidistant fisheye has 0.52360.
  test('a point 30 degrees off the axis falls at 0.57735 of the focal length', () => {
    const off = Math.PI / 6
    const at = projectLocal(view({ imageDistance: 1 }), { east: Math.sin(off), north: Math.cos(off), up: 0 })
    expect((at?.x ?? 0) * 36).toBeCloseTo(0.577_35, 5)
  })

  // Similar triangles: sizes in one frame are as (H1 / d1) : (H2 / d2), whatever the focal length and the format.
  test('equal heights at 10 and 40 m stand 4 : 1, and both halve with the focal length', () => {
    const high = (seen: View, distance: number): number =>
      (projectLocal(seen, { east: 0, north: distance, up: 2 })?.y ?? 0) * seen.frameHeight
    for (const seen of [view(), view({ imageDistance: 200 }), view({ frameWidth: 13.2, frameHeight: 8.8 })]) {
      expect(high(seen, 10) / high(seen, 40)).toBeCloseTo(4, 12)
    }
    expect(high(view(), 10) / high(view({ imageDistance: 25 }), 10)).toBeCloseTo(2, 12)
  })

  // Thin lens, s = f (1 + 1 / m): at one magnification the distance grows as the focal length.
  test('twice the focal length at the same magnification stands twice as far away', () => {
    const magnification = 0.01
    const distance = (focal: number): number => (focal / 1000) * (1 + 1 / magnification)
    for (const focal of [50, 100]) {
      const away = distance(focal)
      const seen = view({ imageDistance: imageDistance(focal, away) })
      const size = (projectLocal(seen, { east: 1, north: away, up: 0 })?.x ?? 0) * 36
      expect(size / 1000).toBeCloseTo(magnification, 12)
    }
    expect(distance(100) / distance(50)).toBe(2)
  })
})

describe('edges of the earth', () => {
  const looks = (at: { lat: number; lon: number }, bearing: number) =>
    view({ frame: localFrame(at, 10), bearing, refraction: 0.13 })

  test('a point across the antimeridian is seen as anywhere else', () => {
    const there = looks({ lat: 12, lon: 179.9999 }, 90)
    const here = looks({ lat: 12, lon: 20.9999 }, 90)
    const over = projectEarth(there, localFrame({ lat: 12.0001, lon: -179.9951 }, 30).origin)
    const plain = projectEarth(here, localFrame({ lat: 12.0001, lon: 21.0049 }, 30).origin)
    expect(over?.x).toBeCloseTo(plain?.x ?? Number.NaN, 6)
    expect(over?.y).toBeCloseTo(plain?.y ?? Number.NaN, 6)
    expect(over?.depth).toBeCloseTo(plain?.depth ?? Number.NaN, 5)
  })

  test('beside the pole an aim at a point puts that point in the middle', () => {
    const frame = localFrame({ lat: 89.9999, lon: 40 }, 10)
    const target = localFrame({ lat: 89.9995, lon: -140 }, 25)
    const local = toLocal(frame, target.origin)
    const aim = aimAt(local, 0, 0, 50)
    if (aim === null) throw new Error('an aim exists')
    // Over the pole lies due north.
    expect(Math.min(aim.bearing, 360 - aim.bearing)).toBeLessThan(0.01)
    const at = projectEarth(view({ frame, ...aim }), target.origin)
    expect(at?.x).toBeCloseTo(0, 9)
    expect(at?.y).toBeCloseTo(0, 9)
  })
})
