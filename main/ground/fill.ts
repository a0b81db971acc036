/** Fills a window's unknown cells from one raster, in slices that leave the process free to answer others meanwhile. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { timeSlices } from './time-slices.ts'
import type { ChunkCache } from './chunk-cache.ts'
import { extent, type Lattice } from './lattice.ts'
import type { Raster } from './raster.ts'
import { makeSampler, MISSING, type Sampler } from './sample.ts'

export interface Filled {
  /** Cells that were unknown and now are known. */
  readonly cells: number
  readonly trouble: string | null
}

/** Where a raster's samples lie under the lattice's corners. */
interface Corners {
  readonly columns: Float64Array
  readonly rows: Float64Array
}

/** Cells at least so many samples wide can be the highest of several; smaller ones are read between samples. */
const PEAKS_FROM = 1.5
/** Samples to each side of a cell's middle that are looked at in any case. */
const LEAST_ASIDE = 0.5

/** Rejects with the signal's reason once nobody waits. `peaks`: each cell is the highest sample of its middle half. */
export async function fillFrom(
  grid: ElevationGrid,
  lattice: Lattice,
  raster: Raster,
  cache: ChunkCache,
  signal: AbortSignal,
  peaks: boolean,
): Promise<Filled> {
  const nextSlice = timeSlices(signal)
  const corners = await cornersOf(grid, lattice, raster, nextSlice)
  if (!mayTouch(corners, raster)) return { cells: 0, trouble: null }
  const sampler = makeSampler(raster, cache)
  const line = new Line(grid, lattice, corners)
  if (raster.remote) await loadTogether(line, grid, raster, sampler, signal)
  let cells = 0
  for (let row = 0; row < grid.rows; row++) {
    await nextSlice()
    if (!line.moveTo(row, raster)) continue
    cells += await fillRow(grid, row, line, sampler, signal, peaks && grid.cell >= PEAKS_FROM * raster.resolution)
  }
  return { cells, trouble: sampler.trouble() }
}

async function fillRow(
  grid: ElevationGrid,
  row: number,
  line: Line,
  sampler: Sampler,
  signal: AbortSignal,
  peaks: boolean,
): Promise<number> {
  const { heights, columns } = grid
  const read = (cell: number): number => {
    const [u, v] = [line.column(cell), line.row(cell)]
    return peaks ? sampler.highest(u, v, line.aside(cell), line.along(cell)) : sampler.at(u, v)
  }
  let filled = 0
  for (let column = 0; column < columns; column++) {
    const cell = row * columns + column
    if (!Number.isNaN(heights[cell] ?? 0)) continue
    let height = read(column)
    while (height === MISSING) {
      // oxlint-disable-next-line no-await-in-loop -- one chunk after the other keeps memory bounded
      await sampler.loadMissing(signal)
      signal.throwIfAborted()
      height = read(column)
    }
    if (Number.isNaN(height)) continue
    heights[cell] = height
    filled += 1
  }
  return filled
}

/** One row of a window in a raster's columns and rows, read between the lattice's corners. */
class Line {
  readonly #lattice: Lattice
  readonly #corners: Corners
  readonly #columns: Float64Array
  readonly #rows: Float64Array
  /** A quarter of a cell in columns and in rows, half a sample at the least, by block. */
  readonly #aside: Float64Array
  readonly #along: Float64Array
  #band = -1
  #bandTouches = false

  constructor(grid: ElevationGrid, lattice: Lattice, corners: Corners) {
    this.#lattice = lattice
    this.#corners = corners
    this.#columns = new Float64Array(grid.columns)
    this.#rows = new Float64Array(grid.columns)
    this.#aside = new Float64Array(lattice.columns)
    this.#along = new Float64Array(lattice.columns)
  }

  /** False when the raster lies wholly above or below the row, or to one side of it. */
  moveTo(row: number, raster: Raster): boolean {
    const { block, columns } = this.#lattice
    const upper = Math.floor(row / block)
    if (!this.#mayTouch(upper, raster)) return false
    const down = (row - upper * block) / block
    for (let left = 0; left * block < this.#columns.length; left++) {
      const from = upper * columns + left
      this.#fillBlock(left * block, from, down)
    }
    return true
  }

  /** Looked at once for each row of blocks. */
  #mayTouch(upper: number, raster: Raster): boolean {
    if (this.#band === upper) return this.#bandTouches
    const { columns } = this.#lattice
    const part = (values: Float64Array): Float64Array => values.subarray(upper * columns, (upper + 2) * columns)
    this.#band = upper
    this.#bandTouches = mayTouch({ columns: part(this.#corners.columns), rows: part(this.#corners.rows) }, raster)
    return this.#bandTouches
  }

  #fillBlock(first: number, from: number, down: number): void {
    const { block, columns } = this.#lattice
    const right = first / block + 1 < columns ? from + 1 : from
    const below = down > 0 ? columns : 0
    const between = (corners: Float64Array, corner: number): number =>
      (corners[corner] ?? Number.NaN) * (1 - down) + (corners[corner + below] ?? Number.NaN) * down
    const [startColumn, startRow] = [between(this.#corners.columns, from), between(this.#corners.rows, from)]
    const stepColumn = (between(this.#corners.columns, right) - startColumn) / block
    const stepRow = (between(this.#corners.rows, right) - startRow) / block
    // The last blocks of all have no corner beyond: those before them are as wide.
    const apart = from + columns < this.#corners.rows.length ? from + columns : Math.max(0, from - columns)
    const blockNumber = first / block
    this.#aside[blockNumber] =
      right === from ? (this.#aside[blockNumber - 1] ?? 0) : Math.max(LEAST_ASIDE, Math.abs(stepColumn) / 4)
    const stepDown = Math.abs((this.#corners.rows[apart] ?? 0) - (this.#corners.rows[from] ?? 0)) / block
    this.#along[blockNumber] = Math.max(LEAST_ASIDE, stepDown / 4)
    const end = Math.min(first + block, this.#columns.length)
    this.#columns[first] = startColumn
    this.#rows[first] = startRow
    for (let cell = first + 1; cell < end; cell++) {
      this.#columns[cell] = startColumn + (cell - first) * stepColumn
      this.#rows[cell] = startRow + (cell - first) * stepRow
    }
  }

  /** How far to each side of a cell's middle its crest is looked for, in columns. */
  aside(cell: number): number {
    return this.#aside[Math.floor(cell / this.#lattice.block)] ?? 0
  }

  /** The same in rows. */
  along(cell: number): number {
    return this.#along[Math.floor(cell / this.#lattice.block)] ?? 0
  }

  column(cell: number): number {
    return this.#columns[cell] ?? Number.NaN
  }

  row(cell: number): number {
    return this.#rows[cell] ?? Number.NaN
  }
}

async function cornersOf(
  grid: ElevationGrid,
  lattice: Lattice,
  raster: Raster,
  nextSlice: () => Promise<void> | undefined,
): Promise<Corners> {
  const count = lattice.lats.length
  const corners = { columns: new Float64Array(count), rows: new Float64Array(count) }
  const middle = raster.pixelAt(grid.centre.lat, grid.centre.lon).column
  for (let corner = 0; corner < count; corner++) {
    // oxlint-disable-next-line no-await-in-loop -- only to let others have a turn
    if (corner % 1000 === 0) await nextSlice()
    const { column, row } = raster.pixelAt(lattice.lats[corner] ?? 0, lattice.lons[corner] ?? 0)
    corners.columns[corner] = besideMiddle(column, middle, raster.turn)
    corners.rows[corner] = row
  }
  return corners
}

/** A window across the raster's own seam must not run through all of its columns. */
function besideMiddle(column: number, middle: number, turn: number | null): number {
  return turn === null ? column : column + turn * Math.round((middle - column) / turn)
}

/** False when the lattice lies wholly to one side of the raster, or all of it where its projection means nothing. */
function mayTouch(corners: Corners, raster: Raster): boolean {
  const [left, right] = extent(corners.columns)
  const [top, bottom] = extent(corners.rows)
  if (!(bottom >= -1 && top <= raster.rows)) return false
  return raster.round || (right >= -1 && left <= raster.columns)
}

/** Chunks asked for together: half of the line that is kept at a server, so that others find room in it. */
const MOST_AT_ONCE = 100

/** Asks for every chunk that an unknown cell lies in, the middle of the window first. */
async function loadTogether(
  line: Line,
  grid: ElevationGrid,
  raster: Raster,
  sampler: Sampler,
  signal: AbortSignal,
): Promise<void> {
  const distances = new Map<number, number>()
  const nextSlice = timeSlices(signal)
  for (let row = 0; row < grid.rows; row++) {
    // oxlint-disable-next-line no-await-in-loop -- only to let others have a turn
    await nextSlice()
    if (!line.moveTo(row, raster)) continue
    let last = -1
    for (let column = 0; column < grid.columns; column++) {
      if (!Number.isNaN(grid.heights[row * grid.columns + column] ?? 0)) continue
      const key = sampler.chunkKey(line.column(column), line.row(column))
      if (key === last || key === -1) continue
      last = key
      const distance = Math.hypot(column - grid.columns / 2, row - grid.rows / 2)
      distances.set(key, Math.min(distance, distances.get(key) ?? distance))
    }
  }
  const nearestFirst = [...distances].toSorted(([, one], [, other]) => one - other)
  for (let first = 0; first < nearestFirst.length; first += MOST_AT_ONCE) {
    const together = nearestFirst.slice(first, first + MOST_AT_ONCE)
    // oxlint-disable-next-line no-await-in-loop -- a longer line at a server would push out its own beginning
    await Promise.all(together.map(([key]) => sampler.load(key, signal)))
    signal.throwIfAborted()
  }
}
