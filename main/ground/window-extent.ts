/** What may lie beyond a window: whether any source knows ground there, and the box that holds all that is looked at from it. */
import { edgePlaces } from '#core/geo/bounds.ts'
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import type { UnwrappedBox } from '#core/geo/coast.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, gridPoint } from '#core/ground/elevation-grid.ts'
import { GROUND_REACH, holdsPoint } from '#core/ground/rings.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import type { GroundSource } from './ground-source.ts'
import type { WindowWish } from './window-wish.ts'

/** Whether a window holds all that a source could tell of the ground around it; `grid` are its cells. */
export function liesWithin({ brief, rasterFor }: GroundSource, wish: WindowWish, grid: ElevationGrid): boolean {
  if (brief.bounds === null) return brief.trouble !== null || rasterFor(wish) === null
  return edgePlaces(brief.bounds).every((place) => holdsPoint(grid, gridPoint(grid, place)))
}

/** Degrees of a box around a place that holds everything within the ground's reach. */
export function reachAround({ lat, lon }: LatLon): UnwrappedBox {
  const north = (GROUND_REACH * 1.1) / (MEAN_EARTH_RADIUS * RADIANS_PER_DEGREE)
  const east = north / Math.max(0.01, Math.cos(Math.min(90, Math.abs(lat) + north) * RADIANS_PER_DEGREE))
  return { south: lat - north, north: lat + north, west: lon - east, east: lon + east }
}
