/** Where sun and moon stand: the one file that names suncalc, giving back the airless altitudes that it hides. */
import { getMoonIllumination, getMoonPosition, getPosition } from 'suncalc'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { RADIANS_PER_DEGREE, degrees, wrapBearing } from '#core/units/angle.ts'
import { DAY } from '#core/time/duration.ts'
import { lastInstant, lastLook } from './last-look.ts'

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
  /** From new to full moon, by the longitude along the earth's orbit. */
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
/** Kilometres at the equator, as in suncalc. */
const EARTH_RADIUS = 6378.14
/** Of the WGS84 ellipsoid. */
const ECCENTRICITY_SQUARED = 0.006_694_38

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

const CENTURY = 36_525 * DAY
const J2000 = Date.UTC(2000, 0, 1, 12)

/**
 * Degrees by which the stars have turned farther than by mean sidereal time, which suncalc takes with places of the true
 * equinox: the equation of the equinoxes (Meeus chapters 12 and 22, its leading term). The same turn as a place farther east.
 */
function equinoxAhead(instant: number): number {
  const node = 125.04452 - (1934.136261 * (instant - J2000)) / CENTURY
  return (-17.2 / 3600) * Math.sin(node * RADIANS_PER_DEGREE) * Math.cos(23.44 * RADIANS_PER_DEGREE)
}

/** Degrees, the sun's parallax at the horizon (8.794 arc seconds): suncalc sees the sun from the earth's middle. */
const SUN_PARALLAX = 8.794 / 3600

/** The sun from a place at an instant (epoch milliseconds). Within 0.01 degrees (tested against astronomy-engine, 2000 to 2060). */
export const sunAt = lastLook(sunLook)

function sunLook(at: LatLon, instant: number): BodyPlace {
  const { azimuth, altitude } = getPosition(new Date(instant), at.lat, at.lon + equinoxAhead(instant))
  const central = airless(altitude)
  return {
    azimuth: wrapBearing(azimuth),
    altitude: central - SUN_PARALLAX * Math.cos(central * RADIANS_PER_DEGREE),
  }
}

/** Kilometres north of and above the earth's middle at which a place lies, by its own north and zenith; the earth is flattened. */
function fromMiddle(lat: number): { readonly north: number; readonly up: number } {
  const [sine, cosine] = [Math.sin(lat * RADIANS_PER_DEGREE), Math.cos(lat * RADIANS_PER_DEGREE)]
  const curve = EARTH_RADIUS / Math.sqrt(1 - ECCENTRICITY_SQUARED * sine ** 2)
  return { north: -curve * ECCENTRICITY_SQUARED * sine * cosine, up: curve * (1 - ECCENTRICITY_SQUARED * sine ** 2) }
}

/** Radians above the level as seen from the earth's middle, behind the altitude at which suncalc sees the moon from a round earth. */
function fromMiddleSeen(reported: number, distance: number): number {
  let height = reported
  for (let round = 0; round < 5; round++) {
    height = reported + Math.asin((EARTH_RADIUS / distance) * Math.cos(height))
  }
  return height
}

/**
 * The moon from a place at an instant (epoch milliseconds). suncalc lowers it by a parallax that is a hundredth of a
 * degree off and for a round earth: that is undone, and the true place taken off the way from the earth's middle.
 */
export const moonAt = lastLook(moonLook)

function moonLook(at: LatLon, instant: number): MoonPlace {
  const found = getMoonPosition(new Date(instant), at.lat, at.lon + equinoxAhead(instant))
  const height = fromMiddleSeen(airless(found.altitude) * RADIANS_PER_DEGREE, found.distance)
  const bearing = found.azimuth * RADIANS_PER_DEGREE
  const level = found.distance * Math.cos(height)
  const place = fromMiddle(at.lat)
  const east = level * Math.sin(bearing)
  const north = level * Math.cos(bearing) - place.north
  const up = found.distance * Math.sin(height) - place.up
  const distance = Math.hypot(east, north, up)
  return {
    azimuth: wrapBearing(degrees(Math.atan2(east, north))),
    altitude: degrees(Math.asin(up / distance)),
    distance,
    radius: degrees(Math.asin(MOON_RADIUS / distance)),
  }
}

/** Degrees that Greenwich has turned from the equinox, as suncalc reckons it (Meeus 12.4, its linear part). */
function siderealTime(instant: number): number {
  return 280.46061837 + (360.98564736629 * (instant - J2000)) / DAY
}

/** Degrees between the planes of equator and orbit (Meeus 22.2, without the nutation of some thousandths). */
function obliquity(instant: number): number {
  return 23.439291 - (0.0130042 * (instant - J2000)) / CENTURY
}

/** Degrees along the orbit's plane of a body with an hour angle at Greenwich and a declination, both in radians. */
function eclipticLongitude(hourAngle: number, declination: number, instant: number): number {
  const ascension = siderealTime(instant) * RADIANS_PER_DEGREE - hourAngle
  const tilt = obliquity(instant) * RADIANS_PER_DEGREE
  const along = Math.sin(ascension) * Math.cos(tilt) + Math.tan(declination) * Math.sin(tilt)
  return degrees(Math.atan2(along, Math.cos(ascension)))
}

/**
 * Degrees, 0..360, by which the moon is ahead of the sun along the orbit's plane, both apparent and from the earth's middle: 0 at new
 * moon, 90, 180 and 270 at the quarters and full, as almanacs define them. suncalc tells the phase by right ascension, which is up to
 * five hours off near new and full moon. From the pole a body's height is its declination, and its azimuth the hour angle and half a turn.
 */
export const moonAhead = lastInstant(aheadLook)

function aheadLook(instant: number): number {
  const when = new Date(instant)
  const sun = getPosition(when, 90, 0)
  const moon = getMoonPosition(when, 90, 0)
  const hourAngle = (azimuth: number): number => (azimuth - 180) * RADIANS_PER_DEGREE
  const declination = fromMiddleSeen(airless(moon.altitude) * RADIANS_PER_DEGREE, moon.distance)
  return wrapBearing(
    eclipticLongitude(hourAngle(moon.azimuth), declination, instant) -
      eclipticLongitude(hourAngle(sun.azimuth), airless(sun.altitude) * RADIANS_PER_DEGREE, instant),
  )
}

/** The moon's phase, and how its lit side is turned as seen from a place. */
export const moonPhase = lastLook(phaseLook)

const illumination = lastInstant((instant) => getMoonIllumination(new Date(instant)))

function phaseLook(at: LatLon, instant: number): MoonPhase {
  const when = new Date(instant)
  const { fraction, angle } = illumination(instant)
  const { parallacticAngle } = getMoonPosition(when, at.lat, at.lon)
  const ahead = moonAhead(instant)
  return { lit: fraction, waxing: ahead < 180, cycle: ahead / 360, tilt: wrapBearing(parallacticAngle - angle) }
}
