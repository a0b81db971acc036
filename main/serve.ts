/** Serves the page: a web-standard `Request -> Response` that both hosts mount, with one set of headers on every answer. */
import { timingSafeEqual } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'
import { extname, join, relative, sep } from 'node:path'

export interface PageFile {
  readonly type: string
  readonly body: Uint8Array<ArrayBuffer>
}

/** A tile: its picture, or with another status than 200 the reason in JSON why there is none. */
export interface ServedTile {
  readonly status: number
  readonly type: string
  readonly body: Uint8Array
  /** How long the page may show it unasked. */
  readonly maxAgeSeconds: number
  /** After how long the page may ask again; null where that cannot help. */
  readonly retryAfterSeconds: number | null
}

/** The signal ends the wish when the page no longer waits. */
export type TilePort = (source: string, z: number, x: number, y: number, signal: AbortSignal) => Promise<ServedTile>

/** Ground as bytes: what is answered to `<prefix>/window` and `<prefix>/file`. */
export interface ServedGround {
  readonly status: number
  readonly type: string
  readonly body: Uint8Array<ArrayBuffer>
  readonly headers: Readonly<Record<string, string>>
}

export interface GroundPort {
  readonly window: (query: URLSearchParams, signal: AbortSignal) => Promise<ServedGround>
  readonly file: (query: URLSearchParams, body: AsyncIterable<Uint8Array>, signal: AbortSignal) => Promise<ServedGround>
}

export interface ServeOptions {
  readonly files: ReadonlyMap<string, PageFile>
  readonly isOurs: (url: URL) => boolean
  /** Path under which tiles are answered; the page learns it by a call, since an `<img>` cannot send a header. */
  readonly tilePrefix: string
  readonly tiles: TilePort
  /** Path under which ground is answered, secret like the tiles'. */
  readonly groundPrefix: string
  readonly ground: GroundPort
}

export type Serve = (request: Request) => Promise<Response>

/** No inline script or style, nothing from elsewhere, nobody may frame the page. */
export const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

export const HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': CONTENT_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=()',
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.geojson': 'application/geo+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.bin': 'application/octet-stream',
}

const TILE_TYPES = new Set(['image/png', 'image/jpeg', 'image/webp', 'image/gif', 'image/avif'])
const DEEPEST_ZOOM = 24
/** A day: the cache in main follows the server's rules, the page's own copy need not outlive a sitting. */
const LONGEST_KEPT_SECONDS = 86_400

/** Reads the built page once, path to bytes; a path outside it cannot be expressed afterwards. */
export async function readPage(folder: string): Promise<Map<string, PageFile>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  const names = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name))
  const files = new Map<string, PageFile>()
  await Promise.all(
    names
      .filter((name) => TYPES[extname(name)] !== undefined)
      .map(async (name) => {
        const path = `/${relative(folder, name).split(sep).join('/')}`
        files.set(path, { type: TYPES[extname(name)] ?? '', body: new Uint8Array(await readFile(name)) })
      }),
  )
  const start = files.get('/index.html')
  if (start) files.set('/', start)
  return files
}

export function makeServe(options: ServeOptions): Serve {
  return async (request) => {
    const url = URL.parse(request.url)
    if (!url || !options.isOurs(url)) return plainAnswer(404, 'Not found')
    if (url.pathname.startsWith('/ground/')) return answerGround(options, url, request)
    if (request.method !== 'GET' && request.method !== 'HEAD') return plainAnswer(405, 'Only GET is answered here')
    if (url.pathname.startsWith('/tiles/')) return answerTile(options, url.pathname, request.signal)
    const file = options.files.get(url.pathname)
    if (!file) return plainAnswer(404, 'Not found')
    return answer(200, request.method === 'HEAD' ? null : file.body, { 'Content-Type': file.type })
  }
}

/** Windows are read by GET, files come in by POST; nothing else, and only under the secret prefix. */
async function answerGround(options: ServeOptions, url: URL, request: Request): Promise<Response> {
  const { groundPrefix: prefix, ground } = options
  const head = url.pathname.slice(0, prefix.length)
  const route = url.pathname.slice(prefix.length)
  const method = { '/window': 'GET', '/file': 'POST' }[route]
  if (!sameText(head, prefix) || method === undefined) return plainAnswer(404, 'Not found')
  if (request.method !== method) return plainAnswer(405, `Only ${method} is answered here`)
  const served =
    route === '/window'
      ? await ground.window(url.searchParams, request.signal)
      : await ground.file(url.searchParams, request.body ?? nothing(), request.signal)
  return answer(served.status, served.body, {
    'Content-Type': served.type,
    'Cache-Control': 'no-store',
    ...served.headers,
  })
}

async function* nothing(): AsyncGenerator<Uint8Array> {}

async function answerTile(options: ServeOptions, path: string, signal: AbortSignal): Promise<Response> {
  const wanted = tileWanted(path, options.tilePrefix)
  if (!wanted) return plainAnswer(404, 'Not found')
  const tile = await options.tiles(wanted.source, wanted.z, wanted.x, wanted.y, signal)
  const fits = tile.status === 200 ? TILE_TYPES.has(tile.type) : tile.type === 'application/json'
  if (!fits) return plainAnswer(502, 'Not a picture', { 'Cache-Control': 'no-store' })
  const kept = Math.min(tile.maxAgeSeconds, LONGEST_KEPT_SECONDS)
  return answer(tile.status, new Uint8Array(tile.body), {
    'Content-Type': tile.type,
    'Cache-Control': tile.status === 200 && kept > 0 ? `private, max-age=${kept}` : 'no-store',
    ...(tile.retryAfterSeconds === null ? {} : { 'Retry-After': String(tile.retryAfterSeconds) }),
  })
}

interface TileWanted {
  readonly source: string
  readonly z: number
  readonly x: number
  readonly y: number
}

/** The tile a path names, or null unless the secret prefix is right and the numbers are whole and within the grid. */
export function tileWanted(path: string, prefix: string): TileWanted | null {
  const head = path.slice(0, prefix.length)
  if (!sameText(head, prefix)) return null
  const parts = /^\/([^/]{1,300})\/(\d{1,2})\/(\d{1,8})\/(\d{1,8})$/.exec(path.slice(prefix.length))
  if (!parts) return null
  const [, source = '', zText = '', xText = '', yText = ''] = parts
  const [z, x, y] = [Number(zText), Number(xText), Number(yText)]
  if (z > DEEPEST_ZOOM || x >= 2 ** z || y >= 2 ** z) return null
  const name = decoded(source)
  return name === null ? null : { source: name, z, x, y }
}

function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text)
  } catch {
    return null
  }
}

/** Compares two texts in a time that does not tell where they differ. */
export function sameText(given: string, wanted: string): boolean {
  const [left, right] = [Buffer.from(given), Buffer.from(wanted)]
  return left.length === right.length && timingSafeEqual(left, right)
}

export function plainAnswer(status: number, text: string, more: Readonly<Record<string, string>> = {}): Response {
  return answer(status, text, { 'Content-Type': 'text/plain; charset=utf-8', ...more })
}

function answer(
  status: number,
  body: Uint8Array<ArrayBuffer> | string | null,
  more: Readonly<Record<string, string>>,
): Response {
  return new Response(body, { status, headers: { 'Cache-Control': 'no-cache', ...HEADERS, ...more } })
}
