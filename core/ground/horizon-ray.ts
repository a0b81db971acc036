/** How high the ground stands against the sky in one direction after another, each helped by the one before. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature.ts'
import { degrees } from '#core/units/angle.ts'
import { type BlockMaxima, type MaximaLevel, maximaOf } from './block-maxima.ts'
import { type ElevationGrid, elevationAt } from './elevation-grid.ts'
import {
  AT_END,
  type Crossings,
  type GridLine,
  crossingsBetween,
  distanceAt,
  gridRay,
  highestAcross,
  majorAt,
  minorLineBetween,
  roomForCrossings,
  stripAt,
  stripEnd,
  stripMaximum,
  stripUnknown,
} from './grid-line.ts'
import type { Raised } from './sight.ts'
import { type TrueAxes, alongBearing, trueAxesAt } from './true-north.ts'

/** A look around from one eye. Changed by every `lookTowards`: it holds the answers for the azimuth looked at last. */
export interface Look {
  /** Degrees above the level at which the highest ground appears; NaN where no ground is known. */
  altitude: number
  /** Metres to it. */
  distance: number
  /** Whether unknown ground lies within the grid in that direction. */
  unknown: boolean
  /** Steepest rise so far of the azimuth in hand, metres by metre. */
  steepest: number
  /** The fine strip already looked at, -1 for none. */
  tried: number
  readonly grid: ElevationGrid
  readonly eye: Raised
  readonly maxima: BlockMaxima
  readonly axes: TrueAxes
  readonly crossings: Crossings
  /** Metres by square metre that the ground sinks below the level, refraction taken off. */
  readonly curve: number
  /** Metres above the sea under the eye, and of the highest ground of the grid. */
  readonly ground: number
  readonly top: number
}

const FINE_CELLS = 8
/** Cells from the eye within which ground that peaks inside a cell stands out above the cell's edges. */
const NEAR_CELLS = 32

export function lookFrom(grid: ElevationGrid, eye: Raised, refraction: number): Look {
  const maxima = maximaOf(grid)
  return {
    altitude: Number.NaN,
    distance: Number.NaN,
    unknown: false,
    steepest: -Infinity,
    tried: -1,
    grid,
    eye,
    maxima,
    axes: trueAxesAt(grid, eye),
    crossings: roomForCrossings(FINE_CELLS),
    curve: (1 - refraction) / (2 * MEAN_EARTH_RADIUS),
    ground: elevationAt(grid, eye.east, eye.north) ?? Number.NaN,
    top: maxima.coarse.heights.reduce((one, other) => Math.max(one, other), -Infinity),
  }
}

/** Finds the highest ground at an azimuth from true north, out to a distance in metres or the grid's edge. */
export function lookTowards(look: Look, azimuth: number, reach = Infinity): void {
  const way = alongBearing(look.axes, azimuth)
  const line = gridRay(look.grid, look.eye, way.east, way.north, reach)
  const hint = look.distance
  look.steepest = -Infinity
  look.distance = Number.NaN
  look.unknown = false
  look.tried = -1
  if (line !== null) {
    // What stood against the sky one step aside most likely does so here, and lets nearly all blocks be passed over.
    if (!Number.isNaN(hint)) tryStripAt(look, line, hint)
    overBlocks(look, line, look.maxima.coarse, line.enter, line.leave)
  }
  look.altitude = look.steepest === -Infinity ? Number.NaN : degrees(Math.atan(look.steepest))
}

function tryStripAt(look: Look, line: GridLine, distance: number): void {
  const { fine } = look.maxima
  const at = majorAt(line, distance)
  if (!((at - line.enter) * line.way >= 0 && (line.leave - at) * line.way > 0)) return
  const strip = stripAt(line, fine, at)
  const start = line.way > 0 ? Math.max(strip * fine.span, line.enter) : Math.min((strip + 1) * fine.span, line.enter)
  look.tried = strip
  meetCrossings(look, line, start, stripEnd(line, fine, strip, line.leave))
}

/** Near to far over the blocks of one size; where the ground could rise, over the smaller blocks within. */
function overBlocks(look: Look, line: GridLine, level: MaximaLevel, from: number, to: number): void {
  const { major0, minor0, lean } = line
  const { fine } = look.maxima
  let here = from
  let minor = minor0 + lean * (here - major0)
  let near = distanceAt(line, here)
  const seeksUnknown = level.unknown !== null
  for (let strip = stripAt(line, level, here); here !== to; strip += line.way) {
    // Not even the highest ground of the grid would stand out from here on; a coarse block is soon enough to ask.
    if (level !== fine && !seeksUnknown && !couldRise(look, look.top, near, Infinity)) return
    const end = stripEnd(line, level, strip, to)
    const next = minor0 + lean * (end - major0)
    const far = distanceAt(line, end)
    if (
      couldRise(look, highestAcross(line, level, strip, minor, next), near, far) ||
      (seeksUnknown && !look.unknown && stripUnknown(line, level, strip, here, end))
    ) {
      if (level !== fine) overBlocks(look, line, fine, here, end)
      else if (strip !== look.tried) meetCrossings(look, line, here, end)
    }
    here = end
    minor = next
    near = far
  }
}

/** Whether ground no higher than `highest` between two distances could stand above what was found so far. */
function couldRise(look: Look, highest: number, near: number, far: number): boolean {
  const rise = highest - look.eye.elevation
  const needed = look.steepest + look.curve * near
  // Multiplied, since a division costs as much as all the rest; what lies below the eye looks least steep from afar.
  return rise < 0 ? needed < 0 && rise > needed * far : near <= 0 || rise > needed * near
}

function meetCrossings(look: Look, line: GridLine, from: number, to: number): void {
  const near = (from - line.major0) * line.way < NEAR_CELLS
  if (!near && look.maxima.fine.unknown === null && Number.isInteger(from) && Number.isInteger(to)) {
    meetWhole(look, line, from, to)
    return
  }
  const met = look.crossings
  crossingsBetween(line, from, to, met)
  const nearest = AT_END * look.grid.cell
  const { curve } = look
  const { elevation } = look.eye
  let { steepest } = look
  for (let at = 0; at < met.count; at++) {
    const distance = met.distances[at] as number
    const rise = (met.heights[at] as number) - elevation - curve * distance * distance
    // Multiplied, since a division costs as much as all the rest.
    if (rise > steepest * distance && distance > nearest) {
      steepest = rise / distance
      look.distance = distance
    }
  }
  look.steepest = steepest
  if (look.maxima.fine.unknown !== null && !look.unknown) {
    look.unknown = met.unknown.subarray(0, met.count).includes(1)
  }
  if (near && peaksMayRise(look, line, from, to)) peaksWithin(look, line, from)
}

/** Whether ground of a strip, wherever it peaks, could still stand above what its crossings gave. */
function peaksMayRise(look: Look, line: GridLine, from: number, to: number): boolean {
  const { fine } = look.maxima
  const highest = stripMaximum(line, fine, stripAt(line, fine, from), from, to)
  return couldRise(look, highest, distanceAt(line, from), distanceAt(line, to))
}

/**
 * The crossings from one major line to another over known ground, as `crossingsBetween` finds them, each weighed at once and none
 * written down: it is here that a look around spends its time.
 */
function meetWhole(look: Look, line: GridLine, from: number, to: number): void {
  const { way, major0, minor0, lean, metres, majorStride, minorStride, minorLast } = line
  const { heights } = line.grid
  const { curve } = look
  const { elevation } = look.eye
  let { steepest, distance: at } = look
  let minor = minor0 + lean * (from - major0)
  for (let here = from; ; here += way) {
    const beside = Math.floor(minor)
    const first = beside < 0 ? 0 : beside < minorLast ? beside : minorLast - 1
    const post = here * majorStride + first * minorStride
    const low = heights[post] as number
    const distance = (here - major0) * way * metres
    const rise =
      low + (minor - first) * ((heights[post + minorStride] as number) - low) - elevation - curve * distance * distance
    if (rise > steepest * distance) {
      steepest = rise / distance
      at = distance
    }
    if (here === to) break
    const next = minor0 + lean * (here + way - major0)
    const met = minorLineBetween(minor, next)
    if (met >= 0 && met <= minorLast) {
      const cell = way > 0 ? here : here - 1
      const major = Math.max(cell, Math.min(major0 + (met - minor0) / lean, cell + 1))
      const side = cell * majorStride + met * minorStride
      const one = heights[side] as number
      const along = (major - major0) * way * metres
      const up =
        one + (major - cell) * ((heights[side + majorStride] as number) - one) - elevation - curve * along * along
      if (up > steepest * along) {
        steepest = up / along
        at = along
      }
    }
    minor = next
  }
  look.steepest = steepest
  look.distance = at
}

/** Near the eye the bilinear ground may peak between two crossings: each cell is a parabola along the line. */
function peaksWithin(look: Look, line: GridLine, from: number): void {
  const met = look.crossings
  // Strips meet on a grid line, so only the eye's own cell begins without a crossing.
  let distance = from === line.major0 ? 0 : Number.NaN
  let height = look.ground
  for (let at = 0; at < met.count; at++) {
    const nextDistance = met.distances[at] as number
    const nextHeight = met.heights[at] as number
    if (nextDistance - distance > AT_END * look.grid.cell) {
      peakOfCell(look, line, distance, height, nextDistance, nextHeight)
    }
    distance = nextDistance
    height = nextHeight
  }
}

/** Ground a + b d + c d^2 between two crossings of one cell: where seen from the eye it rises steepest, if that is inside. */
function peakOfCell(
  look: Look,
  line: GridLine,
  near: number,
  nearHeight: number,
  far: number,
  farHeight: number,
): void {
  const post = postBefore(line, (near + far) / 2)
  const { heights } = line.grid
  const one = heights[post] as number
  const along = heights[post + line.majorStride] as number
  const across = heights[post + line.minorStride] as number
  const opposite = heights[post + line.majorStride + line.minorStride] as number
  if (!couldRise(look, Math.max(one, along, across, opposite), near, far)) return
  const twist = ((one + opposite - along - across) * line.lean) / (line.metres * line.metres)
  const grade = (farHeight - nearHeight) / (far - near)
  const below = nearHeight - grade * near + twist * near * far - look.eye.elevation
  const bend = twist - look.curve
  if (!(below < 0 && bend < 0)) return
  const distance = Math.sqrt(below / bend)
  if (!(distance > near && distance < far)) return
  const slope = below / distance + grade - twist * (near + far) + bend * distance
  if (slope > look.steepest) {
    look.steepest = slope
    look.distance = distance
  }
}

/** The first of the four posts around a point of the line. */
function postBefore(line: GridLine, distance: number): number {
  const major = majorAt(line, distance)
  const first = Math.max(0, Math.min(Math.floor(major), line.majorLast - 1))
  const minor = Math.floor(line.minor0 + line.lean * (major - line.major0))
  return first * line.majorStride + Math.max(0, Math.min(minor, line.minorLast - 1)) * line.minorStride
}
