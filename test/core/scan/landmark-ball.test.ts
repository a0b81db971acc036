/** The landmark as a ball may never rule out what can be: held against the projection of every point of the ball's landmark. */
import { assert, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { extentOf, framingOf } from '#core/frame/framing.ts'
import { projectEarth } from '#core/frame/projection.ts'
import { type Setting, setUp } from '#core/frame/set-up.ts'
import { type EarthPoint, localFrame, toEarth, toLocal } from '#core/geo/local-frame.ts'
import { ballFrom, couldShow, inView, landmarkBall, mostShare } from '#core/scan/landmark-ball.ts'
import { CENTRE } from '#test/help/scans.ts'
import { number } from '#test/help/arbitrary.ts'

const PLANE = localFrame(CENTRE, 0)

/** A box of three sizes whose middle stands toward a bearing. */
function boxAt(bearing: number, distance: number, wide: number, high: number) {
  const turn = (bearing * Math.PI) / 180
  const [east, north] = [Math.sin(turn) * distance, Math.cos(turn) * distance]
  const both = [-0.5, 0.5]
  return both.flatMap((e) =>
    both.flatMap((n) => [0, high].map((up) => toEarth(PLANE, east + e * wide, north + n * wide, up))),
  )
}

function ballOf(boundingPoints: readonly EarthPoint[]) {
  return landmarkBall({ level: 0, boundingPoints, posts: [] })
}

const setting = (across: number, up: number): Setting => ({
  frameWidth: 36,
  frameHeight: 24,
  placement: { across, up },
  focus: { on: 'middle', behindFront: 0 },
})

describe('the ball', () => {
  it('has its centre amid the points and holds every one of them', () => {
    const points = boxAt(30, 400, 20, 60)
    const { centre, radius } = ballOf(points)
    const { east, north, up } = toLocal(PLANE, centre)
    expect([east, north, up]).toEqual([200, 400 * Math.cos(Math.PI / 6), 30].map((metres) => expect.closeTo(metres, 6)))
    // Half the diagonal of 20 x 20 x 60.
    expect(radius).toBeCloseTo(Math.hypot(10, 10, 30), 6)
    expect(ballFrom(PLANE, { centre, radius })).toEqual({ east, north, up, radius })
  })
})

describe('what a glance rules out', () => {
  it('is never a landmark of which a part is in the frame', () => {
    let [shown, ruledOut, outside] = [0, 0, 0]
    assert(
      property(
        number(0, 359.9),
        number(20, 3000),
        number(2, 200),
        number(2, 150),
        number(0, 359.9),
        number(3, 40),
        number(16, 300),
        number(-0.4, 0.4),
        number(-0.4, 0.4),
        (bearing, distance, wide, high, toCamera, away, focal, across, up) => {
          const points = boxAt(bearing, distance, wide, high)
          const ball = ballOf(points)
          const turn = (toCamera * Math.PI) / 180
          const lens = localFrame(CENTRE, 1.5)
          const frame = { ...lens, origin: toEarth(PLANE, Math.sin(turn) * away, Math.cos(turn) * away, 1.5) }
          const centre = toLocal(frame, toEarth(PLANE, 0, 0, 0.6))
          const scene = { frame, corners: [centre], centre, feature: centre, refraction: 0 }
          const made = setUp(scene, setting(across, up), focal)
          if (made === null) return
          const places = points.map((point) => projectEarth(made.view, point))
          const part = places.some((at) => at !== null && Math.abs(at.x) <= 0.5 && Math.abs(at.y) <= 0.5)
          const could = couldShow(ballFrom(PLANE, ball), setting(across, up), focal, toCamera, away, 0)
          const seen = inView(ball, made.view, 0)
          if (part) {
            shown++
            expect([could, seen]).toEqual([true, true])
          } else {
            outside++
            ruledOut += could ? 0 : 1
          }
          // Nor does it take more of the frame than was said, where a part of it is in the frame and all of it before the lens.
          const extent = extentOf(
            made.view,
            points.map((point) => toLocal(frame, point)),
          )
          if (!part || extent === null || extent.partlyBehind) return
          const { widthFill, heightFill } = framingOf(extent, 36, 24)
          const { east, north, up: rise } = toLocal(frame, ball.centre)
          const far = Math.hypot(east, north, rise)
          expect(widthFill).toBeLessThanOrEqual(mostShare(ball.radius, far, setting(across, up), focal, 36))
          expect(heightFill).toBeLessThanOrEqual(mostShare(ball.radius, far, setting(across, up), focal, 24))
        },
      ),
      { numRuns: 2000 },
    )
    expect(shown).toBeGreaterThan(20)
    // And it does rule out: most of what lies elsewhere.
    expect(ruledOut / outside).toBeGreaterThan(0.5)
  })

  it('is a small thing behind or far aside, and not one straight ahead', () => {
    // The camera stands 10 m north of the place and looks south, with half an angle of 20 degrees to the sides.
    const focal = 18 / Math.tan((20 * Math.PI) / 180)
    const could = (bearing: number, up = 0) =>
      couldShow({ ...at(bearing, 1000), up, radius: 5 }, setting(0, 0), focal, 0, 10, 0)
    const at = (bearing: number, distance: number) => {
      const turn = (bearing * Math.PI) / 180
      return { east: Math.sin(turn) * distance, north: Math.cos(turn) * distance }
    }
    expect([could(180), could(165), could(195)]).toEqual([true, true, true])
    expect([could(0), could(90), could(270), could(140), could(220)]).toEqual([false, false, false, false, false])
    // Right over the camera's head nothing can be told by the bearing, whichever way it lies.
    expect(could(0, 50_000)).toBe(
      couldShow({ ...at(180, 1000), up: 50_000, radius: 5 }, setting(0, 0), focal, 0, 10, 0),
    )
    // Near enough to reach about the camera it says nothing.
    expect(couldShow({ ...at(0, 19), up: 0, radius: 5 }, setting(0, 0), focal, 0, 10, 0)).toBe(true)
  })

  it('takes doubt about the view for the ball’s own room', () => {
    const points = boxAt(180, 1000, 0.1, 0.1)
    const ball = ballOf(points)
    const lens = localFrame(CENTRE, 0)
    // Twenty-five degrees off the axis, five beyond the border of a frame of half an angle of 20.
    const turned = (155 * Math.PI) / 180
    const centre = { east: 50 * Math.sin(turned), north: 50 * Math.cos(turned), up: 0 }
    const focal = 18 / Math.tan((20 * Math.PI) / 180)
    const made = setUp({ frame: lens, corners: [centre], centre, feature: centre, refraction: 0 }, setting(0, 0), focal)
    if (made === null) throw new Error('it can be set up')
    const degrees = Math.PI / 180
    expect(inView(ball, made.view, 0)).toBe(false)
    expect(inView(ball, made.view, 4 * degrees)).toBe(false)
    expect(inView(ball, made.view, 6 * degrees)).toBe(true)
  })

  it('says nothing of a share from within the ball, or at more than a right angle', () => {
    const wide = setting(0, 0)
    expect(mostShare(10, 10, wide, 50, 36)).toBe(Infinity)
    expect(mostShare(10, 9, wide, 50, 36)).toBe(Infinity)
    expect(mostShare(10, 10.1, wide, 50, 36)).toBe(Infinity)
    expect(mostShare(10, 500, wide, 50, 36)).toBeLessThan(5)
    // Small and far off it falls with the distance.
    const ratio = mostShare(1, 10_000, wide, 50, 36) / mostShare(1, 20_000, wide, 50, 36)
    expect(ratio).toBeCloseTo(2, 2)
  })
})
