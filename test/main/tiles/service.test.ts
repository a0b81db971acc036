/** Tiles end to end against a server of the test's own: cache, network, lies, pauses and the reasons for a missing tile. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { Settings } from '#app/contract/settings.ts'
import { TILE_CACHE_FILE } from '#main/store/tile-cache.ts'
import type { TileAnswer } from '#main/tiles/answer.ts'
import { userAgentOf } from '#main/tiles/fetch.ts'
import { nodeTileFetch } from '#main/tiles/node-fetch.ts'
import { type TileService, tileService, type TileServiceOptions } from '#main/tiles/service.ts'
import { picture, startTileServer, type TileServer, type TileServerMode } from '#test/help/tile-server.ts'

const SECOND = 1000
const MINUTE = 60 * SECOND
const DAY = 86_400 * SECOND
const USER_AGENT = userAgentOf('1.2.3', 'https://example.org/contact')

let folder = ''
let server: TileServer
let services: TileService[] = []
let time = 0
let key: string | null = null

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tiles-'))
  server = await startTileServer()
  time = Date.UTC(2031, 4, 5, 12)
  key = null
})

afterEach(async () => {
  for (const service of services) service.close()
  services = []
  await server.close()
  rmSync(folder, { recursive: true, force: true })
})

function ownSource(template: string, id = 'mine'): Settings['ownSources'][number] {
  return { id, name: 'My map', template, maxNativeZoom: 10, attribution: '', attributionLink: '' }
}

function start(more: Partial<TileServiceOptions> = {}): TileService {
  const service = tileService({
    folder,
    settings: () => ({ ownSources: [ownSource(server.template)], templates: {} }),
    keyOf: async () => key,
    fetch: nodeTileFetch,
    now: () => time,
    userAgent: USER_AGENT,
    allowLoopbackHttp: true,
    ...more,
  })
  services.push(service)
  return service
}

function why(answer: TileAnswer): { reason: string; message: string; retryAfterSeconds: number | null } {
  return JSON.parse(Buffer.from(answer.body).toString('utf8')) as ReturnType<typeof why>
}

function health(service: TileService): { offline: boolean; failed: number; served: number; message: string } {
  const result = service.handlers['tiles.health']({})
  if (result instanceof Promise || !result.ok) throw new Error('health is told at once')
  return result.value
}

describe('a tile that comes', () => {
  test('is the picture, with its type and lifetime', async () => {
    server.headers = { 'Cache-Control': 'max-age=3600' }
    const answer = await start().tile('mine', 3, 4, 5)
    expect([answer.status, answer.type, answer.maxAgeSeconds]).toEqual([200, 'image/png', 3600])
    expect(Buffer.from(answer.body).equals(picture('/3/4/5.png'))).toBe(true)
  })

  test('is asked for with who we are, and nothing that tells of the user', async () => {
    await start().tile('mine', 3, 4, 5)
    const { headers, path } = server.requests[0] ?? { headers: {}, path: '' }
    expect(path).toBe('/3/4/5.png')
    expect(headers['user-agent']).toBe('Standpoint/1.2.3 (+https://example.org/contact)')
    expect([headers.cookie, headers.referer, headers.authorization]).toEqual([undefined, undefined, undefined])
  })

  test('carries the key in the address, which stays out of every message', async () => {
    key = 'hush&more'
    const service = start({
      settings: () => ({ ownSources: [ownSource(`${server.template}?k={key}`)], templates: {} }),
    })
    await service.tile('mine', 0, 0, 0)
    expect(server.requests[0]?.path).toBe('/0/0/0.png?k=hush%26more')
    server.mode = 'forbidden'
    const refused = await service.tile('mine', 1, 0, 0)
    expect(Buffer.from(refused.body).toString()).not.toContain('hush')
    expect(health(service).message).not.toContain('hush')
  })

  test('is fetched once for all who ask meanwhile', async () => {
    server.mode = 'slow'
    const service = start()
    const wishes = [1, 2, 3, 4].map(async () => service.tile('mine', 2, 1, 1))
    await server.arrived(1)
    server.release()
    expect((await Promise.all(wishes)).map((answer) => answer.status)).toEqual([200, 200, 200, 200])
    expect(server.requests).toHaveLength(1)
  })

  test('is never one of more than two under way at its host', async () => {
    server.mode = 'slow'
    const service = start()
    const wishes = Array.from({ length: 9 }, async (_, x) => service.tile('mine', 5, x, 0))
    for (let count = 2; count <= 9; count += 1) {
      await server.arrived(count)
      server.release(1)
    }
    server.release()
    expect((await Promise.all(wishes)).every((answer) => answer.status === 200)).toBe(true)
    expect(server.mostAtOnce).toBe(2)
  })

  test('brings no neighbours along', async () => {
    await start().tile('mine', 5, 10, 10)
    expect(server.requests).toHaveLength(1)
  })
})

describe('a tile that is kept', () => {
  test('is used unasked for its lifetime, then asked about', async () => {
    server.headers = { 'Cache-Control': 'max-age=60' }
    const service = start()
    await service.tile('mine', 0, 0, 0)
    time += 59 * SECOND
    expect((await service.tile('mine', 0, 0, 0)).maxAgeSeconds).toBe(1)
    expect(server.requests).toHaveLength(1)
    time += 2 * SECOND
    await service.tile('mine', 0, 0, 0)
    expect(server.requests).toHaveLength(2)
  })

  test('is used for seven days where the server says nothing', async () => {
    const service = start()
    await service.tile('mine', 0, 0, 0)
    time += 7 * DAY - SECOND
    await service.tile('mine', 0, 0, 0)
    expect(server.requests).toHaveLength(1)
    time += 2 * SECOND
    await service.tile('mine', 0, 0, 0)
    expect(server.requests).toHaveLength(2)
  })

  test('is asked about by ETag and date, and "unchanged" renews it', async () => {
    server.headers = { 'Cache-Control': 'max-age=60', ETag: '"v1"', 'Last-Modified': 'Sun, 04 May 2031 12:00:00 GMT' }
    const service = start()
    const first = await service.tile('mine', 0, 0, 0)
    time += 61 * SECOND
    server.mode = 'not-modified'
    const second = await service.tile('mine', 0, 0, 0)
    expect([second.status, second.maxAgeSeconds, Buffer.from(second.body).equals(first.body)]).toEqual([200, 60, true])
    expect(server.requests[1]?.headers).toMatchObject({
      'if-none-match': '"v1"',
      'if-modified-since': 'Sun, 04 May 2031 12:00:00 GMT',
    })
    time += 59 * SECOND
    await service.tile('mine', 0, 0, 0)
    expect(server.requests).toHaveLength(2)
  })

  test('outlives the program', async () => {
    start().close()
    await start().tile('mine', 0, 0, 0)
    services.pop()?.close()
    expect((await start().tile('mine', 0, 0, 0)).status).toBe(200)
    expect(server.requests).toHaveLength(1)
  })

  test('is not used for another address of the same source', async () => {
    let template = server.template
    const service = start({ settings: () => ({ ownSources: [ownSource(template)], templates: {} }) })
    await service.tile('mine', 0, 0, 0)
    template = server.template.replace('.png', '.jpg')
    await service.tile('mine', 0, 0, 0)
    expect(server.requests.map((one) => one.path)).toEqual(['/0/0/0.png', '/0/0/0.jpg'])
  })

  test('that may not be stored is not', async () => {
    server.headers = { 'Cache-Control': 'no-store' }
    const service = start()
    // Nor may the page or its browser keep it, for no time at all.
    expect((await service.tile('mine', 0, 0, 0)).maxAgeSeconds).toBe(0)
    await service.tile('mine', 0, 0, 0)
    expect(server.requests).toHaveLength(2)
  })

  test('is forgotten when the server says it is gone', async () => {
    server.headers = { 'Cache-Control': 'max-age=60' }
    const service = start()
    await service.tile('mine', 0, 0, 0)
    time += 2 * MINUTE
    server.mode = 'missing'
    expect((await service.tile('mine', 0, 0, 0)).status).toBe(404)
    await server.stop()
    time += 2 * 60 * MINUTE
    expect((await service.tile('mine', 0, 0, 0)).status).toBe(504)
  })

  test('comes again when the file of the cache is rubbish', async () => {
    writeFileSync(join(folder, TILE_CACHE_FILE), 'rubbish'.repeat(1000))
    const service = start()
    expect((await service.tile('mine', 0, 0, 0)).status).toBe(200)
    await service.tile('mine', 0, 0, 0)
    expect(server.requests).toHaveLength(1)
  })

  test('is gone after clearing, which says how much that freed', async () => {
    const service = start()
    for (let x = 0; x < 20; x += 1) await service.tile('mine', 5, x, 0)
    const cleared = await service.handlers['tiles.clear']({})
    expect(cleared.ok && cleared.value.freedBytes).toBeGreaterThan(10 * picture('/5/0/0.png').byteLength)
    await service.tile('mine', 5, 0, 0)
    expect(server.requests).toHaveLength(21)
  })

  test('makes room by the cap', async () => {
    const size = picture('/5/0/0.png').byteLength
    const service = start({ capBytes: size * 3 + 200 })
    for (let x = 0; x < 5; x += 1) {
      await service.tile('mine', 5, x, 0)
      time += 2 * MINUTE
    }
    await server.stop()
    const left = await Promise.all([0, 1, 2, 3, 4].map(async (x) => (await service.tile('mine', 5, x, 0)).status))
    expect(left.slice(0, 2)).toEqual([504, 504])
    expect(left.at(-1)).toBe(200)
  })
})

describe('a stale tile', () => {
  const troubles: TileServerMode[] = [
    'failing',
    'busy',
    'forbidden',
    'redirect',
    'html',
    'wrong-magic',
    'plain-type',
    'huge',
    'huge-told',
  ]

  test.each(troubles)('is shown when the server is %s, and not for longer than that', async (mode) => {
    server.headers = { 'Cache-Control': 'max-age=60' }
    const service = start()
    const first = await service.tile('mine', 0, 0, 0)
    time += 2 * MINUTE
    server.mode = mode
    const stale = await service.tile('mine', 0, 0, 0)
    expect([stale.status, stale.maxAgeSeconds, Buffer.from(stale.body).equals(first.body)]).toEqual([200, 0, true])
    expect(health(service)).toMatchObject({
      served: 2,
      failed: 0,
      message: expect.stringContaining('My map') as string,
    })
  })

  test('is shown without a network', async () => {
    server.headers = { 'Cache-Control': 'max-age=60' }
    const service = start()
    await service.tile('mine', 0, 0, 0)
    time += 400 * DAY
    await server.stop()
    for (let count = 0; count < 3; count += 1) expect((await service.tile('mine', 0, 0, 0)).status).toBe(200)
  })

  test('is not shown where the server forbids it', async () => {
    server.headers = { 'Cache-Control': 'max-age=60, must-revalidate' }
    const service = start()
    await service.tile('mine', 0, 0, 0)
    time += 2 * MINUTE
    await server.stop()
    expect((await service.tile('mine', 0, 0, 0)).status).toBe(504)
  })
})

describe('a missing tile', () => {
  test.each<[TileServerMode, number, string]>([
    ['failing', 502, 'server'],
    ['busy', 502, 'busy'],
    ['forbidden', 502, 'refused'],
    ['redirect', 502, 'redirect'],
    ['html', 502, 'not-image'],
    ['wrong-magic', 502, 'not-image'],
    ['plain-type', 502, 'not-image'],
    ['huge', 502, 'too-large'],
    ['huge-told', 502, 'too-large'],
    ['not-modified', 502, 'redirect'],
    ['missing', 404, 'not-covered'],
  ])('because the server is %s: %d %s', async (mode, status, reason) => {
    server.mode = mode
    const answer = await start().tile('mine', 0, 0, 0)
    expect([answer.status, why(answer).reason, answer.maxAgeSeconds]).toEqual([status, reason, 0])
    expect(why(answer).message).toMatch(/^My map .*\.$/)
    expect(server.requests.map((one) => one.path)).toEqual(['/0/0/0.png'])
  })

  test('because nothing answers: 504', async () => {
    await server.stop()
    const answer = await start().tile('mine', 0, 0, 0)
    expect([answer.status, why(answer).reason]).toEqual([504, 'unreached'])
  })

  test('because the answer takes too long: 504', async () => {
    server.mode = 'slow'
    const patience = new AbortController()
    const wish = start({ deadline: () => patience.signal }).tile('mine', 0, 0, 0)
    await server.arrived(1)
    patience.abort()
    const answer = await wish
    expect([answer.status, why(answer).reason]).toEqual([504, 'timeout'])
  })

  test('because a way out to the network overlooks the signal: 504 all the same', async () => {
    const patience = new AbortController()
    const asked = Promise.withResolvers<undefined>()
    const deaf = async (): Promise<Response> => {
      asked.resolve(undefined)
      return new Promise(() => undefined)
    }
    const wish = start({ deadline: () => patience.signal, fetch: deaf }).tile('mine', 0, 0, 0)
    await asked.promise
    patience.abort()
    expect((await wish).status).toBe(504)
  })

  test.each<[string, number, number, number]>([
    ['mine', 11, 0, 0],
    ['mine', 3, 8, 0],
    ['mine', 3, -1, 0],
    ['mine', 1.5, 0, 0],
    ['mine', Number.NaN, 0, 0],
    ['nobody', 0, 0, 0],
    ['__proto__', 0, 0, 0],
  ])('because there is none (%s %d/%d/%d): 404, and nobody is asked', async (source, z, x, y) => {
    expect((await start().tile(source, z, x, y)).status).toBe(404)
    expect(server.requests).toHaveLength(0)
  })

  test('because the source needs a key: 404 until there is one', async () => {
    const service = start({
      settings: () => ({ ownSources: [ownSource(`${server.template}?k={key}`)], templates: {} }),
    })
    const without = await service.tile('mine', 0, 0, 0)
    expect([without.status, why(without).reason, server.requests.length]).toEqual([404, 'key-missing', 0])
    key = 'k'
    expect((await service.tile('mine', 0, 0, 0)).status).toBe(200)
  })

  test.each([
    ['http://tiles.example.org/{z}/{x}/{y}.png', 'http'],
    ['https://10.0.0.1/{z}/{x}/{y}.png', 'inside'],
    ['https://tiles.example.org/{z}/{x}/{y}.png', 'a name that leads inside'],
  ])('because its address may not be used (%s, %s): 404, and nobody is asked', async (template) => {
    const asked: string[] = []
    const service = start({
      settings: () => ({ ownSources: [], templates: { openstreetmap: template } }),
      resolve: async () => ['192.168.0.7'],
      fetch: async (url) => {
        asked.push(url)
        return new Response(null)
      },
    })
    const answer = await service.tile('openstreetmap', 0, 0, 0)
    expect([answer.status, why(answer).reason, asked]).toEqual([404, 'address-refused', []])
  })

  test('because the program closes: 504, and nothing breaks afterwards', async () => {
    server.mode = 'slow'
    const service = start()
    const wish = service.tile('mine', 0, 0, 0)
    await server.arrived(1)
    service.close()
    service.close()
    expect(why(await wish).reason).toBe('closed')
    expect((await service.tile('mine', 0, 0, 0)).status).toBe(504)
  })
})

describe('a page that asks a slow server', () => {
  test('is answered in time and gets the picture later, asked of the server once', async () => {
    server.mode = 'slow'
    const service = start({ soon: { patienceMs: 5 } })
    const first = await service.tileSoon('mine', 3, 4, 5)
    expect([first.status, why(first).reason, first.retryAfterSeconds]).toEqual([202, 'under-way', 1])
    await server.arrived(1)
    expect((await service.tileSoon('mine', 3, 4, 5)).status).toBe(202)
    const whole = service.tile('mine', 3, 4, 5)
    server.release()
    expect((await whole).status).toBe(200)
    const later = await service.tileSoon('mine', 3, 4, 5)
    expect([later.status, Buffer.from(later.body).equals(picture('/3/4/5.png'))]).toEqual([200, true])
    expect(server.requests).toHaveLength(1)
    expect(health(service)).toMatchObject({ failed: 0 })
  })

  test('has what it no longer asks for taken out of the line', async () => {
    server.mode = 'slow'
    const service = start({ soon: { patienceMs: 1, lingerMs: 1 } })
    const wishes = Array.from({ length: 6 }, async (_, x) => service.tileSoon('mine', 5, x, 0))
    expect((await Promise.all(wishes)).map(({ status }) => status)).toEqual([202, 202, 202, 202, 202, 202])
    await server.arrived(2)
    const last = service.tile('mine', 5, 9, 0)
    server.mode = 'answers'
    server.release()
    expect((await last).status).toBe(200)
    // The two under way and the one still wished for.
    expect(server.requests.map(({ path }) => path).toSorted()).toEqual(['/5/0/0.png', '/5/1/0.png', '/5/9/0.png'])
  })
})

describe('leaving a server in peace', () => {
  test.each([
    ['a day', '86400', 3600],
    ['a date next year', 'Wed, 05 May 2032 12:00:00 GMT', 3600],
    ['no time at all', '0', 1],
    ['a date gone by', 'Sat, 05 May 2029 12:00:00 GMT', 1],
  ])('asked for %s means within bounds', async (_, asked, seconds) => {
    server.mode = 'busy'
    server.headers = { 'Retry-After': asked }
    const service = start()
    await service.tile('mine', 0, 0, 0)
    server.mode = 'answers'
    time += seconds * SECOND - 1
    expect(why(await service.tile('mine', 1, 0, 0)).reason).toBe('paused')
    time += 1
    expect((await service.tile('mine', 1, 0, 0)).status).toBe(200)
  })

  test('ends when the user wants to try again, though not over and over', async () => {
    server.mode = 'busy'
    server.headers = { 'Retry-After': '86400' }
    const service = start()
    const again = (): unknown => service.handlers['tiles.again']({})
    await service.tile('mine', 0, 0, 0)
    again()
    await service.tile('mine', 0, 0, 0)
    expect(server.requests).toHaveLength(2)
    for (let press = 0; press < 20; press += 1) {
      again()
      // oxlint-disable-next-line no-await-in-loop
      await service.tile('mine', 0, 0, 0)
    }
    expect(server.requests).toHaveLength(2)
    server.mode = 'answers'
    time += 30 * SECOND
    again()
    expect((await service.tile('mine', 0, 0, 0)).status).toBe(200)
  })

  test('for as long as it asks after 429', async () => {
    server.mode = 'busy'
    server.headers = { 'Retry-After': '120' }
    const service = start()
    await service.tile('mine', 0, 0, 0)
    server.mode = 'answers'
    time += 119 * SECOND
    const waiting = await service.tile('mine', 1, 0, 0)
    expect([waiting.status, why(waiting).reason, why(waiting).retryAfterSeconds]).toEqual([502, 'paused', 1])
    expect(server.requests).toHaveLength(1)
    time += SECOND
    expect((await service.tile('mine', 1, 0, 0)).status).toBe(200)
  })

  test('until the date it names', async () => {
    server.mode = 'busy'
    server.headers = { 'Retry-After': new Date(time + 300 * SECOND).toUTCString() }
    const service = start()
    await service.tile('mine', 0, 0, 0)
    time += 299 * SECOND
    await service.tile('mine', 0, 0, 0)
    expect(server.requests).toHaveLength(1)
    time += SECOND
    await service.tile('mine', 0, 0, 0)
    expect(server.requests).toHaveLength(2)
  })

  test('twice as long after each failure without a network, and at most a minute', async () => {
    await server.stop()
    const tries: number[] = []
    const service = start({
      fetch: async (...asked) => {
        tries.push(time)
        return nodeTileFetch(...asked)
      },
    })
    const begun = time
    for (let second = 0; second < 260; second += 1) {
      await service.tile('mine', 0, 0, 0)
      time += SECOND
    }
    expect(tries.map((one) => (one - begun) / SECOND)).toEqual([0, 1, 3, 7, 15, 31, 63, 123, 183, 243])
    await server.restart()
    time += MINUTE
    expect((await service.tile('mine', 0, 0, 0)).status).toBe(200)
  })

  test('counts requests that fail together as one failure', async () => {
    server.mode = 'busy'
    const service = start()
    await Promise.all([0, 1, 2, 3].map(async (x) => service.tile('mine', 3, x, 0)))
    expect(server.requests).toHaveLength(2)
    time += 30 * SECOND
    server.mode = 'answers'
    expect((await service.tile('mine', 3, 0, 0)).status).toBe(200)
  })

  test('not for one broken tile, which alone waits; for two, it does', async () => {
    server.mode = 'failing'
    const service = start()
    await service.tile('mine', 3, 0, 0)
    await service.tile('mine', 3, 0, 0)
    expect(server.requests).toHaveLength(1)
    server.mode = 'answers'
    expect((await service.tile('mine', 3, 1, 0)).status).toBe(200)
    server.mode = 'failing'
    await service.tile('mine', 3, 2, 0)
    await service.tile('mine', 3, 3, 0)
    server.mode = 'answers'
    expect(why(await service.tile('mine', 3, 4, 0)).reason).toBe('paused')
    time += 2 * SECOND
    expect((await service.tile('mine', 3, 4, 0)).status).toBe(200)
    time += 30 * SECOND
    expect((await service.tile('mine', 3, 0, 0)).status).toBe(200)
  })

  test('holds for its own host alone', async () => {
    const other = await startTileServer()
    const service = start({
      settings: () => ({ ownSources: [ownSource(server.template), ownSource(other.template, 'other')], templates: {} }),
    })
    server.mode = 'busy'
    await service.tile('mine', 0, 0, 0)
    expect((await service.tile('other', 0, 0, 0)).status).toBe(200)
    await other.close()
  })

  test('ends when the user enters another key', async () => {
    key = 'wrong'
    server.mode = 'forbidden'
    const service = start({
      settings: () => ({ ownSources: [ownSource(`${server.template}?k={key}`)], templates: {} }),
    })
    await service.tile('mine', 0, 0, 0)
    server.mode = 'answers'
    expect(why(await service.tile('mine', 0, 0, 0)).reason).toBe('refused')
    key = 'right'
    expect((await service.tile('mine', 0, 0, 0)).status).toBe(200)
  })

  test('spares it a tile it does not have for an hour', async () => {
    server.mode = 'missing'
    const service = start()
    for (let count = 0; count < 3; count += 1) expect((await service.tile('mine', 0, 0, 0)).status).toBe(404)
    expect(server.requests).toHaveLength(1)
    time += 61 * MINUTE
    await service.tile('mine', 0, 0, 0)
    expect(server.requests).toHaveLength(2)
  })
})

describe('a wish given up', () => {
  test('is not asked for any more', async () => {
    server.mode = 'slow'
    const service = start()
    const left = new AbortController()
    const wishes = [0, 1].map(async (x) => service.tile('mine', 3, x, 0))
    const given = service.tile('mine', 3, 2, 0, left.signal)
    await server.arrived(2)
    left.abort()
    expect(why(await given).reason).toBe('left')
    server.release()
    await Promise.all(wishes)
    expect(server.requests).toHaveLength(2)
    expect(health(service)).toMatchObject({ served: 2, failed: 0 })
  })

  test('stays when somebody else still has it', async () => {
    server.mode = 'slow'
    const service = start()
    const left = new AbortController()
    const wishes = [0, 1].map(async (x) => service.tile('mine', 3, x, 0))
    const given = service.tile('mine', 3, 2, 0, left.signal)
    const wanted = service.tile('mine', 3, 2, 0)
    await server.arrived(2)
    left.abort()
    server.release()
    await server.arrived(3)
    server.release()
    expect([(await wanted).status, (await given).status]).toEqual([200, 200])
    await Promise.all(wishes)
  })
})

describe('health', () => {
  test('begins well', () => {
    expect(health(start())).toEqual({ offline: false, failed: 0, served: 0, message: 'Map tiles arrive as asked.' })
  })

  test('is offline when nothing was ever reached, and says so', async () => {
    await server.stop()
    const service = start()
    await service.tile('mine', 0, 0, 0)
    expect(health(service)).toMatchObject({
      offline: true,
      failed: 1,
      served: 0,
      message: expect.stringMatching(/no network/) as string,
    })
  })

  test('takes more than one lost connection once something was reached, and one tile to mend', async () => {
    const service = start()
    await service.tile('mine', 1, 0, 0)
    await server.stop()
    await service.tile('mine', 1, 1, 0)
    expect(health(service).offline).toBe(false)
    time += SECOND
    await service.tile('mine', 1, 1, 0)
    expect(health(service).offline).toBe(true)
    await server.restart()
    time += MINUTE
    await service.tile('mine', 1, 1, 0)
    expect(health(service)).toEqual({ offline: false, failed: 2, served: 2, message: 'Map tiles arrive as asked.' })
  })

  test('is not offline when a server merely fails', async () => {
    server.mode = 'failing'
    const service = start()
    for (let x = 0; x < 4; x += 1) await service.tile('mine', 3, x, 0)
    expect(health(service)).toMatchObject({
      offline: false,
      failed: 4,
      message: expect.stringMatching(/status 500/) as string,
    })
  })

  test('is offline when the name of the host cannot be found', async () => {
    const service = start({
      settings: () => ({ ownSources: [ownSource('https://tiles.example.org/{z}/{x}/{y}.png')], templates: {} }),
      resolve: async () => {
        throw new Error('ENOTFOUND')
      },
    })
    expect((await service.tile('mine', 0, 0, 0)).status).toBe(504)
    expect(health(service).offline).toBe(true)
  })
})

test('the page learns the sources and the path the host answers under', async () => {
  const told = await start({ prefix: '/tiles/secret' }).handlers['tiles.sources']({})
  expect(told.ok && told.value.prefix).toBe('/tiles/secret')
  expect(told.ok && told.value.sources.map((one) => one.id)).toContain('mine')
})
