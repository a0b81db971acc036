/** What the map on the board shows right now, as numbers that the drawing over it follows. */
import { type ReadonlySignal, computed, signal } from '@preact/signals'
import { type MapLook, mercatorView } from './plan-view.ts'

const mapLookSignal = signal<MapLook | null>(null)
/** Null until the map has a size. */
export const mapLook: ReadonlySignal<MapLook | null> = mapLookSignal

/** Called by the map alone, with every look it takes. */
export function tellMapLook(look: MapLook | null): void {
  mapLookSignal.value = look
}

export const mapView = computed(() => (mapLook.value === null ? null : mercatorView(mapLook.value)))
