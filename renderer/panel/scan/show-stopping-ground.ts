/** Brings the ground that is scanned into the map's window, when none of it is there. */
import { boundsHold } from '#core/geo/bounds.ts'
import { fitPlaces, mapBounds } from '#renderer/state/session/map-window.ts'
import { scanNow } from './scan-now.ts'

export function showStoppingGround(): void {
  const places = scanNow.peek()?.shoot.stoppingGround.flatMap(({ points }) => points) ?? []
  const bounds = mapBounds.peek()
  if (places.length > 0 && bounds !== null && !places.some((at) => boundsHold(bounds, at))) fitPlaces(places)
}
