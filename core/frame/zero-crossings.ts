/** Every place along a stretch at which a quantity that rises and falls, begins and ends, crosses 0. */
import { type Along, type Bracket, edge } from './bracketed-root.ts'

/**
 * The brackets within which it crosses 0, from one logarithm to another; `step` is how far the next look lies from one. Crossed and
 * crossed back between two looks is found too, where it turns toward 0 there.
 */
export function* zeroCrossings(
  at: Along,
  from: number,
  to: number,
  step: (log: number) => number,
): Generator<readonly [Bracket, Bracket]> {
  let [older, before]: [Bracket | null, Bracket | null] = [null, null]
  for (const here of looks(at, from, to, step)) {
    if (here !== null && before !== null && here.value > 0 !== before.value > 0) yield [before, here]
    else if (here !== null && before !== null && older !== null && turnsTowardZero(older, before, here)) {
      const turn = turningPoint(at, older, here)
      if (turn !== null && turn.value > 0 !== before.value > 0) {
        yield [older, turn]
        yield [turn, here]
      }
    }
    older = here === null ? null : before
    before = here
  }
}

/** The looks in their order; null where the quantity has an end, after the last place before it. */
function* looks(at: Along, from: number, to: number, step: (log: number) => number): Generator<Bracket | null> {
  const sense = Math.sign(to - from)
  let last: { readonly log: number; readonly alive: boolean } | null = null
  for (let log = from; ;) {
    const value = at(log)
    if (value === null && last?.alive === true) {
      yield edge(at, log, last.log)
      yield null
    } else if (value !== null && last?.alive === false) yield edge(at, last.log, log)
    if (value !== null) yield { log, value }
    last = { log, alive: value !== null }
    if (log === to) return
    log = sense > 0 ? Math.min(to, log + step(log)) : Math.max(to, log - step(log))
  }
}

/** Whether the middle of three on one side of 0 lies nearest to it. */
function turnsTowardZero(one: Bracket, middle: Bracket, other: Bracket): boolean {
  const side = middle.value > 0 ? 1 : -1
  return one.value * side >= middle.value * side && other.value * side >= middle.value * side
}

const GOLDEN = (Math.sqrt(5) - 1) / 2
const TURN_ROUNDS = 40

/** Where between two places on one side of 0 it comes nearest to it, by golden sections; or the first place found beyond 0. */
function turningPoint(at: Along, one: Bracket, other: Bracket): Bracket | null {
  const side = one.value > 0 ? 1 : -1
  let [a, b] = [one.log, other.log]
  let nearest: Bracket | null = null
  for (let round = 0; round < TURN_ROUNDS; round++) {
    const [left, right] = [b - (b - a) * GOLDEN, a + (b - a) * GOLDEN]
    const [atLeft, atRight] = [at(left), at(right)]
    if (atLeft === null || atRight === null) return null
    nearest = atLeft * side < atRight * side ? { log: left, value: atLeft } : { log: right, value: atRight }
    if (nearest.value * side <= 0) return nearest
    if (atLeft * side < atRight * side) b = right
    else a = left
  }
  return nearest
}
