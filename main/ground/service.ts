/** Owns the ground as the hosts mount it: its sources, windows of cells as bytes, heights for pins, files coming in. */
import { join } from 'node:path'
import {
  type FileAdded,
  GROUND_HEADER,
  type WindowPart,
  type GroundSourceBrief,
  type GroundWindow,
} from '#app/contract/ground.ts'
import type { Settings } from '#app/contract/settings.ts'
import { boundsHold } from '#core/geo/bounds.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { done, failed, type Result } from '#core/result.ts'
import type { Handlers } from '#main/door/handle.ts'
import { makeRequestQueue } from '#main/tiles/request-queue.ts'
import { type ChunkCache, makeChunkCache } from './chunk-cache.ts'
import { demoRaster } from './demo-ground.ts'
import { openElevationFolder } from './elevation-folder.ts'
import { openFileReader } from './file-reader.ts'
import { fillFrom } from './fill.ts'
import { type GroundSource, groundSources, heightFrom } from './ground-source.ts'
import { latticeOf, mayMeet } from './lattice.ts'
import { type PinSources, pinHeights, pinWish } from './pin-heights.ts'
import { isOpenSea, makeCoast, takeSea } from './sea.ts'
import { liesWithin, reachAround } from './window-extent.ts'
import type { AskTile } from './web-tiles.ts'
import { emptyGrid, readWindowWish, type WindowWish } from './window-wish.ts'

export interface GroundServiceOptions {
  /** The user's folder of elevation files. */
  readonly folder: string
  /** The build's copy of the demo island's elevations. */
  readonly demoFile: string
  /** The build's outlines of land. */
  readonly coastFile: string
  /** What the build made of the thread that reads elevation files. */
  readonly readerCode: () => Promise<string>
  readonly settings: () => Pick<Settings, 'groundOrder' | 'elevationTiles'>
  readonly askTile: AskTile
  /** Path under which the host answers the binary routes. */
  readonly prefix: string
  readonly now: () => number
}

export interface GroundAnswer {
  readonly status: number
  readonly type: string
  readonly body: Uint8Array<ArrayBuffer>
  readonly headers: Readonly<Record<string, string>>
}

export interface GroundService {
  readonly handlers: Pick<Handlers, 'ground.sources' | 'ground.remove' | 'ground.heights'>
  /** The route `window`. Never rejects for anything the outside does. */
  window(query: URLSearchParams, signal: AbortSignal): Promise<GroundAnswer>
  /** The route `file`. */
  file(query: URLSearchParams, body: AsyncIterable<Uint8Array>, signal: AbortSignal): Promise<GroundAnswer>
  close(): Promise<void>
}

export async function groundService(options: GroundServiceOptions): Promise<GroundService> {
  const cache = makeChunkCache()
  const reader = openFileReader(options.readerCode)
  const folder = await openElevationFolder(options.folder, reader, (id) => cache.forget(id))
  const demo = await demoRaster(options.demoFile)
  // Two at a time, the newest wish first: a window can be 36 MB, and a dragged pin leaves old wishes behind.
  const queue = makeRequestQueue(options.now)
  const closing = new AbortController()
  const ask: AskTile = options.askTile
  const work: PinSources = {
    cache,
    coast: makeCoast(options.coastFile),
    sources: async () => groundSources(options.settings(), await folder.files(), demo, ask),
  }

  async function window(query: URLSearchParams, signal: AbortSignal): Promise<GroundAnswer> {
    const wish = readWindowWish(query)
    if (!wish.ok) return jsonAnswer(400, wish.fault)
    const until = AbortSignal.any([signal, closing.signal])
    try {
      const turn = await queue.run(async () => cut(wish.value, work, until), until)
      if (turn.taken) return windowAnswer(turn.value)
    } catch (error) {
      if (!until.aborted) throw error
    }
    return jsonAnswer(504, { reason: 'left', message: 'Newer ground was asked for first. Ask for this one again.' })
  }

  return {
    handlers: {
      'ground.sources': async ({ at }) => {
        await folder.look()
        const sources = await work.sources()
        const briefs: GroundSourceBrief[] = []
        // oxlint-disable-next-line no-await-in-loop -- one after the other: they share the disk
        for (const source of sources) briefs.push(await briefAt(source, at, cache, closing.signal))
        return done({ sources: briefs, prefix: options.prefix, folder: options.folder })
      },
      'ground.remove': async ({ id }) => folder.remove(id),
      'ground.heights': async ({ places }) => pinHeights(places, work, closing.signal),
    },
    window,
    file: async (query, body, signal) => {
      const [name] = query.getAll('name')
      if (name === undefined || name.length > 300)
        return jsonAnswer(400, failed('bad-name', 'The file has no name.').fault)
      const added: Result<FileAdded> = await folder.add(name, body, signal)
      return jsonAnswer(200, added)
    },
    close: async () => {
      closing.abort()
      await reader.close()
      await folder.close()
    },
  }
}

interface Cut {
  readonly grid: ElevationGrid
  readonly facts: GroundWindow
}

/** Fills a window from the sources by precedence: each gives what those before it did not know. */
async function cut(wish: WindowWish, { cache, sources, coast }: PinSources, signal: AbortSignal): Promise<Cut> {
  const grid = emptyGrid(wish)
  const lattice = await latticeOf(grid, signal)
  const count = grid.heights.length
  const parts: WindowPart[] = []
  let [known, trouble]: [number, string | null] = [0, null]
  const all = await sources()
  for (const source of all) {
    if (known === count) break
    const raster = mayMeet(lattice, source.brief.bounds) ? source.rasterFor(wish) : null
    if (raster === null) continue
    // oxlint-disable-next-line no-await-in-loop -- the next one is asked for what is left
    const filled = await fillFrom(grid, lattice, raster, cache, signal, wish.peaks)
    trouble ??= filled.trouble
    if (filled.cells === 0) continue
    known += filled.cells
    const { id, name, attribution } = source.brief
    parts.push({ id, name, attribution, resolution: raster.resolution, share: filled.cells / count })
  }
  const sea = await takeSea(grid, lattice, coast, signal)
  known += sea.unknown
  const most = parts.toSorted((one, other) => other.share - one.share)[0]
  const whole = all.every((source) => liesWithin(source, wish, grid))
  const facts = {
    sources: parts,
    resolution: most?.resolution ?? null,
    known: known / count,
    sea: sea.cells / count,
    whole,
    seaBeyond: whole && known > 0 && isOpenSea(await coast(), reachAround(wish.centre)),
    trouble,
  }
  return { grid, facts }
}

async function briefAt(
  source: GroundSource,
  at: LatLon | null,
  cache: ChunkCache,
  signal: AbortSignal,
): Promise<GroundSourceBrief> {
  const { brief } = source
  if (at === null) return { ...brief, here: null }
  if (brief.kind === 'tiles') return { ...brief, here: 'asked' }
  if (brief.bounds === null || !boundsHold(brief.bounds, at)) return { ...brief, here: 'outside' }
  const raster = source.rasterFor(pinWish(at))
  const found = raster === null ? null : await heightFrom(raster, at, cache, signal)
  return { ...brief, here: found?.height === null || found === null ? 'gap' : 'covers' }
}

function windowAnswer({ grid, facts }: Cut): GroundAnswer {
  return {
    status: 200,
    type: 'application/octet-stream',
    body: littleEndian(grid.heights as Float32Array<ArrayBuffer>),
    headers: { [GROUND_HEADER]: asciiJson(facts) },
  }
}

/** As it lies in memory, save on the rare machine that keeps the high byte first. */
function littleEndian(values: Float32Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(values.buffer, values.byteOffset, values.byteLength)
  const lowFirst = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1
  if (!lowFirst) Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).swap32()
  return bytes
}

/** A header holds ASCII alone; names of files may hold more. */
function asciiJson(value: unknown): string {
  return JSON.stringify(value).replaceAll(
    /[^\x20-\x7e]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
}

function jsonAnswer(status: number, value: unknown): GroundAnswer {
  return { status, type: 'application/json', body: new TextEncoder().encode(JSON.stringify(value)), headers: {} }
}

export function demoFile(built: string): string {
  return join(built, 'ground', 'elevation.bin')
}

/** Its text is run, not its path: so it is read from the archive as all else is, by whoever checks the archive. */
export function readerFile(built: string): string {
  return join(built, 'reader', 'reader-entry.cjs')
}
