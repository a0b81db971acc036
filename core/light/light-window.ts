/** Light windows of a day: when each wish holds, when all hold together, and which pairs of wishes never meet on that day. */
import { type CivilDay, type Zone, addDays, instantOf } from '#core/time/civil.ts'
import { type Span, spansAbove } from './crossing.ts'
import type { LightScene, LightSkyline } from './light-scene.ts'
import { type Hours, type LightWishes, type WishKind, contradictions, wishesMade } from './light-wish.ts'
import { LOOK_OVER_GROUND_EVERY, withDoubts } from './over-skyline.ts'
import { type SunLooker, rememberingSun, wishMargin } from './wish-margin.ts'

export interface WishWindows {
  readonly kind: WishKind
  readonly spans: readonly Span[]
}

export interface DayWindows {
  /** One for each wish that is made, in their order. */
  readonly wishes: readonly WishWindows[]
  /** When all of them hold; none when nothing is wished. */
  readonly common: readonly Span[]
  /** Pairs that never hold together on this day though each of them holds at some time. */
  readonly apart: readonly (readonly [WishKind, WishKind])[]
  /** Pairs that no sun anywhere can meet together. */
  readonly contradictions: readonly (readonly [WishKind, WishKind])[]
}

/** Milliseconds between two looks; what happens between them is found all the same, see crossing.ts. */
export const LOOK_EVERY = 10 * 60_000
/** The moon's height turns twice a day, and a look at it costs ten at the sun. */
const LOOK_AT_MOON_EVERY = 30 * 60_000

/** The skyline that a wish goes by; null for those of the sky alone, and where no elevations are. */
function skylineOf(kind: WishKind, { skylines }: LightScene): LightSkyline | null {
  if (kind === 'subject') return skylines.subject
  if (kind === 'landmark') return skylines.landmark
  return kind === 'sun' ? skylines.lens : null
}

function lookEvery(kind: WishKind, scene: LightScene): number {
  if (kind === 'moonUp') return LOOK_AT_MOON_EVERY
  return skylineOf(kind, scene) === null ? LOOK_EVERY : LOOK_OVER_GROUND_EVERY
}

/** Whether a wish holds while the sun shows over the ground, not while it doesn't. */
function wantsSun(kind: WishKind, wishes: LightWishes): boolean {
  if (kind === 'sun') return wishes.sun !== 'out-of-frame'
  return kind === 'subject' ? wishes.subject !== 'in-shade' : wishes.landmark !== 'in-shade'
}

/** The stretch that an hours wish means on a day, within that day; two where it runs past midnight. */
export function hoursSpans(hours: Hours, day: CivilDay, zone: Zone): Span[] {
  const at = (minutes: number): number =>
    minutes >= 1440 ? day.end : minutes <= 0 ? day.start : instantOf(day.date, minutes, zone).instant
  const from = Math.max(day.start, Math.min(day.end, at(hours.from)))
  const until = Math.max(day.start, Math.min(day.end, at(hours.until)))
  const spans =
    hours.from < hours.until
      ? [{ from, until }]
      : [
          { from: day.start, until },
          { from, until: day.end },
        ]
  return spans.filter((span) => span.until > span.from)
}

/** Common windows of a day with what is not sure of their ends, for such as were found without. */
export function windowsWithDoubts(
  scene: LightScene,
  wishes: LightWishes,
  spans: readonly Span[],
  sun: SunLooker = rememberingSun(scene.at),
): readonly Span[] {
  const whole = { start: -Infinity, end: Infinity }
  return wishesMade(wishes).reduce(
    (spansSoFar, kind) => withDoubts(spansSoFar, skylineOf(kind, scene), sun, whole, wantsSun(kind, wishes)),
    spans,
  )
}

/** From where one span begins to where one ends, with what is not sure of either. */
function spanBetween({ from, fromDoubt }: Span, { until, untilDoubt }: Span): Span {
  if (fromDoubt === undefined && untilDoubt === undefined) return { from, until }
  return {
    from,
    until,
    ...(fromDoubt === undefined ? {} : { fromDoubt }),
    ...(untilDoubt === undefined ? {} : { untilDoubt }),
  }
}

/** Spans that lie in both lists; touching ends make none. Both sorted, without overlaps. */
export function commonSpans(ones: readonly Span[], others: readonly Span[]): Span[] {
  const found: Span[] = []
  let [first, second] = [0, 0]
  for (;;) {
    const one = ones[first]
    const other = others[second]
    if (one === undefined || other === undefined) return found
    const [begins, ends] = [one.from >= other.from ? one : other, one.until <= other.until ? one : other]
    if (ends.until > begins.from) found.push(spanBetween(begins, ends))
    if (one.until < other.until) first++
    else second++
  }
}

/** Milliseconds covered by spans that don't overlap. */
export function totalOf(spans: readonly Span[]): number {
  return spans.reduce((sum, span) => sum + span.until - span.from, 0)
}

function pairsApart(windows: readonly WishWindows[]): (readonly [WishKind, WishKind])[] {
  return windows.flatMap((one, index) =>
    windows
      .slice(index + 1)
      .filter(
        (other) => one.spans.length > 0 && other.spans.length > 0 && commonSpans(one.spans, other.spans).length === 0,
      )
      .map((other) => [one.kind, other.kind] as const),
  )
}

/** Times are exact to a second. `sun` of the scene's place may be at hand already, with what it remembers. */
export function dayWindows(
  scene: LightScene,
  wishes: LightWishes,
  day: CivilDay,
  zone: Zone,
  sun: SunLooker = rememberingSun(scene.at),
): DayWindows {
  const windows = wishesMade(wishes).map((kind): WishWindows => {
    if (kind === 'hours') return { kind, spans: wishes.hours === null ? [] : hoursSpans(wishes.hours, day, zone) }
    const margin = (instant: number): number => wishMargin(kind, wishes, scene, instant, sun(instant))
    const spans = spansAbove(margin, day.start, day.end, lookEvery(kind, scene))
    return { kind, spans: withDoubts(spans, skylineOf(kind, scene), sun, day, wantsSun(kind, wishes)) }
  })
  const [first, ...rest] = windows
  return {
    wishes: windows,
    common: rest.reduce<readonly Span[]>((common, { spans }) => commonSpans(common, spans), first?.spans ?? []),
    apart: pairsApart(windows),
    contradictions: contradictions(wishes),
  }
}

/** Milliseconds of common window on each day from a date on. The hardest wish to meet is asked first: without it the rest is spared. */
export function commonByDay(
  scene: LightScene,
  wishes: LightWishes,
  days: readonly CivilDay[],
  zone: Zone,
): { readonly common: readonly (readonly Span[])[]; readonly total: Float64Array } {
  const total = new Float64Array(days.length)
  const common = days.map((day, index) => {
    const found = commonOfDay(scene, wishes, day, zone)
    total[index] = totalOf(found)
    return found
  })
  return { common, total }
}

const CHEAP_FIRST: readonly WishKind[] = ['hours', 'altitude', 'soft', 'sun', 'subject', 'landmark', 'moonUp']

/** The common windows alone: each wish is looked for only within what the ones before it have left. */
function commonOfDay(scene: LightScene, wishes: LightWishes, day: CivilDay, zone: Zone): readonly Span[] {
  const made = new Set(wishesMade(wishes))
  if (made.size === 0) return []
  const sun = rememberingSun(scene.at)
  let left: readonly Span[] = [{ from: day.start, until: day.end }]
  for (const kind of CHEAP_FIRST) {
    if (!made.has(kind) || left.length === 0) continue
    if (kind === 'hours') {
      left = wishes.hours === null ? left : commonSpans(left, hoursSpans(wishes.hours, day, zone))
      continue
    }
    const margin = (instant: number): number => wishMargin(kind, wishes, scene, instant, sun(instant))
    left = left.flatMap((span) => spansAbove(margin, span.from, span.until, lookEvery(kind, scene)))
  }
  return left.filter((span) => span.until > span.from)
}

/** The civil days of a year, in order; a day that the zone left out is left out. */
export function daysFrom(date: string, count: number, dayOf: (date: string) => CivilDay | null): CivilDay[] {
  const days: CivilDay[] = []
  for (let index = 0; index < count; index++) {
    const day = dayOf(addDays(date, index))
    if (day !== null) days.push(day)
  }
  return days
}
