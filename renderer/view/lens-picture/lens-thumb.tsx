/** A small still of a spot's frame for lists: made once for each state of the spot and its shoot. */
import { useMemo } from 'preact/hooks'
import { type Assessment, assess } from '#core/plan/assess.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { planAtHand } from '#renderer/state/plan/assessments.ts'
import { assessment as boardAssessment, plan as boardPlan } from '#renderer/state/plan/board-plan.ts'
import { EmptyFrame, LensDrawing } from './lens-drawing.tsx'

interface LensThumbProps {
  readonly shoot: Shoot
  readonly spot: Spot
  /** CSS pixels of the thumb's longer side, lying or upright. */
  readonly width?: number
  /** The ground it is drawn over; left out, what is at hand around the spot. */
  readonly ground?: ElevationGrid | null
}

interface Assessed {
  readonly plan: Plan
  readonly assessment: Assessment
}

const assessed = new WeakMap<Spot, Assessed>()

/** Records are values: the same spot in the same shoot over the same ground has the same assessment. */
function assessedOnce(plan: Plan): Assessed {
  const known = assessed.get(plan.spot)
  if (known !== undefined && samePlan(known.plan, plan)) return known
  const made = boardsOwn(plan) ?? { plan, assessment: assess(plan) }
  assessed.set(plan.spot, made)
  return made
}

function samePlan(one: Plan, other: Plan): boolean {
  return (
    one.spot === other.spot && one.shoot === other.shoot && one.terrain === other.terrain && one.pins === other.pins
  )
}

/** While the spot on the board is dragged its assessment is at hand already. */
function boardsOwn(wanted: Plan): Assessed | null {
  const plan = boardPlan.peek()
  const assessment = boardAssessment.peek()
  return plan === null || assessment === null || !samePlan(plan, wanted) ? null : { plan, assessment }
}

export function LensThumb({ shoot, spot, width = 66, ground }: LensThumbProps) {
  const own = planAtHand(shoot, spot)
  const { pins } = own
  const terrain = ground === undefined ? own.terrain : ground
  // The same drawing comes back while records and ground stay the same, and then nothing is compared or touched.
  return useMemo(() => {
    const { plan, assessment } = assessedOnce(planOf(shoot, spot, terrain, pins))
    const { sensorWidth, sensorHeight } = shoot.bag.camera
    const ratio = Math.min(sensorWidth, sensorHeight) / Math.max(sensorWidth, sensorHeight)
    const across = spot.shot.orientation === 'lying' ? width : width * ratio * ratio
    const Frame = assessment.view === null ? EmptyFrame : LensDrawing
    return (
      <span class="lens-thumb" style={{ width: `${width}px`, height: `${width * ratio}px` }}>
        <Frame plan={plan} assessment={assessment} width={across} decorative />
      </span>
    )
  }, [shoot, spot, terrain, pins, width])
}
