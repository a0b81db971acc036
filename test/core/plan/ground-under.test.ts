/** The ground under each thing: measured values before those read off the elevations, each told with its source. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { groundUnder } from '#core/plan/ground-under.ts'
import { type Plan, levelsOf } from '#core/plan/plan.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'

const AT = { lat: 46.9, lon: 10.3 }
/** A plane that falls toward a bearing by a slope: known exactly, read back exactly. */
function plane(slope: number, aspect: number): NonNullable<Plan['terrain']> {
  const [rise, turn] = [Math.tan((slope * Math.PI) / 180), (aspect * Math.PI) / 180]
  return groundOf(161, 10, (east, north) => 900 - rise * (east * Math.sin(turn) + north * Math.cos(turn)), AT)
}

function planOver(terrain: Plan['terrain'], lean: { slope?: number | null; aspect?: number | null } = {}): Plan {
  const { slope = null, aspect = null } = lean
  const landmark = { ...bridgeAt(AT, 40, 300), baseSlope: slope, baseAspect: aspect }
  const plan = examplePlan({ at: AT, landmark })
  const { stop, standpoint } = plan.spot
  return {
    ...plan,
    terrain,
    spot: { ...plan.spot, stop: { ...stop, slope, aspect }, standpoint: { ...standpoint, slope, aspect } },
  }
}

const THINGS = ['standpoint', 'stop', 'landmark'] as const

describe('the ground under each thing', () => {
  it('leans as the elevations say for as long as nothing was measured', () => {
    const plan = planOver(plane(20, 300))
    const under = groundUnder(plan, levelsOf(plan))
    for (const thing of THINGS) {
      expect(under[thing]?.slope.value).toBeCloseTo(20, 3)
      expect(under[thing]?.aspect.value).toBeCloseTo(300, 2)
      expect([under[thing]?.slope.from, under[thing]?.aspect.from]).toEqual(['elevations', 'elevations'])
    }
  })

  it('leans as measured, each of the two by itself, and still tells what the elevations say', () => {
    fc.assert(
      fc.property(
        fc.option(fc.double({ min: 0, max: 90, noNaN: true })),
        fc.option(fc.double({ min: 0, max: 360, maxExcluded: true, noNaN: true })),
        (slope, aspect) => {
          const plan = planOver(plane(20, 300), { slope, aspect })
          const under = groundUnder(plan, levelsOf(plan))
          for (const thing of THINGS) {
            const told = under[thing]
            expect(told?.slope.from).toBe(slope === null ? 'elevations' : 'measured')
            expect(told?.aspect.from).toBe(aspect === null ? 'elevations' : 'measured')
            if (slope !== null) expect(told?.slope.value).toBe(slope)
            if (aspect !== null) expect(told?.aspect.value).toBe(aspect)
            expect(told?.slope.read).toBeCloseTo(20, 3)
            expect(told?.aspect.read).toBeCloseTo(300, 2)
          }
        },
      ),
    )
  })

  it('is told by the assessment without any elevations, where it was measured', () => {
    const found = assess(planOver(null, { slope: 0, aspect: 200 }))
    expect(found.ground).toBeNull()
    expect(found.under.stop).toMatchObject({
      from: 'measured',
      read: null,
      slope: { value: 0, from: 'measured', read: null },
      aspect: { value: 200, from: 'measured', read: null },
    })
    expect(assess(planOver(null)).under.standpoint.slope).toEqual({ value: null, from: null, read: null })
    expect(assess({ ...planOver(null), landmark: null }).under.landmark).toBeNull()
  })
})
