/** Roots by the logarithm of a length, as the camera steps back or its image grows: where a quantity crosses 0, found within a bracket and never outside it. */

/** One end of a bracket: a logarithm of a length and the quantity there. */
export interface Bracket {
  readonly log: number
  readonly value: number
}

/** A quantity by the logarithm of a length; null where there is none. */
export type Along = (log: number) => number | null

/** Rounds of halving toward the edge of where a quantity exists; 20 bring a step of half an octave down to a millionth of the length. */
const EDGE_ROUNDS = 20

/** The place that works nearest to one that doesn't, between that one and one that does. */
export function edge(at: Along, dead: number, alive: number): Bracket | null {
  let none = dead
  let some: Bracket | null = null
  let high = alive
  for (let round = 0; round < EDGE_ROUNDS; round++) {
    const log = (none + high) / 2
    const value = at(log)
    if (value === null) none = log
    else {
      some = { log, value }
      high = log
    }
  }
  return some
}

/** Illinois form of the false position: superlinear, never leaves the bracket. Ends when the quantity is below `enough`. */
export function narrow(value: (log: number) => number, low: Bracket, high: Bracket, enough = 1e-13): number {
  let { log: a, value: valueA } = low
  let { log: b, value: valueB } = high
  if (valueA === 0) return a
  for (let round = 0; round < 100; round++) {
    const middle = valueB === valueA ? (a + b) / 2 : (a * valueB - b * valueA) / (valueB - valueA)
    const at = value(middle)
    if (!Number.isFinite(at) || Math.abs(at) < enough || Math.abs(b - a) < 1e-14) return middle
    if (at > 0 === valueB > 0) {
      b = middle
      valueB = at
      valueA /= 2
    } else {
      a = b
      valueA = valueB
      b = middle
      valueB = at
    }
  }
  return (a + b) / 2
}

/** Longest step of the walk for a bracket: a third of the distance, so that a crossing and its return are seldom both passed. */
const LONGEST_STEP = 0.3
/** A first step goes as far as the quantity's own size tells, and a half more, so that it is likely to cross. */
const BEYOND = 1.5
const SHORTEST_STEP = 1e-4

/**
 * Logarithm of the distance nearest to `from`, between two bounds, at which a quantity crosses 0; null when it never does. The side
 * on which a quantity that rises with the distance would cross is looked at first: in a drag that is where it is, a step away.
 */
export function rootNear(at: Along, from: number, least: number, most: number, enough: number): number | null {
  const start = Math.min(most, Math.max(least, from))
  const value = at(start)
  if (value !== null && Math.abs(value) < enough) return start
  const here = value === null ? null : { log: start, value }
  const first = value === null || value < 0 ? 1 : -1
  const found = walk(at, here, start, first === 1 ? most : least, enough)
  if (found !== null && here !== null) return found
  const other = walk(at, here, start, first === 1 ? least : most, enough)
  if (found === null || other === null) return found ?? other
  return Math.abs(other - start) < Math.abs(found - start) ? other : found
}

/** Steps from `start` to `bound` until the quantity has crossed 0. */
function walk(at: Along, here: Bracket | null, start: number, bound: number, enough: number): number | null {
  const sense = Math.sign(bound - start)
  let step =
    here === null ? LONGEST_STEP : Math.min(LONGEST_STEP, Math.max(SHORTEST_STEP, Math.abs(here.value) * BEYOND))
  let before = here
  let log = start
  while (log !== bound) {
    const next = sense > 0 ? Math.min(bound, log + step) : Math.max(bound, log - step)
    const value = at(next)
    let after = value === null ? null : { log: next, value }
    const alive = after
    // Where the quantity begins or ends within a step, it may cross 0 within that step as well: look as far as it goes.
    if (before === null && after !== null) before = edge(at, log, next)
    else if (before !== null && after === null) after = edge(at, next, before.log)
    if (before !== null && after !== null && before.value > 0 !== after.value > 0) {
      return narrow((where) => at(where) ?? NaN, before, after, enough)
    }
    before = alive
    log = next
    step = Math.min(LONGEST_STEP, step * 2)
  }
  return null
}
