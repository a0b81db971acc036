/** Rings of ground: fine cells near by, coarser ones farther out, all on one plane, and lines led through them piece by piece. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, type GridPoint, squareGrid } from './elevation-grid.ts'
import { type GridLine, distanceAt, gridRay, majorAt } from './grid-line.ts'

/** Metres around a place that ground is read for: farther off stands little that is seen, and nothing is asked. */
export const GROUND_REACH = 150_000

/** Metres that the outermost ring may fall short of the reach: a place moves within its rings before others are cut. */
export const REACH_SLACK = 8_000

/** Metres above the sea of the earth's highest ground (Mount Everest, by the survey of 2020): what is unknown stands no higher. */
export const HIGHEST_GROUND = 8_849

/** The grids of a ground, the finest first. */
export function ringsOf(grid: ElevationGrid): ElevationGrid[] {
  const rings: ElevationGrid[] = []
  for (let ring: ElevationGrid | undefined = grid; ring !== undefined; ring = ring.beyond) rings.push(ring)
  return rings
}

/** The grids of one plane, the finest first, as one ground, each asked where those before it do not reach; null of none. */
export function laidTogether([finest, ...rest]: readonly ElevationGrid[]): ElevationGrid | null {
  if (finest === undefined) return null
  const beyond = laidTogether(rest)
  return beyond === null ? finest : { ...finest, beyond }
}

/** Metres between the cells of the open sea, and how many there are to each side. */
const SEA_CELL = 5_000
const SEA_HALF = Math.ceil((GROUND_REACH + REACH_SLACK) / SEA_CELL)

/** The open sea as the last ring of a ground on a plane: level 0 as far as is looked. */
export function seaRing(centre: LatLon): ElevationGrid {
  const heights = new Float32Array((2 * SEA_HALF + 1) ** 2)
  return {
    ...squareGrid({ centre, east: 0, north: 0, cell: SEA_CELL, half: SEA_HALF }, heights),
    step: null,
    sea: true,
  }
}

/** The same ground with every ring made again: for changes, and for copies that are handed over. */
export function mapRings(grid: ElevationGrid, make: (ring: ElevationGrid) => ElevationGrid): ElevationGrid {
  const made = make(grid)
  return grid.beyond === undefined ? made : { ...made, beyond: mapRings(grid.beyond, make) }
}

/** Whether a point lies over a grid's own cells. */
export function holdsPoint({ west, north, cell, columns, rows }: ElevationGrid, point: GridPoint): boolean {
  const column = (point.east - west) / cell
  const row = (north - point.north) / cell
  return column >= 0 && row >= 0 && column <= columns - 1 && row <= rows - 1
}

/** The finest grid that holds a point; null where none does. */
export function ringAt(grid: ElevationGrid, point: GridPoint): ElevationGrid | null {
  return ringsOf(grid).find((ring) => holdsPoint(ring, point)) ?? null
}

/** The ground from the widest of its inner rings on whose cells are no larger than so many metres: what areas are told over. */
export function widestFine(grid: ElevationGrid, largest: number): ElevationGrid {
  const { beyond } = grid
  return beyond !== undefined && beyond.cell <= largest && encloses(beyond, grid) ? widestFine(beyond, largest) : grid
}

function encloses(outer: ElevationGrid, inner: ElevationGrid): boolean {
  const east = inner.west + (inner.columns - 1) * inner.cell
  const south = inner.north - (inner.rows - 1) * inner.cell
  return holdsPoint(outer, { east: inner.west, north: inner.north }) && holdsPoint(outer, { east, north: south })
}

/** The line from one point to another over every ring, in its own order: each stretch over the finest cells that lie there. */
export function ringLines(grid: ElevationGrid, from: GridPoint, to: GridPoint): GridLine[] {
  return ringRays(grid, from, to.east - from.east, to.north - from.north, 1)
}

/** The same for a direction of any length, `reach` times that far (Infinity: to where the last ring ends). */
export function ringRays(grid: ElevationGrid, from: GridPoint, east: number, north: number, reach: number): GridLine[] {
  const found: GridLine[] = []
  for (let ring: ElevationGrid | undefined = grid; ring !== undefined; ring = ring.beyond) {
    const line = gridRay(ring, from, east, north, reach)
    if (line === null) continue
    const pieces = uncovered(found, line)
    found.push(...pieces)
    if (pieces.length < found.length) found.sort((one, other) => startOf(one) - startOf(other))
  }
  return found
}

/** Metres from a line's start at which a stretch begins and ends. */
export function startOf(line: GridLine): number {
  return distanceAt(line, line.enter)
}

function endOf(line: GridLine): number {
  return distanceAt(line, line.leave)
}

/** Metres from a line's start to where each gap begins that is longer than so many cells: before its stretches, or between two. */
export function gapsOf(stretches: readonly GridLine[], cells: number): number[] {
  const gaps: number[] = []
  let covered = 0
  for (const line of stretches) {
    if (startOf(line) - covered > cells * line.grid.cell) gaps.push(covered)
    covered = endOf(line)
  }
  return gaps
}

/** Metres from a line's start to where the last of its stretches ends; 0 without any. */
export function lastEnd(stretches: readonly GridLine[]): number {
  const last = stretches.at(-1)
  return last === undefined ? 0 : endOf(last)
}

/** Of a cell: a stretch shorter than this is none. */
const SHORTEST = 1e-6

/** What of a line lies over none of the stretches found before, which are in order and apart from each other. */
function uncovered(found: readonly GridLine[], line: GridLine): GridLine[] {
  if (found.length === 0) return [line]
  const pieces: GridLine[] = []
  const [start, end] = [startOf(line), endOf(line)]
  const shortest = SHORTEST * line.grid.cell
  const add = (from: number, until: number): void => {
    if (!(until - from > shortest)) return
    const enter = from === start ? line.enter : majorAt(line, from)
    const leave = until === end ? line.leave : majorAt(line, until)
    pieces.push({ ...line, enter, leave })
  }
  let at = start
  for (const known of found) {
    const [from, until] = [startOf(known), endOf(known)]
    if (until <= at) continue
    if (from >= end) break
    add(at, from)
    at = until
  }
  add(at, end)
  return pieces
}
