/** A place on the WGS84 ellipsoid: the one shape of a coordinate inside the program, and its one longitude normaliser. */

export interface LatLon {
  /** Degrees north, -90..90. */
  readonly lat: number
  /** Degrees east, [-180, 180). */
  readonly lon: number
}

/** Wraps any finite longitude into [-180, 180): +180 and -180 are the same meridian, written -180. */
export function wrapLongitude(lon: number): number {
  if (lon >= -180 && lon < 180) return lon
  const wrapped = (lon + 180) % 360
  const positive = wrapped < 0 ? wrapped + 360 : wrapped
  return positive === 360 ? -180 : positive - 180
}

/** True for finite numbers with |lat| <= 90; longitudes of any turn are accepted, they wrap. */
export function isLatLon(lat: number, lon: number): boolean {
  return Number.isFinite(lat) && Number.isFinite(lon) && Math.abs(lat) <= 90
}

/** The place with its longitude wrapped. Throws a RangeError on values that are no place: that is a bug in the caller. */
export function latLon(lat: number, lon: number): LatLon {
  if (!isLatLon(lat, lon)) throw new RangeError(`no place: latitude ${lat}, longitude ${lon}`)
  return { lat, lon: wrapLongitude(lon) }
}
