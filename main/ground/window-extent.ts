/** What may lie beyond a window: whether any source knows ground there, and the box that holds all that is looked at from it. */
import { edgePlaces } from '#core/geo/bounds.ts'
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { localFrame, toLocal } from '#core/geo/local-frame.ts'
import { GROUND_REACH } from '#core/ground/rings.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import type { GroundSource } from './ground-source.ts'
import type { isOpenSea } from './sea.ts'
import type { WindowWish } from './window-wish.ts'

/** Whether a window holds all that a source could tell of the ground around it. */
export function liesWithin({ brief, rasterFor }: GroundSource, wish: WindowWish): boolean {
  if (brief.bounds === null) return brief.trouble !== null || rasterFor(wish) === null
  const frame = localFrame(wish.centre, 0)
  const side = wish.half * wish.cell
  return edgePlaces(brief.bounds).every((place) => {
    const { east, north } = toLocal(frame, localFrame(place, 0).origin)
    return Math.abs(east - wish.east) <= side && Math.abs(north - wish.north) <= side
  })
}

/** Degrees of a box around a place that holds everything within the ground's reach. */
export function reachAround({ lat, lon }: LatLon): Parameters<typeof isOpenSea>[1] {
  const north = (GROUND_REACH * 1.1) / (MEAN_EARTH_RADIUS * RADIANS_PER_DEGREE)
  const east = north / Math.max(0.01, Math.cos(Math.min(90, Math.abs(lat) + north) * RADIANS_PER_DEGREE))
  return { south: lat - north, north: lat + north, west: lon - east, east: lon + east }
}
