/** Which lens? The focal length for the fill asked for, the lens of the bag that is taken for it, and the camera set up with it. */
import { type Plan } from './plan.ts'
import { type Problem } from './problem.ts'
import { setUp, type Scene, type Setting, type SetUp } from '#core/frame/set-up.ts'
import { chooseOffer, type LensOffer, lensOffers } from '#core/frame/lens-choice.ts'
import { solvedFill } from './solved-fill.ts'

export interface LensAnswer {
  /** Millimetres that give the subject its wished fill; null when none do. */
  readonly wanted: number | null
  readonly offers: readonly LensOffer[]
  readonly lens: LensOffer | null
  readonly made: SetUp | null
}

export function answerLens(plan: Plan, scene: Scene, setting: Setting, problems: Problem[]): LensAnswer {
  const { shot, hold } = plan.spot
  const { lenses } = plan.shoot.bag
  const solved = solvedFill(scene, setting, shot.subjectFill)
  if (solved === null) problems.push('fill-cannot-be')
  const aimed = hold === 'focal-length' ? shot.focalLength : (solved?.focalLength ?? shot.focalLength)
  const offers = lensOffers(lenses, aimed, scene, setting, shot.subjectFill, solved)
  const lens = chooseOffer(offers, aimed, shot.lensId)
  if (lens === null) problems.push('empty-bag')
  else if (!lens.reaches) problems.push(hold === 'focal-length' ? 'focal-length-outside-lens' : 'no-lens-reaches')
  if (lens?.tooNear === true) problems.push('focus-too-near')
  const focal = lens?.focalLength ?? aimed
  const made = solved !== null && focal === solved.focalLength ? solved : setUp(scene, setting, focal, solved)
  if (made === null && solved !== null) problems.push('aim-cannot-be')
  return { wanted: solved?.focalLength ?? null, offers, lens, made }
}
