/** What the earth's curve and the air's refraction do to heights, horizons and dips. */
import { degrees } from '#core/units/angle.ts'

/** Metres, mean radius of the earth ((2a + b) / 3 of WGS84). */
export const MEAN_EARTH_RADIUS = 6_371_008.8

/** Share of the curve that refraction takes back over land by day: what a new shoot starts with, which has it as a setting since the air differs. */
export const REFRACTION = 0.13

/** Metres by which a level line of sight passes above the ground's level after a distance; refraction bends it down. */
export function curvatureDrop(distance: number, refraction = REFRACTION): number {
  return (distance * distance * (1 - refraction)) / (2 * MEAN_EARTH_RADIUS)
}

/** Metres at which the drop reaches a given height: the inverse of curvatureDrop. */
export function distanceOfDrop(drop: number, refraction = REFRACTION): number {
  return Math.sqrt((2 * MEAN_EARTH_RADIUS * Math.max(0, drop)) / (1 - refraction))
}

/** Metres to the sea horizon from a height above the sea; 0 at or below the water. */
export function horizonDistance(eyeHeight: number, refraction = REFRACTION): number {
  return distanceOfDrop(eyeHeight, refraction)
}

/** Degrees, 0 or more, by which the sea horizon lies below the level. */
export function horizonDip(eyeHeight: number, refraction = REFRACTION): number {
  return degrees(Math.sqrt((2 * Math.max(0, eyeHeight) * (1 - refraction)) / MEAN_EARTH_RADIUS))
}

/** Metres of a thing standing at sea level that the sea's bulge hides; 0 up to the horizon. */
export function hiddenHeight(distance: number, eyeHeight: number, refraction = REFRACTION): number {
  return curvatureDrop(Math.max(0, distance - horizonDistance(eyeHeight, refraction)), refraction)
}
