/** The chosen windows as a calendar file: one event each, with all that is to be known on the day. */
import { type CalendarEvent, type CalendarReason, icalendar, windowUid } from '#core/exchange/ical.ts'
import { formatDecimal } from '#core/geo/coordinate-format.ts'
import type { Span } from '#core/light/crossing.ts'
import type { LightScene } from '#core/light/light-scene.ts'
import { wishesMade } from '#core/light/light-wish.ts'
import { lookAtSun, withinFrame } from '#core/light/wish-margin.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Result } from '#core/result.ts'
import { type Zone, formatOffset } from '#core/time/civil.ts'
import { SUN_NEAR } from '#core/light/sun-caution.ts'
import { aperture, millimetres } from '#renderer/text/figure.ts'
import { CAUTIONS_ALWAYS, hazardSentences } from '#renderer/text/hazard-text.ts'
import { spanText } from '#renderer/text/light-text.ts'
import { lensName, spotName } from '#renderer/text/names.ts'
import { wishName } from '#renderer/text/wish-names.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import { lightWords } from '#renderer/words/en-light.ts'

const { calendar: say } = daysWords
const LOOKS = 24
/** Degrees below which it is dark. */
const DARK = -6

export interface CalendarRequest {
  readonly plan: Plan
  readonly found: Assessment
  readonly scene: LightScene
  /** Of the spot: a calendar shows its entries by the reader's own clock. */
  readonly zone: Zone
  readonly windows: readonly Span[]
  /** The instant of the export. */
  readonly stamp: number
}

/** Cautions that the sun's place calls for at some time of the window. */
function sunCautions(scene: LightScene, span: Span, focalLength: number | null): string[] {
  const looks = Array.from({ length: LOOKS + 1 }, (_, look) =>
    lookAtSun(scene.at, span.from + ((span.until - span.from) * look) / LOOKS),
  )
  const { frame } = scene
  const near = frame !== null && looks.some((sun) => sun.apparent > -1 && withinFrame(frame, sun.direction) > -SUN_NEAR)
  return [
    ...(near && focalLength !== null ? [say.sunNear(millimetres(focalLength))] : []),
    ...(looks.some(({ altitude }) => altitude < DARK) ? [lightWords.nightCaution] : []),
  ]
}

function description({ plan, found, scene, zone }: CalendarRequest, span: Span): string {
  const { spot, shoot } = plan
  const wishes = wishesMade(shoot.light).map((kind) => wishName(kind, plan))
  const { focalLength, sharp } = found
  const lens = shoot.bag.lenses.find(({ id }) => id === found.lens?.lensId)
  const setting = [
    ...(lens === undefined ? [] : [lensName(lens)]),
    ...(focalLength === null ? [] : [millimetres(focalLength)]),
  ]
  return [
    say.localTime(spanText(span, zone), formatOffset(span.from, zone)),
    say.all(wishes),
    say.standpoint(formatDecimal(spot.standpoint.at)),
    say.subject(formatDecimal(spot.stop.at)),
    ...(setting.length === 0 || sharp === null ? [] : [say.lens(setting.join(', '), aperture(sharp.used.mark))]),
    '',
    ...sunCautions(scene, span, focalLength),
    ...hazardSentences(spot),
    ...CAUTIONS_ALWAYS,
  ].join('\n')
}

export function lightCalendar(request: CalendarRequest): Result<string, CalendarReason> {
  const { spot } = request.plan
  const { at } = spot.standpoint
  const events = request.windows.map((span): CalendarEvent => ({
    uid: windowUid(spot.id, span.from),
    start: span.from,
    end: span.until,
    summary: say.summary(spotName(spot)),
    description: description(request, span),
    location: formatDecimal(at),
    geo: at,
  }))
  return icalendar(events, request.stamp)
}
