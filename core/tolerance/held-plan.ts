/** The plan as it is taken to the place: the lens that was chosen, the focal length and the aperture in use, whatever was to follow before. */
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'

/**
 * The composition stays too: a photographer aims so that the subject's centre is where it was. The other lenses are left out,
 * and so are the crops where nothing is asked of them: both would cost each step of a walk.
 */
export function heldPlan(plan: Plan, now: Assessment, withCrops: boolean): Plan {
  const { shoot, spot } = plan
  const lenses = shoot.bag.lenses.filter((lens) => lens.id === now.lens?.lensId)
  const shot = {
    ...spot.shot,
    lensId: now.lens?.lensId ?? null,
    focalLength: now.focalLength ?? spot.shot.focalLength,
    aperture: now.sharp?.used.mark ?? spot.shot.aperture,
  }
  return {
    ...plan,
    shoot: { ...shoot, bag: { ...shoot.bag, lenses }, crops: withCrops ? shoot.crops : [] },
    spot: { ...spot, hold: 'focal-length', shot },
  }
}
