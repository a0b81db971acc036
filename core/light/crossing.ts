/** When a continuous value passes zero: crossings, and the stretches in which it is not below, by brackets and few looks. */

export type ValueAt = (instant: number) => number

/** Why an instant is not sure: ground of unknown height so many metres off, and which way it could move the instant. */
export interface Doubt {
  readonly metres: number
  /** Whether the instant is the earliest that it can be, or the latest. */
  readonly way: 'earliest' | 'latest'
}

/** Epoch milliseconds. At both ends the value is not below zero. */
export interface Span {
  readonly from: number
  readonly until: number
  /** Absent where the instant is sure. */
  readonly fromDoubt?: Doubt
  readonly untilDoubt?: Doubt
}

export interface Crossing {
  /** Epoch milliseconds, whole, within a quarter of a second, on the side where the value is not below zero. */
  readonly instant: number
  readonly rising: boolean
}

/** Milliseconds within which a crossing is found. */
const CLOSE = 250
/** Milliseconds within which a turning point is found. */
const CLOSE_TURN = 500
/** A turning point is looked for only where it can reach zero: it lies no farther beyond the samples than they lie apart, with this margin. */
const REACH = 2
const GOLDEN = (Math.sqrt(5) - 1) / 2

/** Told of every crossing, in order. */
type Found = (instant: number, rising: boolean) => void

/** Where zero lies between two instants of opposite sides, on the side not below (Chandrupatla's search). */
function zeroBetween(value: ValueAt, from: number, atFrom: number, until: number, atUntil: number): number {
  let [a, fa, b, fb] = [until, atUntil, from, atFrom]
  let share = fa / (fa - fb)
  while (Math.abs(b - a) > CLOSE) {
    const least = CLOSE / 2 / Math.abs(b - a)
    const tried = a + (b - a) * (share >= 0 ? Math.min(Math.max(share, least), 1 - least) : 0.5)
    const found = value(tried)
    let [c, fc] = [a, fa]
    if (found >= 0 !== fa >= 0) [c, fc, b, fb] = [b, fb, a, fa]
    a = tried
    fa = found
    const place = (a - b) / (c - b)
    const height = (fa - fb) / (fc - fb)
    const smooth = height ** 2 < place && (1 - height) ** 2 < 1 - place
    const quadratic = (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
    share = smooth ? quadratic : 0.5
  }
  const within = fa >= 0 ? a : b
  return within === Math.max(a, b) ? Math.ceil(within) : Math.floor(within)
}

/** An instant between two of the same side at which the value is on the other side; null when it turns before zero. */
function beyondZero(value: ValueAt, from: number, atFrom: number, until: number, atUntil: number): number | null {
  const above = atFrom >= 0
  const side = above ? 1 : -1
  let [low, high, atLow, atHigh] = [from, until, side * atFrom, side * atUntil]
  let left = high - GOLDEN * (high - low)
  let right = low + GOLDEN * (high - low)
  let atLeft = side * value(left)
  let atRight = side * value(right)
  while (high - low > CLOSE_TURN) {
    const nearest = Math.min(atLeft, atRight)
    if (above ? nearest < 0 : nearest <= 0) return atLeft < atRight ? left : right
    if (nearest > REACH * (Math.max(atLow, atHigh) - Math.min(nearest, atLow, atHigh))) return null
    if (atLeft < atRight) {
      ;[high, atHigh, right, atRight] = [right, atRight, left, atLeft]
      left = high - GOLDEN * (high - low)
      atLeft = side * value(left)
    } else {
      ;[low, atLow, left, atLeft] = [left, atLeft, right, atRight]
      right = low + GOLDEN * (high - low)
      atRight = side * value(right)
    }
  }
  return null
}

/** Both passings of zero between two instants of the same side, where there are any. */
function graze(value: ValueAt, from: number, atFrom: number, until: number, atUntil: number, found: Found): void {
  const turn = beyondZero(value, from, atFrom, until, atUntil)
  if (turn === null) return
  const atTurn = value(turn)
  const above = atFrom >= 0
  found(zeroBetween(value, from, atFrom, turn, atTurn), !above)
  found(zeroBetween(value, turn, atTurn, until, atUntil), above)
}

/**
 * Walks the samples and tells of every crossing in order. A turning point between samples of one side is looked into
 * where it may reach zero: around the sample nearest to zero, and beside the two ends, which have no sample beyond.
 */
function walk(value: ValueAt, start: number, end: number, step: number, found: Found): void {
  const count = Math.max(3, Math.ceil((end - start) / step))
  const pace = (end - start) / count

  let [t0, f0, t1, f1] = [start, value(start), start + pace, value(start + pace)]
  for (let index = 2; index <= count; index++) {
    const t2 = index === count ? end : start + index * pace
    const f2 = value(t2)
    const [d0, d1, d2] = [Math.abs(f0), Math.abs(f1), Math.abs(f2)]
    const above = f1 >= 0
    const level = f0 >= 0 === above
    const reach = REACH * Math.max(Math.abs(f1 - f0), Math.abs(f2 - f1))
    if (index === 2) {
      if (!level) found(zeroBetween(value, t0, f0, t1, f1), above)
      else if (d0 < d1 && d0 < reach) graze(value, t0, f0, t1, f1, found)
    }
    const levelNext = f2 >= 0 === above
    if (level && levelNext && d1 <= d0 && d1 < d2 && d1 < reach) graze(value, t0, f0, t2, f2, found)
    if (!levelNext) found(zeroBetween(value, t1, f1, t2, f2), !above)
    else if (index === count && d2 <= d1 && d2 < reach) graze(value, t1, f1, t2, f2, found)
    ;[t0, f0, t1, f1] = [t1, f1, t2, f2]
  }
}

/**
 * Every change of sign between two instants, in order. The value must be continuous, with no two turning points within
 * one step (milliseconds); a pair of crossings between two samples is found too.
 */
export function crossings(value: ValueAt, start: number, end: number, step: number): Crossing[] {
  const all: Crossing[] = []
  if (end > start) walk(value, start, end, step, (instant, rising) => all.push({ instant, rising }))
  return all
}

/** The longest stretches within two instants in which a value is not below zero, in order; on the same terms as crossings. */
export function spansAbove(value: ValueAt, start: number, end: number, step: number): Span[] {
  if (!(end > start)) return []
  const spans: Span[] = []
  let from = start
  let open = value(start) >= 0
  walk(value, start, end, step, (instant, rising) => {
    if (rising) from = instant
    else spans.push({ from, until: instant })
    open = rising
  })
  if (open) spans.push({ from, until: end })
  return spans
}
