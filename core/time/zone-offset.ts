/** What a zone's clock is ahead of UTC at an instant. Asked for thousands of times a second while something moves, so it is remembered. */
import { Temporal } from 'temporal-polyfill'
import { MINUTE } from './duration.ts'
import { remembered } from './remembered.ts'

/** No zone changes its offset twice within one of these: where both ends agree, so does all between. */
const SPAN = 15 * MINUTE
/** Remembered of a zone; a year of light asks for fewer. */
const SPANS = 4_096
/** A shoot is in one or two. */
const ZONES = 40

export function zoned(instant: number, zone: string): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(Math.floor(instant)).toZonedDateTimeISO(zone)
}

function looked(instant: number, zone: string): number {
  return zoned(instant, zone).offsetNanoseconds / 1e6
}

/** By zone, then by quarter of an hour: milliseconds east of UTC; null where the offset changes within it. */
const offsets = remembered(ZONES, (zone: string) =>
  remembered(SPANS, (span: number) => {
    const [first, last] = [looked(span * SPAN, zone), looked((span + 1) * SPAN - 1, zone)]
    return first === last ? first : null
  }),
)

/**
 * Milliseconds east of UTC at an instant (ms since 1970); a fraction of a minute where an old local mean time is meant. Throws a
 * RangeError for a zone that is unknown or an instant that is no number, as Temporal does.
 */
export function offsetOf(instant: number, zone: string): number {
  return offsets(zone)(Math.floor(instant / SPAN)) ?? looked(instant, zone)
}
