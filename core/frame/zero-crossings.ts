/** Every place along a stretch at which a quantity that rises and falls, begins and ends, crosses 0. */
import { type Along, type Bracket, edge } from './bracketed-root.ts'

/** A quantity, and how much there is to spare for it to be there at all: below 0 where it is not. */
export interface Bounded {
  readonly at: Along
  readonly spare: Along
}

/**
 * The brackets within which it crosses 0, from one logarithm to another; `step` is how far the next look lies from one. What is crossed
 * and crossed back between two looks is found too, where it turns toward 0 there, and what is there between two looks alone.
 */
export function* zeroCrossings(
  bounded: Bounded,
  from: number,
  to: number,
  step: (log: number) => number,
): Generator<readonly [Bracket, Bracket]> {
  const { at } = bounded
  let [older, before]: [Bracket | null, Bracket | null] = [null, null]
  for (const here of looks(bounded, from, to, step)) {
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
function* looks(
  { at, spare }: Bounded,
  from: number,
  to: number,
  step: (log: number) => number,
): Generator<Bracket | null> {
  const sense = Math.sign(to - from)
  let alive: Bracket | null = null
  /** The last two looks at which it was not there, and what there was to spare. */
  let [older, dead]: [Bracket | null, Bracket | null] = [null, null]
  for (let log = from; ;) {
    const value = at(log)
    if (value === null) {
      if (alive !== null) {
        yield edge(at, log, alive.log)
        yield null
        ;[older, dead] = [null, null]
      }
      const here = bracketOf(log, spare(log))
      if (older !== null && dead !== null && here !== null && turnsTowardZero(older, dead, here))
        yield* island({ at, spare }, older, here)
      ;[older, dead, alive] = [dead, here, null]
    } else {
      if (dead !== null) yield edge(at, dead.log, log)
      alive = { log, value }
      yield alive
      ;[older, dead] = [null, null]
    }
    if (log === to) return
    log = sense > 0 ? Math.min(to, log + step(log)) : Math.max(to, log - step(log))
  }
}

function bracketOf(log: number, value: number | null): Bracket | null {
  return value === null ? null : { log, value }
}

/** What there is of it between two looks at which it is not there. */
function* island({ at, spare }: Bounded, one: Bracket, other: Bracket): Generator<Bracket | null> {
  const most = turningPoint(spare, one, other)
  const value = most === null ? null : at(most.log)
  if (most === null || value === null) return
  yield edge(at, one.log, most.log)
  yield { log: most.log, value }
  yield edge(at, other.log, most.log)
  yield null
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
