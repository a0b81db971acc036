/** Trees and walls as they are put on the map: square across the way, of a length, changed one at a time. */
import { describe, expect, it } from 'vitest'
import { shootShape } from '#app/contract/records.ts'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import { newObstruction, withObstruction } from '#core/plan/obstructions.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { turnBetween } from '#core/units/angle.ts'
import { examplePlan } from '#test/help/plans.ts'

const plan = examplePlan()
const HERE = plan.spot.standpoint.at

describe('a new one', () => {
  const obstruction = newObstruction('new', plan, null)
  const [left = HERE, right = HERE] = obstruction.line

  it('is 40 m long, its middle on the way to the landmark', () => {
    const goal = plan.landmark === null ? null : landmarkMiddle(landmarkPoints(plan.landmark))
    const middle = landmarkMiddle(obstruction.line)
    if (goal === null || middle === null) throw new Error('both have a middle')
    expect(geodesicDistance(left, right)).toBeCloseTo(40, 3)
    const way = geodesicLine(HERE, goal)
    expect(geodesicDistance(middle, destination(HERE, way.bearing ?? 0, way.distance * 0.6))).toBeLessThan(0.01)
    // Square to the look, from left to right.
    expect(turnBetween(geodesicLine(left, right).bearing ?? 0, (way.bearing ?? 0) + 90)).toBeCloseTo(0, 3)
  })

  it('may be stored, with any of its kind up to the limit', () => {
    const obstructions = Array.from({ length: 100 }, (_, index) => ({ ...obstruction, id: `obstruction ${index}` }))
    expect(shootShape.safeParse({ ...plan.shoot, obstructions }).success).toBe(true)
    expect(shootShape.safeParse({ ...plan.shoot, obstructions: [...obstructions, obstruction] }).success).toBe(false)
  })

  it('without a landmark lies in the middle of the map', () => {
    const alone = examplePlan({ landmark: null })
    const elsewhere = destination(HERE, 200, 900)
    const middle = landmarkMiddle(newObstruction('new', alone, elsewhere).line)
    expect(geodesicDistance(middle ?? HERE, elsewhere)).toBeLessThan(0.01)
  })
})

describe('a change', () => {
  it('touches that one alone', () => {
    const obstructions = [newObstruction('one', plan, null), newObstruction('two', plan, null)]
    const after = withObstruction({ ...plan.shoot, obstructions }, { ...newObstruction('two', plan, null), height: 12 })
    expect(after.obstructions[0]).toBe(obstructions[0])
    expect(after.obstructions[1]?.height).toBe(12)
  })
})
