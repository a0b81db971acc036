/** Milliseconds that the sheet waits for elevations before it is made without them. */
export const GROUND_WAIT = 10_000
