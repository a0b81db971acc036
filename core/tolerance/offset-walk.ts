/** The first offset at which something fails: a walk in growing steps, then halving between the last that held and the first that failed. */

export interface WalkReach {
  /** How far the walk goes. */
  readonly limit: number
  /** How closely the failure is found. */
  readonly close: number
  /** The first step. */
  readonly first: number
  /** The longest step while less than ten times as much has been gone. */
  readonly most: number
}

/** A step grows with the way gone: by this part of it near by, by the other far off. What fails and holds again within one step may be missed. */
const NEAR_GROWTH = 0.3
const FAR_GROWTH = 0.1

export interface FirstFailure<Failure> {
  /** The last offset known to hold; the failure lies within `close` beyond it. Null when nothing fails within the limit. */
  readonly offset: number | null
  readonly failure: Failure | null
}

/**
 * `fails` tells what fails at an offset, null when nothing does; at offset 0 nothing fails. Beyond the failure found it may hold
 * again: that is not asked.
 */
export function firstFailure<Failure>(
  fails: (offset: number) => Failure | null,
  { limit, close, first, most }: WalkReach,
): FirstFailure<Failure> {
  let held = 0
  while (held < limit) {
    const step = Math.max(first, Math.min(most, held * NEAR_GROWTH), held * FAR_GROWTH)
    const next = Math.min(limit, held + step)
    const failure = fails(next)
    if (failure !== null) return narrowed(fails, held, next, failure, close)
    held = next
  }
  return { offset: null, failure: null }
}

function narrowed<Failure>(
  fails: (offset: number) => Failure | null,
  held: number,
  failed: number,
  failure: Failure,
  close: number,
): FirstFailure<Failure> {
  let [low, high, found] = [held, failed, failure]
  while (high - low > close) {
    const middle = (low + high) / 2
    const there = fails(middle)
    if (there === null) low = middle
    else [high, found] = [middle, there]
  }
  return { offset: low, failure: found }
}
