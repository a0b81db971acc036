/** Subject and standpoint are one group until the zoom tells them apart; the wedge holds what it should. */
import { describe, expect, it } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { assess } from '#core/plan/assess.ts'
import { drawPlan, isJoined, wedgeReach } from '#renderer/view/drawing/plan-drawing.ts'
import { landmarkOutline, subjectOutline } from '#renderer/view/drawing/outline.ts'
import { type PlanView, distanceBetween, levelView, mercatorView } from '#renderer/view/drawing/plan-view.ts'
import { sharpBand, wedgeOf } from '#renderer/view/drawing/wedge.ts'
import { examplePlan } from '#test/help/plans.ts'

const plan = examplePlan()
const box = { left: -1e9, top: -1e9, right: 1e9, bottom: 1e9 }

function viewAt(zoom: number): PlanView {
  return mercatorView({ zoom, originX: 0, originY: 0, middleLon: plan.spot.stop.at.lon, box })
}

describe('isJoined', () => {
  it('joins seven metres at zoom 16 and tells them apart at zoom 21', () => {
    expect(isJoined(viewAt(16), plan)).toBe(true)
    expect(isJoined(viewAt(21), plan)).toBe(false)
  })
})

describe('subjectOutline', () => {
  it('is a rectangle of the true size with the notch ahead of its front', () => {
    const stop = { at: plan.spot.stop.at, heading: 30, elevation: null, slope: null, aspect: null }
    const view = levelView(stop.at, 100, 1000, 1000)
    const outline = subjectOutline(plan.shoot.subject, stop)
    const [frontRight, frontLeft, rearLeft] = outline.corners.map((at) => view.toPoint(at))
    if (frontRight === undefined || frontLeft === undefined || rearLeft === undefined) throw new Error('no rectangle')
    expect(distanceBetween(frontRight, frontLeft) / 100).toBeCloseTo(0.65, 6)
    expect(distanceBetween(frontLeft, rearLeft) / 100).toBeCloseTo(2.5, 6)
    const tip = view.toPoint(outline.tip)
    const turn = (Math.atan2(tip.x - 500, 500 - tip.y) * 180) / Math.PI
    expect(turn).toBeCloseTo(30, 6)
  })
})

describe('landmarkOutline', () => {
  it('gives a bridge its width on both sides of its line and a tick on each long side', () => {
    const [bridge] = plan.shoot.landmarks
    if (bridge?.kind !== 'span') throw new Error('the example has a bridge')
    const outline = landmarkOutline(bridge)
    const view = levelView(bridge.line[0] ?? plan.spot.stop.at, 10, 1000, 1000)
    const ring = outline.ring.map((at) => view.toPoint(at))
    const [first] = ring
    const last = ring.at(-1)
    if (first === undefined || last === undefined) throw new Error('no footprint')
    expect(distanceBetween(first, last) / 10).toBeCloseTo(bridge.width, 3)
    expect(outline.ring).toHaveLength(8)
    expect(outline.faces).toEqual([
      [1, 2],
      [5, 6],
    ])
  })
})

describe('the wedge', () => {
  it('reaches past the landmark and has the angle of view between its edges', () => {
    const reading = assess(plan)
    const wedge = wedgeOf(reading)
    expect(wedgeReach(plan)).toBeGreaterThan(reading.toLandmark?.distance ?? Infinity)
    expect((wedge?.half ?? 0) * 2).toBeCloseTo(reading.angleWide ?? Number.NaN, 0)
  })

  it('has its sharp band square to the axis at the two limits', () => {
    const { standpoint } = plan.spot
    const view = levelView(standpoint.at, 10, 1000, 1000)
    const [nearLeft, , farRight, nearRight] = sharpBand(standpoint, { aim: 0, half: 20 }, 6, 9).map((at) =>
      view.toPoint(at),
    )
    if (nearLeft === undefined || farRight === undefined || nearRight === undefined) throw new Error('no band')
    expect((500 - nearLeft.y) / 10).toBeCloseTo(6, 5)
    expect((500 - nearRight.y) / 10).toBeCloseTo(6, 5)
    expect((500 - farRight.y) / 10).toBeCloseTo(9, 5)
    expect((nearRight.x - 500) / 10).toBeCloseTo(6 * Math.tan(Math.PI / 9), 5)
  })

  it('is left out, not broken, when nothing can be framed', () => {
    const onTop = examplePlan({ distance: 0 })
    const drawing = drawPlan(onTop, assess(onTop), null, viewAt(20), 50)
    expect(drawing.wedge).toBeNull()
    expect(JSON.stringify(drawing)).not.toMatch(/NaN|Infinity/u)
  })
})

describe('drawPlan', () => {
  it('stays in one piece across the antimeridian', () => {
    const at = { lat: -16.8, lon: 179.999_99 }
    const over = examplePlan({ at, bearing: 90 })
    const view = mercatorView({ zoom: 15, originX: 0, originY: 0, middleLon: 179.99, box })
    const drawing = drawPlan(over, assess(over), null, view, wedgeReach(over))
    const landmark = drawing.landmark?.at ?? { x: Infinity, y: 0 }
    const expected = view.toPoint(destination(at, 90, 600))
    expect(distanceBetween(landmark, expected)).toBeLessThan(2)
    expect(distanceBetween(landmark, drawing.standpoint) / view.pixelsPerMetre(at)).toBeLessThan(620)
  })
})
