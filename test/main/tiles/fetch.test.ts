/** One request by whichever way out there is: what passes for a tile, and how each way words its refusals. */
import { describe, expect, test } from 'vitest'
import { fetchTile, LARGEST_TILE_BYTES, type TileFetch, type TileOutcome } from '#main/tiles/fetch.ts'
import { imageTypeOf } from '#main/tiles/image.ts'

// First bytes by the formats' own specifications: PNG (W3C, 5.2), JPEG (ITU T.81, B.1), WebP (RFC 9649, 2.4).
const PNG = Buffer.from('89504e470d0a1a0a0000', 'hex')
const JPEG = Buffer.from('ffd8ffe000104a46', 'hex')
const WEBP = Buffer.concat([Buffer.from('RIFF'), Buffer.from([4, 0, 0, 0]), Buffer.from('WEBPVP8 ')])

async function ask(fetch: TileFetch): Promise<TileOutcome> {
  const request = {
    url: 'https://tiles.example.org/0/0/0?k=hush',
    sourceName: 'My map',
    userAgent: 'u',
    etag: null,
    lastModified: null,
  }
  return fetchTile(request, { fetch, now: () => 0, deadline: () => new AbortController().signal })
}

async function reasonOf(fetch: TileFetch): Promise<string> {
  const outcome = await ask(fetch)
  return outcome.kind === 'failed' ? outcome.reason : outcome.kind
}

function sent(body: Uint8Array, type = 'image/png'): TileFetch {
  return async () => new Response(new Uint8Array(body), { headers: { 'Content-Type': type } })
}

describe('what passes for a tile', () => {
  test.each([
    ['image/png', PNG],
    ['image/jpeg', JPEG],
    ['image/webp', WEBP],
  ] as const)('%s by its first bytes', async (type, body) => {
    expect(imageTypeOf(body)).toBe(type)
    // Servers mislabel one picture as another; the bytes decide what the page is told.
    expect(await ask(sent(body, 'image/gif'))).toMatchObject({ kind: 'tile', type })
  })

  test.each([
    ['nothing', new Uint8Array()],
    ['half a signature', PNG.subarray(0, 5)],
    ['another RIFF file', Buffer.from('RIFF\u0004\u0000\u0000\u0000WAVEfmt ')],
    ['a vector picture, which can hold scripts', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>')],
    ['a GIF', Buffer.from('GIF89a')],
  ])('not %s', async (_, body) => {
    expect(await reasonOf(sent(body))).toBe('not-image')
  })

  test('up to two megabytes and not a byte more', async () => {
    const largest = new Uint8Array(LARGEST_TILE_BYTES)
    largest.set(PNG)
    expect(await reasonOf(sent(largest))).toBe('tile')
    const larger = new Uint8Array(LARGEST_TILE_BYTES + 1)
    larger.set(PNG)
    expect(await reasonOf(sent(larger))).toBe('too-large')
  })

  test('not an endless stream, which is cut off', async () => {
    let pulled = 0
    const endless = new ReadableStream<Uint8Array>({
      pull: (controller) => {
        pulled += 1
        controller.enqueue(new Uint8Array(100_000))
      },
    })
    expect(await reasonOf(async () => new Response(endless, { headers: { 'Content-Type': 'image/png' } }))).toBe(
      'too-large',
    )
    expect(pulled).toBeLessThan(30)
  })
})

describe('a way out that rejects', () => {
  test.each([
    [
      'unreached',
      new TypeError('fetch failed', { cause: Object.assign(new Error('connect'), { code: 'ECONNREFUSED' }) }),
    ],
    ['unreached', new Error('net::ERR_INTERNET_DISCONNECTED')],
    ['unreached', new Error('net::ERR_NAME_NOT_RESOLVED')],
    [
      'untrusted',
      new TypeError('fetch failed', { cause: Object.assign(new Error('no'), { code: 'CERT_HAS_EXPIRED' }) }),
    ],
    ['untrusted', new Error('net::ERR_CERT_AUTHORITY_INVALID')],
    ['redirect', new Error('Redirect was cancelled')],
    ['redirect', new TypeError('fetch failed', { cause: new Error('unexpected redirect') })],
  ])('%s: %s', async (reason, error) => {
    const rejecting = async (): Promise<Response> => {
      throw error
    }
    expect(await reasonOf(rejecting)).toBe(reason)
  })

  test('half way through the body is a lost connection', async () => {
    const broken = new ReadableStream<Uint8Array>({
      start: (controller) => controller.enqueue(new Uint8Array(PNG)),
      pull: (controller) => controller.error(new TypeError('terminated')),
    })
    expect(await reasonOf(async () => new Response(broken, { headers: { 'Content-Type': 'image/png' } }))).toBe(
      'unreached',
    )
  })
})

test('a redirect followed behind our back is refused', async () => {
  const followed = new Response(new Uint8Array(PNG), { headers: { 'Content-Type': 'image/png' } })
  Object.defineProperty(followed, 'redirected', { value: true })
  expect(await reasonOf(async () => followed)).toBe('redirect')
})
