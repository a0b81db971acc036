/** The ground from the lens to the landmark as a line: its heights, the sightlines over it, and what stands on it. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, type GridPoint, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { type Profile, drawable, profile } from '#core/ground/profile.ts'
import { type ObstructionCrossing, obstructionCrossings } from '#core/ground/obstruction.ts'
import { type Raised, sightElevation } from '#core/ground/sight.ts'
import type { Sightline, Tightest } from '#core/ground/sightline.ts'
import { lensOn, subjectPost } from './ground-reading.ts'
import { footOnGrid, mainPost, onGrid, postSight } from './landmark-shown.ts'
import type { Levels, Plan } from './plan.ts'

/** An obstruction where the line crosses it. */
export interface ObstructionOnLine {
  /** Index among the shoot's obstructions. */
  readonly obstruction: number
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
  /** Metres above the sea of the landmark's foot and top at its middle; of a summit, of its upper part as the lens sees it. */
  readonly low: number
  readonly high: number
  readonly sight: Sightline
  /**
   * Where the line to the foot runs tightest: where the ground or an obstruction stands highest above it, or else the crest or obstruction nearest
   * below it; null when nothing comes near.
   */
  readonly tightest: Tightest | null
  readonly obstructions: readonly ObstructionOnLine[]
  /** Metres from the lens toward the subject, and metres above the sea of its foot and top. */
  readonly subject: { readonly distance: number; readonly low: number; readonly high: number }
  readonly refraction: number
  readonly grid: ElevationGrid
}

const POINTS = 420

/** Null without elevations, without a landmark, and when the camera stands at the landmark's very middle. */
export function groundProfile(plan: Plan, levels: Levels): GroundProfile | null {
  const { terrain: grid, landmark, shoot } = plan
  if (grid === null || landmark === null) return null
  const post = mainPost(landmark, footOnGrid(grid, landmark, levels.landmark, levels.from.landmark))
  if (post === null) return null
  const eye = lensOn(grid, plan, levels)
  const target = gridPoint(grid, post.at)
  const { refraction, obstructions } = shoot
  const { sight, low, high, begins } = postSight(grid, eye, onGrid(grid, post), refraction, obstructions)
  if (!(sight.distance > 0)) return null
  const subject = onGrid(grid, subjectPost(grid, plan, levels))
  const whole = profile(grid, eye, target)
  const crossings = obstructionCrossings(grid, eye, target, obstructions)
  return {
    length: sight.distance,
    ground: drawable(whole, POINTS),
    eye,
    target,
    low,
    high,
    sight,
    tightest:
      sight.hiddenBy === null
        ? nearestCrest(whole, eye, { ...target, low }, refraction, crossings, begins)
        : sight.toLow,
    obstructions: crossings.flatMap(({ obstruction, distance, top }) =>
      top === null ? [] : [{ obstruction, distance, foot: top - (obstructions[obstruction]?.height ?? 0), top }],
    ),
    subject: {
      distance: Math.hypot(subject.east - eye.east, subject.north - eye.north),
      low: subject.low,
      high: subject.high,
    },
    refraction,
    grid,
  }
}

/** Metres that the room under a line must grow again on both sides of a point for it to count as a crest. */
const CREST_STANDS_OUT = 0.5

interface Over {
  readonly clearance: number
  readonly distance: number
  readonly obstruction: number | null
}

/** Points at which the room under the line is less, by enough, than somewhere before and somewhere after. */
function crestsUnder(whole: Profile, lineAt: (distance: number) => number, until: number): Over[] {
  const before = whole.distances.filter((distance) => distance <= until)
  const room = before.map((distance, at) => lineAt(distance) - (whole.elevations[at] as number))
  const mostAfter = mostFromThere(room)
  const crests: Over[] = []
  let mostBefore = -Infinity
  room.forEach((clearance, at) => {
    if (Number.isNaN(clearance)) return
    if (Math.min(mostBefore, mostAfter[at] as number) - clearance >= CREST_STANDS_OUT)
      crests.push({ clearance, distance: whole.distances[at] as number, obstruction: null })
    mostBefore = Math.max(mostBefore, clearance)
  })
  return crests
}

/**
 * Where the line to the foot passes nearest over a crest or an obstruction. At its two ends it comes down to the ground in any case, which
 * says nothing: a crest is where the room under it is less than on both sides.
 */
function nearestCrest(
  whole: Profile,
  eye: Raised,
  foot: GridPoint & { readonly low: number },
  refraction: number,
  crossings: readonly ObstructionCrossing[],
  until: number,
): Tightest | null {
  const lineAt = (distance: number): number =>
    sightElevation(eye.elevation, foot.low, distance, whole.length, refraction)
  const obstructions = crossings.flatMap(({ distance, top, obstruction }) =>
    top === null || distance > until ? [] : [{ clearance: lineAt(distance) - top, distance, obstruction }],
  )
  const nearest = [...crestsUnder(whole, lineAt, until), ...obstructions].reduce<Over | null>(
    (least, over) => (least === null || over.clearance < least.clearance ? over : least),
    null,
  )
  if (nearest === null) return null
  const share = nearest.distance / whole.length
  return {
    ...nearest,
    east: eye.east + share * (foot.east - eye.east),
    north: eye.north + share * (foot.north - eye.north),
  }
}

/** The largest of each value and those after it, unknown ones left out. */
function mostFromThere(values: Float64Array): Float64Array {
  const most = Float64Array.from(values)
  for (let index = most.length - 2; index >= 0; index--) {
    const [own, next] = [most[index] as number, most[index + 1] as number]
    if (Number.isNaN(own) || next > own) most[index] = next
  }
  return most
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
