/** What tests of the sky share: the pole as an observatory, directions, and sun and moon by an independent library. */
import { Body, Equator, Horizon, KM_PER_AU, Observer, SearchAltitude, SearchRiseSet } from 'astronomy-engine'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { BodyPlace } from '#core/light/sky.ts'

const RADIANS = Math.PI / 180

/** Kilometres from the earth's middle to its pole, and at the equator (WGS84). */
export const POLAR_RADIUS = 6356.752
export const EQUATOR_RADIUS = 6378.137

/** At the pole a body's height is its declination, and its hour angle its azimuth: the sky's own coordinates are read off there. */
export const POLE: LatLon = { lat: 90, lon: 0 }

const wrap = (angle: number): number => ((angle % 360) + 360) % 360

/** Greenwich mean sidereal time in degrees (Meeus 12.4), with the equation of the equinoxes' leading term. */
export function siderealTime(instant: number): number {
  const days = (instant - Date.UTC(2000, 0, 1, 12)) / 86_400_000
  const node = (125.04452 - 0.052_953_765 * days) * RADIANS
  return wrap(280.46061837 + 360.98564736629 * days - (17.2 / 3600) * Math.sin(node) * Math.cos(23.44 * RADIANS))
}

/** Right ascension in degrees of a body seen from the pole. */
export const rightAscension = (place: BodyPlace, instant: number): number =>
  wrap(siderealTime(instant) - place.azimuth - 180)

/** Ecliptic longitude and latitude in degrees, of date, from right ascension and declination. */
export function ecliptic(ascension: number, declination: number, obliquity = 23.44): { lon: number; lat: number } {
  const [a, d, e] = [ascension * RADIANS, declination * RADIANS, obliquity * RADIANS]
  const lon = Math.atan2(Math.sin(a) * Math.cos(e) + Math.tan(d) * Math.sin(e), Math.cos(a)) / RADIANS
  const lat = Math.asin(Math.sin(d) * Math.cos(e) - Math.cos(d) * Math.sin(e) * Math.sin(a)) / RADIANS
  return { lon: wrap(lon), lat }
}

type Vector = readonly [number, number, number]

const direction = ({ azimuth, altitude }: BodyPlace): Vector => [
  Math.cos(altitude * RADIANS) * Math.cos(azimuth * RADIANS),
  Math.cos(altitude * RADIANS) * Math.sin(azimuth * RADIANS),
  Math.sin(altitude * RADIANS),
]

/** Degrees of great circle between two directions. */
export function apart(one: BodyPlace, other: BodyPlace): number {
  const [a, b] = [direction(one), direction(other)]
  return (2 * Math.asin(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) / 2)) / RADIANS
}

/** Where astronomy-engine sees a body, without air, from sea level; kilometres to it. */
export function seenBy(body: Body, at: LatLon, instant: number): BodyPlace & { readonly distance: number } {
  const observer = new Observer(at.lat, at.lon, 0)
  const when = new Date(instant)
  const { ra, dec, dist } = Equator(body, when, observer, true, true)
  const { azimuth, altitude } = Horizon(when, observer, ra, dec)
  return { azimuth, altitude, distance: dist * KM_PER_AU }
}

/** All of astronomy-engine's risings (1) or settings (-1) within [start, end), or passings of an altitude when one is given. */
export function eventsBy(
  body: Body,
  at: LatLon,
  way: 1 | -1,
  [start, end]: readonly [number, number],
  altitude?: number,
): number[] {
  const observer = new Observer(at.lat, at.lon, 0)
  const found: number[] = []
  for (let from = start; from < end;) {
    const days = (end - from) / 86_400_000
    const next =
      altitude === undefined
        ? SearchRiseSet(body, observer, way, new Date(from), days)
        : SearchAltitude(body, observer, way, new Date(from), days, altitude)
    const instant = next?.date.valueOf() ?? end
    if (instant >= end) break
    found.push(instant)
    from = instant + 60_000
  }
  return found
}
