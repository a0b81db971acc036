/** What stands in the way, as sentences with the names and figures of this plan, sorted by the question they belong to. */
import { nextThirdStop } from '#core/optics/aperture.ts'
import type { Sharpness } from '#core/optics/sharpness.ts'
import { widestAt } from '#core/optics/lens.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Problem } from '#core/plan/problem.ts'
import type { Plan } from '#core/plan/plan.ts'
import { wishedProportion } from '#core/plan/proportion-ring.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { aperture, metres, millimetres, rounded, share } from './figure.ts'
import { landmarkName, lensName, subjectName } from './names.ts'
import type { ProblemParts } from '#renderer/words/en-problems.ts'
import { words } from '#renderer/words/en.ts'

export type ProblemPlace = 'lens' | 'sharp' | 'where'

const PLACES: Readonly<Record<Problem, ProblemPlace>> = {
  'on-top-of-each-other': 'lens',
  'inside-subject': 'lens',
  'no-landmark': 'lens',
  'landmark-behind-camera': 'lens',
  'landmark-partly-behind-camera': 'lens',
  'landmark-nearer-than-subject': 'lens',
  'fill-cannot-be': 'lens',
  'empty-bag': 'lens',
  'no-lens-reaches': 'lens',
  'focal-length-outside-lens': 'lens',
  'focus-too-near': 'sharp',
  'aperture-outside-lens': 'sharp',
  'not-sharp-end-to-end': 'sharp',
  diffraction: 'sharp',
  'landmark-level-assumed': 'where',
  'aim-cannot-be': 'lens',
  'proportion-not-held': 'lens',
}

/** The names and figures that the sentences take; a dash where there is none to tell. */
export function problemParts(plan: Plan, found: Assessment, units: UnitSystem): ProblemParts {
  const { lens: offer, sharp } = found
  const lens = plan.shoot.bag.lenses.find((candidate) => candidate.id === offer?.lensId)
  const wanted = plan.spot.hold === 'focal-length' ? plan.spot.shot.focalLength : found.wantedFocalLength
  const { axis } = plan.spot.shot.subjectFill
  const { answers } = words
  const given = offer?.gives ?? null
  return {
    subject: subjectName(plan.shoot.subject),
    landmark: landmarkName(plan.landmark),
    lens: lens === undefined ? '–' : lensName(lens),
    wanted: wanted === null ? '–' : millimetres(wanted),
    used: offer === null ? '–' : millimetres(offer.focalLength),
    gives:
      given === null ? '–' : axis === 'width' ? answers.ofTheWidth(share(given)) : answers.ofTheHeight(share(given)),
    closest: lens === undefined ? '–' : metres(lens.closestFocus, units),
    focus: sharp === null ? '–' : metres(sharp.focusDistance + (found.view?.imageDistance ?? 0) / 1000, units),
    aperture: sharp === null ? '–' : aperture(sharp.used.mark),
    needed: sharp === null ? '–' : sharp.neededStop === null ? answers.sharp.beyond : aperture(sharp.neededStop.mark),
    diffractionFrom: sharp === null ? '–' : diffractionText(sharp),
    proportion: ratio(wishedProportion(plan)),
    proportionNow: found.proportion === null ? null : ratio(found.proportion),
  }
}

/** The first stop of a lens at which diffraction shows: there is no f/21 to turn the ring to. */
export function diffractionText({ diffractionFrom }: Pick<Sharpness, 'diffractionFrom'>): string {
  return aperture(nextThirdStop(diffractionFrom)?.mark ?? diffractionFrom)
}

/** A proportion to three figures or so: a miss worth telling shows in them. */
function ratio(value: number): string {
  return rounded(value, value >= 9.995 ? 1 : value >= 0.1 ? 3 : 4)
}

/** What already says why the proportion is not kept, and what to do about it. */
const CAUSES: readonly Problem[] = ['landmark-behind-camera', 'landmark-partly-behind-camera', 'fill-cannot-be']

/** What stands in the way of one question's answer, each problem once; what follows from another one that is told is left out. */
export function problemsOf(found: Assessment, place: ProblemPlace): Problem[] {
  return [...new Set(found.problems)]
    .filter((problem) => PLACES[problem] === place)
    .filter((problem) => problem !== 'proportion-not-held' || !CAUSES.some((cause) => found.problems.includes(cause)))
}

/** The same as sentences. */
export function problemSentences(plan: Plan, found: Assessment, units: UnitSystem, place: ProblemPlace): string[] {
  const parts = problemParts(plan, found, units)
  return problemsOf(found, place).map((problem) => words.problems[problem](parts))
}

/** "24–70 mm f/2.8, at its long end": which lens is taken and how it is set. */
export function lensNote(plan: Plan, found: Assessment): string {
  const lens = plan.shoot.bag.lenses.find((candidate) => candidate.id === found.lens?.lensId)
  const { answers } = words
  if (lens === undefined || found.lens === null) return answers.lens.emptyBag
  const { focalLength } = found.lens
  const near = (end: number): boolean => Math.abs(focalLength / end - 1) < 0.005
  const widest = aperture(widestAt(lens, focalLength))
  if (lens.focalMin === lens.focalMax) return `${lensName(lens)}, ${answers.lens.fixed}`
  if (near(lens.focalMin)) return `${lensName(lens)}, ${answers.lens.atShort}`
  if (near(lens.focalMax)) return `${lensName(lens)}, ${answers.lens.atLong}`
  return `${lensName(lens)}, ${answers.lens.setTo(`${Math.round(focalLength)} mm`)}, ${widest}`
}
