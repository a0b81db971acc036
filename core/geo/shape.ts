/** Questions to shapes on the map (inside? how large? nearest point?), answered by turf; safe across the antimeridian. */
import { area, booleanPointInPolygon, lineString, nearestPointOnLine, point, polygon } from '@turf/turf'
import { geodesicDistance } from './geodesic.ts'
import { unwrapNear } from './bounds.ts'
import { type LatLon, wrapLongitude } from './lat-lon.ts'
import type { Ring } from './outline.ts'

/** GeoJSON's order. Longitudes are unwrapped near one reference, since turf knows nothing of the antimeridian. */
function position(at: LatLon, reference: number): [number, number] {
  return [unwrapNear(at.lon, reference), at.lat]
}

function closedPolygon(ring: Ring): ReturnType<typeof polygon> | null {
  const [first] = ring
  if (first === undefined || ring.length < 3) return null
  return polygon([[...ring, first].map((at) => position(at, first.lon))])
}

/** True inside the ring or on its edge; false for a ring of fewer than three points. */
export function ringHolds(ring: Ring, at: LatLon): boolean {
  const shape = closedPolygon(ring)
  return shape !== null && booleanPointInPolygon(point(position(at, ring[0]?.lon ?? 0)), shape)
}

/** Square metres, on turf's sphere: good to one percent. */
export function ringArea(ring: Ring): number {
  const shape = closedPolygon(ring)
  return shape === null ? 0 : area(shape)
}

export interface NearestPoint {
  readonly at: LatLon
  /** Metres from the asked place, on the ellipsoid. */
  readonly distance: number
  /** Which stretch of the line it lies on, 0 for the first. */
  readonly segment: number
}

/** The point of a line of two or more places that is nearest to a place; null for a line of fewer. */
export function nearestOnLine(line: readonly LatLon[], to: LatLon): NearestPoint | null {
  const [first] = line
  if (first === undefined || line.length < 2) return null
  const snapped = nearestPointOnLine(lineString(line.map((at) => position(at, to.lon))), point([to.lon, to.lat]))
  const [lon = to.lon, lat = to.lat] = snapped.geometry.coordinates
  const at = { lat, lon: wrapLongitude(lon) }
  return { at, distance: geodesicDistance(at, to), segment: Math.min(snapped.properties.segmentIndex, line.length - 2) }
}
