/** The sea's surface: taken below 0 off the coasts, in windows and at pins alike; land below the sea stays as it was read. */
import { READER_CODE } from '#test/help/reader-code.ts'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { writeCoastFile } from '#app/build-coast.ts'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import { GROUND_HEADER, type GroundWindow, groundWindowShape } from '#app/contract/ground.ts'
import { coastOf, onLand, writeCoast } from '#core/geo/coast.ts'
import { type ElevationGrid, elevationAt, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { latticeOf } from '#main/ground/lattice.ts'
import { isOpenSea, isSea, makeCoast, type SeaTaken, takeSea } from '#main/ground/sea.ts'
import { groundService } from '#main/ground/service.ts'
import { hgtBytes } from '#test/help/elevation-files.ts'
import { groundOf } from '#test/help/terrain.ts'

const never = new AbortController().signal
let folder = ''

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sea-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function coastFileOf(name: string, rings: number[][][]): string {
  const file = join(folder, name)
  const numbers = writeCoast(coastOf(rings))
  const bytes = Buffer.alloc(numbers.length * 4)
  numbers.forEach((number, at) => bytes.writeInt32LE(number, at * 4))
  writeFileSync(file, gzipSync(bytes))
  return file
}

/** A jagged shore about a middle, its land to the south. */
function shore(lat: number, lon: number): number[][] {
  const along = Array.from({ length: 41 }, (_, at) => [lon - 1 + at / 20, lat + 0.03 * Math.sin(at * 1.7)])
  return [...along.toReversed(), [lon - 1, lat - 2], [lon + 1, lat - 2], along.at(-1) ?? []]
}

async function taken(grid: ElevationGrid, file: string): Promise<SeaTaken> {
  return takeSea(grid, await latticeOf(grid, never), makeCoast(file), never)
}

describe('a window', () => {
  test.each([
    [51.3, 3.2],
    [-33, 179.98],
    [69.5, -20],
    [0.01, 0],
  ])('over a shore at %f, %f has the sea at 0 and the land as it was, cell by cell as at pins', async (lat, lon) => {
    const file = coastFileOf(`shore ${lat} ${lon}.gz`, [shore(lat, lon)])
    const coast = await makeCoast(file)()
    if (coast === null) throw new Error('the coast was written')
    const floor = (east: number, north: number): number => (Math.round(east / 40 + north / 30) % 3 === 0 ? 2 : -7)
    const grid = groundOf(201, 40, floor, { lat, lon })
    const before = grid.heights.slice()
    const count = (await taken(grid, file)).cells
    let [sea, land, differ] = [0, 0, 0]
    for (let cell = 0; cell < before.length; cell += 7) {
      const [column, row] = [cell % 201, Math.floor(cell / 201)]
      const at = placeOnGrid(grid, grid.west + column * 40, grid.north - row * 40)
      const here = before[cell] ?? 0
      const wanted = here < 0 && !onLand(coast, at) ? 0 : here
      if (grid.heights[cell] !== wanted) differ++
      if (here < 0 && wanted === 0) sea++
      else if (here < 0) land++
    }
    // Straight on the plane is not quite straight in degrees: a cell right on the shore may fall to the other side.
    expect(differ).toBeLessThanOrEqual(3)
    expect(sea).toBeGreaterThan(100)
    expect(land).toBeGreaterThan(100)
    expect(count).toBeGreaterThan(6 * sea)
  })

  test('wholly at sea or wholly on land needs no shore in it', async () => {
    const file = coastFileOf('far.gz', [shore(51, 3)])
    const [sea, land] = [
      groundOf(21, 40, () => -9, { lat: 56, lon: 3 }),
      groundOf(21, 40, () => -9, { lat: 50, lon: 3 }),
    ]
    expect(await taken(sea, file)).toEqual({ cells: 441, unknown: 0 })
    expect(sea.heights.every((height) => height === 0)).toBe(true)
    expect((await taken(land, file)).cells).toBe(0)
  })

  test('without the build’s coasts stays as it was read, unknown cells too', async () => {
    const grid = groundOf(21, 40, (east) => (east < 0 ? Number.NaN : -9), { lat: 56, lon: 3 })
    expect((await taken(grid, join(folder, 'none.gz'))).cells).toBe(0)
    expect(elevationAt(grid, -200, 0)).toBeNull()
    expect(elevationAt(grid, 200, 0)).toBe(-9)
  })

  test('has the sea where no source knows anything off the coasts, and stays unknown on land and where nothing is known at all', async () => {
    const file = coastFileOf('unknown.gz', [shore(51, 3)])
    const half = (east: number): number => (east < 0 ? Number.NaN : 4)
    const sea = groundOf(21, 40, half, { lat: 56, lon: 3 })
    expect(await taken(sea, file)).toEqual({ cells: 210, unknown: 210 })
    expect([elevationAt(sea, -200, 0), elevationAt(sea, 200, 0)]).toEqual([0, 4])
    const land = groundOf(21, 40, half, { lat: 50, lon: 3 })
    expect((await taken(land, file)).cells).toBe(0)
    expect(elevationAt(land, -200, 0)).toBeNull()
    const nothing = groundOf(21, 40, () => Number.NaN, { lat: 56, lon: 3 })
    expect((await taken(nothing, file)).cells).toBe(0)
    expect(elevationAt(nothing, 0, 0)).toBeNull()
  })

  test('lies in the open sea only where no shore comes into the box', async () => {
    const coast = await makeCoast(coastFileOf('open.gz', [shore(51, 3)]))()
    const box = (lat: number, half: number) => ({
      south: lat - half,
      north: lat + half,
      west: 3 - half,
      east: 3 + half,
    })
    expect([box(56, 2), box(56, 5), box(50, 0.5), box(-61, 2)].map((one) => isOpenSea(coast, one))).toEqual([
      true,
      false,
      false,
      false,
    ])
    expect(isOpenSea(null, box(56, 2))).toBe(false)
  })

  test('is told the share of it, a pin that it is so, by the service', async () => {
    const service = await groundService({
      folder: join(folder, 'elevation'),
      demoFile: join(folder, 'none'),
      coastFile: coastFileOf('service.gz', [shore(51.5, 3.5)]),
      readerCode: READER_CODE,
      settings: () => DEFAULT_SETTINGS,
      askTile: async () => ({ status: 504, type: 'application/json', body: new TextEncoder().encode('{}') }),
      prefix: '/ground/key',
      now: Date.now,
    })
    async function* file(): AsyncGenerator<Uint8Array> {
      yield hgtBytes(1201, () => -12)
    }
    await service.file(new URLSearchParams({ name: 'N51E003.hgt' }), file(), never)
    const [north, south] = [
      { lat: 51.8, lon: 3.5 },
      { lat: 51.2, lon: 3.5 },
    ]
    const heights = await service.handlers['ground.heights']({ places: [north, south] })
    expect(heights.ok && heights.value.heights).toMatchObject([
      { height: 0, sea: true, source: 'N51E003.hgt' },
      { height: -12, sea: false },
    ])
    const cut = await service.window(new URLSearchParams({ lat: '51.8', lon: '3.5', cell: '30', half: '50' }), never)
    const told = groundWindowShape.parse(JSON.parse(cut.headers[GROUND_HEADER] ?? 'null') as GroundWindow)
    expect(told).toMatchObject({ known: 1, sea: 1 })
    await service.close()
  })
})

describe('the coasts of the build', () => {
  let file = ''
  beforeAll(async () => {
    file = join(folder, 'world', 'coast.gz')
    await writeCoastFile(file)
  }, 60_000)

  // Coordinates as gazetteers give them (GeoNames; United States Geological Survey for Badwater Basin), to a tenth of a degree.
  test.each([
    ['the Dead Sea', 31.5, 35.5],
    ['Badwater Basin', 36.2, -116.8],
    ['the Turpan depression', 42.7, 89.2],
    ['Flevoland', 52.5, 5.5],
    ['the Haarlemmermeer', 52.3, 4.7],
    ['the Caspian Sea, whose level lies below 0', 42, 51],
    ['Nauru', -0.53, 166.93],
  ])('have %s on land: what is read below 0 there stays', async (_name, lat, lon) => {
    expect(await isSea(-3, { lat, lon }, makeCoast(file))).toBe(false)
  })

  test.each([
    ['the North Sea', 53, 3.5],
    ['the Black Sea', 43, 34],
    ['the Baltic', 58, 20],
    ['the Red Sea', 22, 38],
    ['the sea by the antimeridian', -30, 180],
    ['the same by its other name', -30, -180],
  ])('have %s at sea', async (_name, lat, lon) => {
    expect(await isSea(-3, { lat, lon }, makeCoast(file))).toBe(true)
    expect(await isSea(3, { lat, lon }, makeCoast(file))).toBe(false)
    expect(await isSea(Number.NaN, { lat, lon }, makeCoast(file))).toBe(false)
  })
})
