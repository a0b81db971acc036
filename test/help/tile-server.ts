/** A tile server for tests: answers, fails, stalls, redirects and lies on demand, and remembers what it was asked. */
import {
  createServer,
  type IncomingHttpHeaders,
  type IncomingMessage,
  type Server,
  type ServerResponse,
} from 'node:http'
import type { AddressInfo } from 'node:net'
import { crc32, deflateSync } from 'node:zlib'

/**
 * `slow` holds every answer until `release()`; `html` sends a page as an image; `wrong-magic` sends noise as an image;
 * `plain-type` sends a true image as text; `huge` sends 3 MB without saying so first, `huge-told` says so.
 */
export type TileServerMode =
  | 'answers'
  | 'failing'
  | 'slow'
  | 'redirect'
  | 'html'
  | 'wrong-magic'
  | 'plain-type'
  | 'huge'
  | 'huge-told'
  | 'not-modified'
  | 'busy'
  | 'forbidden'
  | 'missing'

export interface TileServerRequest {
  readonly path: string
  readonly headers: IncomingHttpHeaders
}

export interface TileServer {
  /** `http://127.0.0.1:<port>/{z}/{x}/{y}.png` */
  readonly template: string
  readonly requests: readonly TileServerRequest[]
  /** The most requests ever under way at the same time. */
  readonly mostAtOnce: number
  mode: TileServerMode
  /** Sent with every answer: lifetimes, ETag, Retry-After. */
  headers: Readonly<Record<string, string>>
  /** Resolves once so many requests have come in all. */
  arrived(count: number): Promise<void>
  /** Answers what `slow` holds, or only the longest held. */
  release(count?: number): void
  /** Closes the port, so that connections are refused, and opens the same one again. */
  stop(): Promise<void>
  restart(): Promise<void>
  close(): Promise<void>
}

const HUGE_BYTES = 3_000_000

export async function startTileServer(mode: TileServerMode = 'answers'): Promise<TileServer> {
  const requests: TileServerRequest[] = []
  const held: (() => void)[] = []
  const awaited: { count: number; resolve: () => void }[] = []
  let underWay = 0
  let mostAtOnce = 0
  let server = createServer(take)

  function take(request: IncomingMessage, response: ServerResponse): void {
    requests.push({ path: request.url ?? '', headers: request.headers })
    underWay += 1
    mostAtOnce = Math.max(mostAtOnce, underWay)
    response.once('close', () => {
      underWay -= 1
    })
    if (made.mode === 'slow') held.push(() => answer('answers', made.headers, request, response))
    else answer(made.mode, made.headers, request, response)
    for (const one of awaited) if (requests.length >= one.count) one.resolve()
  }

  const port = await listen(server, 0)
  const made: TileServer & { mode: TileServerMode; headers: Readonly<Record<string, string>> } = {
    template: `http://127.0.0.1:${port}/{z}/{x}/{y}.png`,
    requests,
    get mostAtOnce() {
      return mostAtOnce
    },
    mode,
    headers: {},
    arrived: async (count) => {
      if (requests.length >= count) return
      await new Promise<void>((resolve) => {
        awaited.push({ count, resolve })
      })
    },
    release: (count = held.length) => {
      for (const go of held.splice(0, count)) go()
    },
    stop: async () => shut(server),
    restart: async () => {
      server = createServer(take)
      await listen(server, port)
    },
    close: async () => shut(server),
  }
  return made
}

function answer(
  mode: Exclude<TileServerMode, 'slow'>,
  headers: Readonly<Record<string, string>>,
  request: IncomingMessage,
  response: ServerResponse,
): void {
  const send = (status: number, type: string, body: Uint8Array | string): void => {
    response.writeHead(status, { 'Content-Type': type, ...headers })
    response.end(body)
  }
  switch (mode) {
    case 'answers':
      return send(200, 'image/png', picture(request.url ?? ''))
    case 'failing':
      return send(500, 'text/plain', 'out of order')
    case 'busy':
      return send(429, 'text/plain', 'too many requests')
    case 'forbidden':
      return send(403, 'text/plain', 'no')
    case 'missing':
      return send(404, 'text/plain', 'nothing here')
    case 'redirect':
      response.writeHead(302, { Location: '/elsewhere/0/0/0.png', ...headers })
      response.end()
      return undefined
    case 'html':
      return send(200, 'image/png', '<!doctype html><title>Sign in</title>')
    case 'wrong-magic':
      return send(200, 'image/png', new Uint8Array(500).fill(7))
    case 'plain-type':
      return send(200, 'text/plain', picture(request.url ?? ''))
    case 'huge':
      response.writeHead(200, { 'Content-Type': 'image/png', ...headers })
      response.write(picture(''))
      response.end(new Uint8Array(HUGE_BYTES))
      return undefined
    case 'huge-told':
      return send(200, 'image/png', Buffer.concat([picture(''), new Uint8Array(HUGE_BYTES)]))
    case 'not-modified':
      response.writeHead(304, headers)
      response.end()
      return undefined
  }
}

/** A true PNG of 256 x 256 in one colour that depends on the path, so that neighbours differ on a screenshot. */
export function picture(path: string): Buffer {
  const side = 256
  const tint = crc32(path)
  const row = Buffer.alloc(1 + side * 3)
  for (let column = 0; column < side; column += 1) {
    const edge = column === 0
    for (let band = 0; band < 3; band += 1) row[1 + column * 3 + band] = edge ? 90 : 150 + ((tint >>> (band * 8)) & 63)
  }
  const header = Buffer.alloc(13)
  header.writeUInt32BE(side, 0)
  header.writeUInt32BE(side, 4)
  header.set([8, 2, 0, 0, 0], 8)
  const pixels = deflateSync(Buffer.concat(Array.from({ length: side }, () => row)))
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return Buffer.concat([signature, chunk('IHDR', header), chunk('IDAT', pixels), chunk('IEND', Buffer.alloc(0))])
}

function chunk(name: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const check = Buffer.alloc(4)
  check.writeUInt32BE(crc32(named))
  return Buffer.concat([length, named, check])
}

async function listen(server: Server, port: number): Promise<number> {
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen({ host: '127.0.0.1', port }, resolve)
  })
  return (server.address() as AddressInfo).port
}

async function shut(server: Server): Promise<void> {
  if (!server.listening) return
  server.closeAllConnections()
  await new Promise<void>((resolve) => {
    server.close(() => resolve())
  })
}
