/** Sun or moon by one name, for what is asked of both: a centre, a radius, a point of the limb, whether it is up. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { RADIANS_PER_DEGREE, degrees } from '#core/units/angle.ts'
import { apparentAltitude } from './refraction.ts'
import { type BodyPlace, SUN_RADIUS, moonAt, sunAt } from './sky.ts'

export type Body = 'sun' | 'moon'

/** A body's centre without air, and its angular radius in degrees. */
export interface BodyDisc extends BodyPlace {
  readonly radius: number
}

/** A point of the disc in radii from its centre, along the horizon (clockwise, to the right, is positive) and up. */
export interface DiscPoint {
  readonly across: -1 | 0 | 1
  readonly up: -1 | 0 | 1
}

export const CENTRE: DiscPoint = { across: 0, up: 0 }
export const LOWER_LIMB: DiscPoint = { across: 0, up: -1 }
export const UPPER_LIMB: DiscPoint = { across: 0, up: 1 }
export const LEFT_LIMB: DiscPoint = { across: -1, up: 0 }
export const RIGHT_LIMB: DiscPoint = { across: 1, up: 0 }

export function bodyAt(body: Body, at: LatLon, instant: number): BodyDisc {
  if (body === 'moon') return moonAt(at, instant)
  const { azimuth, altitude } = sunAt(at, instant)
  return { azimuth, altitude, radius: SUN_RADIUS }
}

/** Where a point of the disc stands, without air. */
export function discPlace(disc: BodyDisc, point: DiscPoint): BodyPlace {
  if (point.across === 0) return { azimuth: disc.azimuth, altitude: disc.altitude + point.up * disc.radius }
  const wide = Math.sin(disc.radius * RADIANS_PER_DEGREE) / Math.cos(disc.altitude * RADIANS_PER_DEGREE)
  const aside = degrees(Math.asin(Math.min(1, wide)))
  return { azimuth: disc.azimuth + point.across * aside, altitude: disc.altitude + point.up * disc.radius }
}

/** Whether some of the disc stands above the level horizon, as it appears. */
export function isUp(disc: BodyDisc): boolean {
  return apparentAltitude(discPlace(disc, UPPER_LIMB).altitude) > 0
}
