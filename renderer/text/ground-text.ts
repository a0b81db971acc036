/** The ground as words: how much of the landmark shows and what hides the rest, levels with their sources, first and last direct sun. */
import type { Doubt, Span } from '#core/light/crossing.ts'
import type { HiddenBy, SightReading } from '#core/plan/ground-reading.ts'
import type { GroundUnder } from '#core/plan/ground-under.ts'
import type { GroundProfile } from '#core/plan/ground-profile.ts'
import { groundHeight, lineHeight } from '#core/plan/ground-profile.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { type CivilDay, type Zone, formatClock } from '#core/time/civil.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { MINUTE } from '#core/time/duration.ts'
import { elevation, metres, share } from './figure.ts'
import { landmarkName, subjectName } from './names.ts'
import { words } from '#renderer/words/en.ts'
import { groundWords as say } from '#renderer/words/en-ground.ts'

const NOTHING_UNKNOWN = '–'
/** A share of so little, or of all but so little, counts as nothing or all: finer than any elevation data. */
const NONE = 0.0005

/** "84 %", "All", "Nothing"; a dash when unknown. */
export function shownFigure(shown: number | null): string {
  if (shown === null) return NOTHING_UNKNOWN
  if (shown <= NONE) return say.nothing
  if (shown >= 1 - NONE) return say.all
  return shown >= 0.995 ? say.nearlyAll : share(shown)
}

export function obstructionName(obstructions: Shoot['obstructions'], index: number): string {
  const name = obstructions[index]?.name.trim() ?? ''
  return name === '' ? say.obstructions.unnamed(index + 1) : name
}

function hiderName(plan: Plan, by: Pick<HiddenBy, 'distance' | 'obstruction'>, units: UnitSystem): string {
  const away = metres(by.distance, units)
  if (by.obstruction === null) return say.rise(away)
  const { obstructions } = plan.shoot
  const height = metres(obstructions[by.obstruction]?.height ?? 0, units)
  return say.byObstruction(obstructionName(obstructions, by.obstruction), height, away)
}

/** What hides the landmark: "The lower 12 m of 41 m are hidden by the rise 310 m out." */
export function hiddenSentence(
  plan: Plan,
  sight: SightReading,
  landmarkShown: number | null,
  units: UnitSystem,
): string {
  const { hidden, height, hiddenBy } = sight
  const kind = plan.landmark?.kind ?? 'upright'
  if (hidden === null) return say.unknownGround
  if (hiddenBy === null || hidden <= 0) {
    if (landmarkShown !== null && landmarkShown < 1 - NONE && kind !== 'upright' && kind !== 'summit')
      return say.middleShows
    return kind === 'summit' ? say.nothingHidesTop : say.nothingHides
  }
  const by = hiderName(plan, hiddenBy, units)
  const whole = metres(height, units)
  const all = hidden >= height * (1 - NONE)
  if (kind === 'summit') return all ? say.allOfTop(whole, by) : say.lowerOfTop(metres(hidden, units), whole, by)
  if (kind === 'upright') return all ? say.allHidden(whole, by) : say.lowerHidden(metres(hidden, units), whole, by)
  return all ? say.allAtMiddle(whole, by) : say.lowerAtMiddle(metres(hidden, units), whole, by)
}

/** What the line to a landmark's lower end is called: a summit's ends at its upper part. */
export function lowerLineName({ landmark }: Plan): string {
  return landmark?.kind === 'summit' ? say.lineToUpper : say.lineToFoot
}

/** "3.2 m clear, 310 m out" of the line to the foot where it runs tightest; null over unknown ground. */
export function clearanceText(plan: Plan, line: GroundProfile, units: UnitSystem): string | null {
  const { tightest } = line
  if (line.sight.ground === 'unknown') return null
  if (tightest === null) return say.clearAllTheWay
  const [by, away] = [metres(Math.abs(tightest.clearance), units), metres(tightest.distance, units)]
  const text = tightest.clearance < 0 ? say.cut(by, away) : say.clear(by, away)
  if (tightest.obstruction === null) return text
  return say.overObstruction(text, obstructionName(plan.shoot.obstructions, tightest.obstruction))
}

/** What the ground lets the lens see of the subject; null when unknown. */
export function subjectSightText(plan: Plan, sight: SightReading, units: UnitSystem): string | null {
  const { hidden, height, hiddenBy } = sight
  if (hidden === null) return null
  if (hiddenBy === null || hidden <= height * NONE) return say.subjectWhole
  const by = hiderName(plan, hiddenBy, units)
  return hidden >= height * (1 - NONE)
    ? say.subjectHidden(by)
    : say.subjectLower(metres(hidden, units), metres(height, units), by)
}

type LevelKnown = Pick<GroundUnder, 'from' | 'step' | 'sea' | 'top'>

/** "measured", "from elevations at 20 m", "assumed level"; the same wherever a level is told. */
export function levelSourceText({ from, step, sea, top }: LevelKnown, units: UnitSystem): string {
  if (from !== 'elevations') return say.under.sources[from]
  if (sea) return say.under.seaTaken
  const source = say.under.sources.elevations(step === null ? '' : metres(step, units))
  return top === null ? source : say.under.belowTop(elevation(top.elevation, units), source)
}

/** The source, and what the elevations say where something else was measured. */
export function levelSourceAgainst(under: GroundUnder, units: UnitSystem): string {
  const source = levelSourceText(under, units)
  if (under.from !== 'measured' || under.read === null) return source
  if (under.top === null || under.top.read === null) return say.under.reads(source, elevation(under.read, units))
  return say.under.readsTop(source, elevation(under.top.elevation, units), elevation(under.top.read, units))
}

/** Under a field for a level: what the elevations say there, which counts for as long as nothing is entered. */
export function elevationHint(under: GroundUnder | null | undefined, units: UnitSystem): string {
  const read = under?.read ?? null
  if (read === null) return words.answers.where.unknownHint
  const text = elevation(read, units)
  const top = under?.top?.read ?? null
  if (top !== null) return (under?.from === 'measured' ? say.topAgainst : say.topHint)(elevation(top, units), text)
  if (under?.sea === true && under.from !== 'measured') return say.seaHint
  return under?.from === 'measured' ? say.readAgainst(text) : say.readHint(text)
}

/** Metres by which a measured level may differ from the elevations before it is asked about: more than they err by as a rule. */
const DIFFERS = 15

/** Asks about a measured level that is far from what the elevations say; null when there is nothing to ask. */
export function differenceSentence(name: string, under: GroundUnder, units: UnitSystem): string | null {
  if (under.from !== 'measured' || under.read === null || Math.abs(under.read - under.elevation) < DIFFERS) return null
  const { top } = under
  if (top === null || top.read === null)
    return say.under.differs(name, elevation(under.elevation, units), elevation(under.read, units))
  return say.under.topDiffers(name, elevation(top.elevation, units), elevation(top.read, units))
}

/** First and last direct sun at one place. */
export interface LightTimes {
  /** "05:41", "05:41 at the earliest". */
  readonly first: string
  readonly last: string
  /** Metres to the unknown ground for which one of the two is not sure; null when both are. */
  readonly unsure: number | null
  /** What stands for both when there is no first and last: "all day", "never today", "unknown". */
  readonly instead: string | null
  /** The stretches behind the ground between first and last. */
  readonly gaps: readonly Span[]
}

/** A stretch rounded inward to the minute, so that it holds at the minutes named: direct sun and light windows alike. */
export function withinMinutes({ from, until }: Span): { readonly from: number; readonly until: number } {
  return { from: Math.ceil(from / MINUTE) * MINUTE, until: Math.floor(until / MINUTE) * MINUTE }
}

/** Of the stretches in which the sun's disc shows; null where that is unknown. */
export function lightTimes(spans: readonly Span[] | null, day: CivilDay, zone: Zone): LightTimes {
  const none = { first: '', last: '', gaps: [], unsure: null }
  const [first, last] = [spans?.[0], spans?.at(-1)]
  if (spans === null) return { ...none, instead: say.light.unknown }
  if (first === undefined || last === undefined) return { ...none, instead: say.light.never }
  const [atStart, atEnd] = [first.from <= day.start, last.until >= day.end - 1]
  const gaps = spans.slice(1).map((span, index) => ({ from: spans[index]?.until ?? span.from, until: span.from }))
  if (atStart && atEnd && gaps.length === 0) return { ...none, instead: say.light.allDay }
  const clock = (instant: number): string => formatClock(instant, zone)
  return {
    first: atStart ? say.light.fromMidnight : doubtText(clock(withinMinutes(first).from), first.fromDoubt),
    last: atEnd ? say.light.pastMidnight : doubtText(clock(withinMinutes(last).until), last.untilDoubt),
    unsure: nearestDoubtAway([first, last]),
    instead: null,
    gaps,
  }
}

/** "05:41", "05:41 at the earliest". */
export function doubtText(clock: string, doubt: Doubt | undefined): string {
  return doubt === undefined ? clock : say.light[doubt.way](clock)
}

/** Metres to the nearest unknown ground that makes an end of spans unsure; null when all are sure. */
export function nearestDoubtAway(spans: readonly Span[]): number | null {
  const all = spans
    .flatMap(({ fromDoubt, untilDoubt }) => [fromDoubt, untilDoubt])
    .filter((doubt) => doubt !== undefined)
  return all.length === 0 ? null : Math.min(...all.map((doubt) => doubt.metres))
}

/** The places whose direct sun is told, by their names. */
export function lightPlaces(plan: Plan): readonly (readonly [keyof DayLight['direct'], string])[] {
  return [
    ['subject', subjectName(plan.shoot.subject)],
    ...(plan.landmark === null ? [] : [['landmark', landmarkName(plan.landmark)] as const]),
    ['lens', say.light.standpoint],
  ]
}

/** A stretch by the clock, as long as it really lasts: rounded outward. */
export function spanClock({ from, until }: Span, zone: Zone): string {
  const clock = (instant: number): string => formatClock(instant, zone)
  return `${clock(Math.floor(from / MINUTE) * MINUTE)}–${clock(Math.ceil(until / MINUTE) * MINUTE)}`
}

/** "05:12–19:40", "05:12 at the earliest–19:40", or what stands for it. */
export function lightTimesText({ first, last, instead }: LightTimes): string {
  return instead ?? `${first}–${last}`
}

/** What is read at a point of the profile. */
export function profileReading(line: GroundProfile, distance: number, units: UnitSystem): string {
  const ground = groundHeight(line, distance)
  const read = say.profile
  const away = read.at(metres(distance, units))
  if (ground === null) return `${away}: ${read.groundUnknown}`
  const [foot, top] = [lineHeight(line, 'low', distance) - ground, lineHeight(line, 'high', distance) - ground]
  const over = (clearance: number, clear: (by: string) => string, cut: (by: string) => string): string =>
    clearance < 0 ? cut(metres(-clearance, units)) : clear(metres(clearance, units))
  return [
    `${away}: ${read.ground(elevation(ground, units))}`,
    over(foot, read.footClear, read.footCut),
    over(top, read.topClear, read.topCut),
  ].join(', ')
}
