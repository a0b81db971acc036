/** The page server that both hosts mount: exact paths, one set of headers, tiles by their secret prefix. */
import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { isOwnPage } from '#main/navigation.ts'
import { CONTENT_POLICY, HEADERS, makeServe, readPage, type ServedTile, tileWanted } from '#main/serve.ts'
import { GROUND_PORT } from '#test/help/ground-port.ts'

const text = (body: string) => ({ type: 'text/html; charset=utf-8', body: new TextEncoder().encode(body) })

function serveWith(tile: Partial<ServedTile> = {}) {
  const asked: unknown[] = []
  const serve = makeServe({
    files: new Map([
      ['/', text('board')],
      ['/index.html', text('board')],
      ['/assets/a b.js', text('script')],
    ]),
    isOurs: (url) => isOwnPage(url.href),
    tilePrefix: '/tiles/key',
    tiles: async (...words) => {
      asked.push(words.slice(0, 4))
      return {
        status: 200,
        type: 'image/png',
        body: new Uint8Array([7]),
        maxAgeSeconds: 60,
        retryAfterSeconds: null,
        ...tile,
      }
    },
    groundPrefix: '/ground/key',
    ground: GROUND_PORT,
  })
  return { serve, asked }
}

const get = (path: string) => serveWith().serve(new Request(`app://standpoint${path}`))

describe('the content policy', () => {
  test('lets nothing in but the page itself', () => {
    const rules = new Map(CONTENT_POLICY.split('; ').map((rule) => [rule.split(' ')[0], rule.split(' ').slice(1)]))
    expect(rules.get('default-src')).toEqual(["'none'"])
    for (const name of ['script-src', 'style-src', 'connect-src', 'font-src', 'worker-src'])
      expect(rules.get(name)).toEqual(["'self'"])
    expect(rules.get('img-src')).toEqual(["'self'", 'data:', 'blob:'])
    for (const name of ['base-uri', 'form-action', 'frame-ancestors']) expect(rules.get(name)).toEqual(["'none'"])
    expect(CONTENT_POLICY).not.toMatch(/unsafe|\*|https?:/)
  })

  test.each([
    ['/', 200],
    ['/nothing', 404],
    ['/tiles/key/a/0/0/0', 200],
    ['/tiles/wrong/a/0/0/0', 404],
    ['/ground/key/window?lat=1', 200],
    ['/ground/wrong/window', 404],
  ])('is on the answer to %s, as are all headers', async (path, status) => {
    const answer = await get(path)
    expect(answer.status).toBe(status)
    for (const [name, value] of Object.entries(HEADERS)) expect(answer.headers.get(name)).toBe(value)
  })
})

describe('files of the page', () => {
  test.each([
    '/../main.js',
    '/..%2f..%2fetc/passwd',
    '/%2e%2e/x',
    '//index.html',
    '/index.html/',
    '/INDEX.HTML',
    '/index.html%00',
    '/assets/a%20b.js',
    '/C:/x',
  ])('nothing at %s', async (path) => {
    expect((await get(path)).status).toBe(404)
  })

  test.each([
    'app://standpoint.evil/index.html',
    'app://evil/index.html',
    'app://standpoint:1/index.html',
    'http://standpoint/index.html',
    'app://user@standpoint/index.html',
  ])('nothing for the address %s', async (address) => {
    expect((await serveWith().serve({ url: address, method: 'GET' } as Request)).status).toBe(404)
  })

  test('a query does not change the file', async () => {
    expect(await (await get('/index.html?spot=1')).text()).toBe('board')
  })

  test('only GET and HEAD are answered', async () => {
    const { serve } = serveWith()
    expect((await serve(new Request('app://standpoint/', { method: 'POST' }))).status).toBe(405)
    const head = await serve(new Request('app://standpoint/', { method: 'HEAD' }))
    expect([head.status, await head.text()]).toEqual([200, ''])
  })

  test('are read once from the built folder, known kinds alone, with their types', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'standpoint-page-'))
    await mkdir(join(folder, 'assets'))
    await writeFile(join(folder, 'index.html'), '<p>')
    await writeFile(join(folder, 'assets/a.js'), '1')
    await writeFile(join(folder, 'assets/a.js.map'), '{}')
    await writeFile(join(folder, '.built'), '')
    await symlink('/etc/hostname', join(folder, 'outside.txt'))
    const files = await readPage(folder)
    await rm(folder, { recursive: true })
    expect([...files.keys()].toSorted()).toEqual(['/', '/assets/a.js', '/index.html'])
    expect(files.get('/assets/a.js')?.type).toBe('text/javascript; charset=utf-8')
  })
})

describe('a tile that is not ready', () => {
  test('tells in a header when to ask again, and nothing keeps it', async () => {
    const body = new TextEncoder().encode('{}')
    const unready = { status: 202, type: 'application/json', body, maxAgeSeconds: 0, retryAfterSeconds: 3 }
    const answer = await serveWith(unready).serve(new Request('app://standpoint/tiles/key/a/0/0/0'))
    expect([answer.status, answer.headers.get('retry-after'), answer.headers.get('cache-control')]).toEqual([
      202,
      '3',
      'no-store',
    ])
  })

  test('of no use to ask for again has no such header', async () => {
    const answer = await serveWith({}).serve(new Request('app://standpoint/tiles/key/a/0/0/0'))
    expect(answer.headers.has('retry-after')).toBe(false)
  })
})

describe('tiles', () => {
  test('come as pictures that the page may keep as long as told, a day at most', async () => {
    const answer = await get('/tiles/key/a/3/7/0')
    expect([answer.headers.get('content-type'), answer.headers.get('cache-control')]).toEqual([
      'image/png',
      'private, max-age=60',
    ])
    const long = await serveWith({ maxAgeSeconds: 1e9 }).serve(new Request('app://standpoint/tiles/key/a/0/0/0'))
    expect(long.headers.get('cache-control')).toBe('private, max-age=86400')
  })

  test.each(['text/html', 'image/svg+xml', 'application/json', ''])('of the type %j are no pictures', async (type) => {
    const answer = await serveWith({ type }).serve(new Request('app://standpoint/tiles/key/a/0/0/0'))
    expect(answer.status).toBe(502)
    expect(await answer.text()).toBe('Not a picture')
  })

  test('that are missing tell why in JSON and are asked for again', async () => {
    const body = new TextEncoder().encode('{"reason":"unreached"}')
    const answer = await serveWith({ status: 504, type: 'application/json', body, maxAgeSeconds: 60 }).serve(
      new Request('app://standpoint/tiles/key/a/0/0/0'),
    )
    expect([answer.status, answer.headers.get('cache-control'), await answer.json()]).toEqual([
      504,
      'no-store',
      { reason: 'unreached' },
    ])
  })

  test.each([
    '/tiles/key/a/1/2/0',
    '/tiles/key/a/1/0/2',
    '/tiles/key/a/25/0/0',
    '/tiles/key/a/-1/0/0',
    '/tiles/key/a/1.5/0/0',
    '/tiles/key/a/1/0x1/0',
    '/tiles/key/a/1/ 1/0',
    '/tiles/key/a/b/1/0/0',
    '/tiles/key/%/1/0/0',
    '/tiles/key/a/1/0/0/',
    '/tiles/key/a/1/0',
    '/tiles/kez/a/1/0/0',
    '/tiles/a/1/0/0',
  ])('%s asks for none', (path) => {
    expect(tileWanted(path, '/tiles/key')).toBeNull()
  })

  test('a source is told as the settings name it', async () => {
    const { serve, asked } = serveWith()
    await serve(new Request('app://standpoint/tiles/key/my%20map%2F1/24/16777215/0'))
    expect(asked).toEqual([['my map/1', 24, 16_777_215, 0]])
  })
})

describe('ground', () => {
  const send = (path: string, method: string) =>
    serveWith().serve(
      new Request(`app://standpoint${path}`, { method, ...(method === 'POST' ? { body: 'bytes' } : {}) }),
    )

  test('is read as bytes that nobody keeps', async () => {
    const answer = await get('/ground/key/window?lat=1')
    expect([answer.status, answer.headers.get('content-type'), answer.headers.get('cache-control')]).toEqual([
      200,
      'application/octet-stream',
      'no-store',
    ])
  })

  test('takes a file in', async () => {
    expect(await (await send('/ground/key/file?name=a%20b.hgt', 'POST')).json()).toEqual({ name: 'a b.hgt', bytes: 5 })
  })

  test.each([
    ['/ground/key/window', 'POST', 405],
    ['/ground/key/file', 'GET', 405],
    ['/ground/key/file', 'PUT', 405],
    ['/ground/kez/file', 'POST', 404],
    ['/ground/key/other', 'GET', 404],
    ['/ground/key/window/', 'GET', 404],
    ['/ground/key', 'GET', 404],
    ['/ground/', 'GET', 404],
    ['/', 'POST', 405],
  ])('%s by %s is %i', async (path, method, status) => {
    expect((await send(path, method)).status).toBe(status)
  })
})
