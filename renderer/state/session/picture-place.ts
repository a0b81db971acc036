/** Where the view through the lens stands: beside the map, in its place, or over the whole window. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { fitPlan } from './map-window.ts'

export type PicturePlace = 'beside' | 'traded' | 'window'

const placeSignal = signal<PicturePlace>('beside')
export const picturePlace: ReadonlySignal<PicturePlace> = placeSignal

/** Asked for the place that it has, it goes back beside the map. */
export function putPicture(place: PicturePlace): void {
  const before = placeSignal.peek()
  placeSignal.value = before === place ? 'beside' : place
  if (before !== 'traded' && place !== 'traded') return
  // The map has another size once it is laid out, and with it another view of the plan.
  requestAnimationFrame(() => requestAnimationFrame(fitPlan))
}
