/** What the map on the board shows right now, as numbers that the drawing over it follows. */
import { type ReadonlySignal, computed, signal } from '@preact/signals'
import { type MapLook, TILE_SIZE, mercatorView } from './plan-view.ts'
import type { MapWindow } from '#renderer/view/ground/relief-region.ts'
import type { WorldWindow } from '#renderer/view/sketch/world.ts'

const mapLookSignal = signal<MapLook | null>(null)
/** Null until the map has a size. */
export const mapLook: ReadonlySignal<MapLook | null> = mapLookSignal

/** Called by the map alone, with every look it takes. */
export function tellMapLook(look: MapLook | null): void {
  mapLookSignal.value = look
}

export const mapView = computed(() => (mapLook.value === null ? null : mercatorView(mapLook.value)))

/** What the map shows, in CSS pixels of the world at its zoom. */
export function shownPixels({ zoom, originX, originY, box }: MapLook): WorldWindow {
  return {
    zoom,
    left: originX + box.left,
    top: originY + box.top,
    width: box.right - box.left,
    height: box.bottom - box.top,
  }
}

/** What the map shows, in world coordinates. */
export function shownWindow(): MapWindow | null {
  const look = mapLook.value
  if (look === null) return null
  const { zoom, left, top, width, height } = shownPixels(look)
  const size = TILE_SIZE * 2 ** zoom
  return { zoom, west: left / size, east: (left + width) / size, north: top / size, south: (top + height) / size }
}
