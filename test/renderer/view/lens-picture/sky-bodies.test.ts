/** Sun and moon stand in the picture where the projection puts them, as large as they are, the moon lit as it is. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type View, projectLocal } from '#core/frame/projection.ts'
import { sunDirection } from '#core/light/incidence.ts'
import { SUN_RADIUS } from '#core/light/sky.ts'
import { assess } from '#core/plan/assess.ts'
import type { LightReading } from '#core/plan/light-reading.ts'
import type { ImagePoint } from '#renderer/view/lens-picture/clip.ts'
import { turningArea } from '#renderer/view/lens-picture/outline.ts'
import type { Sheet } from '#renderer/view/lens-picture/pen.ts'
import { edgeMark } from '#renderer/view/lens-view/body-marks.tsx'
import { moonInPicture, sunInPicture } from '#renderer/view/lens-picture/sky-bodies.ts'
import { cornersOf } from '#test/help/path.ts'
import { examplePlan } from '#test/help/plans.ts'

const WIDTH = 6000
const { light, view: exampleView } = assess(examplePlan({ shot: { placement: { across: 0, up: -0.35 } } }))
if (exampleView === null) throw new Error('framed')
const VIEW: View = exampleView
const HEIGHT = (WIDTH * VIEW.frameHeight) / VIEW.frameWidth
const SCALE = (VIEW.imageDistance / VIEW.frameWidth) * WIDTH
const SHEET: Sheet = {
  middleX: WIDTH / 2,
  middleY: HEIGHT / 2,
  scale: SCALE,
  bounds: { left: 0, top: 0, right: WIDTH, bottom: HEIGHT },
  thinnest: 0,
}

/** Degrees between two places in the picture, as seen from the lens. */
function angleBetween(one: ImagePoint, other: ImagePoint): number {
  const ray = ({ x, y }: ImagePoint) => [(x - WIDTH / 2) / SCALE, (HEIGHT / 2 - y) / SCALE, 1] as const
  const [a, b] = [ray(one), ray(other)]
  const dot = a[0] * b[0] + a[1] * b[1] + 1
  return (Math.acos(Math.min(1, dot / (Math.hypot(...a) * Math.hypot(...b)))) * 180) / Math.PI
}

function withBodies(
  azimuth: number,
  apparent: number,
  phase: Partial<LightReading['moon']['phase']> = {},
): LightReading {
  const place = { azimuth, apparent, altitude: apparent, up: true }
  return {
    ...light,
    sun: { ...light.sun, ...place },
    moon: { ...light.moon, ...place, radius: 0.26, phase: { ...light.moon.phase, ...phase } },
  }
}

const aside = fc.double({ min: -15, max: 15, noNaN: true })
const above = fc.double({ min: -8, max: 8, noNaN: true })

test('every point of the sun’s limb lies 0.267 degrees from where the projection puts its middle', () => {
  fc.assert(
    fc.property(aside, above, (right, up) => {
      const [azimuth, altitude] = [VIEW.bearing + right, VIEW.pitch + up]
      const at = projectLocal(VIEW, sunDirection(azimuth, altitude))
      const sun = sunInPicture(VIEW, SHEET, withBodies(azimuth, altitude))
      if (at === null || sun === null) throw new Error('in the picture')
      const middle = { x: WIDTH * (0.5 + at.x), y: HEIGHT * (0.5 - at.y) }
      expect([sun.x, sun.y]).toEqual([expect.closeTo(middle.x, 6), expect.closeTo(middle.y, 6)])
      const limb = cornersOf(sun.disc)
      expect(limb.length).toBeGreaterThan(36)
      // The sun is 32 minutes of arc across (959.63 seconds of radius at its mean distance).
      for (const point of limb) expect(angleBetween(point, middle)).toBeCloseTo(959.63 / 3600, 4)
      expect(SUN_RADIUS * 2).toBeCloseTo(0.533, 3)
    }),
  )
})

test('of the moon’s disc the share is bright that is lit, toward the side that is', () => {
  fc.assert(
    fc.property(
      aside,
      above,
      fc.double({ min: 0.02, max: 0.98, noNaN: true }),
      fc.double({ min: 0, max: 360, noNaN: true }),
      (right, up, lit, tilt) => {
        const reading = withBodies(VIEW.bearing + right, VIEW.pitch + up, { lit, tilt })
        const moon = moonInPicture(VIEW, SHEET, reading)
        if (moon === null) throw new Error('in the picture')
        const [disc, bright] = [cornersOf(moon.disc), cornersOf(moon.lit)]
        expect(Math.abs(turningArea(bright) / turningArea(disc) - lit)).toBeLessThan(0.02)
        const mean = (axis: 'x' | 'y'): number => bright.reduce((sum, point) => sum + point[axis], 0) / bright.length
        const seen = (Math.atan2(mean('x') - moon.x, moon.y - mean('y')) * 180) / Math.PI
        // Straight up in the picture and straight up in the sky part by up to a few degrees away from its middle.
        if (lit < 0.9) expect(Math.abs(((seen - tilt + 540) % 360) - 180)).toBeLessThan(8)
      },
    ),
  )
})

test('what is down or outside the picture is not drawn', () => {
  const high = withBodies(VIEW.bearing, VIEW.pitch)
  expect(sunInPicture(VIEW, SHEET, { ...high, sun: { ...high.sun, up: false } })).toBeNull()
  expect(sunInPicture(VIEW, SHEET, withBodies(VIEW.bearing + 180, 20))).toBeNull()
  expect(sunInPicture(VIEW, SHEET, withBodies(VIEW.bearing + 60, VIEW.pitch))).toBeNull()
})

test('a body a little outside is marked on the edge toward it; one in the picture, far away or down is not', () => {
  const body = (x: number, y: number, within: number, up = true) => ({
    ...light.sun,
    up,
    inFrame: { at: { x, y }, within },
  })
  expect(edgeMark(body(1, 0.25, -4.2), 300, 200)).toEqual({ x: 300, y: 75, turn: expect.closeTo(-9.46, 2), out: 4.2 })
  expect(edgeMark(body(0, -0.75, -3), 300, 200)).toMatchObject({ x: 150, y: 200, turn: 90 })
  expect(edgeMark(body(0.2, 0.2, 5), 300, 200)).toBeNull()
  expect(edgeMark(body(3, 0, -40), 300, 200)).toBeNull()
  expect(edgeMark(body(1, 0, -4, false), 300, 200)).toBeNull()
  expect(edgeMark({ ...light.sun, inFrame: { at: null, within: -3 } }, 300, 200)).toBeNull()
})
