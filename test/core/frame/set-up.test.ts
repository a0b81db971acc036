/** The camera set up: the laws that aim and focus must meet together, and fills by the closed form of a thin lens. */
import { assert, constantFrom, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FOCUS_ON, type Scene, type Setting, setUp, subjectShare } from '#core/frame/set-up.ts'
import { setUpForFill } from '#core/frame/set-up-for-fill.ts'
import { projectLocal, toCamera } from '#core/frame/projection.ts'
import { type LocalPoint, localFrame } from '#core/geo/local-frame.ts'
import { number } from '#test/help/arbitrary.ts'

/** A box before the lens: its middle, and half its size east, north and up. */
function box(centre: LocalPoint, east: number, north: number, up: number): Scene {
  const both = [-1, 1]
  const corners = both.flatMap((e) =>
    both.flatMap((n) =>
      both.map((u) => ({ east: centre.east + e * east, north: centre.north + n * north, up: centre.up + u * up })),
    ),
  )
  const feature = { east: centre.east, north: centre.north - north / 2, up: centre.up }
  return { frame: localFrame({ lat: 47, lon: 8 }, 0), corners, centre, feature, refraction: 0 }
}

function setting(on: Setting['focus']['on'], across = 0, up = 0): Setting {
  return { frameWidth: 36, frameHeight: 24, placement: { across, up }, focus: { on, behindFront: 0 } }
}

const AHEAD = { east: 0, north: 5, up: 0 }

describe('a set-up', () => {
  it('has the centre where it is wished, and the image distance of a thin lens focused where it is wished, at once', () => {
    assert(
      property(
        number(-180, 180),
        number(3, 60),
        number(-2, 2),
        number(-0.4, 0.4),
        number(-0.4, 0.4),
        number(16, 300),
        constantFrom(...FOCUS_ON),
        (bearing, distance, high, across, up, focal, on) => {
          const turn = (bearing * Math.PI) / 180
          const centre = { east: distance * Math.sin(turn), north: distance * Math.cos(turn), up: high }
          const scene = box(centre, 0.6, 0.9, 0.5)
          const made = setUp(scene, setting(on, across, up), focal)
          if (made === null) throw new Error('everything lies well before the lens')
          const at = projectLocal(made.view, centre)
          expect(at?.x).toBeCloseTo(across, 9)
          expect(at?.y).toBeCloseTo(up, 9)
          const depths = scene.corners.map((corner) => toCamera(made.view, corner).depth)
          const [near, far] = [Math.min(...depths), Math.max(...depths)]
          const wanted = {
            near,
            far,
            middle: toCamera(made.view, centre).depth,
            feature: toCamera(made.view, scene.feature).depth,
            // Equal blur at both ends: the harmonic mean of their distances (textbook).
            best: (2 * near * far) / (near + far),
          }[on]
          expect(made.focusDistance).toBeCloseTo(wanted, 9)
          // 1 / f = 1 / u + 1 / v.
          expect(1 / (wanted * 1000) + 1 / made.view.imageDistance).toBeCloseTo(1 / focal, 12)
          expect([made.subject.near, made.subject.far]).toEqual([near, far])
        },
      ),
      { numRuns: 500 },
    )
  })

  it('is the same from wherever its search starts', () => {
    const scene = box({ east: 1, north: 6, up: -0.5 }, 0.6, 0.9, 0.5)
    const wished = setting('best', 0.3, -0.2)
    const plain = setUp(scene, wished, 85)
    for (const focal of [16, 50, 85, 300]) {
      const like = setUp(scene, setting('near'), focal)
      const made = setUp(scene, wished, 85, like)
      expect(made?.view.imageDistance).toBeCloseTo(plain?.view.imageDistance ?? Number.NaN, 10)
      expect(made?.view.bearing).toBeCloseTo(plain?.view.bearing ?? Number.NaN, 10)
      expect(made?.focusDistance).toBeCloseTo(plain?.focusDistance ?? Number.NaN, 10)
    }
    // One that was focused nearer than this focal length can be.
    const near = setUp(box({ east: 0, north: 0.3, up: 0 }, 0.05, 0.05, 0.05), setting('middle'), 20)
    expect(near).not.toBeNull()
    const long = setUp(scene, wished, 250, near)
    expect(long?.view.imageDistance).toBeCloseTo(setUp(scene, wished, 250)?.view.imageDistance ?? Number.NaN, 10)
  })

  it('is nothing larger than life: from twice the focal length on inwards', () => {
    // A board square to the axis at 5 m: at f = 2.5 m its image would be as large as itself.
    const board = box(AHEAD, 1, 0, 0.5)
    expect(setUp(board, setting('middle'), 2499)).not.toBeNull()
    expect(setUp(board, setting('middle'), 2500)).toBeNull()
    expect(setUp(board, setting('middle'), 4000)).toBeNull()
  })

  it('is nothing where a part of the thing lies within the focal length or behind the lens', () => {
    // Two metres deep around 5 m, focused on its far end at 6 m: near end 4 m.
    expect(setUp(box(AHEAD, 0.1, 1, 0.1), setting('far'), 2900)).not.toBeNull()
    // From 0.2 to 9.8 m: a lens of 200 mm makes no image of its near end, one of 199 does.
    const deep = box(AHEAD, 0.001, 4.8, 0.001)
    expect(setUp(deep, setting('far'), 199)).not.toBeNull()
    expect(setUp(deep, setting('far'), 201)).toBeNull()
    // Right at the focal length its image lies nowhere either.
    expect(setUp(box(AHEAD, 0.001, 4.75, 0.001), setting('far'), 250)).toBeNull()
    expect(setUp(box(AHEAD, 0.001, 5.5, 0.001), setting('far'), 50)).toBeNull()
    expect(setUp(box({ east: 0, north: 0, up: 0 }, 1, 1, 1), setting('far'), 50)).toBeNull()
    // Nor where all of it is so near to the lens's plane that nothing has an image.
    expect(setUp(box({ east: 0, north: 0.007, up: 0 }, 0.001, 0.001, 0.001), setting('far'), 1)).toBeNull()
  })
})

describe('the set-up for a fill', () => {
  // Thin lens, a board square to the axis at u: its image is W f / (u - f), so f = s S u / (W + s S) with S the frame's side.
  const focalFor = (share: number, side: number, size: number, distance: number): number =>
    (1000 * share * side * distance) / (1000 * size + share * side)

  it('has the focal length of the closed form', () => {
    assert(
      property(
        number(0.3, 40_000),
        number(0.2, 30),
        number(-4, 0),
        constantFrom('width' as const, 'height' as const),
        (distance, half, log, axis) => {
          const board = box({ east: 0, north: distance, up: 0 }, half, 0, half / 2)
          const [side, size] = axis === 'width' ? [36, 2 * half] : [24, half]
          const share = 10 ** log * Math.min(20, (1000 * size) / side)
          const wanted = focalFor(share, side, size, distance)
          if (wanted < 0.05 || wanted > 9e5) return
          const made = setUpForFill(board, setting('middle'), { share, axis })
          // At life size itself, and nearer, there is none.
          if (wanted / 1000 > distance * 0.4999) return
          if (made === null) throw new Error('it can be')
          expect(Math.abs(made.focalLength / wanted - 1)).toBeLessThan(1e-9)
          expect(Math.abs(subjectShare(made, axis) / share - 1)).toBeLessThan(1e-10)
        },
      ),
      { numRuns: 1000 },
    )
  })

  it('is none from life size on', () => {
    // Two metres on 36 mm: life size is 55.6 times the frame's width.
    const board = box(AHEAD, 1, 0, 0.5)
    expect(setUpForFill(board, setting('middle'), { share: 55, axis: 'width' })?.focalLength).toBeCloseTo(
      focalFor(55, 36, 2, 5),
      6,
    )
    expect(setUpForFill(board, setting('middle'), { share: 56, axis: 'width' })).toBeNull()
  })

  it('gives back the fill of deep things beside the axis, near by and far off', () => {
    // From a metre before its front on; what is nearer is swept in set-up-for-fill.test.ts.
    let [found, none] = [0, 0]
    assert(
      property(
        number(1, 40),
        number(-2, 1.3),
        number(-0.4, 0.4),
        number(-0.4, 0.4),
        constantFrom(...FOCUS_ON),
        constantFrom('width' as const, 'height' as const),
        (front, log, across, up, on, axis) => {
          const share = 10 ** log
          const scene = box({ east: 0.4, north: front + 0.9, up: -0.3 }, 0.6, 0.9, 0.5)
          const wished = setting(on, across, up)
          const made = setUpForFill(scene, wished, { share, axis })
          if (made !== null) {
            found++
            expect(Math.abs(subjectShare(made, axis) / share - 1)).toBeLessThan(1e-10)
            const again = setUp(scene, wished, made.focalLength)
            expect(again?.view.imageDistance).toBeCloseTo(made.view.imageDistance, 9)
            return
          }
          none++
          // Then the share passes the wish between no two focal lengths tried by hand: all show more, or all less.
          let before: number | null = null
          for (let focal = 0.5; focal < 25_000; focal *= 1.05) {
            const tried = setUp(scene, wished, focal)
            const miss = tried === null ? null : subjectShare(tried, axis) - share
            if (before !== null && miss !== null) expect(before < 0 === miss < 0).toBe(true)
            before = miss
          }
        },
      ),
      { numRuns: 600 },
    )
    expect(found).toBeGreaterThan(300)
    expect(none).toBeGreaterThan(0)
  })
})
