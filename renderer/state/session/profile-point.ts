/** The point on the way to the landmark that is being read off the profile, shown on the map meanwhile. */
import { signal } from '@preact/signals'

/** Metres from the lens; null while none is read. */
export const profilePoint = signal<number | null>(null)
