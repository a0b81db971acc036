/** The skyline around a point: how high the ground stands against the sky at every azimuth, and how far off it is. */
import { wrapBearing } from '#core/units/angle.ts'
import { valueAround } from '#core/units/around.ts'
import { type ElevationGrid, elevationAt } from './elevation-grid.ts'
import { lookFrom } from './horizon-look.ts'
import { lookTowards } from './horizon-ray.ts'
import type { Raised } from './sight.ts'

/** Every value of one azimuth in turn, from true north clockwise in equal steps. */
export interface Skyline {
  /** Degrees from one azimuth to the next. */
  readonly step: number
  /** Degrees above the level at which the highest known ground appears, refraction in it: the sea's horizon at the least. */
  readonly altitudes: Float32Array
  /** Metres to what makes the skyline. */
  readonly distances: Float32Array
  /** Metres to the nearest unknown ground at that azimuth that could stand higher; NaN where the skyline is as it says. */
  readonly unknown: Float32Array
}

const STEP = 0.25

/** The eye so many metres above the ground at a point; null where the ground there is unknown. */
export function eyeAbove(grid: ElevationGrid, east: number, north: number, height: number): Raised | null {
  const ground = elevationAt(grid, east, north)
  return ground === null ? null : { east, north, elevation: ground + height }
}

/** The skyline seen from an eye, out to where the last ring ends, by refraction coefficient k. */
export function skyline(grid: ElevationGrid, eye: Raised, refraction: number, step = STEP): Skyline {
  const count = Math.round(360 / step)
  const altitudes = new Float32Array(count)
  const distances = new Float32Array(count)
  const unknown = new Float32Array(count)
  const look = lookFrom(grid, eye, refraction)
  for (let index = 0; index < count; index++) {
    lookTowards(look, index * step)
    altitudes[index] = look.altitude
    distances[index] = look.distance
    unknown[index] = look.unknown
  }
  return { step, altitudes, distances, unknown }
}

/** Degrees above the level of the skyline at any azimuth, straight between the two next to it; null where it is unknown. */
export function skylineAt(line: Pick<Skyline, 'altitudes' | 'step'>, azimuth: number): number | null {
  return valueAround(line.altitudes, line.step, azimuth)
}

/** Metres to what makes the skyline at the azimuth nearest to one; null where no ground is known. */
export function skylineDistanceAt(line: Skyline, azimuth: number): number | null {
  const distance = line.distances[Math.round(wrapBearing(azimuth) / line.step) % line.distances.length] ?? Number.NaN
  return Number.isNaN(distance) ? null : distance
}

/**
 * Degrees above the level up to which ground nearer than a distance covers what stands there, for each azimuth; null where no
 * ground is known. For the hidden parts of a thing that has a width. It counts ground up to the last line between cell centres before it.
 */
export function groundBefore(
  grid: ElevationGrid,
  eye: Raised,
  refraction: number,
  azimuths: readonly number[],
  distance: number,
): (number | null)[] {
  const look = lookFrom(grid, eye, refraction)
  return azimuths.map((azimuth) => {
    lookTowards(look, azimuth, distance)
    return Number.isNaN(look.altitude) ? null : look.altitude
  })
}
