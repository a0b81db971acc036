/** Where sun and moon stand: the one file that names suncalc, giving back the airless altitudes that it hides. */
import { getMoonIllumination, getMoonPosition, getPosition } from 'suncalc'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { RADIANS_PER_DEGREE, degrees, wrapBearing } from '#core/units/angle.ts'

/** A body's centre as seen from a place, without air. */
export interface BodyPlace {
  /** Degrees clockwise from true north, 0..360. */
  readonly azimuth: number
  /** Degrees above the level horizon, geometric (no refraction), topocentric; -90..90. */
  readonly altitude: number
}

export interface MoonPlace extends BodyPlace {
  /** Kilometres from the place itself, not from the earth's middle. */
  readonly distance: number
  /** Degrees, angular radius as seen from the place. */
  readonly radius: number
}

export interface MoonPhase {
  /** Share of the disc that is lit, 0..1. */
  readonly lit: number
  readonly waxing: boolean
  /** 0 new, 0.25 first quarter, 0.5 full, 0.75 last quarter. */
  readonly cycle: number
  /** Degrees clockwise from straight up at which the middle of the lit limb stands, as seen, 0..360. */
  readonly tilt: number
}

/** Degrees, angular radius of the sun at its mean distance (959.63 arc seconds). */
export const SUN_RADIUS = 959.63 / 3600
/** Kilometres. */
const MOON_RADIUS = 1737.4
const EARTH_RADIUS = 6378.14

/** The refraction suncalc adds (Meeus 16.4), radians; below the horizon it adds the horizon's own. */
function added(height: number): number {
  return 0.000_296_7 / Math.tan(height + 0.003_125_36 / (height + 0.089_011_79))
}

function addedSlope(height: number): number {
  const beyond = height + 0.089_011_79
  const angle = height + 0.003_125_36 / beyond
  return (-0.000_296_7 * (1 - 0.003_125_36 / beyond ** 2)) / Math.sin(angle) ** 2
}

const ADDED_AT_HORIZON = added(0)

/** The airless altitude behind one that suncalc reports, degrees. Exact: its own formula is undone. */
export function airless(reported: number): number {
  const apparent = reported * RADIANS_PER_DEGREE
  let height = apparent - ADDED_AT_HORIZON
  if (height <= 0) return degrees(height)
  for (let round = 0; round < 8; round++) {
    const step = (height + added(height) - apparent) / (1 + addedSlope(height))
    height = Math.max(0, height - step)
    if (Math.abs(step) < 1e-15) break
  }
  return degrees(height)
}

/** The sun from a place at an instant (epoch milliseconds). Within 0.02 degrees from 1950 to 2060 (tested against astronomy-engine). */
export function sunAt(at: LatLon, instant: number): BodyPlace {
  const { azimuth, altitude } = getPosition(new Date(instant), at.lat, at.lon)
  return { azimuth: wrapBearing(azimuth), altitude: airless(altitude) }
}

/** The moon from a place at an instant (epoch milliseconds). */
export function moonAt(at: LatLon, instant: number): MoonPlace {
  const found = getMoonPosition(new Date(instant), at.lat, at.lon)
  const altitude = airless(found.altitude)
  const turn = altitude * RADIANS_PER_DEGREE
  const aside = EARTH_RADIUS * Math.cos(turn)
  const distance = Math.sqrt(found.distance ** 2 - aside ** 2) - EARTH_RADIUS * Math.sin(turn)
  return {
    azimuth: wrapBearing(found.azimuth),
    altitude,
    distance,
    radius: degrees(Math.asin(MOON_RADIUS / distance)),
  }
}

/** The moon's phase, and how its lit side is turned as seen from a place. */
export function moonPhase(at: LatLon, instant: number): MoonPhase {
  const when = new Date(instant)
  const { fraction, phase, angle, waxing } = getMoonIllumination(when)
  const { parallacticAngle } = getMoonPosition(when, at.lat, at.lon)
  return { lit: fraction, waxing, cycle: phase, tilt: wrapBearing(parallacticAngle - angle) }
}
