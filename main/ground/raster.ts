/** What every kind of elevation file or tile becomes: samples in rows and columns, read in chunks, with a way from a place to them. */

/** A chunk of samples row by row, NaN where unknown; null when nothing at all is known there. */
export interface Chunk {
  readonly heights: Float32Array | null
  /** Why it could not be read, in a sentence; such a chunk is asked for again next time. */
  readonly trouble: string | null
}

/** Columns eastward and rows southward from the first sample, whose centre is 0, 0. */
export interface PixelPlace {
  readonly column: number
  readonly row: number
}

export interface Raster {
  /** Names the file, its state and the level of detail: chunks are kept by it. */
  readonly id: string
  readonly columns: number
  readonly rows: number
  readonly chunkColumns: number
  readonly chunkRows: number
  /** Columns of one turn round the earth; null for a grid that no turn brings back. */
  readonly turn: number | null
  /** True when column `turn` is column 0 again. */
  readonly round: boolean
  /** How far beyond the outermost sample centres it still answers: half a sample for areas, nothing where edges are shared. */
  readonly reach: number
  /** Chunks come over a network: all that are needed are asked for together. */
  readonly remote: boolean
  /** Metres between samples. */
  readonly resolution: number
  /** NaN far outside, where the grid's projection means nothing. */
  readonly pixelAt: (lat: number, lon: number) => PixelPlace
  readonly load: (chunkX: number, chunkY: number, signal: AbortSignal) => Promise<Chunk>
}

export function chunksAcross(raster: Raster): number {
  return Math.ceil(raster.columns / raster.chunkColumns)
}
