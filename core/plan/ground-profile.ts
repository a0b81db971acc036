/** The ground from the lens to the landmark as a line: its heights, the sightlines over it, and what stands on it. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, type GridPoint, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { type Profile, drawable, profile } from '#core/ground/profile.ts'
import { screenCrossings } from '#core/ground/screen.ts'
import { type Raised, sightElevation } from '#core/ground/sight.ts'
import { type Sightline, type Tightest, sightline } from '#core/ground/sightline.ts'
import { lensOn, mainPost } from './ground-reading.ts'
import type { Levels, Plan } from './plan.ts'

/** A screen where the line crosses it. */
export interface ScreenOnLine {
  /** Index among the shoot's screens. */
  readonly screen: number
  /** Metres from the lens. */
  readonly distance: number
  /** Metres above the sea. */
  readonly foot: number
  readonly top: number
}

export interface GroundProfile {
  /** Metres from the lens to the landmark's middle. */
  readonly length: number
  /** Metres above the sea along the line, as many points as a drawing needs; NaN where unknown. */
  readonly ground: Profile
  readonly eye: Raised
  readonly target: GridPoint
  /** Metres above the sea of the landmark's foot and top at its middle. */
  readonly low: number
  readonly high: number
  readonly sight: Sightline
  /** Where the line to the foot runs tightest, or what hides the most of the landmark; null over unknown ground. */
  readonly tightest: Tightest | null
  readonly screens: readonly ScreenOnLine[]
  /** Metres from the lens toward the subject, and metres above the sea of its foot and top. */
  readonly subject: { readonly distance: number; readonly low: number; readonly high: number }
  readonly refraction: number
  readonly grid: ElevationGrid
}

const POINTS = 420

/** Null without elevations, without a landmark, and when the camera stands at the landmark's very middle. */
export function groundProfile(plan: Plan, levels: Levels): GroundProfile | null {
  const { terrain: grid, landmark, shoot, spot } = plan
  const post = landmark === null ? null : mainPost(landmark, levels.landmark)
  if (grid === null || post === null) return null
  const eye = lensOn(grid, plan, levels)
  const target = gridPoint(grid, post.at)
  const { low, high } = post
  const { refraction, screens } = shoot
  const sight = sightline(grid, eye, { ...target, low, high }, refraction, screens)
  if (!(sight.distance > 0)) return null
  const stop = gridPoint(grid, spot.stop.at)
  return {
    length: sight.distance,
    ground: drawable(profile(grid, eye, target), POINTS),
    eye,
    target,
    low,
    high,
    sight,
    tightest: sight.hiddenBy ?? sight.toLow,
    screens: screenCrossings(grid, eye, target, screens).flatMap(({ screen, distance, top }) =>
      top === null ? [] : [{ screen, distance, foot: top - (screens[screen]?.height ?? 0), top }],
    ),
    subject: {
      distance: Math.hypot(stop.east - eye.east, stop.north - eye.north),
      low: levels.stop,
      high: levels.stop + shoot.subject.height,
    },
    refraction,
    grid,
  }
}

/**
 * Metres above the sea of the sightline to the landmark's foot or top at a distance along it. Heights are told above the curved sea,
 * so it is the line that sags by the earth's curve, less refraction.
 */
export function lineHeight(line: GroundProfile, to: 'low' | 'high', distance: number): number {
  return sightElevation(line.eye.elevation, line[to], distance, line.length, line.refraction)
}

/** Metres above the sea of the ground at a distance along the line, straight between its points; null where unknown. */
export function groundHeight(line: GroundProfile, distance: number): number | null {
  const { distances, elevations } = line.ground
  const next = distances.findIndex((other) => other >= distance)
  if (next === -1) return null
  const before = Math.max(0, next - 1)
  const [from = 0, to = 0] = [distances[before], distances[next]]
  const [low = Number.NaN, high = Number.NaN] = [elevations[before], elevations[next]]
  const height = to === from ? high : low + ((high - low) * (distance - from)) / (to - from)
  return Number.isNaN(height) ? null : height
}

/** The place under the line at a distance from the lens. */
export function placeAlong(line: GroundProfile, distance: number): LatLon {
  const share = distance / line.length
  const { eye, target } = line
  return placeOnGrid(
    line.grid,
    eye.east + share * (target.east - eye.east),
    eye.north + share * (target.north - eye.north),
  )
}
