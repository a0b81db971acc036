/** Node's way out to tile servers against answers written by hand: how they may be packed, and that none of them ends the program. */
import { once } from 'node:events'
import { createServer, type Socket } from 'node:net'
import { brotliCompressSync, deflateRawSync, deflateSync, gzipSync } from 'node:zlib'
import { afterEach, describe, expect, test } from 'vitest'
import { fetchTile, LARGEST_TILE_BYTES, type TileOutcome } from '#main/tiles/fetch.ts'
import { nodeTileFetch } from '#main/tiles/node-fetch.ts'
import { picture } from '#test/help/tile-server.ts'

const PICTURE = picture('/1/0/0.png')

interface Sent {
  readonly headers?: readonly string[]
  readonly body: Uint8Array
  /** Told as the body's length; more than there is leaves the body unfinished. */
  readonly length?: number
}

const running: { close: () => void }[] = []
afterEach(() => {
  for (const one of running.splice(0)) one.close()
})

/** A server that gives each connection one answer, byte for byte, and then hangs up. */
async function answering(sent: Sent): Promise<string> {
  const sockets = new Set<Socket>()
  const server = createServer((socket) => {
    sockets.add(socket)
    socket.on('error', () => undefined)
    socket.once('data', () => {
      const head = ['HTTP/1.1 200 OK', 'Content-Type: image/png', ...(sent.headers ?? [])]
      socket.write(`${head.join('\r\n')}\r\nContent-Length: ${sent.length ?? sent.body.length}\r\n\r\n`)
      socket.end(sent.body)
    })
  })
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  running.push({
    close: () => {
      server.close()
      for (const socket of sockets) socket.destroy()
    },
  })
  const address = server.address()
  return `http://127.0.0.1:${typeof address === 'object' ? (address?.port ?? 0) : 0}/1/0/0.png`
}

async function ask(sent: Sent): Promise<TileOutcome> {
  const url = await answering(sent)
  const request = { url, sourceName: 'My map', userAgent: 'u', etag: null, lastModified: null }
  const deadline = (): AbortSignal => AbortSignal.timeout(10_000)
  return fetchTile(request, { fetch: nodeTileFetch, now: () => 0, deadline })
}

async function reasonOf(sent: Sent): Promise<string> {
  const outcome = await ask(sent)
  return outcome.kind === 'failed' ? outcome.reason : outcome.kind
}

describe('a body packed once', () => {
  test.each([
    ['not at all', [], PICTURE],
    ['identity', ['Content-Encoding: identity'], PICTURE],
    ['gzip', ['Content-Encoding: gzip'], gzipSync(PICTURE)],
    ['x-gzip', ['content-encoding: X-GZIP'], gzipSync(PICTURE)],
    ['br', ['Content-Encoding: br'], brotliCompressSync(PICTURE)],
    ['deflate', ['Content-Encoding: deflate'], deflateSync(PICTURE)],
    ['deflate without its header', ['Content-Encoding: deflate'], deflateRawSync(PICTURE)],
  ] as const)('%s is unpacked', async (_, headers, body) => {
    const outcome = await ask({ headers, body })
    expect(outcome.kind).toBe('tile')
    expect(outcome.kind === 'tile' && Buffer.from(outcome.body).equals(PICTURE)).toBe(true)
  })
})

describe('an answer packed in another way', () => {
  const twice = gzipSync(gzipSync(PICTURE))
  test.each([
    ['twice in one line', ['Content-Encoding: gzip, gzip'], twice],
    ['twice in two lines', ['Content-Encoding: gzip', 'Content-Encoding: gzip'], twice],
    ['by gzip and a name that means nothing', ['Content-Encoding: gzip, identity'], gzipSync(PICTURE)],
    ['by zstd', ['Content-Encoding: zstd'], PICTURE],
    ['by what nobody knows', ['Content-Encoding: x-secret'], PICTURE],
  ] as const)('%s is refused', async (_, headers, body) => {
    expect(await reasonOf({ headers, body })).toBe('packed')
  })

  // Node's own fetch leaves a stream behind here whose fault nobody hears: the whole process ends.
  test.each([1, 2, 5, 6, 20])('%i times by gzip and broken off costs this tile alone', async (times) => {
    const headers = [`Content-Encoding: ${Array.from({ length: times }, () => 'gzip').join(', ')}`]
    expect(await reasonOf({ headers, body: gzipSync(PICTURE).subarray(0, 12), length: 1000 })).toMatch(
      times === 1 ? 'unreached' : 'packed',
    )
    // A stream's late fault would come within this turn.
    await new Promise(setImmediate)
  })
})

describe('a body that is not what it says', () => {
  test.each([
    ['broken off', { body: PICTURE, length: PICTURE.length + 1 }, 'unreached'],
    [
      'broken off within its packing',
      { headers: ['Content-Encoding: gzip'], body: gzipSync(PICTURE).subarray(0, 90) },
      'not-image',
    ],
    ['no gzip at all', { headers: ['Content-Encoding: gzip'], body: PICTURE }, 'not-image'],
    ['no deflate at all', { headers: ['Content-Encoding: deflate'], body: PICTURE }, 'not-image'],
    ['no brotli at all', { headers: ['Content-Encoding: br'], body: PICTURE }, 'not-image'],
    ['no header of HTTP', { headers: ['Content-Encoding: gz\u0001ip'], body: PICTURE }, 'unreached'],
  ] as const)('%s costs this tile alone', async (_, sent, reason) => {
    expect(await reasonOf(sent)).toBe(reason)
  })

  test.each([
    ['gzip', gzipSync(Buffer.alloc(500_000_000))],
    ['br', brotliCompressSync(Buffer.alloc(500_000_000))],
    ['deflate', deflateSync(Buffer.alloc(500_000_000))],
  ] as const)('half a gigabyte packed small by %s is not unpacked', async (coding, body) => {
    const before = process.memoryUsage().rss
    expect(await reasonOf({ headers: [`Content-Encoding: ${coding}`], body })).toBe('too-large')
    expect(process.memoryUsage().rss - before).toBeLessThan(150_000_000)
  })

  test('more than a tile may have is not read to its end', async () => {
    expect(await reasonOf({ body: Buffer.alloc(LARGEST_TILE_BYTES * 3) })).toBe('too-large')
  })
})

test('a deadline ends the reading of a body that stalls', async () => {
  const server = createServer((socket) => {
    socket.on('error', () => undefined)
    socket.write('HTTP/1.1 200 OK\r\nContent-Type: image/png\r\nContent-Length: 10\r\n\r\nx')
  })
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  running.push({ close: () => server.close() })
  const address = server.address()
  const url = `http://127.0.0.1:${typeof address === 'object' ? (address?.port ?? 0) : 0}/`
  const request = { url, sourceName: 'My map', userAgent: 'u', etag: null, lastModified: null }
  const outcome = await fetchTile(request, {
    fetch: nodeTileFetch,
    now: () => 0,
    deadline: () => AbortSignal.timeout(50),
  })
  expect(outcome).toMatchObject({ kind: 'failed', reason: 'timeout' })
})
