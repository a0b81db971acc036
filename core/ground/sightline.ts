/** The line of sight from the lens to an upright thing: how much of it shows, what hides the rest, how tight the line runs. */
import { type ElevationGrid, type GridPoint, elevationAt } from './elevation-grid.ts'
import { AT_END, type Crossings, type GridLine } from './grid-line.ts'
import { gapsOf, lastEnd, ringLines } from './rings.ts'
import { type Obstruction, type ObstructionCrossing, obstructionCrossings } from './obstruction.ts'
import { type Raised, bulge, lowestBetween, sightElevation, walkRings } from './sight.ts'

/** A thing that stands at a point, from its foot to its top, metres above the sea. */
export interface UprightTarget extends GridPoint {
  readonly low: number
  readonly high: number
}

/** The point at which a line of sight runs tightest. */
export interface Tightest {
  /** Metres above the ground or the obstruction there; negative when it hides. */
  readonly clearance: number
  /** Metres from the eye. */
  readonly distance: number
  readonly east: number
  readonly north: number
  /** Index of the obstruction that it is; null for the ground. */
  readonly obstruction: number | null
}

export interface Sightline {
  /** Metres from the eye to the thing. */
  readonly distance: number
  /** Of the line to the foot and of the line to the top; null where nothing known lies between. */
  readonly toLow: Tightest | null
  readonly toHigh: Tightest | null
  /** What hides the most of the thing; its clearance is that of the line to the foot. Null when nothing is hidden, or nothing known. */
  readonly hiddenBy: Tightest | null
  /** Metres of the thing hidden from its foot upward; null when all the ground between is unknown. */
  readonly hidden: number | null
  /** Share of its height that shows, 0..1; of the known ground alone; null when all of it is unknown. */
  readonly visibleShare: number | null
  /** How much of the ground between is known. */
  readonly ground: 'known' | 'partly-known' | 'unknown'
}

/** Mutable while the line is walked. */
interface Found {
  low: number
  lowAt: number
  lowObstruction: number | null
  high: number
  highAt: number
  highObstruction: number | null
  /** Metres above the sea at the thing, below which it is hidden. */
  sill: number
  sillAt: number
  sillObstruction: number | null
  sillClearance: number
  known: boolean
  unknown: boolean
}

/** Looks from the eye at the thing over the ground and the obstructions. Throws a RangeError for a thing whose top is below its foot. */
export function sightline(
  grid: ElevationGrid,
  eye: Raised,
  target: UprightTarget,
  refraction: number,
  obstructions: readonly Obstruction[] = [],
): Sightline {
  if (!(target.high >= target.low)) throw new RangeError(`top ${target.high} below base ${target.low}`)
  const distance = Math.hypot(target.east - eye.east, target.north - eye.north)
  const found = nothingYet(target)
  if (distance > 0) {
    lookOverGround(grid, eye, target, refraction, distance, found)
    for (const crossing of obstructionCrossings(grid, eye, target, obstructions)) {
      meetObstruction(grid, eye, target, refraction, distance, crossing, found)
    }
  } else found.known = true
  return sightlineFrom(eye, target, distance, found)
}

function nothingYet(target: UprightTarget): Found {
  return {
    low: Infinity,
    lowAt: 0,
    lowObstruction: null,
    high: Infinity,
    highAt: 0,
    highObstruction: null,
    sill: target.low,
    sillAt: 0,
    sillObstruction: null,
    sillClearance: 0,
    known: false,
    unknown: false,
  }
}

function lookOverGround(
  grid: ElevationGrid,
  eye: Raised,
  target: UprightTarget,
  refraction: number,
  whole: number,
  found: Found,
): void {
  found.unknown = [eye, target].some((end) => elevationAt(grid, end.east, end.north) === null)
  const lines = ringLines(grid, eye, target)
  if (lines.length > 0) walk(grid, lines, eye, target, refraction, whole, found)
  if (!isCovered(lines, whole)) found.unknown = true
  // Both ends within one known cell: nothing to cross, nothing unknown.
  if (!found.unknown) found.known = true
}

/** Whether some ring lies under the whole line; one shorter than its cells has no stretch of its own. */
function isCovered(lines: readonly GridLine[], whole: number): boolean {
  if (gapsOf(lines, AT_END).length > 0) return false
  return lines.length === 0 || whole - lastEnd(lines) <= AT_END * whole
}

function walk(
  grid: ElevationGrid,
  lines: readonly GridLine[],
  eye: Raised,
  target: UprightTarget,
  refraction: number,
  whole: number,
  found: Found,
): void {
  const nearest = AT_END * grid.cell
  walkRings(lines, {
    passes: (highest, from, to) => {
      if (highest === -Infinity) return true
      // The walk goes from the eye outward. What lies farther and runs no tighter to the foot than so far runs no tighter to the top
      // either, and hides less: one bound serves all three answers.
      return lowestBetween(eye.elevation, target.low, whole, refraction, from, to) - highest >= found.low
    },
    seeksUnknown: () => !(found.unknown && found.known),
    meets: (met) => {
      meetGround(met, eye, target, refraction, whole, nearest, found)
      return false
    },
  })
}

function meetGround(
  met: Crossings,
  eye: Raised,
  target: UprightTarget,
  refraction: number,
  whole: number,
  nearest: number,
  found: Found,
): void {
  for (let at = 0; at < met.count; at++) {
    const distance = met.distances[at] as number
    if (distance < nearest || distance > whole - nearest) continue
    const height = met.heights[at] as number
    if (met.unknown[at] === 1) found.unknown = true
    if (Number.isNaN(height)) continue
    found.known = true
    hold(height, distance, null, eye, target, refraction, whole, found)
  }
}

function meetObstruction(
  grid: ElevationGrid,
  eye: Raised,
  target: UprightTarget,
  refraction: number,
  whole: number,
  crossing: ObstructionCrossing,
  found: Found,
): void {
  const nearest = AT_END * grid.cell
  if (crossing.distance < nearest || crossing.distance > whole - nearest) return
  if (crossing.top === null) found.unknown = true
  else hold(crossing.top, crossing.distance, crossing.obstruction, eye, target, refraction, whole, found)
}

/** Holds both lines against a height at a distance. */
function hold(
  height: number,
  distance: number,
  obstruction: number | null,
  eye: Raised,
  target: UprightTarget,
  refraction: number,
  whole: number,
  found: Found,
): void {
  const low = sightElevation(eye.elevation, target.low, distance, whole, refraction) - height
  const high = sightElevation(eye.elevation, target.high, distance, whole, refraction) - height
  if (low < found.low) {
    found.low = low
    found.lowAt = distance
    found.lowObstruction = obstruction
  }
  if (high < found.high) {
    found.high = high
    found.highAt = distance
    found.highObstruction = obstruction
  }
  if (low >= 0) return
  const share = distance / whole
  const sill = (height + bulge(distance, whole, refraction) - eye.elevation * (1 - share)) / share
  if (sill > found.sill) {
    found.sill = sill
    found.sillAt = distance
    found.sillObstruction = obstruction
    found.sillClearance = low
  }
}

function sightlineFrom(eye: Raised, target: UprightTarget, distance: number, found: Found): Sightline {
  const tightest = (clearance: number, at: number, obstruction: number | null): Tightest | null => {
    if (clearance === Infinity) return null
    const share = distance > 0 ? at / distance : 0
    const east = eye.east + share * (target.east - eye.east)
    const north = eye.north + share * (target.north - eye.north)
    return { clearance, distance: at, east, north, obstruction }
  }
  const height = target.high - target.low
  const hidden = Math.min(Math.max(0, found.sill - target.low), height)
  const pointShows = found.sill > target.low ? 0 : 1
  return {
    distance,
    toLow: tightest(found.low, found.lowAt, found.lowObstruction),
    toHigh: tightest(found.high, found.highAt, found.highObstruction),
    hiddenBy: found.sill > target.low ? tightest(found.sillClearance, found.sillAt, found.sillObstruction) : null,
    hidden: found.known ? hidden : null,
    visibleShare: found.known ? (height > 0 ? 1 - hidden / height : pointShows) : null,
    ground: found.known ? (found.unknown ? 'partly-known' : 'known') : 'unknown',
  }
}
