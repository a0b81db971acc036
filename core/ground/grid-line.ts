/** A straight line over a grid, and where it crosses the lines between cell centres. */
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

/** Cells by which a line that ends on a grid line may fall short of it by rounding: so the ground at the very edge of the grid counts. */
const ROUNDING = 1e-9

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

/** Room for crossings in the order in which a line meets them; filled again by every call, so nothing holds on to it. */
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
  const first = way > 0 ? Math.ceil(from) : Math.floor(from)
  const last = way > 0 ? Math.floor(to) : Math.ceil(to)
  let minor = minor0 + lean * (from - major0)
  if ((last - first) * way < 0) {
    addBetween(line, from, to, minor, minor0 + lean * (to - major0), into)
    return
  }
  if (first !== from) {
    const next = minor0 + lean * (first - major0)
    addBetween(line, from, first, minor, next, into)
    minor = next
  }
  addOnMajor(line, first, minor, into)
  for (let here = first; here !== last;) {
    const there = here + way
    const next = minor0 + lean * (there - major0)
    addBetween(line, here, there, minor, next, into)
    addOnMajor(line, there, next, into)
    minor = next
    here = there
  }
  if (last !== to) addBetween(line, last, to, minor, minor0 + lean * (to - major0), into)
}

/** The crossing of a major line, between the two posts at both sides. */
function addOnMajor(line: GridLine, major: number, minor: number, into: Crossings): void {
  const beside = Math.floor(minor)
  const first = beside < 0 ? 0 : beside < line.minorLast ? beside : line.minorLast - 1
  add(line, major * line.majorStride + first * line.minorStride, line.minorStride, minor - first, major, into)
}

/** The one minor line that may lie between two places on the minor axis, the second included; -1 where none does. */
export function minorLineBetween(minor: number, next: number): number {
  const met = next > minor ? Math.floor(next + ROUNDING) : Math.ceil(next - ROUNDING)
  return (next > minor ? met > minor : met < minor) ? met : -1
}

/** The crossing of the one minor line that may lie between two points of a cell of the major axis, the second included. */
function addBetween(line: GridLine, from: number, to: number, minor: number, next: number, into: Crossings): void {
  const met = minorLineBetween(minor, next)
  if (!(met >= 0 && met <= line.minorLast)) return
  const low = line.way > 0 ? from : to
  const high = line.way > 0 ? to : from
  const major = Math.max(low, Math.min(line.major0 + (met - line.minor0) / line.lean, high))
  const cell = Math.floor(low)
  add(line, cell * line.majorStride + met * line.minorStride, line.majorStride, major - cell, major, into)
}

function add(line: GridLine, post: number, stride: number, share: number, major: number, into: Crossings): void {
  const { heights } = line.grid
  const one = heights[post] as number
  const other = heights[post + stride] as number
  const height = one + share * (other - one)
  const at = into.count++
  into.distances[at] = (major - line.major0) * line.way * line.metres
  into.heights[at] = height
  into.unknown[at] = 0
  if (Number.isNaN(height)) addInPart(one, other, share, at, into)
}

/** A crossing beside an unknown post: a post exactly on the line needs no neighbour, another lends its own height. */
function addInPart(one: number, other: number, share: number, at: number, into: Crossings): void {
  const alone = share === 0 ? one : share === 1 ? other : Number.NaN
  into.heights[at] = Number.isNaN(alone) ? (Number.isNaN(one) ? other : one) : alone
  into.unknown[at] = Number.isNaN(alone) ? 1 : 0
}
