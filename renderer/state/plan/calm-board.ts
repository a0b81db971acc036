/**
 * The board as it is read rather than watched: while a hand moves something, plan and assessment follow at a third of the frames, and
 * exactly once it rests. Nobody reads sixty figures a second, and writing them costs the drag its frames.
 */
import { computed, effect, signal } from '@preact/signals'
import type { Assessment } from '#core/plan/assess.ts'
import { groundProfile } from '#core/plan/ground-profile.ts'
import type { Plan } from '#core/plan/plan.ts'
import { moving } from '#renderer/state/library/library.ts'
import { assessment, plan } from './board-plan.ts'

/** One frame in so many is read while something moves. */
const FRAMES = 3

const tick = signal(0)

interface ReadBoard {
  readonly plan: Plan | null
  readonly assessment: Assessment | null
}

const read = computed<ReadBoard>(() => {
  if (!moving.value) return { plan: plan.value, assessment: assessment.value }
  void tick.value
  return { plan: plan.peek(), assessment: assessment.peek() }
})

export const calmPlan = computed(() => read.value.plan)
export const calmAssessment = computed(() => read.value.assessment)

/** The spot whose answers there are; null where there are none. */
export const answeredSpotId = computed(() => {
  const { plan: now, assessment: found } = read.value
  return now === null || found === null ? null : now.spot.id
})

/** The ground on the way to the landmark, as it is drawn among the answers; null without elevations or landmark. */
export const calmGroundLine = computed(() => {
  const [now, found] = [calmPlan.value, calmAssessment.value]
  return now === null || found === null ? null : groundProfile(now, found.levels)
})

/** Lets what is read follow while something moves. Returns a function that ends this. */
export function followCalmly(): () => void {
  return effect(() => {
    if (!moving.value) return undefined
    let count = 0
    let frame = requestAnimationFrame(next)
    function next(): void {
      count += 1
      if (count % FRAMES === 0) tick.value += 1
      frame = requestAnimationFrame(next)
    }
    return () => cancelAnimationFrame(frame)
  })
}
