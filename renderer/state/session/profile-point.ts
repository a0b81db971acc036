/** The point on the way to the landmark that is being read off the profile, shown on the map meanwhile. */
import { type ReadonlySignal, signal } from '@preact/signals'

const profilePointSignal = signal<number | null>(null)
/** Metres from the lens; null while none is read. */
export const profilePoint: ReadonlySignal<number | null> = profilePointSignal

export function readProfileAt(distance: number | null): void {
  profilePointSignal.value = distance
}
