/** Where a map looks and how near, so that places lie inside its window: capped for one place, whole across the antimeridian. */
import { boundsCentre, boundsOf, boundsWidth } from '#core/geo/bounds.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { wrapLongitude } from '#core/geo/lat-lon.ts'
import { WGS84_SEMI_MAJOR } from '#core/geo/local-frame.ts'
import { fromMercator, toMercator } from '#core/geo/web-mercator.ts'
import { TILE_SIZE } from './plan-view.ts'

export interface FitWindow {
  readonly width: number
  readonly height: number
  /** Pixels kept free inside each side. */
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

export interface Fitted {
  readonly centre: LatLon
  readonly zoom: number
}

const WORLD = 2 * Math.PI * WGS84_SEMI_MAJOR
/** Zooms from which a step of a map is chosen. */
const FARTHEST = 1

/** Null for no places, or for a window in which nothing is left free. `step` is the map's zoom step: 1, or a part of it. */
export function placesFitted(places: readonly LatLon[], window: FitWindow, closest: number, step = 1): Fitted | null {
  const bounds = boundsOf(places)
  const freeWidth = window.width - window.left - window.right
  const freeHeight = window.height - window.top - window.bottom
  if (bounds === null || freeWidth <= 0 || freeHeight <= 0) return null
  const south = toMercator({ lat: bounds.south, lon: 0 }).north
  const north = toMercator({ lat: bounds.north, lon: 0 }).north
  const acrossShare = boundsWidth(bounds) / 360
  const upShare = (north - south) / WORLD
  // A share of 0 (one place) gives Infinity here, which the cap below turns into the nearest zoom allowed.
  const fits = Math.min(freeWidth / (TILE_SIZE * acrossShare), freeHeight / (TILE_SIZE * upShare))
  const zoom = Math.max(FARTHEST, Math.min(closest, Math.floor(Math.log2(fits) / step) * step))
  const pixel = WORLD / (TILE_SIZE * 2 ** zoom)
  const middle = fromMercator({ east: 0, north: (north + south) / 2 - ((window.top - window.bottom) / 2) * -pixel })
  const aside = ((window.right - window.left) / 2) * (360 / (TILE_SIZE * 2 ** zoom))
  return { centre: { lat: middle.lat, lon: wrapLongitude(boundsCentre(bounds).lon + aside) }, zoom }
}

/** Of several ways to keep the window's sides free, the one that comes nearest. */
export function bestFit(
  places: readonly LatLon[],
  windows: readonly FitWindow[],
  closest: number,
  step = 1,
): Fitted | null {
  let best: Fitted | null = null
  for (const window of windows) {
    const fitted = placesFitted(places, window, closest, step)
    if (fitted !== null && (best === null || fitted.zoom > best.zoom)) best = fitted
  }
  return best
}
