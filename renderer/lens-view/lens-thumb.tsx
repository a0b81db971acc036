/** A small still of a spot's frame for lists: made once for each state of the spot and its shoot. */
import { useMemo } from 'preact/hooks'
import { type Assessment, assess } from '#core/plan/assess.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/plan/shoot.ts'
import type { Spot } from '#core/plan/spot.ts'
import { assessment as boardAssessment, plan as boardPlan } from '#renderer/state/derived.ts'
import { EmptyFrame, LensDrawing } from './lens-drawing.tsx'

interface LensThumbProps {
  readonly shoot: Shoot
  readonly spot: Spot
  /** CSS pixels of the thumb's longer side, lying or upright. */
  readonly width?: number
}

interface Assessed {
  readonly shoot: Shoot
  readonly plan: Plan
  readonly assessment: Assessment
}

const assessed = new WeakMap<Spot, Assessed>()

/** Records are values: the same spot in the same shoot has the same assessment. */
function assessedOnce(shoot: Shoot, spot: Spot): Assessed {
  const known = assessed.get(spot)
  if (known !== undefined && known.shoot === shoot) return known
  const made = boardsOwn(shoot, spot) ?? freshly(shoot, spot)
  assessed.set(spot, made)
  return made
}

/** While the spot on the board is dragged its assessment is at hand already. */
function boardsOwn(shoot: Shoot, spot: Spot): Assessed | null {
  const plan = boardPlan.peek()
  if (plan === null || plan.spot !== spot || plan.shoot !== shoot) return null
  const assessment = boardAssessment.peek()
  return assessment === null ? null : { shoot, plan, assessment }
}

function freshly(shoot: Shoot, spot: Spot): Assessed {
  const plan = planOf(shoot, spot)
  return { shoot, plan, assessment: assess(plan) }
}

export function LensThumb({ shoot, spot, width = 66 }: LensThumbProps) {
  // The same drawing comes back while the records stay the same, and then nothing is compared or touched.
  return useMemo(() => {
    const { plan, assessment } = assessedOnce(shoot, spot)
    const { sensorWidth, sensorHeight } = shoot.bag.camera
    const ratio = Math.min(sensorWidth, sensorHeight) / Math.max(sensorWidth, sensorHeight)
    const across = spot.shot.orientation === 'lying' ? width : width * ratio * ratio
    const Frame = assessment.view === null ? EmptyFrame : LensDrawing
    return (
      <span class="lens-thumb" style={{ width: `${width}px`, height: `${width * ratio}px` }}>
        <Frame plan={plan} assessment={assessment} width={across} decorative />
      </span>
    )
  }, [shoot, spot, width])
}
