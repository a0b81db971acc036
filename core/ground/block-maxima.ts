/** The highest ground of every block of cells, in two sizes, so that a line passes over whole blocks at a glance. */
import type { ElevationGrid } from './elevation-grid.ts'

/** Cells along the side of a block: two sizes serve grids up to some thousand cells wide. */
const FINE_SPAN = 8
const COARSE_SPAN = 64

/** Block (i, j) reaches from post i * span to post (i + 1) * span with both its edges, so no peak on a seam is lost. */
export interface MaximaLevel {
  readonly span: number
  /** The power of two that the span is. */
  readonly shift: number
  readonly columns: number
  readonly rows: number
  /** Metres above the sea, row by row; -Infinity where no post is known, for what is unknown hides nothing. */
  readonly heights: Float32Array
  /** 1 where any post of the block is unknown; null when the whole grid is known. */
  readonly unknown: Uint8Array | null
}

export interface BlockMaxima {
  readonly fine: MaximaLevel
  readonly coarse: MaximaLevel
  /** Metres above the sea of the highest and the lowest post; infinite the other way round where none is known. */
  readonly top: number
  readonly bottom: number
}

/** By their heights, which a grid keeps when another ring is laid around it. */
const maximaByHeights = new WeakMap<Float32Array, BlockMaxima>()

/** The maxima of a grid, made at the first question. */
export function maximaOf(grid: ElevationGrid): BlockMaxima {
  const known = maximaByHeights.get(grid.heights)
  if (known !== undefined) return known
  const maxima = blockMaxima(grid)
  maximaByHeights.set(grid.heights, maxima)
  return maxima
}

export function blockMaxima(grid: ElevationGrid): BlockMaxima {
  const fine = fineLevel(grid)
  let [top, bottom] = [-Infinity, Infinity]
  for (const height of grid.heights) {
    if (height > top) top = height
    if (height < bottom) bottom = height
  }
  return { fine, coarse: coarseLevel(fine), top, bottom }
}

function blocksAlong(posts: number, span: number): number {
  return Math.max(1, Math.ceil((posts - 1) / span))
}

function fineLevel(grid: ElevationGrid): MaximaLevel {
  const columns = blocksAlong(grid.columns, FINE_SPAN)
  const rows = blocksAlong(grid.rows, FINE_SPAN)
  const heights = new Float32Array(columns * rows).fill(-Infinity)
  const unknown = new Uint8Array(columns * rows)
  let complete = true
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const block = row * columns + column
      const highest = highestPost(grid, column * FINE_SPAN, row * FINE_SPAN)
      heights[block] = highest.height
      if (highest.unknown) {
        unknown[block] = 1
        complete = false
      }
    }
  }
  return { span: FINE_SPAN, shift: Math.log2(FINE_SPAN), columns, rows, heights, unknown: complete ? null : unknown }
}

function highestPost(grid: ElevationGrid, left: number, top: number): { height: number; unknown: boolean } {
  const right = Math.min(left + FINE_SPAN, grid.columns - 1)
  const bottom = Math.min(top + FINE_SPAN, grid.rows - 1)
  let height = -Infinity
  let unknown = false
  for (let row = top; row <= bottom; row++) {
    const start = row * grid.columns
    for (let post = start + left; post <= start + right; post++) {
      const value = grid.heights[post] ?? Number.NaN
      if (value > height) height = value
      else if (Number.isNaN(value)) unknown = true
    }
  }
  return { height, unknown }
}

/** The coarse blocks are whole numbers of fine ones; since those hold both their edges, so do these. */
function coarseLevel(fine: MaximaLevel): MaximaLevel {
  const within = COARSE_SPAN / FINE_SPAN
  const columns = Math.ceil(fine.columns / within)
  const rows = Math.ceil(fine.rows / within)
  const heights = new Float32Array(columns * rows).fill(-Infinity)
  const unknown = fine.unknown === null ? null : new Uint8Array(columns * rows)
  for (let row = 0; row < fine.rows; row++) {
    for (let column = 0; column < fine.columns; column++) {
      const from = row * fine.columns + column
      const to = Math.floor(row / within) * columns + Math.floor(column / within)
      heights[to] = Math.max(heights[to] ?? -Infinity, fine.heights[from] ?? -Infinity)
      if (unknown !== null && fine.unknown?.[from] === 1) unknown[to] = 1
    }
  }
  return { span: COARSE_SPAN, shift: Math.log2(COARSE_SPAN), columns, rows, heights, unknown }
}
