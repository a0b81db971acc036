/** The loopback host's defences, each asked by raw node:http the way its threat would ask. */
import { once } from 'node:events'
import { networkInterfaces } from 'node:os'
import { connect, type Socket } from 'node:net'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { done } from '#core/result.ts'
import { type Loopback, startLoopback } from '#main/loopback.ts'
import { HEADERS, makeServe } from '#main/serve.ts'
import { GROUND_PORT } from '#test/help/ground-port.ts'
import { rawHttp, rawLine } from '#test/help/raw-http.ts'
import { listeningLog, stubHandlers } from '#test/help/stub-handlers.ts'

const PREFIX = '/tiles/secret'
const PAGE = { type: 'text/html; charset=utf-8', body: new TextEncoder().encode('<p>page</p>') }

let host: Loopback
let port: number
let token: string
let stolen: string[]
let entered: string[]
let log: ReturnType<typeof listeningLog>
let slow: Promise<void> = Promise.resolve()
let onSettings: () => Promise<never>

beforeEach(async () => {
  stolen = []
  entered = []
  log = listeningLog()
  host = await startLoopback({
    handlers: stubHandlers({
      'library.shoots': () => done({ shoots: [] }),
      'host.about': async () => {
        await slow
        return done({ host: 'loopback', version: '0', platform: 'test' })
      },
      'settings.get': () => onSettings(),
      'places.find': () => {
        throw new Error('a bug of ours')
      },
    }),
    serve: makeServe({
      files: new Map([
        ['/', PAGE],
        ['/index.html', PAGE],
      ]),
      isOurs: (url) => url.protocol === 'http:' && url.hostname === '127.0.0.1',
      tilePrefix: PREFIX,
      tiles: async () => ({
        status: 200,
        type: 'image/png',
        body: new Uint8Array([1]),
        maxAgeSeconds: 5,
        retryAfterSeconds: null,
      }),
      groundPrefix: '/ground/secret',
      ground: GROUND_PORT,
    }),
    log,
    onStolen: (address) => stolen.push(address),
    onEntered: (address) => entered.push(address),
  })
  port = Number(new URL(host.origin).port)
  token = await tokenFor(host.address())
})

afterEach(() => host.close())

const keyOf = (address: string): string => address.split('#k=')[1] ?? ''

/** What the page does first: the key out of the address for the token. */
function enter(key: string, headers: Readonly<Record<string, string>> = {}) {
  return rawHttp({
    port,
    path: '/enter',
    method: 'POST',
    headers: { origin: host.origin, 'content-type': 'application/json', ...headers },
    body: JSON.stringify({ key }),
  })
}

async function tokenFor(address: string): Promise<string> {
  return (JSON.parse((await enter(keyOf(address))).body) as { token: string }).token
}

function ask(more: { path?: string; method?: string; headers?: Record<string, string>; body?: string } = {}) {
  return rawHttp({
    port,
    path: more.path ?? '/api/library.shoots',
    method: more.method ?? 'POST',
    headers: {
      origin: host.origin,
      authorization: `Bearer ${token}`,
      'content-type': 'application/json',
      ...more.headers,
    },
    body: more.body ?? '{}',
  })
}

describe('what the page itself asks', () => {
  test('a call with token, origin and JSON is answered', async () => {
    const answer = await ask()
    expect(answer.status).toBe(200)
    expect(JSON.parse(answer.body)).toEqual({ ok: true, value: { shoots: [] } })
    expect(answer.headers['cache-control']).toBe('no-store')
  })

  test('a handler that throws is told as a fault and logged', async () => {
    const answer = await ask({ path: '/api/places.find', body: '{"text":"a","limit":1}' })
    expect(JSON.parse(answer.body)).toMatchObject({ ok: false, fault: { reason: 'bug' } })
    expect(log.heard.map((one) => one.event)).toEqual(['bug'])
  })

  test('HEAD gives the headers without a body', async () => {
    const answer = await rawHttp({ port, path: '/', method: 'HEAD' })
    expect([answer.status, answer.body]).toEqual([200, ''])
  })
})

describe('other machines', () => {
  test('listens on 127.0.0.1 alone', async () => {
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter((one) => one.family === 'IPv4' && !one.internal)
      .map((one) => one.address)
    for (const address of [...others, '127.0.0.2']) {
      expect(await reaches(address), address).toBe(false)
    }
    expect(await reaches('127.0.0.1')).toBe(true)
  })

  function reaches(address: string): Promise<boolean> {
    const { promise, resolve } = Promise.withResolvers<boolean>()
    const socket = connect({ host: address, port, timeout: 2_000 })
    const end = (answer: boolean) => () => {
      socket.destroy()
      resolve(answer)
    }
    socket.on('connect', end(true)).on('error', end(false)).on('timeout', end(false))
    return promise
  }
})

describe('names that point here (DNS rebinding) and odd targets', () => {
  test.each(['localhost', 'evil.example', '127.0.0.1', '127.0.0.1:1', '127.0.0.1.evil.example', ''])(
    'the host header %j is not answered',
    async (name) => {
      for (const path of ['/', '/api/library.shoots', `${PREFIX}/a/0/0/0`]) {
        const answer = await rawHttp({
          port,
          path,
          headers: { host: name === '' ? ' ' : `${name}:${name.includes(':') ? '' : port}x` },
        })
        expect(answer.status, path).toBe(421)
        expect(answer.body).not.toContain('page')
      }
    },
  )

  test('the right address under the name localhost is not answered', async () => {
    expect((await rawHttp({ port, path: '/', headers: { host: `localhost:${port}` } })).status).toBe(421)
  })

  test.each(['http://evil.example/', '//evil.example/', '/\\evil.example/', '*'])(
    'the target %j is refused',
    async (target) => {
      const line = await rawLine(port, `GET ${target} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n`)
      expect(line).toMatch(/^HTTP\/1\.1 400/)
    },
  )

  test.each([
    '/../package.json',
    '/%2e%2e/package.json',
    '/..%2fpackage.json',
    '/index.html/../../x',
    '/.',
    '/index',
    '/INDEX.HTML',
  ])('nothing outside the page at %s', async (path) => {
    const answer = await rawHttp({ port, path })
    // `/.` is `/` by the rules of addresses; everything else is not there.
    expect(answer.status).toBe(path === '/.' ? 200 : 404)
  })
})

describe('other sites in the same browser', () => {
  test.each([
    ['no origin', { origin: '' }, 403],
    ['the origin null', { origin: 'null' }, 403],
    ['another origin', { origin: 'http://evil.example' }, 403],
    ['another port of this machine', { origin: 'http://127.0.0.1:1' }, 403],
    ['a longer origin', { origin: 'http://127.0.0.1:1.evil.example' }, 403],
    ['a form', { 'content-type': 'application/x-www-form-urlencoded' }, 415],
    ['plain text', { 'content-type': 'text/plain' }, 415],
    ['JSON among other words', { 'content-type': 'text/plain; application/json' }, 415],
    ['another site by the browser', { 'sec-fetch-site': 'cross-site' }, 403],
    ['another port by the browser', { 'sec-fetch-site': 'same-site' }, 403],
  ])('a call with %s is refused', async (_name, headers, status) => {
    expect((await ask({ headers })).status).toBe(status)
  })

  test('an absent origin is refused, not only an empty one', async () => {
    const headers = { authorization: `Bearer ${token}`, 'content-type': 'application/json' }
    expect((await rawHttp({ port, path: '/api/library.shoots', method: 'POST', headers, body: '{}' })).status).toBe(403)
  })

  test.each(['GET', 'PUT', 'DELETE', 'OPTIONS', 'PATCH'])(
    'a call by %s is refused and no site is let in',
    async (method) => {
      const answer = await ask({ method, body: '' })
      expect(answer.status).toBe(405)
      expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control'))).toEqual([])
    },
  )

  test('another site may link to the page but load nothing of it', async () => {
    const from = { 'sec-fetch-site': 'cross-site' }
    const visit = { ...from, 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' }
    expect((await rawHttp({ port, path: '/', headers: visit })).status).toBe(200)
    expect((await rawHttp({ port, path: '/', headers: from })).status).toBe(403)
    expect((await rawHttp({ port, path: '/', headers: { ...visit, 'sec-fetch-dest': 'iframe' } })).status).toBe(403)
    expect((await rawHttp({ port, path: `${PREFIX}/a/0/0/0`, headers: visit })).status).toBe(403)
  })
})

describe('other users and programs of this machine', () => {
  test.each(['', 'Bearer', 'Bearer ', 'Bearer wrong', 'Basic x'])(
    'the authorization %j is refused',
    async (authorization) => {
      expect((await ask({ headers: { authorization } })).status).toBe(401)
    },
  )

  test('a token cut short, longer or of another case is refused', async () => {
    for (const wrong of [token.slice(1), token.slice(0, -1), `${token}A`, `${token} `.repeat(2)])
      expect((await ask({ headers: { authorization: `Bearer ${wrong}` } })).status).toBe(401)
    expect((await ask({ headers: { authorization: `bearer ${token}` } })).status).toBe(401)
  })

  test('the token has 256 bits and is another at each start', async () => {
    expect(Buffer.from(token, 'base64url')).toHaveLength(32)
    const second = await startLoopback({ handlers: stubHandlers({}), serve: async () => new Response(), log })
    const [first, other] = [port, Number(new URL(second.origin).port)]
    port = other
    const answer = await enter(keyOf(second.address()), { origin: second.origin })
    port = first
    expect((JSON.parse(answer.body) as { token: string }).token).not.toBe(token)
    await second.close()
  })

  test('tiles need their secret prefix', async () => {
    expect((await rawHttp({ port, path: `${PREFIX}/a/0/0/0` })).status).toBe(200)
    expect((await rawHttp({ port, path: '/tiles/secreT/a/0/0/0' })).status).toBe(404)
    expect((await rawHttp({ port, path: '/tiles//a/0/0/0' })).status).toBe(404)
  })
})

describe('the way in for the browser', () => {
  function wayIn(): string {
    return new URL(host.wayIn()).pathname
  }

  test('shows no token and leads to the page with a key of one use, once', async () => {
    const path = wayIn()
    expect(host.wayIn()).not.toContain(token)
    const first = wayIn()
    expect((await rawHttp({ port, path })).status).toBe(410)
    const answer = await rawHttp({ port, path: first })
    const location = String(answer.headers['location'])
    expect([answer.status, answer.headers['cache-control']]).toEqual([303, 'no-store'])
    expect(location).toMatch(/^\/#k=[\w-]{43}$/)
    expect(location).not.toContain(token)
    expect(await tokenFor(location)).toBe(token)
    expect((await enter(keyOf(location))).status).toBe(410)
    // The browser that was opened by the program takes nothing from what the terminal shows.
    expect(entered).toHaveLength(1)
  })

  test('a second use takes the token out of force and tells so', async () => {
    const path = wayIn()
    const { headers } = await rawHttp({ port, path })
    expect((await rawHttp({ port, path })).status).toBe(410)
    expect((await ask()).status).toBe(401)
    expect((await enter(keyOf(String(headers['location'])))).status).toBe(410)
    expect(stolen).toHaveLength(1)
    const before = token
    token = await tokenFor(stolen[0] ?? '')
    expect(token).not.toBe(before)
    expect((await ask()).status).toBe(200)
    expect((await rawHttp({ port, path })).status).toBe(410)
    expect(stolen).toHaveLength(1)
  })

  test('is not open to guesses, to other methods or to other sites', async () => {
    const path = wayIn()
    expect((await rawHttp({ port, path: '/open/' })).status).toBe(410)
    expect((await rawHttp({ port, path: `${path}x` })).status).toBe(410)
    expect((await rawHttp({ port, path, method: 'HEAD' })).status).toBe(405)
    const visit = { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' }
    expect((await rawHttp({ port, path, headers: visit })).status).toBe(403)
    expect((await rawHttp({ port, path })).status).toBe(303)
  })
})

describe('the key in the address', () => {
  test('is not the token, is good once, and the next address is told then', async () => {
    const address = host.address()
    expect(address).not.toContain(token)
    expect(entered).toHaveLength(1)
    expect(await tokenFor(address)).toBe(token)
    expect((await enter(keyOf(address))).status).toBe(410)
    expect(entered).toHaveLength(2)
    expect(await tokenFor(entered[1] ?? '')).toBe(token)
  })

  test('is changed for the token at the page’s own asking alone', async () => {
    const key = keyOf(host.address())
    expect((await enter(key, { origin: 'http://evil.example' })).status).toBe(403)
    expect((await enter(key, { 'content-type': 'text/plain' })).status).toBe(415)
    expect((await enter(key, { 'sec-fetch-site': 'cross-site' })).status).toBe(403)
    expect((await rawHttp({ port, path: '/enter' })).status).toBe(405)
    for (const wrong of ['', key.slice(1), `${key}A`, token]) expect((await enter(wrong)).status).toBe(410)
    expect((await ask({ path: '/enter', body: '[]' })).status).toBe(410)
    expect((await enter(key)).status).toBe(200)
  })

  test('many addresses never asked for do not pile up, and the newest works', async () => {
    const first = host.address()
    const last = Array.from({ length: 50 }, () => host.address()).at(-1) ?? ''
    expect((await enter(keyOf(first))).status).toBe(410)
    expect(await tokenFor(last)).toBe(token)
  })
})

describe('a header sent twice', () => {
  const call = (extra: string) =>
    [
      'POST /api/library.shoots HTTP/1.1',
      `Host: 127.0.0.1:${port}`,
      `Origin: ${host.origin}`,
      `Authorization: Bearer ${token}`,
      'Content-Type: application/json',
      'Sec-Fetch-Site: same-origin',
      'Content-Length: 2',
      extra,
      '',
      '{}',
    ].join('\r\n')

  test('is refused where it decides something', async () => {
    expect(await rawLine(port, call('X-Once: yes'))).toMatch(/^HTTP\/1\.1 200/)
    for (const [name, value] of [
      ['Host', 'evil.example'],
      ['Host', `127.0.0.1:${port}`],
      ['Origin', 'http://evil.example'],
      ['Authorization', 'Bearer x'],
      ['Content-Type', 'text/plain'],
      ['Sec-Fetch-Site', 'cross-site'],
    ])
      expect(await rawLine(port, call(`${name}: ${value}`)), name).toMatch(/^HTTP\/1\.1 400/)
  })

  test('the host header, the other first', async () => {
    const head = ['GET / HTTP/1.1', 'Host: evil.example', `Host: 127.0.0.1:${port}`, '', '']
    expect(await rawLine(port, head.join('\r\n'))).toMatch(/^HTTP\/1\.1 4/)
  })
})

describe('connections held open', () => {
  const held: Socket[] = []
  afterEach(() => {
    for (const socket of held.splice(0)) socket.destroy()
  })

  async function hold(count: number, text: string): Promise<void> {
    await Promise.all(
      Array.from({ length: count }, async () => {
        const socket = connect(port, '127.0.0.1')
        held.push(socket)
        socket.on('error', () => undefined)
        await once(socket, 'connect')
        if (text !== '') socket.write(text)
      }),
    )
  }

  // Answered within the test's time; without room made for it such a request waited 19 s for a place.
  test.each([
    ['that say nothing', ''],
    ['that never end their headers', 'GET / HTTP/1.1\r\nHost: '],
    ['that were answered and stay', 'GET /nothing HTTP/1.1\r\nHost: x\r\n\r\n'],
    ['that do not read what they asked for', 'GET / HTTP/1.1\r\nHost: x\r\n\r\n'.repeat(20)],
  ])(
    'three hundred %s do not keep the page from being answered',
    async (_, text) => {
      await hold(300, text)
      expect((await ask()).status).toBe(200)
      expect((await rawHttp({ port, path: '/' })).status).toBe(200)
    },
    12_000,
  )

  test('a call under way keeps its place among them', async () => {
    const { promise: waited, resolve: go } = Promise.withResolvers<void>()
    slow = waited
    const call = ask({ path: '/api/host.about' })
    await hold(300, '')
    go()
    expect((await call).status).toBe(200)
  })
})

describe('a fault that nobody caught', () => {
  test('is answered 500 to the request it came from, and other requests go on', async () => {
    // Stands for the process, which hears of such a fault in the context it came from.
    onSettings = () => {
      setImmediate(() => host.answerFailed())
      return new Promise(() => undefined)
    }
    const [failed, other] = await Promise.all([ask({ path: '/api/settings.get' }), ask()])
    expect([failed.status, failed.headers['connection']]).toEqual([500, 'close'])
    expect(other.status).toBe(200)
    for (const [name, value] of Object.entries(HEADERS)) expect(failed.headers[name.toLowerCase()]).toBe(value)
  })

  test('outside of any request answers nobody', () => {
    expect(() => host.answerFailed()).not.toThrow()
  })
})

describe('too much', () => {
  test('a body announced larger than the call allows is refused unread', async () => {
    const answer = await ask({ headers: { 'content-length': '1000001' }, body: '{}' }).catch((error: unknown) =>
      String(error),
    )
    expect(answer).toMatchObject({ status: 413 })
  })

  test('a body that grows too large without saying so is refused', async () => {
    const answer = await ask({ headers: { 'transfer-encoding': 'chunked' }, body: ' '.repeat(1_200_000) })
    expect(answer.status).toBe(413)
  })

  test('the refusal reaches a page that is still sending', async () => {
    const body = ' '.repeat(1_100_000)
    const head = [
      'POST /api/library.shoots HTTP/1.1',
      `Host: 127.0.0.1:${port}`,
      `Origin: ${host.origin}`,
      `Authorization: Bearer ${token}`,
      'Content-Type: application/json',
      'Transfer-Encoding: chunked',
    ]
    // One piece of a body whose end never comes.
    const line = await rawLine(port, `${head.join('\r\n')}\r\n\r\n${body.length.toString(16)}\r\n${body}\r\n`)
    expect(line).toMatch(/^HTTP\/1\.1 413/)
  })

  test('a body within the limit but not JSON is refused', async () => {
    expect((await ask({ body: '{' })).status).toBe(400)
    expect((await ask({ body: '' })).status).toBe(400)
  })

  test('headers beyond 16 kB are refused', async () => {
    expect((await ask({ headers: { 'x-long': 'a'.repeat(20_000) } })).status).toBe(431)
  })
})

test('every answer carries the same headers, whatever its status', async () => {
  const answers = await Promise.all([
    rawHttp({ port, path: '/' }),
    rawHttp({ port, path: '/nothing' }),
    rawHttp({ port, path: '/', method: 'POST' }),
    rawHttp({ port, path: '/', headers: { host: 'evil.example' } }),
    rawHttp({ port, path: '/open/x' }),
    rawHttp({ port, path: `${PREFIX}/a/0/0/0` }),
    ask(),
    ask({ headers: { authorization: 'x' } }),
  ])
  expect(answers.map((answer) => answer.status)).toEqual([200, 404, 405, 421, 410, 200, 200, 401])
  for (const answer of answers)
    for (const [name, value] of Object.entries(HEADERS)) expect(answer.headers[name.toLowerCase()]).toBe(value)
})

describe('a file for the ground', () => {
  const send = (more: { headers?: Record<string, string>; path?: string; body?: string } = {}) =>
    ask({
      path: more.path ?? '/ground/secret/file?name=a.hgt',
      headers: { 'content-type': 'application/octet-stream', ...more.headers },
      body: more.body ?? 'bytes',
    })

  test('reaches the service as it was sent', async () => {
    const answer = await send({ body: 'x'.repeat(3_000_000) })
    expect([answer.status, JSON.parse(answer.body)]).toEqual([200, { name: 'a.hgt', bytes: 3_000_000 }])
  })

  test.each([
    ['without the token', { authorization: '' }, 401],
    ['with another token', { authorization: 'Bearer x' }, 401],
    ['from another site', { origin: 'https://evil.example' }, 403],
    ['as a form could send it', { 'content-type': 'text/plain' }, 415],
    ['announced larger than is taken', { 'content-length': '1000000001' }, 413],
  ])('%s is refused', async (_name, headers, status) => {
    const answer = await send({ headers }).catch((error: unknown) => String(error))
    expect(answer).toMatchObject({ status })
  })

  test('under another path is not taken', async () => {
    expect((await send({ path: '/ground/other/file?name=a.hgt' })).status).toBe(404)
  })
})
