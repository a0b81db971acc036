/** How long a line of places is, on the ellipsoid: from point to point, and all of it. */
import { geodesicDistance } from './geodesic.ts'
import type { LatLon } from './lat-lon.ts'

/** Metres of each leg, in order. */
export function legLengths(points: readonly LatLon[]): readonly number[] {
  return points.slice(1).map((at, index) => geodesicDistance(points[index] ?? at, at))
}

/** Metres from point to point along it. */
export function lineLength(points: readonly LatLon[]): number {
  return legLengths(points).reduce((sum, leg) => sum + leg, 0)
}
