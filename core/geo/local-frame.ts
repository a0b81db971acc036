/** A local frame: east, north and up in metres at a place, tied to earth-centred coordinates so that frames agree everywhere. */
import { RADIANS_PER_DEGREE, degrees } from '#core/units/angle.ts'
import { type LatLon, wrapLongitude } from './lat-lon.ts'

/** WGS84 defining constants (NGA.STND.0036): semi-major axis in metres, flattening. */
export const WGS84_SEMI_MAJOR = 6_378_137
const FLATTENING = 1 / 298.257_223_563
const ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING)

/** Metres from the earth's centre. */
export interface EarthPoint {
  readonly x: number
  readonly y: number
  readonly z: number
}

/** Metres east, north and up of a frame's origin. */
export interface LocalPoint {
  readonly east: number
  readonly north: number
  readonly up: number
}

export interface LocalFrame {
  readonly origin: EarthPoint
  readonly sinLat: number
  readonly cosLat: number
  readonly sinLon: number
  readonly cosLon: number
}

/** Frame at a place and a height in metres above the ellipsoid. (EPSG method 9602.) */
export function localFrame(at: LatLon, height: number): LocalFrame {
  const lat = at.lat * RADIANS_PER_DEGREE
  const lon = at.lon * RADIANS_PER_DEGREE
  const sinLat = Math.sin(lat)
  const cosLat = Math.cos(lat)
  const sinLon = Math.sin(lon)
  const cosLon = Math.cos(lon)
  const primeVertical = WGS84_SEMI_MAJOR / Math.sqrt(1 - ECCENTRICITY_SQUARED * sinLat * sinLat)
  return {
    origin: {
      x: (primeVertical + height) * cosLat * cosLon,
      y: (primeVertical + height) * cosLat * sinLon,
      z: (primeVertical * (1 - ECCENTRICITY_SQUARED) + height) * sinLat,
    },
    sinLat,
    cosLat,
    sinLon,
    cosLon,
  }
}

/** From a frame's own metres to earth-centred ones. */
export function toEarth(frame: LocalFrame, east: number, north: number, up: number): EarthPoint {
  const { origin, sinLat, cosLat, sinLon, cosLon } = frame
  const outward = cosLat * up - sinLat * north
  return {
    x: origin.x - sinLon * east + cosLon * outward,
    y: origin.y + cosLon * east + sinLon * outward,
    z: origin.z + cosLat * north + sinLat * up,
  }
}

/** From earth-centred metres to a frame's own. (EPSG methods 9836 and 9837.) */
export function toLocal(frame: LocalFrame, point: EarthPoint): LocalPoint {
  const { origin, sinLat, cosLat, sinLon, cosLon } = frame
  const dx = point.x - origin.x
  const dy = point.y - origin.y
  const dz = point.z - origin.z
  const outward = cosLon * dx + sinLon * dy
  return {
    east: cosLon * dy - sinLon * dx,
    north: cosLat * dz - sinLat * outward,
    up: cosLat * outward + sinLat * dz,
  }
}

/** A point given in one frame, told in another. */
export function between(from: LocalFrame, to: LocalFrame, east: number, north: number, up: number): LocalPoint {
  return toLocal(to, toEarth(from, east, north, up))
}

/** A direction told in another place's east, north and up. */
export function turnedInto(from: LocalFrame, to: LocalFrame, direction: LocalPoint): LocalPoint {
  const tip = between(from, to, direction.east, direction.north, direction.up)
  const foot = between(from, to, 0, 0, 0)
  return { east: tip.east - foot.east, north: tip.north - foot.north, up: tip.up - foot.up }
}

/** The place under an earth-centred point (Bowring's closed form; below a micrometre near the ground). */
export function placeUnder(point: EarthPoint): LatLon {
  const semiMinor = WGS84_SEMI_MAJOR * (1 - FLATTENING)
  const fromAxis = Math.hypot(point.x, point.y)
  const secondEccentricitySquared = ECCENTRICITY_SQUARED / (1 - ECCENTRICITY_SQUARED)
  const parametric = Math.atan2(WGS84_SEMI_MAJOR * point.z, semiMinor * fromAxis)
  const lat = Math.atan2(
    point.z + secondEccentricitySquared * semiMinor * Math.sin(parametric) ** 3,
    fromAxis - ECCENTRICITY_SQUARED * WGS84_SEMI_MAJOR * Math.cos(parametric) ** 3,
  )
  return { lat: degrees(lat), lon: wrapLongitude(degrees(Math.atan2(point.y, point.x))) }
}
