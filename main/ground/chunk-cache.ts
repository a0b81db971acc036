/** Owns the decoded chunks of all rasters together: the longest unused go first, so that memory stays bounded. */
import type { Chunk, Raster } from './raster.ts'

export interface ChunkCache {
  /** Undefined when it is not held; null when nothing is known there. */
  get(raster: Raster, key: number): Float32Array | null | undefined
  put(raster: Raster, key: number, chunk: Chunk): void
  /** Forgets the rasters whose ids begin with this. */
  forget(idStart: string): void
  bytes(): number
}

const CAP_BYTES = 160_000_000
/** Counted for a chunk that holds nothing, so that they can't pile up without end. */
const EMPTY_BYTES = 200

export function makeChunkCache(capBytes: number = CAP_BYTES): ChunkCache {
  /** Newest last, over all rasters. */
  const held = new Map<string, Float32Array | null>()
  let bytes = 0

  function drop(name: string): void {
    bytes -= sizeOf(held.get(name) ?? null)
    held.delete(name)
  }

  return {
    get: (raster, key) => {
      const name = nameOf(raster, key)
      const chunk = held.get(name)
      if (chunk === undefined) return undefined
      held.delete(name)
      held.set(name, chunk)
      return chunk
    },
    put: (raster, key, { heights, trouble }) => {
      if (trouble !== null) return
      const name = nameOf(raster, key)
      if (held.has(name)) drop(name)
      held.set(name, heights)
      bytes += sizeOf(heights)
      for (const oldest of held.keys()) {
        if (bytes <= capBytes || oldest === name) break
        drop(oldest)
      }
    },
    forget: (idStart) => {
      for (const name of held.keys()) if (name.startsWith(idStart)) drop(name)
    },
    bytes: () => bytes,
  }
}

function nameOf(raster: Raster, key: number): string {
  return `${raster.id}|${key}`
}

function sizeOf(heights: Float32Array | null): number {
  return (heights?.byteLength ?? 0) + EMPTY_BYTES
}
