/** Which guides lie over the frame: a matter of looking, kept for the session and never saved with the spot. */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Crop } from '#core/frame/crop.ts'

const thirdsSignal = signal(true)
export const thirds: ReadonlySignal<boolean> = thirdsSignal

export function showThirds(on: boolean): void {
  thirdsSignal.value = on
}
const cropGuideSignal = signal<Crop | null>(null)
/** Null shows the whole frame. */
export const cropGuide: ReadonlySignal<Crop | null> = cropGuideSignal

export function showCrop(crop: Crop | null): void {
  cropGuideSignal.value = crop
}

/** The crop chosen, where the shoot still has it; null for the whole frame. */
export function chosenCrop(crops: readonly Crop[]): Crop | null {
  const chosen = cropGuide.value
  return crops.find(({ wide, high }) => wide === chosen?.wide && high === chosen.high) ?? null
}
