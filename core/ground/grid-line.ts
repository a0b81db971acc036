/** A straight line over a grid: where it crosses the lines between cell centres, and the highest ground of the blocks it passes. */
import type { MaximaLevel } from './block-maxima.ts'
import type { ElevationGrid, GridPoint } from './elevation-grid.ts'

/**
 * The line runs along its major axis (columns or rows, whichever it crosses more of), in cells: minor = minor0 + lean * (major - major0)
 * with |lean| <= 1, so between two major lines it meets at most one minor line and the crossings come in order by themselves.
 */
export interface GridLine {
  readonly grid: ElevationGrid
  /** True when the rows are the major axis. */
  readonly steep: boolean
  readonly major0: number
  readonly minor0: number
  readonly lean: number
  /** 1 or -1: the way along the major axis. */
  readonly way: 1 | -1
  /** Metres along the line for one cell of the major axis. */
  readonly metres: number
  /** The part of the line over the grid, in cells of the major axis, in the line's own order. */
  readonly enter: number
  readonly leave: number
  /** Steps in `heights` for one cell along each axis, and the last cell centre on each. */
  readonly majorStride: number
  readonly minorStride: number
  readonly majorLast: number
  readonly minorLast: number
}

/** Nearer than this share of a cell to an end of a line, a crossing is the end itself and is left out. */
export const AT_END = 1e-6

/** The line from one point towards another and as far; null when no part of it lies over the grid. */
export function gridLine(grid: ElevationGrid, from: GridPoint, to: GridPoint): GridLine | null {
  return gridRay(grid, from, to.east - from.east, to.north - from.north, 1)
}

/** The line from a point along a direction of any length, `reach` times that far (Infinity: to the grid's edge). */
export function gridRay(
  grid: ElevationGrid,
  from: GridPoint,
  east: number,
  north: number,
  reach: number,
): GridLine | null {
  const steep = Math.abs(north) > Math.abs(east)
  const column = (from.east - grid.west) / grid.cell
  const row = (grid.north - from.north) / grid.cell
  const run = (steep ? -north : east) / grid.cell
  const rise = (steep ? east : -north) / grid.cell
  const majorLast = (steep ? grid.rows : grid.columns) - 1
  const minorLast = (steep ? grid.columns : grid.rows) - 1
  if (run === 0 || majorLast < 1 || minorLast < 1) return null
  const major0 = steep ? row : column
  const minor0 = steep ? column : row
  const lean = rise / run
  const [low, high] = overGrid(major0, minor0, lean, majorLast, minorLast)
  const end = major0 + run * reach
  const enter = run > 0 ? Math.max(major0, low) : Math.min(major0, high)
  const leave = run > 0 ? Math.min(end, high) : Math.max(end, low)
  if (!((leave - enter) * run > 0)) return null
  return {
    grid,
    steep,
    major0,
    minor0,
    lean,
    way: run > 0 ? 1 : -1,
    metres: grid.cell * Math.sqrt(1 + lean * lean),
    enter,
    leave,
    majorStride: steep ? grid.columns : 1,
    minorStride: steep ? 1 : grid.columns,
    majorLast,
    minorLast,
  }
}

/** The stretch of the major axis on which the endless line lies over the grid; empty when low > high. */
function overGrid(
  major0: number,
  minor0: number,
  lean: number,
  majorLast: number,
  minorLast: number,
): readonly [number, number] {
  if (lean === 0) return minor0 >= 0 && minor0 <= minorLast ? [0, majorLast] : [1, 0]
  const one = major0 - minor0 / lean
  const other = major0 + (minorLast - minor0) / lean
  return [Math.max(0, Math.min(one, other)), Math.min(majorLast, Math.max(one, other))]
}

/** Metres from the line's start at a cell of the major axis. */
export function distanceAt(line: GridLine, major: number): number {
  return (major - line.major0) * line.way * line.metres
}

/** The cell of the major axis at metres from the line's start. */
export function majorAt(line: GridLine, distance: number): number {
  return line.major0 + (line.way * distance) / line.metres
}

/** East and north of the grid's centre at a distance along the line. */
export function pointAt(line: GridLine, distance: number): GridPoint {
  const major = majorAt(line, distance)
  const minor = line.minor0 + line.lean * (major - line.major0)
  const { grid, steep } = line
  return {
    east: grid.west + (steep ? minor : major) * grid.cell,
    north: grid.north - (steep ? major : minor) * grid.cell,
  }
}

/** Room for crossings in the order in which a line meets them; filled anew by every call, so nothing holds on to it. */
export interface Crossings {
  count: number
  /** Metres from the line's start. */
  readonly distances: Float64Array
  /** Metres above the sea; where one of the two posts is unknown the other's, NaN where both are. */
  readonly heights: Float64Array
  /** 1 where a post is unknown. */
  readonly unknown: Uint8Array
}

export function roomForCrossings(cells: number): Crossings {
  const most = 2 * Math.ceil(cells) + 4
  return {
    count: 0,
    distances: new Float64Array(most),
    heights: new Float64Array(most),
    unknown: new Uint8Array(most),
  }
}

/** Every crossing from one cell of the major axis to another (in the line's order, ends included), heights linear between posts. */
export function crossingsBetween(line: GridLine, from: number, to: number, into: Crossings): void {
  const { way, major0, minor0, lean } = line
  into.count = 0
  let here = from
  let minor = minor0 + lean * (here - major0)
  if (Number.isInteger(here)) addOnMajor(line, here, minor, into)
  while (here !== to) {
    const next = way > 0 ? Math.min(Math.floor(here) + 1, to) : Math.max(Math.ceil(here) - 1, to)
    const nextMinor = minor0 + lean * (next - major0)
    const met = nextMinor > minor ? Math.floor(nextMinor) : Math.ceil(nextMinor)
    if (nextMinor > minor ? met > minor : met < minor) addOnMinor(line, met, way > 0 ? here : next, into)
    if (Number.isInteger(next)) addOnMajor(line, next, nextMinor, into)
    here = next
    minor = nextMinor
  }
}

/** The crossing of a major line, between the two posts at both sides. */
function addOnMajor(line: GridLine, major: number, minor: number, into: Crossings): void {
  const first = Math.max(0, Math.min(Math.floor(minor), line.minorLast - 1))
  const post = major * line.majorStride + first * line.minorStride
  add(line, post, line.minorStride, minor - first, major, into)
}

/** The crossing of a minor line within one cell of the major axis. */
function addOnMinor(line: GridLine, minor: number, cellAt: number, into: Crossings): void {
  if (minor < 0 || minor > line.minorLast) return
  const first = Math.max(0, Math.min(Math.floor(cellAt), line.majorLast - 1))
  const major = Math.max(first, Math.min(line.major0 + (minor - line.minor0) / line.lean, first + 1))
  add(line, first * line.majorStride + minor * line.minorStride, line.majorStride, major - first, major, into)
}

function add(line: GridLine, post: number, stride: number, share: number, major: number, into: Crossings): void {
  const { heights } = line.grid
  const one = heights[post] as number
  const other = heights[post + stride] as number
  const at = into.count++
  into.distances[at] = (major - line.major0) * line.way * line.metres
  const height = one + share * (other - one)
  into.heights[at] = height
  into.unknown[at] = 0
  if (Number.isNaN(height)) {
    // A post exactly on the line needs no neighbour.
    const alone = share === 0 ? one : share === 1 ? other : Number.NaN
    into.heights[at] = Number.isNaN(alone) ? (Number.isNaN(one) ? other : one) : alone
    into.unknown[at] = Number.isNaN(alone) ? 1 : 0
  }
}

/** Index of the block along the major axis that a line enters at a cell, seen in its direction. */
export function stripAt(line: GridLine, level: MaximaLevel, major: number): number {
  const strip = line.way > 0 ? Math.floor(major / level.span) : Math.ceil(major / level.span) - 1
  const last = (line.steep ? level.rows : level.columns) - 1
  return Math.max(0, Math.min(strip, last))
}

/** Where a line leaves a strip of blocks, or ends within it. */
export function stripEnd(line: GridLine, level: MaximaLevel, strip: number, leave: number): number {
  return line.way > 0 ? Math.min((strip + 1) * level.span, leave) : Math.max(strip * level.span, leave)
}

/** Metres above the sea of the highest post of the blocks that a line passes between two cells of one strip. */
export function stripMaximum(line: GridLine, level: MaximaLevel, strip: number, from: number, to: number): number {
  const first = firstBlock(line, level, from, to)
  const last = lastBlock(line, level, from, to)
  const stride = line.steep ? 1 : level.columns
  let block = strip * (line.steep ? level.columns : 1) + first * stride
  let highest = level.heights[block] as number
  for (let more = first; more < last; more++) {
    block += stride
    const height = level.heights[block] as number
    if (height > highest) highest = height
  }
  return highest
}

/** Whether any post of those blocks is unknown. */
export function stripUnknown(line: GridLine, level: MaximaLevel, strip: number, from: number, to: number): boolean {
  if (level.unknown === null) return false
  const last = lastBlock(line, level, from, to)
  for (let block = firstBlock(line, level, from, to); block <= last; block++) {
    const index = line.steep ? strip * level.columns + block : block * level.columns + strip
    if (level.unknown[index] === 1) return true
  }
  return false
}

function firstBlock(line: GridLine, level: MaximaLevel, from: number, to: number): number {
  const low = line.minor0 + line.lean * ((line.lean > 0 === line.way > 0 ? from : to) - line.major0)
  return Math.max(0, Math.min(Math.floor(low / level.span), blocksAcross(line, level) - 1))
}

function lastBlock(line: GridLine, level: MaximaLevel, from: number, to: number): number {
  const high = line.minor0 + line.lean * ((line.lean > 0 === line.way > 0 ? to : from) - line.major0)
  return Math.max(0, Math.min(Math.floor(high / level.span), blocksAcross(line, level) - 1))
}

function blocksAcross(line: GridLine, level: MaximaLevel): number {
  return line.steep ? level.columns : level.rows
}
