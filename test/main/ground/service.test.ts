/** The ground service on a folder of its own: files in and out, windows by precedence, tiles that fail half-way. */
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import {
  type FileAdded,
  fileAddedShape,
  GROUND_HEADER,
  type GroundSourceBrief,
  type GroundWindow,
  groundWindowShape,
} from '#app/contract/ground.ts'
import type { Settings } from '#app/contract/settings.ts'
import type { Result } from '#core/result.ts'
import { takeInFile } from '#main/ground/take-in-file.ts'
import { type GroundService, groundService } from '#main/ground/service.ts'
import type { AskTile } from '#main/ground/web-tiles.ts'
import { READER_CODE } from '#test/help/reader-code.ts'
import { hgtBytes, pngOf, terrariumColour, zipOf } from '#test/help/elevation-files.ts'

const DEMO = resolve(import.meta.dirname, '../../../app/demo/elevation.bin')
/** No such file: every place counts as land. */
const COAST = join(tmpdir(), 'no-coast-here.gz')
const ALPS = { lat: 46.5, lon: 7.5 }
const ISLAND = { lat: 46.4, lon: -33.6 }
const never = new AbortController().signal

let folder = ''
let services: GroundService[] = []
let settings: Settings
let asked: string[] = []
let tile: (z: number, x: number, y: number) => { status: number; type: string; body: Uint8Array }

const TILE_OF_500 = pngOf(256, () => terrariumColour(500))
const missing = (reason: string, message: string) => ({
  status: 504,
  type: 'application/json',
  body: new TextEncoder().encode(JSON.stringify({ reason, message })),
})

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ground-'))
  settings = DEFAULT_SETTINGS
  asked = []
  tile = () => missing('unreached', 'Elevation tiles could not be reached. Check the network.')
})

afterEach(async () => {
  await Promise.all(services.map((service) => service.close()))
  services = []
  rmSync(folder, { recursive: true, force: true })
})

async function start(): Promise<GroundService> {
  const askTile: AskTile = async (_source, z, x, y) => {
    asked.push(`${z}/${x}/${y}`)
    return tile(z, x, y)
  }
  const service = await groundService({
    folder,
    demoFile: DEMO,
    coastFile: COAST,
    readerCode: READER_CODE,
    settings: () => settings,
    askTile,
    prefix: '/ground/key',
    now: Date.now,
  })
  services.push(service)
  return service
}

async function* bodyOf(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += 70_000) yield bytes.subarray(at, at + 70_000)
}

async function add(service: GroundService, name: string, bytes: Uint8Array): Promise<Result<FileAdded>> {
  const answer = await service.file(new URLSearchParams({ name }), bodyOf(bytes), never)
  const told = JSON.parse(Buffer.from(answer.body).toString()) as Result<FileAdded>
  if (told.ok) fileAddedShape.parse(told.value)
  return told
}

async function sources(
  service: GroundService,
  at: { lat: number; lon: number } | null = null,
): Promise<GroundSourceBrief[]> {
  const answer = await service.handlers['ground.sources']({ at })
  if (!answer.ok) throw new Error(answer.fault.message)
  return [...answer.value.sources]
}

async function window(service: GroundService, query: Record<string, string | number>) {
  const words = Object.fromEntries(Object.entries(query).map(([name, value]) => [name, String(value)]))
  const answer = await service.window(new URLSearchParams(words), never)
  const told = JSON.parse(answer.headers[GROUND_HEADER] ?? 'null') as GroundWindow | null
  if (told !== null) groundWindowShape.parse(told)
  return { ...answer, told, heights: new Float32Array(answer.body.buffer, 0, Math.floor(answer.body.byteLength / 4)) }
}

const messageOf = (answer: Result<unknown>): string => (answer.ok ? '' : answer.fault.message)
const level = (height: number | null) => hgtBytes(1201, () => height)

describe('a window that is the whole', () => {
  const wide = { ...ISLAND, cell: 500, half: 30 }
  const whole = async (service: GroundService, query: Record<string, string | number>) =>
    (await window(service, query)).told?.whole

  test('holds all that any source could tell; with tiles, or a file beyond it, there is more', async () => {
    const service = await start()
    expect(await whole(service, wide)).toBe(true)
    // The island is 8 by 14 km.
    expect(await whole(service, { ...wide, half: 4 })).toBe(false)
    expect(await whole(service, { ...wide, east: 12_000, north: 0 })).toBe(false)
    await add(service, 'N46E007.hgt', level(1500))
    expect(await whole(service, wide)).toBe(false)
    settings = { ...DEFAULT_SETTINGS, elevationTiles: { ...DEFAULT_SETTINGS.elevationTiles, on: true } }
    expect(await whole(await start(), { ...ALPS, cell: 500, half: 30 })).toBe(false)
  })
})

describe('a file that is added', () => {
  test('is listed with what it covers, how fine it is and its gaps, and answers from then on', async () => {
    const service = await start()
    const added = await add(
      service,
      'N46E007.hgt',
      hgtBytes(1201, (column) => (column < 240 ? null : 1500)),
    )
    expect(added).toEqual({ ok: true, value: { added: ['N46E007.hgt'], notes: [] } })
    const [first] = await sources(service, ALPS)
    expect(first).toMatchObject({
      id: 'file:N46E007.hgt',
      name: 'N46E007.hgt',
      kind: 'hgt',
      removable: true,
      bounds: { south: 46, north: 47, west: 7, east: 8 },
      here: 'covers',
      trouble: null,
    })
    expect(first?.heights).toContain('EGM96')
    expect(first?.gaps).toBeCloseTo(240 / 1201, 6)
    // 3 arc seconds of a mean earth radius.
    expect(first?.resolution).toBeCloseTo(92.66, 1)
    expect((await sources(service, { lat: 46.5, lon: 7.1 }))[0]?.here).toBe('gap')
    expect((await sources(service, { lat: 40, lon: 7.1 }))[0]?.here).toBe('outside')
    const answer = await window(service, { ...ALPS, cell: 50, half: 20 })
    expect([answer.status, answer.type, answer.heights.length]).toEqual([200, 'application/octet-stream', 41 * 41])
    expect(answer.heights.every((height) => height === 1500)).toBe(true)
    expect(answer.told).toMatchObject({ known: 1, trouble: null, sources: [{ name: 'N46E007.hgt', share: 1 }] })
    expect(asked).toEqual([])
  })

  test('is there again after a start, found also when put there by hand, and gone when removed', async () => {
    const first = await start()
    await add(first, 'n46e007.hgt', level(900))
    await first.close()
    writeFileSync(join(folder, 'S01W001.hgt'), level(30))
    writeFileSync(join(folder, 'broken.tif'), 'II*')
    const service = await start()
    const listed = (await sources(service)).filter((source) => source.removable)
    expect(listed.map(({ name, trouble }) => [name, trouble === null])).toEqual([
      ['N46E007.hgt', true],
      ['S01W001.hgt', true],
      ['broken.tif', false],
    ])
    expect(await service.handlers['ground.remove']({ id: 'file:N46E007.hgt' })).toEqual({
      ok: true,
      value: { name: 'N46E007.hgt' },
    })
    expect((await window(service, { ...ALPS, cell: 50, half: 5 })).told?.known).toBe(0)
    expect(readdirSync(folder)).not.toContain('N46E007.hgt')
    expect(messageOf(await service.handlers['ground.remove']({ id: 'file:N46E007.hgt' }))).toMatch(/no longer there/)
    expect(messageOf(await service.handlers['ground.remove']({ id: 'file:../N46E007.hgt' }))).toMatch(/no longer there/)
  })

  test.each([
    ['a size that is none', 'N46E007.hgt', Buffer.alloc(5000), /N46E007\.hgt has 5,000 bytes/],
    ['a name that tells no place', 'heights.hgt', level(1), /heights\.hgt does not say which degree/],
    ['nothing but gaps', 'N46E007.hgt', level(null), /no height at all/],
    ['nothing at all', 'N46E007.hgt', Buffer.alloc(0), /is empty/],
    ['another kind', 'map.png', Buffer.alloc(9), /map\.png is not an elevation file/],
    [
      'a TIFF that is none',
      'ground.tif',
      Buffer.from('II*\0 and nothing behind it, but long enough to be looked at'),
      /ground\.tif cannot be read as a GeoTIFF/,
    ],
    ['an archive that is none', 'N46E007.zip', Buffer.alloc(4000, 7), /holds no \.hgt file/],
    ['an archive without squares', 'a.zip', zipOf({ 'read me.txt': 'hello' }), /a\.zip holds no \.hgt file/],
  ])('with %s is refused in a sentence, and leaves nothing behind', async (_name, name, bytes, sentence) => {
    const service = await start()
    expect(messageOf(await add(service, name, bytes))).toMatch(sentence)
    expect(readdirSync(folder).filter((one) => one !== 'gaps.json')).toEqual([])
    expect((await sources(service)).filter((source) => source.removable)).toEqual([])
  })

  test('twice is refused the second time', async () => {
    const service = await start()
    await add(service, 'N46E007.hgt', level(1))
    expect(messageOf(await add(service, 'n46e007 (1).hgt', level(2)))).toMatch(/N46E007\.hgt is there already/)
    expect(readdirSync(folder).toSorted()).toEqual(['N46E007.hgt', 'gaps.json'])
  })

  test('keeps to the folder whatever its name', async () => {
    const service = await start()
    expect(await add(service, '../../N10E010.hgt', level(5))).toMatchObject({
      ok: true,
      value: { added: ['N10E010.hgt'] },
    })
    expect(await add(service, 'C:\\tiles\\N11E010.hgt', level(5))).toMatchObject({ value: { added: ['N11E010.hgt'] } })
  })

  test('larger than is taken is refused while it arrives', async () => {
    const taken = await takeInFile(folder, 'big.tif', bodyOf(Buffer.alloc(500_000)), never, 200_000)
    expect(messageOf(taken)).toMatch(/big\.tif is larger than/)
    expect(readdirSync(folder)).toEqual([])
  })

  test('that the page stopped sending leaves nothing behind', async () => {
    const service = await start()
    const left = new AbortController()
    async function* body(): AsyncGenerator<Uint8Array> {
      yield new Uint8Array(1000)
      left.abort()
      yield new Uint8Array(1000)
    }
    const answer = await service.file(new URLSearchParams({ name: 'N46E007.hgt' }), body(), left.signal)
    expect(Buffer.from(answer.body).toString()).toContain('did not send all')
    expect(readdirSync(folder)).toEqual([])
  })
})

describe('an archive', () => {
  test('gives its squares, in folders too, and says what it left out', async () => {
    const service = await start()
    const added = await add(
      service,
      'squares.zip',
      zipOf({
        'a/N46E007.hgt': level(700),
        'b\\N47E007.hgt': level(800),
        '__MACOSX/a/._N46E007.hgt': 'shadow',
        'c/N48E007.hgt': Buffer.alloc(100),
        'read me.txt': 'hello',
      }),
    )
    expect(added).toMatchObject({ ok: true, value: { added: ['N46E007.hgt', 'N47E007.hgt'] } })
    expect(added.ok ? added.value.notes : []).toEqual([expect.stringMatching(/N48E007\.hgt has 100 bytes/)])
    const answer = await window(service, { lat: 47, lon: 7.5, cell: 100, half: 10 })
    expect(new Set(answer.heights)).toEqual(new Set([700, 800]))
    expect(answer.told?.sources.map(({ name }) => name)).toEqual(['N46E007.hgt', 'N47E007.hgt'])
  })

  test('cut short gives nothing that is not whole', async () => {
    const service = await start()
    const whole = zipOf({ 'N46E007.hgt': hgtBytes(1201, (column, row) => (column * row) % 997) })
    expect(messageOf(await add(service, 'N46E007.zip', whole.subarray(0, whole.length / 2)))).toMatch(
      /cut short or is damaged/,
    )
    expect((await sources(service)).filter((source) => source.removable)).toEqual([])
  })

  test('whose entry is larger than any square is not unpacked to its end', async () => {
    const service = await start()
    const bomb = zipOf({ 'N46E007.hgt': new Uint8Array(60_000_000) })
    expect(messageOf(await add(service, 'bomb.zip', bomb))).toMatch(/larger than any/)
  })
})

describe('precedence', () => {
  test('by cell: the first source that knows it, the next one in its gaps', async () => {
    const service = await start()
    await add(
      service,
      'N46E007.hgt',
      hgtBytes(1201, (column) => (column < 600 ? null : 1500)),
    )
    tile = () => ({ status: 200, type: 'image/png', body: TILE_OF_500 })
    const answer = await window(service, { ...ALPS, cell: 50, half: 20 })
    expect([answer.heights[0], answer.heights[40]]).toEqual([500, 1500])
    expect(answer.told?.sources.map(({ id }) => id)).toEqual(['file:N46E007.hgt', 'tiles'])
    expect(answer.told?.known).toBe(1)
    settings = { ...settings, groundOrder: ['tiles', 'demo', 'file:N46E007.hgt'] }
    const turned = await window(service, { ...ALPS, cell: 50, half: 20 })
    expect(turned.heights.every((height) => height === 500)).toBe(true)
  })

  test('a file added since the order was made comes first', async () => {
    settings = { ...settings, groundOrder: ['tiles', 'demo'] }
    const service = await start()
    await add(service, 'N46E007.hgt', level(1))
    expect((await sources(service)).map(({ id }) => id)).toEqual(['file:N46E007.hgt', 'tiles', 'demo'])
  })
})

describe('the demo island', () => {
  test('answers within its box without a network, its sea level water', async () => {
    const service = await start()
    const answer = await window(service, { ...ISLAND, cell: 20, half: 150 })
    expect(answer.told).toMatchObject({ known: 1, sources: [{ id: 'demo', share: 1 }] })
    expect(Math.min(...answer.heights)).toBe(0)
    expect(Math.max(...answer.heights)).toBeGreaterThan(100)
    const wide = await window(service, { ...ISLAND, cell: 100, half: 100 })
    expect(wide.told?.known).toBeGreaterThan(0.1)
    expect(wide.told?.known).toBeLessThan(0.5)
    expect(wide.heights[0]).toBeNaN()
    expect(Math.min(...wide.heights.filter((height) => !Number.isNaN(height)))).toBe(0)
    expect(asked).toEqual([])
  })

  test('is the same for a pin as for a window, and covers the place', async () => {
    const service = await start()
    const pins = await service.handlers['ground.heights']({
      places: [ISLAND, { lat: 46.38, lon: -33.58 }, { lat: 0, lon: 0 }],
    })
    const { heights } = await window(service, { ...ISLAND, cell: 20, half: 1 })
    if (!pins.ok) throw new Error(pins.fault.message)
    expect(pins.value.heights[0]?.height).toBeCloseTo(heights[4] ?? 0, 3)
    expect(pins.value.heights[0]).toMatchObject({ source: 'Demo island' })
    expect(pins.value.heights[2]).toBeNull()
    expect(pins.value.trouble).toMatch(/Check the network/)
    expect((await sources(service, ISLAND)).map(({ id, here }) => [id, here])).toEqual([
      ['demo', 'covers'],
      ['tiles', 'asked'],
    ])
  })
})

describe('tiles from the web', () => {
  test('that fail half-way leave the rest, say why, and come when asked again', async () => {
    const service = await start()
    tile = (_z, x) =>
      x % 2 === 0 ? { status: 200, type: 'image/png', body: TILE_OF_500 } : missing('server', 'The server has trouble.')
    const half = await window(service, { ...ALPS, cell: 20, half: 200 })
    expect(half.told?.trouble).toBe('The server has trouble.')
    expect(half.told?.known).toBeGreaterThan(0.2)
    expect(half.told?.known).toBeLessThan(0.8)
    expect([...half.heights].every((height) => height === 500 || Number.isNaN(height))).toBe(true)
    const before = asked.length
    tile = () => ({ status: 200, type: 'image/png', body: TILE_OF_500 })
    const again = await window(service, { ...ALPS, cell: 20, half: 200 })
    expect(again.told).toMatchObject({ known: 1, trouble: null })
    // What came the first time is not asked for again.
    expect(asked.length - before).toBeLessThan(before)
  })

  test('are never asked for when they are off, and without a network that is told', async () => {
    const service = await start()
    const offline = await window(service, { ...ALPS, cell: 20, half: 10 })
    expect(offline.told).toMatchObject({ known: 0, resolution: null, sources: [] })
    expect(offline.told?.trouble).toMatch(/Check the network/)
    expect(offline.heights.every((height) => Number.isNaN(height))).toBe(true)
    asked = []
    settings = { ...settings, elevationTiles: { ...settings.elevationTiles, on: false } }
    const off = await window(service, { ...ALPS, cell: 20, half: 10 })
    expect([asked, off.told]).toEqual([
      [],
      { known: 0, sea: 0, resolution: null, sources: [], whole: false, seaBeyond: false, trouble: null },
    ])
  })

  test('of another size or kind are told as such', async () => {
    const service = await start()
    tile = () => ({ status: 200, type: 'image/png', body: pngOf(512, () => terrariumColour(500)) })
    expect((await window(service, { ...ALPS, cell: 20, half: 10 })).told?.trouble).toMatch(/512 × 512/)
    tile = () => ({ status: 200, type: 'image/jpeg', body: new Uint8Array(9) })
    expect((await window(service, { ...ALPS, cell: 20, half: 10 })).told?.trouble).toMatch(/not a PNG/)
  })

  test('where the server has none are gaps without trouble', async () => {
    const service = await start()
    tile = () => ({ ...missing('not-covered', 'No tile here.'), status: 404 })
    expect((await window(service, { ...ALPS, cell: 20, half: 10 })).told).toMatchObject({ known: 0, trouble: null })
  })
})

describe('a window that can’t be cut', () => {
  test.each([
    [{}],
    [{ lat: 'x', lon: 0, cell: 20, half: 10 }],
    [{ lat: 91, lon: 0, cell: 20, half: 10 }],
    [{ lat: 0, lon: 9e9, cell: 20, half: 10 }],
    [{ lat: 0, lon: 0, cell: 0.4, half: 10 }],
    [{ lat: 0, lon: 0, cell: 501, half: 10 }],
    [{ lat: 0, lon: 0, cell: 20, half: 0 }],
    [{ lat: 0, lon: 0, cell: 20, half: 1501 }],
    [{ lat: 0, lon: 0, cell: 20, half: 10.5 }],
    [{ lat: '', lon: 0, cell: 20, half: 10 }],
    [{ lat: '0x10', lon: 0, cell: 20, half: 10 }],
    [{ lat: 'NaN', lon: 0, cell: 'Infinity', half: 10 }],
  ] as Record<string, string | number>[][])('%j', async (query) => {
    const answer = await window(await start(), query ?? {})
    expect([answer.status, answer.type]).toEqual([400, 'application/json'])
    expect(JSON.parse(Buffer.from(answer.body).toString())).toMatchObject({
      reason: 'bad-window',
      message: expect.stringMatching(/^No ground was cut: .*\.$/) as string,
    })
  })

  test('because the page left is not worked on', async () => {
    const left = new AbortController()
    left.abort()
    const service = await start()
    const answer = await service.window(
      new URLSearchParams({ lat: '46', lon: '7', cell: '20', half: '10' }),
      left.signal,
    )
    expect(answer.status).toBe(504)
  })

  test('twice: a word given two times is no word', async () => {
    const service = await start()
    expect((await service.window(new URLSearchParams('lat=1&lat=2&lon=3&cell=20&half=10'), never)).status).toBe(400)
  })
})

test('names beyond ASCII cross in the header', async () => {
  const service = await start()
  settings = { ...settings, elevationTiles: { ...settings.elevationTiles, attribution: '© Öffentliche Höhen — 山' } }
  tile = () => ({ status: 200, type: 'image/png', body: TILE_OF_500 })
  const answer = await service.window(new URLSearchParams({ lat: '46', lon: '7', cell: '20', half: '2' }), never)
  expect(answer.headers[GROUND_HEADER]).toMatch(/^[\x20-\x7e]+$/)
  expect(JSON.parse(answer.headers[GROUND_HEADER] ?? '')).toMatchObject({
    sources: [{ attribution: '© Öffentliche Höhen — 山' }],
  })
})
