/** Which spots are picked for side by side. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { spots } from '#renderer/state/library/library.ts'
import { steady } from '#renderer/job/steady.ts'

const pickedSignal = signal<readonly string[]>([])
/** Spots picked for side by side. */
export const pickedIds: ReadonlySignal<readonly string[]> = pickedSignal

export function pickSpots(ids: readonly string[]): void {
  pickedSignal.value = ids
}

export function unpickSpot(id: string): void {
  pickedSignal.value = pickedIds.value.filter((other) => other !== id)
}

/** Those of them on the shelf, in the order in which they were picked: one that an undo has taken off counts again once it is back. */
export const pickedOnShelf = steady(() => pickedIds.value.filter((id) => spots.value.some((spot) => spot.id === id)))
