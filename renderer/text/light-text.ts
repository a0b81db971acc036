/** The light as words: which sides are lit and how, where it comes from, the shadow, the exposure, the windows. */
import { sunCaution } from '#core/light/sun-caution.ts'
import type { ExposureReading } from '#core/plan/light-hints.ts'
import type { LightReading } from '#core/plan/light-reading.ts'
import type { SideLight, ThingLight } from '#core/plan/thing-light.ts'
import type { BodyReading } from '#core/plan/light-reading.ts'
import { nearestShutterMark } from '#core/light/exposure.ts'
import type { Span } from '#core/light/crossing.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type Zone, formatClock, formatDay } from '#core/time/civil.ts'
import { compassName } from '#core/units/compass.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { bearing, degreesText, metres, millimetres, rounded, share } from './figure.ts'
import { landmarkName, subjectName } from './names.ts'
import { wishName } from './wish-names.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { doubtText, nearestDoubtAway, withinMinutes } from './ground-text.ts'

export function wholeDegrees(value: number): string {
  return degreesText(value, 0)
}

/** "84 % lit, raking at 63°": the share, and how the largest side is struck. */
export function thingText(thing: ThingLight): string {
  if (thing.lit === null) return lightWords.notInFrame
  const { main } = thing
  if (main === null || thing.lit === 0)
    return main === null ? lightWords.litShare(share(thing.lit)) : lightWords.strikes['in-shade']
  const struck = strikeText(main)
  return thing.lit > 0.995 ? struck : `${lightWords.litShare(share(thing.lit))}, ${struck}`
}

/** "97 % lit at 18:30, waxing": by the instant of the reading, which is the chosen one. */
export function moonPhaseText({ instant, moon }: Pick<LightReading, 'instant' | 'moon'>, zone: Zone): string {
  return lightWords.moonPhase(share(moon.phase.lit), formatClock(instant, zone), moon.phase.waxing)
}

export function strikeText(side: SideLight): string {
  return side.strike === 'in-shade'
    ? lightWords.strikes['in-shade']
    : lightWords.strike(lightWords.strikes[side.strike], wholeDegrees(side.incidence))
}

/** "Merrin Bridge, south face"; without a seen face "Merrin Bridge, seen sides". */
export function landmarkFaceName(plan: Plan, thing: ThingLight): string {
  const name = landmarkName(plan.landmark)
  const looks = thing.main?.bearing ?? null
  return looks === null ? lightWords.seenSides(name) : lightWords.seenFace(name, compassName(looks))
}

/** What a side is called: by the subject's own sides, or by the compass; of a span's many segments by their number too. */
export function sideName(side: Pick<SideLight, 'id' | 'bearing'>): string {
  const own = lightWords.sideNames[side.id]
  if (own !== undefined) return own
  const segment = /^segment-(\d+)-/u.exec(side.id)?.[1]
  if (segment !== undefined && side.bearing !== null)
    return lightWords.segmentName(Number(segment) + 1, compassName(side.bearing))
  return side.bearing === null ? (lightWords.sideNames['roof'] ?? '') : lightWords.faceName(compassName(side.bearing))
}

export function fromText(light: LightReading): string {
  if (light.from === null) return light.sun.up ? lightWords.notInFrame : lightWords.sunDown
  const { side, hand, angle } = light.from
  return lightWords.fromText(lightWords.sides[side], hand === null ? null : lightWords.hands[hand], wholeDegrees(angle))
}

export function shadowText(length: number | null, light: LightReading, units: UnitSystem): string {
  if (!light.sun.up) return lightWords.sunDown
  const toward = bearing(light.shadowBearing)
  return length === null ? lightWords.shadowLong(toward) : lightWords.shadowText(metres(length, units), toward)
}

export function bodyText(body: BodyReading): string {
  const at = bearing(body.azimuth)
  return body.apparent >= 0
    ? lightWords.bodyText(degreesText(body.apparent), at)
    : lightWords.belowHorizon(degreesText(-body.altitude), at)
}

/** Where the body stands against the frame; null while it is down, or farther out than anyone would turn. */
export function frameText(body: BodyReading): string | null {
  if (!body.up || body.inFrame === null) return null
  const { within } = body.inFrame
  if (within >= 0) return lightWords.inFrame(degreesText(within))
  return within > -20 ? lightWords.frameDistance(degreesText(-within)) : null
}

/** "1/250 s". */
export function shutterText(seconds: number): string {
  const mark = nearestShutterMark(seconds)
  if (mark !== null) return `${mark.text} s`
  return seconds >= 1 ? `${rounded(seconds, 0)} s` : `1/${Math.round(1 / seconds)} s`
}

/** What the shutter cannot do; null when it can. */
export function againstText(exposure: ExposureReading): string | null {
  if (exposure.against === null || exposure.against.fits === 'within') return null
  const stops = rounded(exposure.against.stops, 1)
  return exposure.against.fits === 'too-bright' ? lightWords.tooBright(stops) : lightWords.tooDark(stops)
}

/** "15:29–17:35". */
export function spanText(span: Span, zone: Zone): string {
  const { from, until } = withinMinutes(span)
  const end = formatClock(until, zone)
  // A window that runs to the day's end ends at 24:00 of that day, not at 00:00 of it.
  if (until < from) return formatClock(span.from, zone)
  const last = doubtText(end === '00:00' ? '24:00' : end, span.untilDoubt)
  return `${doubtText(formatClock(from, zone), span.fromDoubt)}–${last}`
}

/** The same in few words: of an unsure window that it is so, not which of its ends and how. */
export function shortSpanText({ from, until, fromDoubt, untilDoubt }: Span, zone: Zone): string {
  const bare = spanText({ from, until }, zone)
  const doubts = [fromDoubt, untilDoubt].filter((doubt) => doubt !== undefined)
  if (doubts.length === 0) return bare
  const isMost = (fromDoubt?.way ?? 'earliest') === 'earliest' && (untilDoubt?.way ?? 'latest') === 'latest'
  return isMost ? groundWords.light.atMost(bare) : groundWords.light.notSure(bare)
}

/** Why ends of windows are the earliest or the latest that they can be; nothing when all are sure. */
export function unsureSentences(spans: readonly Span[], units: UnitSystem): string[] {
  const away = nearestDoubtAway(spans)
  return away === null ? [] : [groundWords.light.unsure(metres(away, units))]
}

/** Metres to the nearest unknown ground toward the sun, which may hide it at the moment; null when none may. */
export function momentDoubtAway({ sunOnSubjectUnsure, sunOnLandmarkUnsure, landmark }: LightReading): number | null {
  const away = Math.min(
    sunOnSubjectUnsure ?? Infinity,
    landmark === null ? Infinity : (sunOnLandmarkUnsure ?? Infinity),
  )
  return away === Infinity ? null : away
}

/** Why the light of the moment is not sure; nothing when it is. */
export function momentUnsure(light: LightReading, units: UnitSystem): string[] {
  const away = momentDoubtAway(light)
  return away === null ? [] : [groundWords.light.unsureNow(metres(away, units))]
}

export function dayName(daylight: DayLight): string {
  return formatDay(daylight.day.date)
}

/** Why the wishes leave no window on a day: pairs that can't or don't meet, wishes that never hold. */
export function windowSentences(plan: Plan, daylight: DayLight): string[] {
  const { contradictions, apart, wishes, common } = daylight.windows
  const name = (kind: Parameters<typeof wishName>[0]): string => wishName(kind, plan)
  const impossible = contradictions.map(([one, other]) => lightWords.contradiction(name(one), name(other)))
  if (impossible.length > 0 || common.length > 0) return impossible
  const day = dayName(daylight)
  const never = wishes
    .filter(({ spans }) => spans.length === 0)
    .map(({ kind }) => lightWords.neverAlone(name(kind), day))
  return never.length > 0 ? never : apart.map(([one, other]) => lightWords.apart(name(one), name(other), day))
}

/** The cautions that the sun and the hour call for. */
export function lightCautions(light: LightReading, focalLength: number | null): string[] {
  const focal = focalLength === null ? '–' : millimetres(focalLength)
  const { sun } = light
  if (!sun.up) return sun.altitude < -6 ? [lightWords.nightCaution] : []
  const within = sun.inFrame?.within ?? null
  const caution = within === null ? null : sunCaution(within, sun.radius)
  if (within === null || caution === null) return []
  return [
    caution === 'in-frame' ? lightWords.sunCaution(focal) : lightWords.sunNearCaution(degreesText(-within), focal),
  ]
}

export function subjectSidesName(plan: Plan): string {
  return lightWords.seenSides(subjectName(plan.shoot.subject))
}
