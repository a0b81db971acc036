/** What was worked out for spots, kept by all that it goes by: a few states for each place where a subject stops. */
import { sameParts } from '#renderer/job/same-parts.ts'
import type { Spot } from '#core/record/spot.ts'

interface State {
  readonly parts: readonly unknown[]
}

export interface StatesOfSpots<Kept extends State> {
  /** Null when nothing was kept for these parts. */
  readonly find: (spot: Spot, parts: readonly unknown[]) => Kept | null
  readonly keep: (spot: Spot, state: Kept) => void
}

/** Copies of a spot share its places until one of them is moved: a few states are kept for each. */
const MOST_STATES = 4

export function statesOfSpots<Kept extends State>(): StatesOfSpots<Kept> {
  const statesByStop = new WeakMap<Spot['stop'], readonly Kept[]>()
  return {
    find: ({ stop }, parts) => statesByStop.get(stop)?.find((state) => sameParts(state.parts, parts)) ?? null,
    keep: ({ stop }, state) => {
      statesByStop.set(stop, [state, ...(statesByStop.get(stop) ?? [])].slice(0, MOST_STATES))
    },
  }
}
