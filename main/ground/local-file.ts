/** Owns one elevation file on the disk, of either kind: what it covers, how fine it is, its samples. */
import { type FileHandle, open } from 'node:fs/promises'
import { basename } from 'node:path'
import type { Bounds } from '#core/geo/bounds.ts'
import { done, type Result } from '#core/result.ts'
import { breather } from './breather.ts'
import { openGeotiff } from './geotiff-file.ts'
import { hgtBounds, hgtCorner, hgtRaster, hgtResolution, hgtSide } from './hgt.ts'
import { chunksAcross, type Raster } from './raster.ts'

export interface LocalFile {
  readonly id: string
  readonly name: string
  readonly kind: 'hgt' | 'geotiff'
  readonly bytes: number
  readonly bounds: Bounds
  /** Metres between samples. */
  readonly resolution: number
  /** What its heights are above and how its places are told, in words. */
  readonly heights: string
  rasterFor(cell: number): Raster
  close(): Promise<void>
}

export function localId(name: string): string {
  return `file:${name}`
}

/** `name` is told and decides the kind; `state` tells one content of the file from the next. */
export async function openLocalFile(
  path: string,
  name: string,
  bytes: number,
  state: string,
): Promise<Result<LocalFile>> {
  const handle = lazyHandle(path)
  const rasterId = `${localId(name)}|${state}`
  const opened = /\.hgt$/i.test(name)
    ? openHgt(rasterId, name, bytes, handle.get)
    : await openGeotiffFile(rasterId, name, bytes, handle.get)
  if (!opened.ok) {
    await handle.close()
    return opened
  }
  return done({ id: localId(name), name, bytes, ...opened.value, close: handle.close })
}

type Opened = Pick<LocalFile, 'kind' | 'bounds' | 'resolution' | 'heights' | 'rasterFor'>

function openHgt(id: string, name: string, bytes: number, get: () => Promise<FileHandle>): Result<Opened> {
  const corner = hgtCorner(name)
  if (!corner.ok) return corner
  const side = hgtSide(name, bytes)
  if (!side.ok) return side
  const raster = hgtRaster(id, corner.value, side.value, get)
  return done({
    kind: 'hgt',
    bounds: hgtBounds(corner.value),
    resolution: hgtResolution(side.value),
    heights: 'above the sea by EGM96, as SRTM gives them; WGS 84',
    rasterFor: () => raster,
  })
}

async function openGeotiffFile(
  id: string,
  name: string,
  bytes: number,
  get: () => Promise<FileHandle>,
): Promise<Result<Opened>> {
  const opened = await openGeotiff(id, name, get, bytes)
  if (!opened.ok) return opened
  const geotiff = opened.value
  return done({
    kind: 'geotiff',
    bounds: geotiff.bounds,
    resolution: geotiff.resolution,
    heights: `${geotiff.heights}; ${geotiff.systemName}`,
    rasterFor: (cell) => geotiff.rasterFor(cell),
  })
}

/** Opened when first read, so that a folder of a thousand files holds none of them open. */
function lazyHandle(path: string) {
  let opening: Promise<FileHandle> | null = null
  return {
    get: (): Promise<FileHandle> => {
      opening ??= open(path, 'r').catch((error: unknown) => {
        opening = null
        throw error
      })
      return opening
    },
    close: async (): Promise<void> => {
      const handle = await opening?.catch(() => null)
      opening = null
      await handle?.close()
    },
  }
}

export interface Gaps {
  /** Share of the samples that hold no height, 0..1. */
  readonly share: number
  /** True when every part was looked at. */
  readonly whole: boolean
  /** The first part that could not be read, as a sentence. */
  readonly trouble: string | null
}

/** Parts of a large file that are looked at, evenly spread. */
const PARTS_COUNTED = 256

export async function countGaps(file: LocalFile, signal: AbortSignal): Promise<Gaps> {
  const raster = file.rasterFor(0)
  const across = chunksAcross(raster)
  const parts = across * Math.ceil(raster.rows / raster.chunkRows)
  const step = Math.max(1, parts / PARTS_COUNTED)
  const breathe = breather(signal)
  let [samples, unknown] = [0, 0]
  let trouble: string | null = null
  for (let at = 0; at < parts && trouble === null; at += step) {
    const part = Math.floor(at)
    const [x, y] = [part % across, Math.floor(part / across)]
    // oxlint-disable-next-line no-await-in-loop -- one part after the other keeps memory bounded
    const chunk = await raster.load(x, y, signal)
    trouble = chunk.trouble
    const columns = Math.min(raster.chunkColumns, raster.columns - x * raster.chunkColumns)
    const rows = Math.min(raster.chunkRows, raster.rows - y * raster.chunkRows)
    samples += columns * rows
    unknown += chunk.heights === null ? columns * rows : unknownIn(chunk.heights, raster.chunkColumns, columns, rows)
    // oxlint-disable-next-line no-await-in-loop -- only to let others have a turn
    await breathe()
  }
  return { share: samples === 0 ? 1 : unknown / samples, whole: step === 1, trouble }
}

function unknownIn(heights: Float32Array, width: number, columns: number, rows: number): number {
  let count = 0
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (Number.isNaN(heights[row * width + column] ?? Number.NaN)) count += 1
    }
  }
  return count
}

/** The file's name as it is told, without folders. */
export function plainName(name: string): string {
  return basename(name.replaceAll('\\', '/'))
}
