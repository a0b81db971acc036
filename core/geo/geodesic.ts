/** Distances, bearings and destinations on the WGS84 ellipsoid: the one file that names geographiclib. */
import geodesic from 'geographiclib-geodesic'
import { wrapBearing } from '#core/units/angle.ts'
import { type LatLon, wrapLongitude } from './lat-lon.ts'

const ellipsoid = geodesic.Geodesic.WGS84

/** Below this many metres two places count as one, and a bearing between them means nothing. */
const SAME_PLACE = 1e-6

export interface GeodesicLine {
  /** Metres along the ellipsoid, 0 or more. */
  readonly distance: number
  /** 0..360 clockwise from true north at the start; null from a place to itself and from a pole. */
  readonly bearing: number | null
}

/** The shortest line between two places (Karney's method; exact to nanometres). */
export function geodesicLine(from: LatLon, to: LatLon): GeodesicLine {
  const solved = ellipsoid.Inverse(from.lat, from.lon, to.lat, to.lon)
  const distance = solved.s12 ?? 0
  const meaningful = distance > SAME_PLACE && Math.abs(from.lat) < 90
  return { distance, bearing: meaningful ? wrapBearing(solved.azi1 ?? 0) : null }
}

/** Metres along the ellipsoid. */
export function geodesicDistance(from: LatLon, to: LatLon): number {
  return ellipsoid.Inverse(from.lat, from.lon, to.lat, to.lon, geodesic.Geodesic.DISTANCE).s12 ?? 0
}

/** The place reached from `from` along a bearing (degrees) after a distance (metres; negative goes backwards). */
export function destination(from: LatLon, bearing: number, distance: number): LatLon {
  const solved = ellipsoid.Direct(from.lat, from.lon, bearing, distance)
  return { lat: solved.lat2 ?? from.lat, lon: wrapLongitude(solved.lon2 ?? from.lon) }
}
