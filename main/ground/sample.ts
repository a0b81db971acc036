/** Owns the reading of one height between samples: weights over the known corners only, never over a void. */
import type { ChunkCache } from './chunk-cache.ts'
import { chunksAcross, type Raster } from './raster.ts'

/** Answered when a chunk has to be read first: no height is infinite. */
export const MISSING = Number.POSITIVE_INFINITY

export interface Sampler {
  /** The height, NaN where unknown or outside, MISSING when a chunk has to be loaded first. */
  at(column: number, row: number): number
  /** The highest sample so many columns and rows around a place, or the nearest one; NaN and MISSING as before. */
  highest(column: number, row: number, aside: number, along: number): number
  /** Loads the chunk that was found missing. */
  loadMissing(signal: AbortSignal): Promise<void>
  load(key: number, signal: AbortSignal): Promise<void>
  /** The chunk a sample lies in, -1 outside. */
  chunkKey(column: number, row: number): number
  /** The first thing that went wrong, as a sentence. */
  trouble(): string | null
}

/** Rounding of coordinates must not lose the outermost samples. */
const ROUNDING = 1e-6

export function makeSampler(raster: Raster, cache: ChunkCache): Sampler {
  const { columns, rows, chunkColumns, chunkRows, reach } = raster
  const across = chunksAcross(raster)
  /** Chunks that failed: unknown for this while, and asked for again next time. */
  const failed = new Set<number>()
  let trouble: string | null = null
  let missingKey = -1
  let lastKey = -1
  let lastChunk: Float32Array | null = null

  function chunkOf(key: number): boolean {
    if (key === lastKey) return true
    const chunk = failed.has(key) ? null : cache.get(raster, key)
    if (chunk === undefined) {
      missingKey = key
      return false
    }
    lastKey = key
    lastChunk = chunk
    return true
  }

  function sample(column: number, row: number): number {
    const chunkX = Math.floor(column / chunkColumns)
    const chunkY = Math.floor(row / chunkRows)
    if (!chunkOf(chunkY * across + chunkX)) return MISSING
    if (lastChunk === null) return Number.NaN
    return lastChunk[(row - chunkY * chunkRows) * chunkColumns + column - chunkX * chunkColumns] ?? Number.NaN
  }

  function wrapped(column: number): number {
    return ((column % columns) + columns) % columns
  }

  function isInside(column: number, row: number): boolean {
    if (!(row >= -reach - ROUNDING && row <= rows - 1 + reach + ROUNDING)) return false
    return raster.round || (column >= -reach - ROUNDING && column <= columns - 1 + reach + ROUNDING)
  }

  /** Beyond the outermost centres, and before them in a grid that goes round, the neighbour that there is. */
  function columnOf(column: number): number {
    return raster.round ? wrapped(column) : Math.min(Math.max(column, 0), columns - 1)
  }

  function at(column: number, row: number): number {
    if (!isInside(column, row)) return Number.NaN
    const left = Math.floor(column + ROUNDING)
    const top = Math.floor(row + ROUNDING)
    // On a sample as good as rounding tells: its neighbours have no say, also where it is a void.
    const u = column - left > ROUNDING ? column - left : 0
    const v = row - top > ROUNDING ? row - top : 0
    const [x0, x1] = [columnOf(left), columnOf(left + 1)]
    const [y0, y1] = [Math.min(Math.max(top, 0), rows - 1), Math.min(Math.max(top + 1, 0), rows - 1)]
    const h00 = sample(x0, y0)
    const h10 = u > 0 ? sample(x1, y0) : h00
    const h01 = v > 0 ? sample(x0, y1) : h00
    const h11 = u > 0 ? (v > 0 ? sample(x1, y1) : h10) : h01
    const sum = (1 - v) * ((1 - u) * h00 + u * h10) + v * ((1 - u) * h01 + u * h11)
    // Every usual case at once: four known corners give a finite sum.
    if (Number.isFinite(sum)) return sum
    if (h00 === MISSING || h10 === MISSING || h01 === MISSING || h11 === MISSING) return MISSING
    return overKnown(u, v, h00, h10, h01, h11)
  }

  function highest(column: number, row: number, aside: number, along: number): number {
    if (!isInside(column, row)) return Number.NaN
    const [left, right] = samplesAbout(column, aside)
    const [top, bottom] = samplesAbout(row, along)
    let most = Number.NaN
    for (let y = Math.max(0, top); y <= Math.min(rows - 1, bottom); y++) {
      for (let x = left; x <= right; x++) {
        if (!raster.round && (x < 0 || x >= columns)) continue
        const height = sample(raster.round ? wrapped(x) : x, y)
        if (height === MISSING) return MISSING
        if (!(height <= most) && !Number.isNaN(height)) most = height
      }
    }
    return most
  }

  async function load(key: number, signal: AbortSignal): Promise<void> {
    if (!failed.has(key) && cache.get(raster, key) !== undefined) return
    const chunk = await raster.load(key % across, Math.floor(key / across), signal)
    if (chunk.trouble !== null) {
      trouble ??= chunk.trouble
      failed.add(key)
    }
    cache.put(raster, key, chunk)
    // Should the cache drop it at once, the loop would ask for it without end.
    lastKey = key
    lastChunk = chunk.trouble === null ? chunk.heights : null
  }

  return {
    at,
    highest,
    load,
    loadMissing: async (signal) => load(missingKey, signal),
    chunkKey: (column, row) => {
      if (!isInside(column, row)) return -1
      const x = columnOf(Math.floor(column))
      const y = Math.min(Math.max(Math.floor(row), 0), rows - 1)
      return Math.floor(y / chunkRows) * across + Math.floor(x / chunkColumns)
    },
    trouble: () => trouble,
  }
}

/** First and last whole number within so much of a place; the nearest one where none is. */
function samplesAbout(place: number, within: number): readonly [number, number] {
  const [first, last] = [Math.ceil(place - within), Math.floor(place + within)]
  return first <= last ? [first, last] : [Math.round(place), Math.round(place)]
}

/** Corners of no weight don't count, so that a void at the very place stays one. */
function overKnown(u: number, v: number, h00: number, h10: number, h01: number, h11: number): number {
  let [sum, weight] = [0, 0]
  const add = (share: number, height: number): void => {
    if (!(share > 0) || Number.isNaN(height)) return
    sum += share * height
    weight += share
  }
  add((1 - u) * (1 - v), h00)
  add(u * (1 - v), h10)
  add((1 - u) * v, h01)
  add(u * v, h11)
  return weight > 0 ? sum / weight : Number.NaN
}
