/** Owns the ground as the hosts mount it: its sources, windows of cells as bytes, heights for pins, files coming in. */
import { join } from 'node:path'
import {
  type FileAdded,
  GROUND_HEADER,
  type DrawnPart,
  type GroundSourceBrief,
  type GroundWindow,
} from '#app/contract/ground.ts'
import type { Output } from '#app/contract/index.ts'
import type { Settings } from '#app/contract/settings.ts'
import { boundsHold, edgePlaces } from '#core/geo/bounds.ts'
import type { Coast } from '#core/geo/coast.ts'
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { localFrame, toLocal } from '#core/geo/local-frame.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { GROUND_REACH } from '#core/ground/rings.ts'
import { done, failed, type Result } from '#core/result.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import type { Handlers } from '#main/door/handle.ts'
import { makeRequestQueue } from '#main/tiles/request-queue.ts'
import { type ChunkCache, makeChunkCache } from './chunk-cache.ts'
import { demoRaster } from './demo-ground.ts'
import { openElevationFolder } from './elevation-folder.ts'
import { openFileReader } from './file-reader.ts'
import { fillFrom } from './fill.ts'
import { type GroundSource, groundSources, heightFrom } from './ground-source.ts'
import { latticeOf, mayMeet } from './lattice.ts'
import { isOpenSea, isSea, makeCoast, takeSea } from './sea.ts'
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

interface Work {
  readonly cache: ChunkCache
  readonly sources: () => Promise<readonly GroundSource[]>
  readonly coast: () => Promise<Coast | null>
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
  const work: Work = {
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
      'ground.heights': async ({ places }) => heights(places, work, closing.signal),
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
async function cut(wish: WindowWish, { cache, sources, coast }: Work, signal: AbortSignal): Promise<Cut> {
  const grid = emptyGrid(wish)
  const lattice = await latticeOf(grid, signal)
  const count = grid.heights.length
  const parts: DrawnPart[] = []
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
  const whole = all.every((source) => liesWithin(source, wish))
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

/** Whether a window holds all that a source could tell of the ground around it. */
function liesWithin({ brief, rasterFor }: GroundSource, wish: WindowWish): boolean {
  if (brief.bounds === null) return brief.trouble !== null || rasterFor(wish) === null
  const frame = localFrame(wish.centre, 0)
  const side = wish.half * wish.cell
  return edgePlaces(brief.bounds).every((place) => {
    const { east, north } = toLocal(frame, localFrame(place, 0).origin)
    return Math.abs(east - wish.east) <= side && Math.abs(north - wish.north) <= side
  })
}

/** Degrees of a box around a place that holds everything within the ground's reach. */
function reachAround({ lat, lon }: LatLon): Parameters<typeof isOpenSea>[1] {
  const north = (GROUND_REACH * 1.1) / (MEAN_EARTH_RADIUS * RADIANS_PER_DEGREE)
  const east = north / Math.max(0.01, Math.cos(Math.min(90, Math.abs(lat) + north) * RADIANS_PER_DEGREE))
  return { south: lat - north, north: lat + north, west: lon - east, east: lon + east }
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

/** Pins want the finest there is. */
function pinWish(centre: LatLon): WindowWish {
  return { centre, east: 0, north: 0, cell: 0.5, half: 0, peaks: false }
}

type Heights = Output<'ground.heights'>

async function heights(
  places: readonly LatLon[],
  { cache, sources, coast }: Work,
  signal: AbortSignal,
): Promise<Result<Heights>> {
  const all = await sources()
  let trouble: string | null = null
  const found: Heights['heights'] = []
  for (const at of places) {
    let known: Heights['heights'][number] = null
    for (const source of all) {
      const raster = source.rasterFor(pinWish(at))
      if (raster === null) continue
      // oxlint-disable-next-line no-await-in-loop -- the next source is only asked where this one knows nothing
      const here = await heightFrom(raster, at, cache, signal)
      trouble ??= here.trouble
      if (here.height === null) continue
      // oxlint-disable-next-line no-await-in-loop -- the coasts are read once
      const sea = await isSea(here.height, at, coast)
      known = { height: sea ? 0 : here.height, source: source.brief.name, resolution: raster.resolution, sea }
      break
    }
    found.push(known)
  }
  return done({ heights: found, trouble })
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
