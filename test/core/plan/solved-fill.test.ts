/** Scene and fill are found once a frame, and what is kept of one plan never answers for another. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { setUpForFill } from '#core/frame/set-up-for-fill.ts'
import { destination } from '#core/geo/geodesic.ts'
import { moveStandpoint } from '#core/plan/arrange.ts'
import { assess } from '#core/plan/assess.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import { sceneOf, settingOf } from '#core/plan/plan-scene.ts'
import { solvedFill } from '#core/plan/solved-fill.ts'
import { examplePlan } from '#test/help/plans.ts'

function solved(plan: Plan) {
  const { shot } = plan.spot
  return solvedFill(sceneOf(plan).scene, settingOf(plan, shot.orientation), shot.subjectFill)
}

test('a plan that was followed is assessed with the very scene and set-up it was followed by', () => {
  const plan = examplePlan()
  const spot = moveStandpoint(plan, destination(plan.spot.standpoint.at, 100, 1))
  const next = planOf(plan.shoot, spot, plan.terrain, plan.pins)
  const { scene } = sceneOf(next)
  const made = assess(next)
  expect(sceneOf(next).scene).toBe(scene)
  expect(made.view).not.toBeNull()
  expect(made.view).toBe(solved(next)?.view)
})

test('in whatever order plans are asked about, each gets its own answer', () => {
  // Few values of each, so that plans often differ in one thing alone.
  const shown = fc.record({
    refraction: fc.constantFrom(0, 0.13),
    on: fc.constantFrom('near', 'far', 'feature'),
    behindFront: fc.constantFrom(0, 1),
    across: fc.constantFrom(-0.3, 0.2),
    up: fc.constantFrom(-0.1, 0.2),
    share: fc.constantFrom(0.3, 0.8),
    axis: fc.constantFrom('width', 'height'),
    orientation: fc.constantFrom('lying', 'upright'),
  })
  // A hand that changes the shot alone leaves standpoint and stop the very records that they were.
  const start = examplePlan()
  const planFor = ({ refraction, on, behindFront, across, up, share, axis, orientation }: Shown): Plan => ({
    ...start,
    shoot: { ...start.shoot, refraction },
    spot: {
      ...start.spot,
      shot: {
        ...start.spot.shot,
        orientation,
        focus: { on, behindFront },
        placement: { across, up },
        subjectFill: { share, axis },
      },
    },
  })
  type Shown = typeof shown extends fc.Arbitrary<infer T> ? T : never
  fc.assert(
    fc.property(fc.array(shown, { minLength: 6, maxLength: 12 }), (all) => {
      const plans = all.map(planFor)
      const alone = plans.map((plan) => {
        const copy = structuredClone(plan)
        const { shot } = copy.spot
        return setUpForFill(sceneOf(copy).scene, settingOf(copy, shot.orientation), shot.subjectFill)
      })
      expect(plans.map(solved)).toEqual(alone)
    }),
    { numRuns: 150 },
  )
})
