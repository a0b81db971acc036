/** How far below the level sun and moon are still seen by an eye that stands high above its visible horizon. */
import { MEAN_EARTH_RADIUS, REFRACTION, horizonDistance } from '#core/geo/curvature-and-refraction.ts'
import { degrees } from '#core/units/angle.ts'

/**
 * Refraction of a ray that skims the horizon at sunrise, as a share of the earth's curve: the one behind Bowditch's
 * distance of the horizon, 2.12 nautical miles by the root of the eye's metres. More than by day over land.
 */
const SKIMMING = 0.1734

/**
 * Degrees by which the rising and setting of a body is sunk for an eye so many metres above its visible horizon (not
 * above the sea). It is the arc of the earth between eye and horizon, for the light is bent on both sides of the point
 * where it touches the ground; the horizon itself appears a little less deep. 0 at or below the horizon's height.
 */
export function sunkHorizon(aboveHorizon: number): number {
  return degrees(horizonDistance(aboveHorizon, SKIMMING) / MEAN_EARTH_RADIUS)
}

/**
 * Degrees by which a body seen just over ground that appears so many degrees below the level stands lower than one seen just over the
 * level. A ray that comes from below the level has touched its lowest point before the eye, as one over the sea's horizon has,
 * and is bent on both sides of it: by the dip sqrt(2 h (1 - k) / R) the eye's height over that point is known, and by that the arc.
 */
export function sunkBelowLevel(below: number): number {
  return below / Math.sqrt((1 - REFRACTION) * (1 - SKIMMING))
}
