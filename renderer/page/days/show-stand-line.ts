/** Puts the line of standpoints for one instant on the board's map and goes there. */
import { backToBoard } from '#renderer/state/session/navigation.ts'
import { showStandpointLine } from '#renderer/state/session/standpoint-line.ts'
import { geodesicLine } from '#core/geo/geodesic.ts'
import type { Body } from '#core/light/body.ts'
import { FARTHEST, standLine } from '#core/light/standpoint-line.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { hiddenAlong } from '#core/plan/stand-line-ground.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { daysWords } from '#renderer/words/en-days.ts'

const { stands: say } = daysWords
/** Metres that the line reaches at the least, and how much farther than the camera stands. */
const LEAST_REACH = 2000
const BEYOND = 3

interface StandLineWish {
  readonly plan: Plan
  readonly assessment: Assessment
  readonly body: Body
  /** The board's instant as words. */
  readonly when: string
}

export function showStandLine({ plan, assessment, body, when }: StandLineWish): void {
  const { landmark, spot, shoot } = plan
  const [first] = landmark === null ? [] : landmarkPoints(landmark)
  if (landmark === null || first === undefined) return
  const { standpoint } = spot
  const away = geodesicLine(standpoint.at, first).distance
  const line = standLine({
    body,
    instant: spot.when,
    landmark,
    level: assessment.levels.landmark,
    lensHeight: standpoint.lensHeight,
    refraction: shoot.refraction,
    reach: Math.min(FARTHEST, Math.max(LEAST_REACH, BEYOND * away)),
  })
  if (!line.ok) {
    tell('fault', line.fault.message)
    return
  }
  const places = line.value.points.map(({ at }) => at)
  const { onTop } = line.value
  const hidden = hiddenAlong(plan, body, spot.when, places)
  const label = say.lineLabel(say.bodies[body], landmarkName(landmark), when)
  showStandpointLine({
    places,
    hidden,
    onTop,
    onTopHidden: onTop !== null && hiddenAlong(plan, body, spot.when, [onTop])[0] === true,
    label: hidden.includes(true) ? say.lineHidden(label) : label,
  })
  backToBoard()
}
