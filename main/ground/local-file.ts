/** Owns one elevation file on the disk, of either kind, as the reading thread has it open: its facts, its samples, its gaps. */
import { type FileHandle, open } from 'node:fs/promises'
import { done, type Result } from '#core/result.ts'
import { type ElevationFacts, elevationFile } from './elevation-facts.ts'
import { openGeotiff } from './geotiff-file.ts'
import { hgtCorner, hgtLoader, hgtSide } from './hgt.ts'
import { type HeightTally, newTally, otherUnit } from './possible-height.ts'
import { type Chunk, chunksAcross, type Raster } from './raster.ts'

/** A file by where it lies; `name` is told and decides the kind, `state` tells one content from the next. */
export interface FileRef {
  readonly path: string
  readonly name: string
  readonly bytes: number
  readonly state: string
}

export interface LocalFile {
  readonly name: string
  readonly facts: ElevationFacts
  readonly loaders: readonly Raster['load'][]
  readonly tally: HeightTally
  readonly close: () => Promise<void>
}

export async function openLocalFile({ path, name, bytes }: FileRef): Promise<Result<LocalFile>> {
  const handle = lazyHandle(path)
  const opened = /\.hgt$/i.test(name)
    ? openHgt(name, bytes, handle.get)
    : await openGeotiffFile(name, bytes, handle.get)
  if (opened.ok) return done({ name, ...opened.value, close: handle.close })
  await handle.close()
  return opened
}

type Opened = Pick<LocalFile, 'facts' | 'loaders' | 'tally'>

function openHgt(name: string, bytes: number, get: () => Promise<FileHandle>): Result<Opened> {
  const corner = hgtCorner(name)
  if (!corner.ok) return corner
  const side = hgtSide(name, bytes)
  if (!side.ok) return side
  const tally = newTally()
  return done({
    facts: { kind: 'hgt', corner: corner.value, side: side.value },
    loaders: [hgtLoader(corner.value, side.value, get, tally)],
    tally,
  })
}

async function openGeotiffFile(name: string, bytes: number, get: () => Promise<FileHandle>): Promise<Result<Opened>> {
  const opened = await openGeotiff(name, get, bytes)
  if (!opened.ok) return opened
  const { facts, loaders, tally } = opened.value
  return done({ facts: { kind: 'geotiff', ...facts }, loaders, tally })
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

export async function loadChunk(file: LocalFile, level: number, x: number, y: number): Promise<Chunk> {
  const load = file.loaders[level]
  if (load === undefined) throw new Error('no such level of detail')
  return load(x, y, NEVER)
}

const NEVER = new AbortController().signal

export interface Gaps {
  /** Share of the samples that hold no height, 0..1. */
  readonly share: number
  /** True when every part was looked at. */
  readonly whole: boolean
  /** The first part that could not be read, as a sentence. */
  readonly trouble: string | null
  /** Why its heights can't be what they are taken for, as a sentence. */
  readonly unlikely: string | null
}

/** Parts of a large file that are looked at, evenly spread. */
const PARTS_COUNTED = 256

/** `alive` is told after each part. */
export async function countGaps(file: LocalFile, alive: () => void): Promise<Gaps> {
  const raster = elevationFile('', file.facts, (level) => file.loaders[level] ?? noLevel).rasterFor(0)
  const across = chunksAcross(raster)
  const parts = across * Math.ceil(raster.rows / raster.chunkRows)
  const step = Math.max(1, parts / PARTS_COUNTED)
  let [samples, unknown] = [0, 0]
  let trouble: string | null = null
  for (let at = 0; at < parts && trouble === null; at += step) {
    const part = Math.floor(at)
    const [x, y] = [part % across, Math.floor(part / across)]
    // oxlint-disable-next-line no-await-in-loop -- one part after the other keeps memory bounded
    const chunk = await raster.load(x, y, NEVER)
    trouble = chunk.trouble
    const columns = Math.min(raster.chunkColumns, raster.columns - x * raster.chunkColumns)
    const rows = Math.min(raster.chunkRows, raster.rows - y * raster.chunkRows)
    samples += columns * rows
    unknown += chunk.heights === null ? columns * rows : unknownIn(chunk.heights, raster.chunkColumns, columns, rows)
    alive()
  }
  const share = samples === 0 ? 1 : unknown / samples
  // What a damaged file holds tells nothing of its unit.
  const unlikely = trouble === null ? otherUnit(file.tally, file.name) : null
  return { share, whole: step === 1, trouble, unlikely }
}

function noLevel(): Promise<Chunk> {
  throw new Error('no such level of detail')
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
