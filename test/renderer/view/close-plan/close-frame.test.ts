/** The close plan zooms by itself so that both fit, in round steps, and stays as it is while they still do. */
import { describe, expect, it } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { frameView, gridStep, nextFrame, roundAcross } from '#renderer/view/close-plan/close-frame.ts'
import { examplePlan } from '#test/help/plans.ts'

const SIZE = { width: 286, height: 236 }

describe('nextFrame', () => {
  it.each([0.5, 3, 7, 15, 40, 900])('holds subject and standpoint %s m apart', (distance) => {
    for (const bearing of [0, 45, 90, 200, 359]) {
      const plan = examplePlan({ distance, bearing })
      const view = frameView(nextFrame(plan, SIZE, null), SIZE)
      for (const at of [plan.spot.stop.at, plan.spot.standpoint.at]) {
        const { x, y } = view.toPoint(at)
        expect(x > 20 && x < 266 && y > 20 && y < 216).toBe(true)
      }
    }
  })

  it('is at least 10 m across, and about three times the distance', () => {
    expect(nextFrame(examplePlan({ distance: 0.5 }), SIZE, null).across).toBe(10)
    expect(nextFrame(examplePlan({ distance: 7, bearing: 90 }), SIZE, null).across).toBeLessThanOrEqual(20)
    expect(nextFrame(examplePlan({ distance: 20, bearing: 90 }), SIZE, null).across).toBeLessThanOrEqual(60)
  })

  it('stays for a small move and goes along with a large one', () => {
    const plan = examplePlan({ distance: 7 })
    const before = nextFrame(plan, SIZE, null)
    const standpoint = plan.spot.standpoint
    const moved = (metres: number): typeof plan => ({
      ...plan,
      spot: { ...plan.spot, standpoint: { ...standpoint, at: destination(standpoint.at, 200, metres) } },
    })
    expect(nextFrame(moved(0.3), SIZE, before)).toBe(before)
    expect(nextFrame(moved(30), SIZE, before).across).toBeGreaterThan(before.across)
  })

  it('comes nearer again once the things are', () => {
    const wide = nextFrame(examplePlan({ distance: 40 }), SIZE, null)
    expect(nextFrame(examplePlan({ distance: 5 }), SIZE, wide).across).toBeLessThan(wide.across)
  })

  it('holds across the antimeridian', () => {
    const plan = examplePlan({ at: { lat: -16.8, lon: 179.999_97 }, bearing: 90, distance: 8 })
    expect(nextFrame(plan, SIZE, null).across).toBeLessThanOrEqual(20)
  })
})

describe('round steps', () => {
  it('are what one would draw', () => {
    expect([3, 11, 26, 61, 85, 130, 700].map(roundAcross)).toEqual([10, 12, 30, 80, 100, 150, 800])
    expect([10, 20, 60, 1500].map(gridStep)).toEqual([1, 2, 5, 100])
  })
})
