/** A small still of a spot's frame for lists: made once for each state of the spot and its shoot. */
import { useMemo } from 'preact/hooks'
import { type Assessment, assess } from '#core/plan/assess.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/plan/shoot.ts'
import type { Spot } from '#core/plan/spot.ts'
import { EmptyFrame, LensDrawing } from './lens-drawing.tsx'

interface LensThumbProps {
  readonly shoot: Shoot
  readonly spot: Spot
  /** CSS pixels of the thumb's longer side, lying or upright. */
  readonly width: number
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
  const plan = planOf(shoot, spot)
  const made = { shoot, plan, assessment: assess(plan) }
  assessed.set(spot, made)
  return made
}

export function LensThumb({ shoot, spot, width }: LensThumbProps) {
  // The same drawing comes back while the records stay the same, and then nothing is compared or touched.
  return useMemo(() => {
    const { plan, assessment } = assessedOnce(shoot, spot)
    const { sensorWidth, sensorHeight } = shoot.bag.camera
    const ratio = Math.min(sensorWidth, sensorHeight) / Math.max(sensorWidth, sensorHeight)
    const across = spot.shot.orientation === 'lying' ? width : width * ratio * ratio
    const Frame = assessment.view === null ? EmptyFrame : LensDrawing
    return (
      <div class="lens-thumb" style={{ width: `${width}px`, height: `${width * ratio}px` }}>
        <Frame plan={plan} assessment={assessment} width={across} decorative />
      </div>
    )
  }, [shoot, spot, width])
}
