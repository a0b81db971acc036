/**
 * The board as it is read rather than watched: while a hand moves something, plan and assessment follow at a third of the frames, and
 * exactly once it rests. Nobody reads sixty figures a second, and writing them costs the drag its frames.
 */
import { type ReadonlySignal, computed, effect, signal } from '@preact/signals'
import type { Assessment } from '#core/plan/assess.ts'
import { groundProfile } from '#core/plan/ground-profile.ts'
import type { Plan } from '#core/plan/plan.ts'
import { moving } from '#renderer/state/library/library.ts'
import { assessment, plan } from './board-plan.ts'

/** One frame in so many is read while something moves. */
const FRAMES = 3

/** Frames since the hand began to move, of those that are read in each turn. */
const turns = Array.from({ length: FRAMES }, () => signal(0))

/** The board as one part of the page reads it. */
interface CalmBoard {
  readonly plan: ReadonlySignal<Plan | null>
  readonly assessment: ReadonlySignal<Assessment | null>
}

/** Parts take turns: written all at once they would cost one frame in three what the two others are spared. */
function readIn(turn: number): CalmBoard {
  const read = computed(() => {
    if (!moving.value) return { plan: plan.value, assessment: assessment.value }
    void turns[turn]?.value
    return { plan: plan.peek(), assessment: assessment.peek() }
  })
  return { plan: computed(() => read.value.plan), assessment: computed(() => read.value.assessment) }
}

/** As the answers and notes beside the map read it. */
export const answersBoard = readIn(0)
/** As the day's light reads it. */
export const dayBoard = readIn(1)
/** As the fields of the lens, the shelf's card and the names of the things read it. */
export const lensBoard = readIn(2)

/** The spot whose answers there are; null where there are none. */
export const answeredSpotId = computed(() => {
  const now = answersBoard.plan.value
  return now === null || answersBoard.assessment.value === null ? null : now.spot.id
})

/** The ground on the way to the landmark, as it is drawn among the answers; null without elevations or landmark. */
export const calmGroundLine = computed(() => {
  const [now, found] = [answersBoard.plan.value, answersBoard.assessment.value]
  return now === null || found === null ? null : groundProfile(now, found.levels)
})

/** Lets what is read follow while something moves. Returns a function that ends this. */
export function followCalmly(): () => void {
  return effect(() => {
    if (!moving.value) return undefined
    let count = 0
    let frame = requestAnimationFrame(next)
    function next(): void {
      const turn = turns[count % FRAMES]
      count += 1
      if (turn !== undefined) turn.value = count
      frame = requestAnimationFrame(next)
    }
    return () => cancelAnimationFrame(frame)
  })
}
