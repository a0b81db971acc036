/** When a new spot is planned that no other spot's day stands for: in the light that is wanted, else by day, never now at night. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Span } from '#core/light/crossing.ts'
import { SUN_RISE_ALTITUDE, sunDay, upSpans } from '#core/light/day-events.ts'
import { lookAtSun } from '#core/light/wish-margin.ts'
import { type CivilDay, type Zone, civilDayOf } from '#core/time/civil.ts'
import { MINUTE } from '#core/time/duration.ts'

/** So many days are looked at for a light: a week. */
export const DAYS_AHEAD = 7
/** Milliseconds that must be left of a window for one to be planned in it. */
const LEAST_LEFT = 30 * MINUTE
/** Share of a window that is kept from either of its ends. */
const FROM_ENDS = 0.1
/** Degrees of the sun's height at which light is warm and still clear of most horizons (rule of thumb). */
const WARM = 20
const LOOKS = 48

/** The civil days from the one that holds an instant, in order. */
export function daysAhead(now: number, zone: Zone, count: number): readonly CivilDay[] {
  const days = [civilDayOf(now, zone)]
  while (days.length < count) days.push(civilDayOf(days.at(-1)?.end ?? now, zone))
  return days
}

/** What of a day's spans is still to come, where it is long enough to plan for; the longest first. */
function stillAhead(spans: readonly Span[], now: number): readonly Span[] {
  return spans
    .map((span) => ({ ...span, from: Math.max(span.from, now) }))
    .filter((span) => span.until - span.from >= LEAST_LEFT)
    .toSorted((one, other) => other.until - other.from - (one.until - one.from))
}

const toMinute = (instant: number): number => Math.round(instant / MINUTE) * MINUTE

/** The time within the spans of a day at which the sun is warm, well within; null when they are over. */
export function timeWithin(at: LatLon, spans: readonly Span[], now: number): number | null {
  const [span] = stillAhead(spans, now)
  if (span === undefined) return null
  const long = span.until - span.from
  let best = span.from + long / 2
  let miss = Infinity
  for (let look = 0; look <= LOOKS; look++) {
    const instant = span.from + long * (FROM_ENDS + (1 - 2 * FROM_ENDS) * (look / LOOKS))
    const off = Math.abs(lookAtSun(at, instant).apparent - WARM)
    // Of two alike the later: one has the day to get there.
    if (off > miss + 0.5) continue
    best = instant
    miss = Math.min(off, miss)
  }
  return toMinute(best)
}

/** The middle of the daylight that is still to come, of today or the days after; where the sun stays down, the brightest of tomorrow. */
export function middleOfDaylight(at: LatLon, now: number, zone: Zone): number {
  const days = daysAhead(now, zone, DAYS_AHEAD)
  for (const day of days) {
    const [span] = stillAhead(upSpans(sunDay(at, day.start, day.end), day), now)
    if (span !== undefined) return toMinute((span.from + span.until) / 2)
  }
  const next = days[1] ?? civilDayOf(now, zone)
  return toMinute(sunDay(at, next.start, next.end).noon ?? (next.start + next.end) / 2)
}

/** Now while the sun is up, to the minute, else the middle of the next daylight. */
export function nowByDay(at: LatLon, now: number, zone: Zone): number {
  const up = lookAtSun(at, now).altitude >= SUN_RISE_ALTITUDE
  return up ? toMinute(now) : middleOfDaylight(at, now, zone)
}
