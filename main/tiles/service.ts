/** Owns the tiles as the hosts mount them: cache first, then the network, then what is stale, then the reason why not. */
import type { Settings } from '#app/contract/settings.ts'
import { done } from '#core/result.ts'
import type { Handlers } from '#main/door/handle.ts'
import { type KeptTile, openTileCache, type TileCache, type TileKey } from '#main/store/tile-cache.ts'
import { isTilePlace, type Resolve, resolveWithSystem, type TilePlace } from './address.ts'
import { goneAnswer, laterAnswer, pictureAnswer, type TileAnswer } from './answer.ts'
import { type TileRequestOutcome, makeTileRequests } from './tile-requests.ts'
import type { TileFetch } from './fetch.ts'
import { makeHealth } from './health.ts'
import { imageTypeOf } from './image.ts'
import { makeSharedWork } from './shared-work.ts'
import { answerSoon, type SoonOptions } from './soon.ts'
import { briefOf, type TileSource, tileSourcesOf } from './source.ts'

export interface TileServiceOptions {
  /** Where the cache's file lives. */
  readonly folder: string
  readonly settings: () => Pick<Settings, 'ownSources' | 'templates'>
  /** Tiles that are no maps, fetched by the same rules but not offered as a map. */
  readonly others?: () => readonly TileSource[]
  readonly keyOf: (sourceId: string) => Promise<string | null>
  readonly fetch: TileFetch
  /** Milliseconds since 1970. */
  readonly now: () => number
  readonly userAgent: string
  /** Path under which the host answers tiles, told to the page. */
  readonly prefix?: string
  readonly capBytes?: number
  /** For tests and development alone. */
  readonly allowLoopbackHttp?: boolean
  readonly resolve?: Resolve
  readonly deadline?: () => AbortSignal
  readonly soon?: SoonOptions
}

export interface TileService {
  readonly handlers: Pick<Handlers, 'tiles.sources' | 'tiles.health' | 'tiles.again' | 'tiles.clear'>
  /** Never rejects for anything the outside does. The signal, if given, ends the wish while it stands in line. */
  tile(source: string, z: number, x: number, y: number, signal?: AbortSignal): Promise<TileAnswer>
  /** The same for a page, which is answered in time: an unready tile is fetched on and asked for again. */
  tileSoon(source: string, z: number, x: number, y: number, signal?: AbortSignal): Promise<TileAnswer>
  close(): void
}

const DEADLINE_MS = 20_000

export function tileService(options: TileServiceOptions): TileService {
  const { now } = options
  const cache = openTileCache({
    folder: options.folder,
    ...(options.capBytes === undefined ? {} : { capBytes: options.capBytes }),
  })
  const health = makeHealth()
  const closing = new AbortController()
  const deadline = options.deadline ?? (() => AbortSignal.timeout(DEADLINE_MS))
  const requests = makeTileRequests({
    fetch: options.fetch,
    now,
    deadline: () => AbortSignal.any([deadline(), closing.signal]),
    userAgent: options.userAgent,
    keyOf: options.keyOf,
    resolve: options.resolve ?? resolveWithSystem,
    rules: { allowLoopbackHttp: options.allowLoopbackHttp ?? false },
    heard: (outcome) => health.asked(outcome),
  })
  const shared = makeSharedWork<TileAnswer>()
  const soon = answerSoon(options.soon)

  async function fromNetwork(
    source: TileSource,
    key: TileKey,
    kept: KeptTile | null,
    signal: AbortSignal,
  ): Promise<TileAnswer> {
    const known = { etag: kept?.etag ?? null, lastModified: kept?.lastModified ?? null }
    const asked = await requests.ask(source, key, known, signal)
    if (closing.signal.aborted) return closedAnswer()
    const fresh = freshTile(asked, kept)
    if (fresh !== null) {
      keep(cache, key, fresh, now())
      health.gave({ served: true, trouble: null })
      return pictureAnswer(fresh.tile, now())
    }
    if (asked.kind === 'absent') cache.remove(key)
    const stale = asked.kind !== 'absent' && kept?.staleAllowed === true ? kept : null
    const trouble = asked.kind === 'failed' || asked.kind === 'gone' ? asked.message : null
    if (stale !== null || countsAsFailure(asked)) health.gave({ served: stale !== null, trouble })
    return stale === null ? missingAnswer(source, asked) : pictureAnswer(stale, now())
  }

  async function tile(sourceId: string, place: TilePlace, signal?: AbortSignal): Promise<TileAnswer> {
    if (closing.signal.aborted) return closedAnswer()
    const sources = [...tileSourcesOf(options.settings()), ...(options.others?.() ?? [])]
    const source = sources.find((one) => one.id === sourceId)
    if (source === undefined) return goneAnswer('unknown-source', 'There is no such tile source in the settings.')
    if (!isTilePlace(place, source.maxNativeZoom)) {
      return goneAnswer(
        'no-such-tile',
        `${source.name} has no such tile: its zooms go from 0 to ${source.maxNativeZoom}.`,
      )
    }
    const key = { template: source.template, ...place }
    const kept = soundTile(cache, key, now())
    if (kept !== null && kept.freshUntil > now()) {
      health.gave({ served: true, trouble: null })
      return pictureAnswer(kept, now())
    }
    return shared.run(JSON.stringify([sourceId, key]), (left) => fromNetwork(source, key, kept, left), signal)
  }

  return {
    handlers: {
      'tiles.sources': () =>
        done({ sources: tileSourcesOf(options.settings()).map(briefOf), prefix: options.prefix ?? '/tiles' }),
      'tiles.health': () => done(health.report()),
      'tiles.again': () => {
        requests.forgive()
        return done({})
      },
      'tiles.clear': () => {
        requests.forget()
        return done({ freedBytes: cache.clear() })
      },
    },
    tile: (source, z, x, y, signal) => tile(source, { z, x, y }, signal),
    tileSoon: (source, z, x, y, signal) =>
      soon(JSON.stringify([source, z, x, y]), (left) => tile(source, { z, x, y }, left), signal),
    close: () => {
      if (closing.signal.aborted) return
      closing.abort()
      cache.close()
    },
  }
}

interface Fresh {
  readonly tile: KeptTile
  readonly keep: boolean
}

function freshTile(asked: TileRequestOutcome, kept: KeptTile | null): Fresh | null {
  if (asked.kind === 'tile') {
    const { keep, ...caching } = asked.caching
    return { keep, tile: { type: asked.type, body: asked.body, ...caching } }
  }
  if (asked.kind === 'unchanged' && kept !== null) {
    const { keep, ...caching } = asked.caching
    return { keep, tile: { type: kept.type, body: kept.body, ...caching } }
  }
  return null
}

function keep(cache: TileCache, key: TileKey, fresh: Fresh, now: number): void {
  if (fresh.keep) cache.put(key, fresh.tile, now)
  else cache.remove(key)
}

/** A kept tile whose bytes are no picture any more is damage of the disk: as if it had never been kept. */
function soundTile(cache: TileCache, key: TileKey, now: number): KeptTile | null {
  const kept = cache.get(key, now)
  return kept !== null && imageTypeOf(kept.body) === kept.type ? kept : null
}

/** A tile that does not exist, or that nobody waits for any longer, is no failure. */
function countsAsFailure(asked: TileRequestOutcome): boolean {
  return asked.kind !== 'absent' && !(asked.kind === 'later' && asked.reason === 'left')
}

function missingAnswer(source: TileSource, asked: TileRequestOutcome): TileAnswer {
  switch (asked.kind) {
    case 'gone':
      return goneAnswer(asked.reason, asked.message)
    case 'later':
      return laterAnswer(asked.reason, asked.message, asked.wait)
    case 'failed':
      return laterAnswer(asked.reason, asked.message, asked.retryAfter ?? 0)
    case 'absent':
      return goneAnswer('not-covered', `${source.name} has no tile here.`)
    default:
      // Only an answer to a question about a kept tile can be "unchanged", and those are handled before.
      throw new Error(`a tile that came has no reason to be missing: ${asked.kind}`)
  }
}

function closedAnswer(): TileAnswer {
  return laterAnswer('closed', 'The program is being closed.', 0)
}
