/** How many of the picture's workers were lost in this sitting: another takes over from the first, then the page draws by itself. */
import { type ReadonlySignal, computed, signal } from '@preact/signals'

const MOST_LOST = 2

const artistsLostSignal = signal(0)
export const artistsLost: ReadonlySignal<number> = artistsLostSignal

export const drawnOnPage = computed(() => artistsLost.value >= MOST_LOST)

export function artistLost(): void {
  artistsLostSignal.value += 1
}
