/** What the map on the board shows right now, as numbers that the drawing over it follows. */
import { computed, signal } from '@preact/signals'
import { type MapLook, mercatorView } from './plan-view.ts'

/** Null until the map has a size. */
export const mapLook = signal<MapLook | null>(null)

export const mapView = computed(() => (mapLook.value === null ? null : mercatorView(mapLook.value)))
