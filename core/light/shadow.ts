/** Shadows on level ground: how long, toward where, and their outline. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { RADIANS_PER_DEGREE, wrapBearing } from '#core/units/angle.ts'

/** Degrees of apparent altitude at and under which no shadow is told: the disc stands on the horizon. */
export const LOWEST_LIGHT = 0.3
/** Metres beyond which a shadow on ground taken as level means nothing. */
export const LONGEST_SHADOW = 5000

const LOWEST_RISE = Math.sin(LOWEST_LIGHT * RADIANS_PER_DEGREE)

/** Metres; null when the light (apparent altitude, degrees) is too low to tell. */
export function shadowLength(height: number, altitude: number): number | null {
  if (altitude <= LOWEST_LIGHT) return null
  const length = height / Math.tan(Math.min(altitude, 90) * RADIANS_PER_DEGREE)
  return length > LONGEST_SHADOW ? null : length
}

/** The bearing toward which shadows fall. */
export function shadowBearing(azimuth: number): number {
  return wrapBearing(azimuth + 180)
}

/**
 * Outline of the shadow that a convex thing casts on the plane up = 0 of its frame, the ground it stands on included: the hull of
 * its points and of where the light carries them, anticlockwise seen from above. `direction` points toward the light (unit, at
 * its apparent altitude). Null when the light is too low or the shadow reaches too far. A thing that isn't convex casts no more.
 */
export function shadowOf(corners: readonly LocalPoint[], direction: LocalPoint): readonly LocalPoint[] | null {
  if (direction.up <= LOWEST_RISE) return null
  const east = direction.east / direction.up
  const north = direction.north / direction.up
  const reach = Math.sqrt(east * east + north * north)
  const cast: LocalPoint[] = []
  for (const corner of corners) {
    // Over a long thing the earth falls away below the plane; such a point stays where it is.
    const up = Math.max(0, corner.up)
    if (up * reach > LONGEST_SHADOW) return null
    cast.push({ east: corner.east - up * east, north: corner.north - up * north, up: 0 })
  }
  return hull(cast)
}

/** Positive when a, b, c turn to the left. */
function turning(a: LocalPoint, b: LocalPoint, c: LocalPoint): number {
  return (b.east - a.east) * (c.north - a.north) - (b.north - a.north) * (c.east - a.east)
}

/** One side of the hull of points in order, its last point left out. */
function chain(points: readonly LocalPoint[]): LocalPoint[] {
  const kept: LocalPoint[] = []
  for (const point of points) {
    let last = kept.at(-1)
    let before = kept.at(-2)
    while (last !== undefined && before !== undefined && turning(before, last, point) <= 0) {
      kept.pop()
      last = before
      before = kept.at(-2)
    }
    kept.push(point)
  }
  kept.pop()
  return kept
}

/** Convex hull in the plane (Andrew's monotone chain; turf's works on longitude and latitude). */
function hull(points: readonly LocalPoint[]): LocalPoint[] {
  const sorted = points.toSorted((a, b) => a.east - b.east || a.north - b.north)
  const outline = [...chain(sorted), ...chain(sorted.toReversed())]
  return outline.length === 0 ? sorted.slice(0, 1) : outline
}
