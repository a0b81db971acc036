/** Light on a face: the angle at which it strikes, and the word for that. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { RADIANS_PER_DEGREE, degrees } from '#core/units/angle.ts'

/** Unit vector (east, north, up) toward a body at an azimuth and an altitude, degrees. */
export function sunDirection(azimuth: number, altitude: number): LocalPoint {
  const turn = azimuth * RADIANS_PER_DEGREE
  const rise = altitude * RADIANS_PER_DEGREE
  const level = Math.cos(rise)
  return { east: Math.sin(turn) * level, north: Math.cos(turn) * level, up: Math.sin(rise) }
}

/**
 * Degrees 0..180 between a face's outward normal and the direction toward the light, both in one frame; under 90 the light is
 * before the face. By the arc tangent, which unlike the arc cosine stays exact near 0 and 180.
 */
export function incidence(normal: LocalPoint, direction: LocalPoint): number {
  const along = normal.east * direction.east + normal.north * direction.north + normal.up * direction.up
  const east = normal.north * direction.up - normal.up * direction.north
  const north = normal.up * direction.east - normal.east * direction.up
  const up = normal.east * direction.north - normal.north * direction.east
  return degrees(Math.atan2(Math.sqrt(east * east + north * north + up * up), along))
}

export type Strike = 'square-on' | 'slanting' | 'raking' | 'in-shade'

/** Degrees of incidence from which light slants, rakes, and no longer reaches the face (the first two: common practice, no source). */
export const SLANTING_FROM = 30
export const RAKING_FROM = 60
export const SHADE_FROM = 90

export function strikeOf(incidence: number): Strike {
  if (incidence >= SHADE_FROM) return 'in-shade'
  if (incidence >= RAKING_FROM) return 'raking'
  return incidence >= SLANTING_FROM ? 'slanting' : 'square-on'
}
