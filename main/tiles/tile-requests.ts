/** Owns the road to the tile servers: every check before a request, its turn, its pauses, and what is learnt from it. */
import type { Result } from '#core/result.ts'
import {
  type AddressRules,
  checkHost,
  checkTemplate,
  queueNameOf,
  type Resolve,
  type TilePlace,
  tileUrl,
} from './address.ts'
import { MINUTE } from '#core/time/duration.ts'
import type { GoneReason } from './answer.ts'
import { type BackOff, makeBackOff } from './back-off.ts'
import { type Caching, fetchTile, type FetchTools, type TileOutcome } from './fetch.ts'
import { type RequestQueue, makeRequestQueue } from './request-queue.ts'
import { needsKey, type TileSource } from './source.ts'

export type TileRequestOutcome =
  | TileOutcome
  /** Nothing was asked, and asking again cannot help. */
  | { readonly kind: 'gone'; readonly reason: GoneReason; readonly message: string }
  /** Nothing was asked this time. `wait` in milliseconds. */
  | {
      readonly kind: 'later'
      readonly reason: 'paused' | 'crowded' | 'left'
      readonly message: string
      readonly wait: number
    }

/** What the cache knows of the tile, so that the server may answer "unchanged". */
export type Known = Pick<Caching, 'etag' | 'lastModified'>

export interface TileRequestsOptions extends FetchTools {
  readonly userAgent: string
  readonly keyOf: (sourceId: string) => Promise<string | null>
  readonly resolve: Resolve
  readonly rules: AddressRules
  /** Hears of every request that was really made, or died for want of a network. */
  readonly heard: (outcome: TileOutcome) => void
}

export interface TileRequests {
  ask(source: TileSource, place: TilePlace, known: Known, signal: AbortSignal): Promise<TileRequestOutcome>
  /** Forgets which tiles were missing or bad. */
  forget(): void
  /** The user wants it tried again now: pauses end and what failed is asked for, though no server oftener than it can bear. */
  forgive(): void
}

interface Server {
  readonly queue: RequestQueue
  readonly backOff: BackOff
  forgivenAt: number
}

interface Held {
  readonly until: number
  readonly outcome: TileOutcome
}

/** A server that has no tile there will not have one in a minute. */
const ABSENT_HELD = 60 * MINUTE
const BAD_HELD = MINUTE / 2
const MOST_HELD = 5_000
const HOST_TRUSTED = 5 * MINUTE
/** However often the user presses, a server that asked for peace hears of it no oftener than this. */
const FORGIVEN_EVERY = MINUTE / 2

export function makeTileRequests(options: TileRequestsOptions): TileRequests {
  const { now, rules } = options
  const servers = new Map<string, Server>()
  const held = new Map<string, Held>()
  const hosts = new Map<string, number>()
  const keys = new Map<string, string>()

  function serverOf(template: string): Server {
    const host = queueNameOf(template)
    const server = servers.get(host) ?? {
      queue: makeRequestQueue(now),
      backOff: makeBackOff(now),
      forgivenAt: Number.NEGATIVE_INFINITY,
    }
    servers.set(host, server)
    return server
  }

  /** Null when the source needs a key and has none. A new key deserves a new try. */
  async function keyFor(source: TileSource, server: Server): Promise<string | null> {
    if (!needsKey(source)) return ''
    const key = await options.keyOf(source.id)
    if (key === null || key === '') return null
    if (keys.has(source.id) && keys.get(source.id) !== key) {
      server.backOff.forgive()
      held.clear()
    }
    keys.set(source.id, key)
    return key
  }

  async function trustedHost(hostname: string): Promise<Result<null, 'address-private' | 'name-unknown'>> {
    if ((hosts.get(hostname) ?? 0) > now()) return { ok: true, value: null }
    const checked = await checkHost(hostname, options.resolve, rules)
    if (checked.ok) hosts.set(hostname, now() + HOST_TRUSTED)
    return checked
  }

  function hold(tile: string, outcome: TileOutcome): void {
    const heldFor = holdOf(outcome)
    held.delete(tile)
    if (heldFor === 0) return
    held.set(tile, { until: now() + heldFor, outcome })
    const oldest = held.keys().next().value
    if (held.size > MOST_HELD && oldest !== undefined) held.delete(oldest)
  }

  async function request(source: TileSource, url: string, known: Known): Promise<TileRequestOutcome> {
    if (source.changed) {
      const host = await trustedHost(new URL(url).hostname)
      if (!host.ok && host.fault.reason === 'address-private') return addressRefused(source, host.fault.message)
      if (!host.ok)
        return {
          kind: 'failed',
          reason: 'unreached',
          message: `${source.name}: ${host.fault.message}`,
          retryAfter: null,
        }
    }
    return fetchTile({ url, sourceName: source.name, userAgent: options.userAgent, ...known }, options)
  }

  return {
    ask: async (source, place, known, signal) => {
      const tile = JSON.stringify([source.template, place.z, place.x, place.y])
      const checked = source.changed ? checkTemplate(source.template, rules) : null
      if (checked?.ok === false) return addressRefused(source, checked.fault.message)
      const server = serverOf(source.template)
      const key = await keyFor(source, server)
      if (key === null) return keyMissing(source)
      const before = held.get(tile)
      if (before !== undefined && before.until > now()) return before.outcome
      const turn = await server.queue.run(async () => {
        // Looked at only now: others may have failed while this one stood in line.
        if (server.backOff.remaining() > 0) return paused(source, server)
        const began = server.backOff.begin()
        const outcome = await request(source, tileUrl(source.template, place, key), known)
        if (outcome.kind === 'gone' || outcome.kind === 'later') return outcome
        server.backOff.end(began, outcome)
        hold(tile, outcome)
        options.heard(outcome)
        return outcome
      }, signal)
      return turn.taken ? turn.value : notTaken(source, turn.why)
    },
    forget: () => {
      held.clear()
    },
    forgive: () => {
      for (const server of servers.values()) {
        if (server.backOff.remaining() === 0 || now() - server.forgivenAt < FORGIVEN_EVERY) continue
        server.forgivenAt = now()
        server.backOff.forgive()
      }
      for (const [tile, { outcome }] of held) if (outcome.kind === 'failed') held.delete(tile)
    },
  }
}

function holdOf(outcome: TileOutcome): number {
  if (outcome.kind === 'absent') return ABSENT_HELD
  if (outcome.kind !== 'failed') return 0
  const byServer = ['unreached', 'timeout', 'busy'].includes(outcome.reason)
  return byServer ? 0 : BAD_HELD
}

function addressRefused(source: TileSource, why: string): TileRequestOutcome {
  return { kind: 'gone', reason: 'address-refused', message: `${source.name} is not used. ${why}` }
}

function keyMissing(source: TileSource): TileRequestOutcome {
  return { kind: 'gone', reason: 'key-missing', message: `${source.name} needs a key. Enter it in the settings.` }
}

function paused(source: TileSource, server: Server): TileRequestOutcome {
  const wait = server.backOff.remaining()
  const message = `${source.name} failed a moment ago and is left in peace for ${spanText(wait)}. Missing tiles are asked for after that.`
  return { kind: 'later', reason: 'paused', message, wait }
}

function spanText(milliseconds: number): string {
  const seconds = Math.ceil(milliseconds / 1000)
  return seconds <= 120 ? `${seconds} seconds` : `${Math.ceil(seconds / 60)} minutes`
}

function notTaken(source: TileSource, why: 'crowded' | 'left'): TileRequestOutcome {
  return {
    kind: 'later',
    reason: why,
    message: `${source.name} was asked for newer tiles first. Ask for this one again.`,
    wait: 1000,
  }
}
