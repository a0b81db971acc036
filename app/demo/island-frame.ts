/**
 * The demo island's own plane: metres east and north of its middle, and the way between them and latitude and longitude.
 *
 * The middle lies in the North Atlantic at 46.4 N 33.6 W, some 750 km from the nearest land, where every real map shows
 * water. Over the island's few kilometres a plane with one scale per axis is off by less than 3 m.
 */
import type { LatLon } from '#core/geo/lat-lon.ts'

export const ISLAND_MIDDLE: LatLon = { lat: 46.4, lon: -33.6 }

/** A point of the plane, metres. */
export interface IslandPoint {
  readonly east: number
  readonly north: number
}

// WGS84: semi-major axis and first eccentricity squared (NIMA TR8350.2).
const SEMI_MAJOR_AXIS = 6_378_137
const ECCENTRICITY_SQUARED = 0.00669437999014

const middleRadians = (ISLAND_MIDDLE.lat * Math.PI) / 180
const bulge = 1 - ECCENTRICITY_SQUARED * Math.sin(middleRadians) ** 2

/** Metres per degree at the middle: the ellipsoid's radii of curvature along the meridian and across it. */
export const METRES_PER_DEGREE_NORTH = ((Math.PI / 180) * SEMI_MAJOR_AXIS * (1 - ECCENTRICITY_SQUARED)) / bulge ** 1.5
export const METRES_PER_DEGREE_EAST = ((Math.PI / 180) * SEMI_MAJOR_AXIS * Math.cos(middleRadians)) / Math.sqrt(bulge)

export function toLatLon(point: IslandPoint): LatLon {
  return {
    lat: ISLAND_MIDDLE.lat + point.north / METRES_PER_DEGREE_NORTH,
    lon: ISLAND_MIDDLE.lon + point.east / METRES_PER_DEGREE_EAST,
  }
}

export function toPlane(place: LatLon): IslandPoint {
  return {
    east: (place.lon - ISLAND_MIDDLE.lon) * METRES_PER_DEGREE_EAST,
    north: (place.lat - ISLAND_MIDDLE.lat) * METRES_PER_DEGREE_NORTH,
  }
}

/** The point `distance` metres off along `bearing` (degrees clockwise from north). */
export function step(from: IslandPoint, bearing: number, distance: number): IslandPoint {
  const radians = (bearing * Math.PI) / 180
  return { east: from.east + Math.sin(radians) * distance, north: from.north + Math.cos(radians) * distance }
}

/** Bearing from one point to another, 0..360 clockwise from north. */
export function bearingBetween(from: IslandPoint, to: IslandPoint): number {
  const degrees = (Math.atan2(to.east - from.east, to.north - from.north) * 180) / Math.PI
  return degrees < 0 ? degrees + 360 : degrees
}

export function islandDistance(from: IslandPoint, to: IslandPoint): number {
  return Math.hypot(to.east - from.east, to.north - from.north)
}
