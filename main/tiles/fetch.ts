/** Owns one request for one tile: what is sent, and what of the answer is believed. */
import { codingOf } from './coding.ts'
import { freshnessOf, type Freshness } from './freshness.ts'
import { imageTypeOf, type ImageType } from './image.ts'

/**
 * The way out to the network: a session's fetch in the shell, `node-fetch.ts` on the loopback host. It must not follow
 * redirects, send cookies, or keep a cache of its own.
 */
export type TileFetch = (
  url: string,
  headers: Readonly<Record<string, string>>,
  signal: AbortSignal,
) => Promise<Response>

/** `unreached`: nothing answered at all. `busy`: the server asks to be left alone. `refused`: it will not serve us. */
export type FailReason =
  | 'unreached'
  | 'timeout'
  | 'busy'
  | 'server'
  | 'refused'
  | 'redirect'
  | 'untrusted'
  | 'not-image'
  | 'too-large'
  | 'packed'

export type TileOutcome =
  | { readonly kind: 'tile'; readonly type: ImageType; readonly body: Uint8Array; readonly caching: Caching }
  | { readonly kind: 'unchanged'; readonly caching: Caching }
  /** The server has no tile there: outside its area, as a rule. */
  | { readonly kind: 'absent' }
  | {
      readonly kind: 'failed'
      readonly reason: FailReason
      readonly message: string
      readonly retryAfter: number | null
    }

export interface Caching extends Freshness {
  readonly etag: string | null
  readonly lastModified: string | null
}

export interface TileRequest {
  readonly url: string
  /** For messages: never the address, which can hold a key. */
  readonly sourceName: string
  readonly userAgent: string
  readonly etag: string | null
  readonly lastModified: string | null
}

export interface FetchTools {
  readonly fetch: TileFetch
  readonly now: () => number
  /** Ends a request that takes too long. */
  readonly deadline: () => AbortSignal
}

export const LARGEST_TILE_BYTES = 2_000_000
/** What a server asks for is kept within these: none may be asked without a pause, and none is given up for the day. */
const SHORTEST_RETRY_AFTER = 1_000
const LONGEST_RETRY_AFTER = 3_600_000

/** How every request names this program and a way to reach its makers. */
export function userAgentOf(version: string, contact: string): string {
  return `Standpoint/${version} (+${contact})`
}

/** Asks once. Never rejects for anything the network or the server does. */
export async function fetchTile(request: TileRequest, tools: FetchTools): Promise<TileOutcome> {
  const signal = tools.deadline()
  const attempt = answered(request, tools, signal)
  // A port that overlooks the signal must not hold up the queue.
  const outcome = await Promise.race([attempt, whenAborted(signal)])
  return outcome ?? failure('timeout', `${request.sourceName} took too long to answer. It is asked again later.`)
}

async function answered(request: TileRequest, tools: FetchTools, signal: AbortSignal): Promise<TileOutcome | null> {
  try {
    const response = await tools.fetch(request.url, headersOf(request), signal)
    const outcome = await judged(response, request, tools.now())
    if (outcome.kind !== 'tile') await response.body?.cancel().catch(() => undefined)
    return outcome
  } catch (error) {
    return signal.aborted ? null : fromRejection(error, request.sourceName)
  }
}

function headersOf(request: TileRequest): Record<string, string> {
  const headers: Record<string, string> = {
    'User-Agent': request.userAgent,
    Accept: 'image/png,image/jpeg,image/webp',
  }
  if (request.etag !== null) headers['If-None-Match'] = request.etag
  if (request.lastModified !== null) headers['If-Modified-Since'] = request.lastModified
  return headers
}

async function judged(response: Response, request: TileRequest, now: number): Promise<TileOutcome> {
  const { status } = response
  if (status === 304 && (request.etag !== null || request.lastModified !== null)) {
    return { kind: 'unchanged', caching: cachingOf(response, request, now) }
  }
  if (response.redirected || response.type === 'opaqueredirect' || (status >= 300 && status < 400)) {
    return redirectFailure(request.sourceName)
  }
  if (status === 204 || status === 404 || status === 410) return { kind: 'absent' }
  if (status !== 200) return fromStatus(response, request.sourceName, now)
  return picture(response, request, now)
}

async function picture(response: Response, request: TileRequest, now: number): Promise<TileOutcome> {
  if (codingOf(response.headers.get('content-encoding')) === null) {
    return failure(
      'packed',
      `${request.sourceName} sent a tile packed in a way that is not taken. Check its address, or use another source.`,
    )
  }
  const contentType = response.headers.get('content-type') ?? 'nothing'
  const notImage = failure(
    'not-image',
    `${request.sourceName} sent something that is not a map tile. Check its address, or sign in to this network.`,
  )
  if (!/^image\//i.test(contentType)) return notImage
  const body = await readCapped(response)
  if (body === null)
    return failure('too-large', `${request.sourceName} sent a tile of more than 2 MB, which was not taken.`)
  const type = imageTypeOf(body)
  if (type === null) return notImage
  return { kind: 'tile', type, body, caching: cachingOf(response, { etag: null, lastModified: null }, now) }
}

/** Null once more bytes come than a tile may have; nothing beyond that is read. */
async function readCapped(response: Response): Promise<Uint8Array | null> {
  if (Number(response.headers.get('content-length') ?? 0) > LARGEST_TILE_BYTES) return null
  const parts: Uint8Array[] = []
  let length = 0
  const reader = response.body?.getReader()
  for (let part = await reader?.read(); part?.value !== undefined; part = await reader?.read()) {
    length += part.value.byteLength
    parts.push(part.value)
    if (length > LARGEST_TILE_BYTES) {
      await reader?.cancel().catch(() => undefined)
      reader?.releaseLock()
      return null
    }
  }
  return new Uint8Array(Buffer.concat(parts))
}

function cachingOf(
  response: Response,
  before: { readonly etag: string | null; readonly lastModified: string | null },
  now: number,
): Caching {
  return {
    ...freshnessOf(response.headers, now),
    etag: response.headers.get('etag') ?? before.etag,
    lastModified: response.headers.get('last-modified') ?? before.lastModified,
  }
}

function fromStatus(response: Response, sourceName: string, now: number): TileOutcome {
  const { status } = response
  const retryAfter = retryAfterOf(response.headers, now)
  if (status === 429 || status === 503) {
    return failure(
      'busy',
      `${sourceName} asks to be left alone for a while (status ${status}). It is asked again later.`,
      retryAfter,
    )
  }
  if (status >= 500)
    return failure(
      'server',
      `${sourceName} has trouble of its own (status ${status}). It is asked again later.`,
      retryAfter,
    )
  return failure(
    'refused',
    `${sourceName} refuses to serve tiles (status ${status}). Check its key and address in the settings.`,
    retryAfter,
  )
}

/** Milliseconds from now, of either form: seconds or a date (RFC 9110, 10.2.3). */
function retryAfterOf(headers: Headers, now: number): number | null {
  const text = headers.get('retry-after')
  if (text === null) return null
  const wait = /^\d+$/.test(text) ? Number(text) * 1000 : Date.parse(text) - now
  return Number.isNaN(wait) ? null : Math.min(Math.max(wait, SHORTEST_RETRY_AFTER), LONGEST_RETRY_AFTER)
}

function fromRejection(error: unknown, sourceName: string): TileOutcome {
  const text = rejectionText(error)
  if (/redirect/i.test(text)) return redirectFailure(sourceName)
  if (/CERT|TLS|SSL|SELF_SIGNED|UNABLE_TO_VERIFY/.test(text)) {
    return failure(
      'untrusted',
      `${sourceName} could not prove who it is, so nothing was taken from it. Check this computer’s clock, or sign in to this network.`,
    )
  }
  return failure('unreached', `${sourceName} could not be reached. Check the network.`)
}

/** Node tells the cause by code, Chromium by a net:: name in the message. */
function rejectionText(error: unknown): string {
  if (!(error instanceof Error)) return String(error)
  const code = 'code' in error ? String(error.code) : ''
  return `${error.message} ${code} ${error.cause === undefined ? '' : rejectionText(error.cause)}`
}

function redirectFailure(sourceName: string): TileOutcome {
  return failure(
    'redirect',
    `${sourceName} points to another address, which is not followed. Check its address, or sign in to this network.`,
  )
}

function failure(reason: FailReason, message: string, retryAfter: number | null = null): TileOutcome {
  return { kind: 'failed', reason, message, retryAfter }
}

async function whenAborted(signal: AbortSignal): Promise<null> {
  if (signal.aborted) return null
  return new Promise((resolve) => {
    signal.addEventListener('abort', () => resolve(null), { once: true })
  })
}
