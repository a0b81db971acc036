/** Contours: the lines along which the ground passes a height, joined, higher ground on their left. Lines alone, no filled bands. */
import type { ElevationGrid } from './elevation-grid.ts'

export interface ContourLine {
  /** Metres above the sea. */
  readonly level: number
  /** Whether it comes back to its beginning, which is then not repeated; an open one ends at the edge or at unknown ground. */
  readonly closed: boolean
  /** East and north of the grid's centre in turn, metres. */
  readonly points: Float64Array
}

/** Pieces of line within one cell each, by the grid edges they run from and to; `ranks` tells the level of each. */
interface Pieces {
  count: number
  ranks: Int32Array
  from: Int32Array
  to: Int32Array
}

const UNKNOWN_RANK = -(2 ** 31)

/**
 * Contours at every whole multiple of `step` metres. Ground exactly at a level counts as above it, everywhere alike: so lines never
 * break at such a cell, and a lake that lies at a level is drawn by its shore only where lower ground meets it.
 */
export function contours(grid: ElevationGrid, step: number): ContourLine[] {
  if (!(step > 0) || !Number.isFinite(step)) throw new RangeError(`a contour step is more than 0 m, not ${step}`)
  const pieces = sorted(cut(grid, step))
  const tracer = new Tracer(grid)
  const lines: ContourLine[] = []
  for (let start = 0; start < pieces.count;) {
    const rank = pieces.ranks[start] as number
    let end = start + 1
    while (end < pieces.count && pieces.ranks[end] === rank) end++
    tracer.join(pieces, start, end, rank * step, lines)
    start = end
  }
  return lines
}

/** Sides of a cell: 0 south, 1 east, 2 north, 3 west, as from * 4 + to; by the corners above the level: 1 SW, 2 SE, 4 NE, 8 NW. */
const WAYS: readonly number[] = [-1, 3, 4, 7, 9, -1, 8, 11, 14, 2, -1, 6, 13, 1, 12, -1]
/** The two ways through a saddle: high ground joined across the middle, or low ground. */
const SADDLES: Readonly<Record<number, { readonly high: readonly number[]; readonly low: readonly number[] }>> = {
  5: { high: [1, 11], low: [3, 9] },
  10: { high: [12, 6], low: [4, 14] },
}

/** Cuts every cell by every level that passes through it. */
function cut(grid: ElevationGrid, step: number): Pieces {
  const { columns, rows, heights } = grid
  const pieces: Pieces = { count: 0, ranks: new Int32Array(1024), from: new Int32Array(1024), to: new Int32Array(1024) }
  let upper = rankRow(grid, 0, step, new Int32Array(columns))
  let lower = new Int32Array(columns)
  for (let row = 0; row < rows - 1; row++) {
    rankRow(grid, row + 1, step, lower)
    for (let column = 0; column < columns - 1; column++) {
      const northWest = upper[column] as number
      const northEast = upper[column + 1] as number
      const southWest = lower[column] as number
      const southEast = lower[column + 1] as number
      if (northWest === northEast && northWest === southWest && northWest === southEast) continue
      const lowest = Math.min(northWest, northEast, southWest, southEast)
      if (lowest === UNKNOWN_RANK) continue
      const highest = Math.max(northWest, northEast, southWest, southEast)
      const cell = row * columns + column
      for (let rank = lowest + 1; rank <= highest; rank++) {
        const corners =
          (southWest >= rank ? 1 : 0) |
          (southEast >= rank ? 2 : 0) |
          (northEast >= rank ? 4 : 0) |
          (northWest >= rank ? 8 : 0)
        const saddle = SADDLES[corners]
        if (saddle === undefined) {
          add(pieces, rank, cell, columns, WAYS[corners] as number)
        } else {
          const sum =
            (heights[cell] as number) +
            (heights[cell + 1] as number) +
            (heights[cell + columns] as number) +
            (heights[cell + columns + 1] as number)
          for (const way of sum >= 4 * rank * step ? saddle.high : saddle.low) add(pieces, rank, cell, columns, way)
        }
      }
    }
    ;[upper, lower] = [lower, upper]
  }
  return pieces
}

/** Which whole multiple of the step each cell of a row reaches: told once, so that all cells around it agree. */
function rankRow(
  grid: ElevationGrid,
  row: number,
  step: number,
  into: Int32Array<ArrayBuffer>,
): Int32Array<ArrayBuffer> {
  const start = row * grid.columns
  for (let column = 0; column < grid.columns; column++) {
    const height = grid.heights[start + column] as number
    into[column] = Number.isNaN(height) ? UNKNOWN_RANK : Math.floor(height / step)
  }
  return into
}

function add(pieces: Pieces, rank: number, cell: number, columns: number, way: number): void {
  if (pieces.count === pieces.ranks.length) grow(pieces)
  pieces.ranks[pieces.count] = rank
  pieces.from[pieces.count] = edgeOf(cell, way >> 2, columns)
  pieces.to[pieces.count] = edgeOf(cell, way & 3, columns)
  pieces.count++
}

function grow(pieces: Pieces): void {
  for (const key of ['ranks', 'from', 'to'] as const) {
    const larger = new Int32Array(pieces[key].length * 2)
    larger.set(pieces[key])
    pieces[key] = larger
  }
}

/** A number of its own for each grid edge: even from a cell centre to the next east, odd to the next south. */
function edgeOf(cell: number, side: number, columns: number): number {
  if (side === 0) return (cell + columns) * 2
  if (side === 1) return (cell + 1) * 2 + 1
  return side === 2 ? cell * 2 : cell * 2 + 1
}

/** Pieces in order of their level, otherwise as they were (a counting sort). */
function sorted(pieces: Pieces): Pieces {
  const { count, ranks, from, to } = pieces
  let [lowest, highest] = [Infinity, -Infinity]
  for (let index = 0; index < count; index++) {
    lowest = Math.min(lowest, ranks[index] as number)
    highest = Math.max(highest, ranks[index] as number)
  }
  const places = new Int32Array(count === 0 ? 1 : highest - lowest + 2)
  for (let index = 0; index < count; index++) places[(ranks[index] as number) - lowest + 1]!++
  for (let rank = 1; rank < places.length; rank++) places[rank]! += places[rank - 1] as number
  const into: Pieces = { count, ranks: new Int32Array(count), from: new Int32Array(count), to: new Int32Array(count) }
  for (let index = 0; index < count; index++) {
    const place = places[(ranks[index] as number) - lowest]!++
    into.ranks[place] = ranks[index] as number
    into.from[place] = from[index] as number
    into.to[place] = to[index] as number
  }
  return into
}

/** Joins the pieces of one level after another; its tables are as large as the grid and left empty after each level. */
class Tracer {
  readonly #grid: ElevationGrid
  /** By edge: the edge that follows, plus one; 0 where none does. */
  readonly #next: Int32Array
  /** By edge: whether a piece leads to it. */
  readonly #entered: Uint8Array
  #points = new Float64Array(4096)
  #length = 0

  constructor(grid: ElevationGrid) {
    this.#grid = grid
    this.#next = new Int32Array(2 * grid.columns * grid.rows)
    this.#entered = new Uint8Array(2 * grid.columns * grid.rows)
  }

  join(pieces: Pieces, start: number, end: number, level: number, lines: ContourLine[]): void {
    for (let index = start; index < end; index++) {
      this.#next[pieces.from[index] as number] = (pieces.to[index] as number) + 1
      this.#entered[pieces.to[index] as number] = 1
    }
    for (let index = start; index < end; index++) {
      const edge = pieces.from[index] as number
      if (this.#entered[edge] === 0) this.#follow(edge, level, lines)
    }
    for (let index = start; index < end; index++) {
      const edge = pieces.from[index] as number
      if (this.#next[edge] !== 0) this.#follow(edge, level, lines)
    }
  }

  #follow(start: number, level: number, lines: ContourLine[]): void {
    this.#length = 0
    let edge = start
    for (let next = this.#next[edge] as number; next !== 0; next = this.#next[edge] as number) {
      this.#pass(edge, level)
      this.#next[edge] = 0
      edge = next - 1
      this.#entered[edge] = 0
    }
    const closed = edge === start
    if (!closed) this.#pass(edge, level)
    const points = this.#points
    let length = this.#length
    if (closed && length > 2 && points[0] === points[length - 2] && points[1] === points[length - 1]) length -= 2
    // A summit exactly at the level is a line of no length.
    if (length > 2) lines.push({ level, closed, points: points.slice(0, length) })
  }

  /** Adds the point at which an edge passes the level, unless it is where the line already stands (a cell exactly at the level). */
  #pass(edge: number, level: number): void {
    const { columns, heights, cell, west, north } = this.#grid
    const corner = edge >> 1
    const southward = (edge & 1) === 1
    const one = heights[corner] as number
    const other = heights[corner + (southward ? columns : 1)] as number
    const share = Math.min(1, Math.max(0, (level - one) / (other - one)))
    const row = Math.floor(corner / columns)
    const column = corner - row * columns
    const x = west + (southward ? column : column + share) * cell
    const y = north - (southward ? row + share : row) * cell
    const length = this.#length
    if (length > 0 && this.#points[length - 2] === x && this.#points[length - 1] === y) return
    if (length === this.#points.length) {
      const larger = new Float64Array(length * 2)
      larger.set(this.#points)
      this.#points = larger
    }
    this.#points[length] = x
    this.#points[length + 1] = y
    this.#length = length + 2
  }
}
