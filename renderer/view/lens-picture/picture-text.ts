/** Sentences of the view through the lens: what is in the frame, and why there is nothing to see. */
import type { LightFrom } from '#core/light/direction.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { BodyReading } from '#core/plan/light-reading.ts'
import type { Plan } from '#core/plan/plan.ts'
import { shownFigure } from '#renderer/text/ground-text.ts'
import { degreesText, share } from '#renderer/text/figure.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { castsLight } from './lighting.ts'

export function subjectNameIn(plan: Plan): string {
  const name = plan.shoot.subject.name.trim()
  return name === '' ? lensViewWords.theSubject : name
}

export function landmarkNameIn(plan: Plan): string {
  const name = plan.landmark?.name.trim() ?? ''
  return name === '' ? lensViewWords.theLandmark : name
}

/** Why there is no picture. */
export function cannotBeSeen(plan: Plan, assessment: Assessment): string {
  const { problems } = assessment
  const subject = subjectNameIn(plan)
  if (problems.includes('on-top-of-each-other')) return lensViewWords.onTop(subject)
  if (problems.includes('inside-subject')) return lensViewWords.inside(subject)
  if (problems.includes('aim-cannot-be')) return lensViewWords.aimCannotBe(subject)
  return lensViewWords.fillCannotBe(subject)
}

/** What should be known beside the picture; null when all is as it should be. */
export function besidePicture(plan: Plan, assessment: Assessment): string | null {
  const { problems } = assessment
  const landmark = landmarkNameIn(plan)
  if (problems.includes('inside-subject')) return lensViewWords.inside(subjectNameIn(plan))
  if (problems.includes('no-landmark')) return lensViewWords.noLandmark
  if (problems.includes('landmark-behind-camera')) return lensViewWords.landmarkBehind(landmark)
  if (problems.includes('landmark-partly-behind-camera')) return lensViewWords.landmarkPartlyBehind(landmark)
  if (assessment.landmark !== null && !assessment.landmark.inFrame) return lensViewWords.landmarkOutside(landmark)
  if (assessment.subject !== null && !assessment.subject.inFrame)
    return lensViewWords.subjectOutside(subjectNameIn(plan))
  return null
}

/** Whether a part of a body that is up stands in the frame. */
function isIn({ up, behindGround, inFrame, radius }: BodyReading): boolean {
  return up && !behindGround && inFrame !== null && inFrame.at !== null && inFrame.within > -radius
}

/** What light there is, in a sentence or two. */
export function describeLight(plan: Plan, { light }: Assessment): string {
  const said: string[] = []
  const { sky } = plan.shoot
  const say = lensViewWords.light
  if (!light.sun.up) said.push(say.down(degreesText(-light.sun.apparent, 0)))
  else if (!castsLight(light, sky, true)) said.push(say.soft[sky])
  else if (!light.sunOnSubject) said.push(say.heldOff(subjectNameIn(plan)))
  else {
    if (light.from !== null) said.push(fromText(light.from))
    if (light.subject.lit !== null) said.push(say.lit(subjectNameIn(plan), share(light.subject.lit)))
  }
  if (isIn(light.sun)) said.push(say.sunIn)
  if (isIn(light.moon)) said.push(say.moonIn(share(light.moon.phase.lit)))
  return said.join(' ')
}

function fromText({ side, hand, angle }: LightFrom): string {
  const say = lensViewWords.light
  if (side === 'above') return say.straight(say.from.above)
  if (hand === null) return say.straight(say.from[side])
  return say.sun(say.handed[side](say.hands[hand]), degreesText(angle, 0))
}

/** How much of the landmark the ground lets through; null when nothing is hidden, or too little to tell. */
function describeShown(plan: Plan, { landmark, ground }: Assessment): string | null {
  const shown = ground?.landmarkShown ?? null
  if (landmark === null || !landmark.inFrame || shown === null) return null
  const figure = shownFigure(shown)
  if (figure === groundWords.all) return null
  if (figure === groundWords.nothing) return lensViewWords.allHidden(landmarkNameIn(plan))
  return lensViewWords.partHidden(landmarkNameIn(plan), figure)
}

/** The picture in words, for those who hear it. */
export function describe(plan: Plan, assessment: Assessment): string {
  const { subject, landmark } = assessment
  if (subject === null) return cannotBeSeen(plan, assessment)
  const parts = [lensViewWords.fills(subjectNameIn(plan), share(subject.widthFill), share(subject.heightFill))]
  if (landmark !== null && landmark.inFrame)
    parts.push(lensViewWords.fills(landmarkNameIn(plan), share(landmark.widthFill), share(landmark.heightFill)))
  const shown = describeShown(plan, assessment)
  if (shown !== null) parts.push(shown)
  const beside = besidePicture(plan, assessment)
  if (beside !== null) parts.push(beside)
  return `${lensViewWords.view}. ${parts.join(' ')} ${describeLight(plan, assessment)}`
}
