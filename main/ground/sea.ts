/** Owns the sea's surface: off the coasts it is taken below 0, where a source tells the floor or noise, and where no source knows anything. */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { gunzip } from 'node:zlib'
import { type Coast, SOUTHERNMOST_COAST, type UnwrappedBox, onLand, readCoast, sidesWithin } from '#core/geo/coast.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { timeSlices } from './time-slices.ts'
import { type Lattice, extent } from './lattice.ts'

/** More than the outlines of all the world take. */
const MOST_BYTES = 32_000_000

export function coastFile(built: string): string {
  return join(built, 'coast', 'coast.gz')
}

/** The coasts, read when first asked for; without the build's file every place counts as land, and heights stay as they are. */
export function makeCoast(file: string): () => Promise<Coast | null> {
  let coast: Promise<Coast | null> | null = null
  return () => (coast ??= loadCoast(file))
}

async function loadCoast(file: string): Promise<Coast | null> {
  try {
    const bytes = await promisify(gunzip)(await readFile(file), { maxOutputLength: MOST_BYTES })
    const numbers = new Int32Array(Math.floor(bytes.length / 4))
    for (let at = 0; at < numbers.length; at++) numbers[at] = bytes.readInt32LE(at * 4)
    return readCoast(numbers)
  } catch {
    return null
  }
}

/** Whether the sea's surface is to be taken at a place for a height that was read there. */
export async function isSea(height: number, at: LatLon, coast: () => Promise<Coast | null>): Promise<boolean> {
  if (!(height < 0)) return false
  const known = await coast()
  return known !== null && !onLand(known, at)
}

/** Shares are of cells. */
export interface SeaTaken {
  readonly cells: number
  /** Those of them that no source knew. */
  readonly unknown: number
}

const NO_SEA: SeaTaken = { cells: 0, unknown: 0 }

/** Takes the sea's surface, 0, off the coasts: at every cell below it and, in a window of which something is known, at every unknown one. */
export async function takeSea(
  grid: ElevationGrid,
  { lats, lons }: Lattice,
  coast: () => Promise<Coast | null>,
  signal: AbortSignal,
): Promise<SeaTaken> {
  const { heights, columns, rows } = grid
  if (!mayHoldSea(heights)) return NO_SEA
  const known = await coast()
  const [south, north] = extent(lats)
  if (known === null || south < SOUTHERNMOST_COAST) return NO_SEA
  const [west, east] = extent(lons)
  const sides = sidesOnGrid(grid, known, { south, north, west, east })
  const nextSlice = timeSlices(signal)
  // Along the first column from its first cell, then along each row: every side that is crossed leads from land to sea or back.
  const corner = onLand(known, placeOnGrid(grid, grid.west, grid.north))
  const downFirst = crossingsOf(
    sides.map(([x, y, toX, toY]) => [y, x, toY, toX] as const),
    0,
  )
  let [cells, unknown] = [0, 0]
  for (let row = 0; row < rows; row++) {
    // oxlint-disable-next-line no-await-in-loop -- only to let others have a turn
    await nextSlice()
    const starts = crossed(downFirst, 0, row) % 2 === 0 ? corner : !corner
    const across = crossingsOf(sides, row)
    let [land, next] = [starts, across.findIndex((at) => at > 0)]
    if (next === -1) next = across.length
    for (let column = 0; column < columns; column++) {
      while (next < across.length && (across[next] as number) <= column) {
        land = !land
        next += 1
      }
      const cell = row * columns + column
      if (land || (heights[cell] as number) >= 0) continue
      if (Number.isNaN(heights[cell])) unknown += 1
      heights[cell] = 0
      cells += 1
    }
  }
  return { cells, unknown }
}

/** Whether something of a window is known, and something of it lies below 0 or is unknown. */
function mayHoldSea(heights: Float32Array): boolean {
  let [known, low] = [false, false]
  for (const height of heights) {
    known ||= !Number.isNaN(height)
    low ||= !(height >= 0)
    if (known && low) return true
  }
  return false
}

/** Whether a box holds the open sea alone. */
export function isOpenSea(coast: Coast | null, box: UnwrappedBox): boolean {
  if (coast === null || box.south < SOUTHERNMOST_COAST || box.north > 90) return false
  const middle = { lat: (box.south + box.north) / 2, lon: (box.west + box.east) / 2 }
  return !onLand(coast, middle) && sidesWithin(coast, box).length === 0
}

/** From and to, in columns and rows. */
type Side = readonly [x: number, y: number, toX: number, toY: number]

/** Degrees beyond a window within which sides are looked at. */
const MARGIN = 0.02

function sidesOnGrid(grid: ElevationGrid, coast: Coast, box: UnwrappedBox): Side[] {
  const onGrid = (at: LatLon): readonly [number, number] => {
    const { east, north } = gridPoint(grid, at)
    return [(east - grid.west) / grid.cell, (grid.north - north) / grid.cell]
  }
  const { south, north, west, east } = box
  const wider = { south: south - MARGIN, north: north + MARGIN, west: west - MARGIN, east: east + MARGIN }
  return sidesWithin(coast, wider).map(({ from, to }) => [...onGrid(from), ...onGrid(to)])
}

/** Where sides cross a row, in order. */
function crossingsOf(sides: readonly Side[], row: number): number[] {
  const found: number[] = []
  for (const [x, y, toX, toY] of sides) {
    if (y > row !== toY > row) found.push(x + ((toX - x) * (row - y)) / (toY - y))
  }
  return found.toSorted((one, other) => one - other)
}

/** How many crossings lie after one place and no farther than another. */
function crossed(crossings: readonly number[], after: number, until: number): number {
  return crossings.filter((at) => at > after && at <= until).length
}
