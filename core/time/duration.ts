/** How long minutes, hours and days are, in the milliseconds in which instants are counted. */

export const MINUTE = 60_000
export const HOUR = 60 * MINUTE
/** A day of 24 hours; a civil day may be longer or shorter (`civilDay`). */
export const DAY = 24 * HOUR

/** Minutes by the clock from one midnight to the next. */
export const DAY_MINUTES = 1440
