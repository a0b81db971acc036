/** Which guides lie over the frame: a matter of looking, kept for the session and never saved with the spot. */
import { signal } from '@preact/signals'
import type { Crop } from '#core/frame/crop.ts'

export const thirds = signal(true)
/** Null shows the whole frame. */
export const cropGuide = signal<Crop | null>(null)
