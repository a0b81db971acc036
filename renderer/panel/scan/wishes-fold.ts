/** Whether the wishes are unfolded: until a scan has run, and when they are asked for; each scan folds them, so that its results are near. */
import { computed, signal } from '@preact/signals'
import { scanShown } from '#renderer/state/session/scan-shown.ts'

/** Null goes by whether a scan has run. */
const chosen = signal<boolean | null>(null)

export const wishesUnfolded = computed(() => chosen.value ?? scanShown.value === null)

export function turnWishes(): void {
  chosen.value = !wishesUnfolded.peek()
}

export function foldWishes(): void {
  chosen.value = null
}
