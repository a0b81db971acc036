/** Places with the same sky to the eye: while a hand drags, the day's is not looked up again for less. */
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { type LatLon, wrapLongitude } from '#core/geo/lat-lon.ts'

/** Metres, and degrees of longitude which count near a pole, within which the sun stands where it stood, a second or so apart. */
const SAME_PLACE = 250
const SAME_MERIDIAN = 0.005

export function sameSky(one: LatLon, other: LatLon): boolean {
  if (Math.abs(wrapLongitude(one.lon - other.lon)) > SAME_MERIDIAN) return false
  return one === other || geodesicDistance(one, other) <= SAME_PLACE
}
