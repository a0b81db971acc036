/** Trees and walls against the sky: a skyline with the user's obstructions standing on its ground. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { degrees, turnBetween, wrapBearing } from '#core/units/angle.ts'
import type { ElevationGrid, GridPoint } from './elevation-grid.ts'
import { AT_END } from './grid-line.ts'
import {
  type PlacedObstruction,
  type Obstruction,
  placedObstructions,
  obstructionTop,
  shareOfCrossing,
} from './obstruction.ts'
import type { Raised } from './sight.ts'
import type { Skyline } from './skyline.ts'
import { type TrueAxes, alongBearing, bearingAlong, trueAxesAt } from './true-north.ts'

/** What stands highest among the obstructions in one direction. */
export interface ObstructionEdge {
  /** Degrees above the level at which its top appears, refraction in it. */
  readonly altitude: number
  /** Metres to it. */
  readonly distance: number
}

interface Sight {
  readonly grid: ElevationGrid
  readonly eye: Raised
  /** Metres by square metre that the ground sinks below the level, refraction taken off. */
  readonly curve: number
}

function sightOf(grid: ElevationGrid, eye: Raised, refraction: number): Sight {
  return { grid, eye, curve: (1 - refraction) / (2 * MEAN_EARTH_RADIUS) }
}

/** A point of a direction beyond every corner. */
function farAlong({ eye }: Sight, way: GridPoint, reach: number): GridPoint {
  return { east: eye.east + way.east * reach, north: eye.north + way.north * reach }
}

function reachOf({ eye }: Sight, corners: readonly GridPoint[]): number {
  return corners.reduce((far, corner) => Math.max(far, Math.hypot(corner.east - eye.east, corner.north - eye.north)), 0)
}

/** Where a look meets one stretch of an obstruction; null where it does not, or over unknown ground. */
function edgeOf(
  sight: Sight,
  far: GridPoint,
  one: GridPoint,
  other: GridPoint,
  height: number,
): ObstructionEdge | null {
  const { grid, eye, curve } = sight
  const share = shareOfCrossing(eye, far, one, other)
  if (share === null) return null
  const distance = share * Math.hypot(far.east - eye.east, far.north - eye.north)
  // The eye on an obstruction looks past it, as lines of sight do.
  if (distance < AT_END * grid.cell) return null
  const top = obstructionTop(grid, eye, far, share, height)
  if (top === null) return null
  return { altitude: degrees(Math.atan((top - eye.elevation) / distance - curve * distance)), distance }
}

function higher(one: ObstructionEdge | null, other: ObstructionEdge | null): ObstructionEdge | null {
  if (one === null || other === null) return one ?? other
  return other.altitude > one.altitude ? other : one
}

/** The highest obstruction at an azimuth from true north; null where none stands. */
export function obstructionEdgeTowards(
  grid: ElevationGrid,
  eye: Raised,
  refraction: number,
  obstructions: readonly Obstruction[],
  azimuth: number,
): ObstructionEdge | null {
  if (obstructions.length === 0) return null
  const sight = sightOf(grid, eye, refraction)
  const way = alongBearing(trueAxesAt(grid, eye), azimuth)
  let found: ObstructionEdge | null = null
  for (const { corners, height } of placedObstructions(grid, obstructions)) {
    const far = farAlong(sight, way, 2 * reachOf(sight, corners) + 1)
    for (let at = 1; at < corners.length; at++)
      found = higher(found, edgeOf(sight, far, corners[at - 1] as GridPoint, corners[at] as GridPoint, height))
  }
  return found
}

/** The indices of the azimuths between two points as the eye sees them, and one more to either side. */
function between(axes: TrueAxes, eye: Raised, one: GridPoint, other: GridPoint, step: number): [number, number] {
  const from = bearingAlong(axes, { east: one.east - eye.east, north: one.north - eye.north })
  const turn = turnBetween(from, bearingAlong(axes, { east: other.east - eye.east, north: other.north - eye.north }))
  const [low, high] = turn < 0 ? [from + turn, from] : [from, from + turn]
  return [Math.floor(low / step) - 1, Math.ceil(high / step) + 1]
}

interface Raising {
  readonly sight: Sight
  readonly axes: TrueAxes
  readonly step: number
  readonly altitudes: Float32Array
  readonly distances: Float32Array
}

function raise({ sight, axes, step, altitudes, distances }: Raising, { corners, height }: PlacedObstruction): void {
  const reach = 2 * reachOf(sight, corners) + 1
  for (let at = 1; at < corners.length; at++) {
    const [one, other] = [corners[at - 1] as GridPoint, corners[at] as GridPoint]
    const [first, last] = between(axes, sight.eye, one, other, step)
    for (let index = first; index <= last; index++) {
      const way = alongBearing(axes, index * step)
      const edge = edgeOf(sight, farAlong(sight, way, reach), one, other, height)
      if (edge === null) continue
      const place = Math.round(wrapBearing(index * step) / step) % altitudes.length
      if (edge.altitude <= (altitudes[place] as number)) continue
      altitudes[place] = edge.altitude
      distances[place] = edge.distance
    }
  }
}

/** The skyline seen from an eye with obstructions on the ground; the same object where there are none. */
export function obstructedSkyline(
  line: Skyline,
  grid: ElevationGrid,
  eye: Raised,
  refraction: number,
  obstructions: readonly Obstruction[],
): Skyline {
  if (obstructions.length === 0) return line
  const made = { ...line, altitudes: line.altitudes.slice(), distances: line.distances.slice() }
  const raising = { ...made, sight: sightOf(grid, eye, refraction), axes: trueAxesAt(grid, eye) }
  for (const obstruction of placedObstructions(grid, obstructions)) raise(raising, obstruction)
  return made
}
