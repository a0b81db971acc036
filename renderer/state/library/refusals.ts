/** Changes that could not be saved: each is kept, with what happened, until the user decides for it or against it. */
import { type ReadonlySignal, computed, signal } from '@preact/signals'
import type { Fault } from '#core/result.ts'

export interface Refusal {
  readonly id: number
  /** What was done, in the user's words: "Move the standpoint". */
  readonly what: string
  readonly fault: Fault
  /** Does it once more, on what the library holds by then. */
  readonly again: () => unknown
}

const refusalList = signal<readonly Refusal[]>([])
/** Oldest first. */
export const refusals: ReadonlySignal<readonly Refusal[]> = computed(() => refusalList.value)

let lastId = 0

export function holdRefusal(refused: Omit<Refusal, 'id'>): Refusal {
  lastId += 1
  const refusal = { ...refused, id: lastId }
  refusalList.value = [...refusalList.value, refusal]
  return refusal
}

/** For mine: it is done again. */
export function keepMine(refusal: Refusal): void {
  if (letRefusalGo(refusal)) void refusal.again()
}

/** For what the library holds: the change is given up. Answers whether it was still undecided. */
export function letRefusalGo({ id }: Refusal): boolean {
  const before = refusalList.peek()
  refusalList.value = before.filter((other) => other.id !== id)
  return refusalList.peek().length < before.length
}

export function isUndecided(refusal: Refusal): boolean {
  return refusalList.value.some(({ id }) => id === refusal.id)
}
