/** GeoTIFFs against a second decoder: what GDAL writes in many layouts is read sample by sample as GDAL itself reads it. */
import { mkdtempSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { makeChunkCache } from '#main/ground/chunk-cache.ts'
import { heightFrom } from '#main/ground/ground-source.ts'
import { type ElevationFile, elevationFile } from '#main/ground/elevation-facts.ts'
import { countGaps, type LocalFile, openLocalFile } from '#main/ground/local-file.ts'
import type { Raster } from '#main/ground/raster.ts'
import { makeSampler, MISSING } from '#main/ground/sample.ts'
import { gdal, gdalSamples, hasGdal, pngOf, writeAscii } from '#test/help/elevation-files.ts'

const COLUMNS = 310
const ROWS = 300
const never = new AbortController().signal

let folder = ''
let count = 0
const opened: LocalFile[] = []

/** Hills with a hole in them; whole numbers where the file's kind wants such. */
function hill(column: number, row: number): number {
  if (column > 100 && column < 130 && row > 40 && row < 90) return -9999
  return Math.round(400 + 300 * Math.sin(column / 17) * Math.cos(row / 23) - column * 0.5)
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'geotiff-'))
  writeAscii(join(folder, 'base.asc'), COLUMNS, ROWS, hill)
  writeAscii(
    join(folder, 'fine.asc'),
    COLUMNS,
    ROWS,
    (column, row) => hill(column, row) + (hill(column, row) > -9000 ? 0.375 : 0),
  )
})

afterAll(async () => {
  await Promise.all(opened.map((file) => file.close()))
  rmSync(folder, { recursive: true, force: true })
})

const WGS84 = ['-a_srs', 'EPSG:4326', '-a_ullr', '10', '50', String(10 + COLUMNS / 3600), String(50 - ROWS / 3600)]

function write(words: readonly string[], base = 'base.asc'): string {
  const path = join(folder, `${(count += 1)}.tif`)
  gdal('gdal_translate', ['-q', '-of', 'GTiff', ...words, join(folder, base), path])
  return path
}

const refOf = (path: string) => ({
  path,
  name: path.slice(folder.length + 1),
  bytes: statSync(path).size,
  state: String(count),
})

async function open(path: string): Promise<LocalFile> {
  const file = await openLocalFile(refOf(path))
  if (!file.ok) throw new Error(file.fault.message)
  opened.push(file.value)
  return file.value
}

/** As the thread and the program together make it, without the thread. */
async function read(path: string): Promise<ElevationFile> {
  const { facts, loaders } = await open(path)
  return elevationFile(path, structuredClone(facts), (level) => loaders[level] ?? noLevel)
}

const noLevel = async (): Promise<never> => {
  throw new Error('no such level')
}

const gapsOf = async (path: string) => countGaps(await open(path), () => undefined)

async function refusal(path: string): Promise<string> {
  const file = await openLocalFile(refOf(path))
  if (file.ok) throw new Error('it was taken')
  return file.fault.message
}

/** Every sample of a raster, at its own column and row. */
async function samples(raster: Raster): Promise<Float64Array> {
  const sampler = makeSampler(raster, makeChunkCache())
  const all = new Float64Array(raster.columns * raster.rows)
  for (let row = 0; row < raster.rows; row++) {
    for (let column = 0; column < raster.columns; column++) {
      let height = sampler.at(column, row)
      while (height === MISSING) {
        await sampler.loadMissing(never)
        height = sampler.at(column, row)
      }
      all[row * raster.columns + column] = height
    }
  }
  expect(sampler.trouble()).toBeNull()
  return all
}

/** The most that any sample differs; a gap must be one in both. */
function apart(ours: Float64Array, theirs: Float64Array, isGap: (value: number) => boolean): number {
  expect(ours.length).toBe(theirs.length)
  let most = 0
  for (const [sample, value] of theirs.entries()) {
    const height = ours[sample] ?? 0
    if (isGap(value) !== Number.isNaN(height)) return Number.POSITIVE_INFINITY
    if (!isGap(value)) most = Math.max(most, Math.abs(height - value))
  }
  return most
}

const co = (...options: string[]) => options.flatMap((option) => ['-co', option])

const LAYOUTS: readonly (readonly [string, readonly string[]])[] = [
  ['int16 in strips, plain', ['-ot', 'Int16']],
  ['int16 in tiles, deflate', ['-ot', 'Int16', ...co('TILED=YES', 'COMPRESS=DEFLATE')]],
  ['int16, LZW with differences', ['-ot', 'Int16', ...co('COMPRESS=LZW', 'PREDICTOR=2')]],
  ['int16, PackBits', ['-ot', 'Int16', ...co('COMPRESS=PACKBITS')]],
  ['int16, Zstandard', ['-ot', 'Int16', ...co('COMPRESS=ZSTD', 'TILED=YES')]],
  ['uint16', ['-ot', 'UInt16', '-a_nodata', '0', ...co('COMPRESS=DEFLATE')]],
  ['int32 in tiles with differences', ['-ot', 'Int32', ...co('TILED=YES', 'COMPRESS=DEFLATE', 'PREDICTOR=2')]],
  ['float32 in tiles, differences of bytes', ['-ot', 'Float32', ...co('TILED=YES', 'COMPRESS=DEFLATE', 'PREDICTOR=3')]],
  ['float32, LZW with differences', ['-ot', 'Float32', ...co('COMPRESS=LZW', 'PREDICTOR=2')]],
  ['float64', ['-ot', 'Float64', ...co('COMPRESS=DEFLATE')]],
  ['float64, differences of bytes', ['-ot', 'Float64', ...co('COMPRESS=DEFLATE', 'PREDICTOR=3')]],
  ['BigTIFF', ['-ot', 'Float32', ...co('BIGTIFF=YES', 'TILED=YES')]],
  ['big-endian int16', ['-ot', 'Int16', ...co('ENDIANNESS=BIG')]],
  ['big-endian, 300 plain strips of one row', ['-ot', 'Int16', ...co('ENDIANNESS=BIG', 'BLOCKYSIZE=1')]],
  [
    'big-endian, 300 deflated strips of one row',
    ['-ot', 'Float32', ...co('ENDIANNESS=BIG', 'BLOCKYSIZE=1', 'COMPRESS=DEFLATE')],
  ],
  [
    'big-endian with differences',
    ['-ot', 'Int16', ...co('ENDIANNESS=BIG', 'COMPRESS=DEFLATE', 'PREDICTOR=2', 'TILED=YES')],
  ],
  ['big-endian float64', ['-ot', 'Float64', ...co('ENDIANNESS=BIG', 'COMPRESS=LZW')]],
  [
    'big-endian BigTIFF in small tiles',
    ['-ot', 'Int16', ...co('ENDIANNESS=BIG', 'BIGTIFF=YES', 'TILED=YES', 'BLOCKXSIZE=16', 'BLOCKYSIZE=16')],
  ],
]

describe.skipIf(!hasGdal)('every sample as GDAL reads it', () => {
  test.each(LAYOUTS)('%s', async (_name, words) => {
    const base = words.some((word) => word.startsWith('Float')) ? 'fine.asc' : 'base.asc'
    const path = write([...WGS84, ...words], base)
    const unsigned = words.includes('UInt16')
    const file = await read(path)
    const theirs = gdalSamples(path, join(folder, 'scratch'))
    expect(theirs.filter((value) => (unsigned ? value === 0 : value === -9999)).length).toBeGreaterThan(1000)
    const ours = await samples(file.rasterFor(0))
    expect(apart(ours, theirs, (value) => (unsigned ? value === 0 : value === -9999))).toBeLessThan(1e-3)
  })

  test.each([
    ['the lowest float, told with fewer digits', '-3.40282346638529e+38'],
    ['not a number', 'nan'],
  ])('no data that is %s', async (_name, noData) => {
    const scratch = join(folder, 'marked.tif')
    gdal('gdalwarp', ['-q', '-overwrite', '-dstnodata', noData, '-ot', 'Float32', write(WGS84, 'fine.asc'), scratch])
    const file = await read(scratch)
    const theirs = gdalSamples(scratch, join(folder, 'scratch'))
    const isGap = (value: number): boolean => Number.isNaN(value) || value < -1e30
    expect(theirs.filter(isGap).length).toBeGreaterThan(1000)
    expect(apart(await samples(file.rasterFor(0)), theirs, isGap)).toBeLessThan(1e-3)
  })

  test('parts that were never written are gaps, not the sea', async () => {
    const path = join(folder, 'sparse.tif')
    gdal('gdal_create', [
      '-q',
      '-of',
      'GTiff',
      '-ot',
      'Int16',
      '-outsize',
      '512',
      '512',
      '-a_srs',
      'EPSG:4326',
      '-a_ullr',
      '10',
      '50',
      '10.2',
      '49.8',
      ...co('SPARSE_OK=TRUE', 'TILED=YES'),
      path,
    ])
    const file = await read(path)
    expect((await samples(file.rasterFor(0))).every((height) => Number.isNaN(height))).toBe(true)
    expect(await gapsOf(path)).toMatchObject({ share: 1, whole: true })
  })

  test('scale and offset are applied, feet become metres', async () => {
    const path = write([...WGS84, '-ot', 'Int16', '-a_nodata', '-9999', '-a_scale', '0.1', '-a_offset', '1000'])
    const [height] = await samples((await read(path)).rasterFor(0))
    expect(height).toBeCloseTo(hill(0, 0) * 0.1 + 1000, 3)
    const feet = await read(
      write(['-a_srs', 'EPSG:32610+8228', '-a_ullr', '500000', '4200000', '503100', '4197000', '-ot', 'Int16']),
    )
    expect((await samples(feet.rasterFor(0)))[0]).toBeCloseTo(hill(0, 0) * 0.3048, 3)
    expect(feet.heights).toContain('feet')
    const survey = await read(
      write(['-a_srs', 'EPSG:26910+6360', '-a_ullr', '500000', '4200000', '503100', '4197000', '-ot', 'Int16']),
    )
    expect((await samples(survey.rasterFor(0)))[0]).toBeCloseTo((hill(0, 0) * 1200) / 3937, 3)
  })

  test('a coarse wish is served from the levels of detail that are in the file', async () => {
    const path = write([...WGS84, '-ot', 'Float32', ...co('TILED=YES')])
    gdal('gdaladdo', ['-q', '-r', 'average', path, '2', '4'])
    const file = await read(path)
    const [fine, coarse] = [file.rasterFor(10), file.rasterFor(500)]
    expect([fine.columns, coarse.columns]).toEqual([COLUMNS, Math.ceil(COLUMNS / 4)])
    expect(coarse.resolution).toBeCloseTo(fine.resolution * 4, 0)
    const at = { lat: 49.95, lon: 10.05 }
    const [one, other] = await Promise.all(
      [fine, coarse].map(async (raster) => (await heightFrom(raster, at, makeChunkCache(), never)).height),
    )
    expect(Math.abs((one ?? 0) - (other ?? 0))).toBeLessThan(12)
  })
})

/** Places of some pixel centres as GDAL computes them from the file's own words. */
function centres(path: string, pixels: readonly (readonly [number, number])[]): { lat: number; lon: number }[] {
  // gdaltransform counts pixels from their corners, and gives x, y in the system asked for.
  const input = pixels.map(([column, row]) => `${column + 0.5} ${row + 0.5}`).join('\n')
  return gdal('gdaltransform', ['-t_srs', 'EPSG:4326', '-output_xy', path], input)
    .trim()
    .split('\n')
    .map((line) => line.split(' ').map(Number))
    .map(([lon = 0, lat = 0]) => ({ lat, lon }))
}

const PIXELS = [
  [0, 0],
  [309, 0],
  [0, 299],
  [309, 299],
  [200, 150],
  [57, 233],
] as const

const box = (west: number, north: number, cell: number) => [
  '-a_ullr',
  String(west),
  String(north),
  String(west + COLUMNS * cell),
  String(north - ROWS * cell),
]

const SYSTEMS: readonly (readonly [string, readonly string[]])[] = [
  ['degrees', WGS84],
  ['degrees, south-west', ['-a_srs', 'EPSG:4326', ...box(-71.5, -33.2, 1 / 3600)]],
  ['degrees across 180', ['-a_srs', 'EPSG:4326', ...box(179.97, -16, 1 / 3600)]],
  ['ETRS89 degrees', ['-a_srs', 'EPSG:4258', ...box(10, 50, 1 / 3600)]],
  ['UTM north', ['-a_srs', 'EPSG:32632', ...box(500_000, 5_200_000, 30)]],
  ['UTM south', ['-a_srs', 'EPSG:32719', ...box(300_000, 6_300_000, 10)]],
  ['UTM zone 60 across 180', ['-a_srs', 'EPSG:32760', ...box(815_000, 8_100_000, 30)]],
  ['ETRS89 UTM', ['-a_srs', 'EPSG:25833', ...box(400_000, 5_800_000, 1)]],
  ['NAD83 UTM', ['-a_srs', 'EPSG:26911', ...box(400_000, 3_800_000, 10)]],
  ['MGA', ['-a_srs', 'EPSG:28356', ...box(330_000, 6_250_000, 5)]],
  ['MGA 2020', ['-a_srs', 'EPSG:7856', ...box(330_000, 6_250_000, 5)]],
  ['SIRGAS UTM north', ['-a_srs', 'EPSG:31972', ...box(300_000, 800_000, 30)]],
  ['SIRGAS UTM south', ['-a_srs', 'EPSG:31983', ...box(300_000, 7_400_000, 30)]],
  ['Web Mercator', ['-a_srs', 'EPSG:3857', ...box(1_100_000, 6_100_000, 30)]],
  ['ETRS89 LAEA', ['-a_srs', 'EPSG:3035', ...box(4_300_000, 2_700_000, 25)]],
  ['Lambert-93', ['-a_srs', 'EPSG:2154', ...box(900_000, 6_500_000, 5)]],
  ['SWEREF99 TM', ['-a_srs', 'EPSG:3006', ...box(650_000, 7_500_000, 2)]],
  ['TM35FIN', ['-a_srs', 'EPSG:3067', ...box(400_000, 7_200_000, 10)]],
  ['CS92', ['-a_srs', 'EPSG:2180', ...box(570_000, 160_000, 5)]],
  ['NZTM', ['-a_srs', 'EPSG:2193', ...box(1_300_000, 5_100_000, 8)]],
  ['LV95', ['-a_srs', 'EPSG:2056', ...box(2_630_000, 1_150_000, 10)]],
  ['degrees beyond 180', ['-a_srs', 'EPSG:4326', ...box(190, 52, 1 / 3600)]],
  ['degrees close to 360', ['-a_srs', 'EPSG:4326', ...box(352, 52, 1 / 3600)]],
  ['degrees of the whole earth from 0 to 360', ['-a_srs', 'EPSG:4326', '-a_ullr', '0', '90', '360', '-90']],
  ['British National Grid', ['-a_srs', 'EPSG:27700', ...box(320_000, 510_000, 10)]],
  ['Irish Transverse Mercator', ['-a_srs', 'EPSG:2157', ...box(700_000, 730_000, 5)]],
  ['Irish Grid of TM65', ['-a_srs', 'EPSG:29902', ...box(300_000, 230_000, 10)]],
  ['Irish Grid of TM75', ['-a_srs', 'EPSG:29903', ...box(300_000, 230_000, 10)]],
  ['RD New', ['-a_srs', 'EPSG:28992', ...box(155_000, 463_000, 5)]],
  ['Lambert 72', ['-a_srs', 'EPSG:31370', ...box(190_000, 110_000, 5)]],
  ['Lambert 2008', ['-a_srs', 'EPSG:3812', ...box(690_000, 610_000, 5)]],
  ['MGI West', ['-a_srs', 'EPSG:31254', ...box(20_000, 230_000, 10)]],
  ['MGI Central', ['-a_srs', 'EPSG:31255', ...box(-10_000, 250_000, 10)]],
  ['MGI East', ['-a_srs', 'EPSG:31256', ...box(-20_000, 320_000, 10)]],
  ['MGI M28', ['-a_srs', 'EPSG:31257', ...box(170_000, 230_000, 10)]],
  ['MGI M31', ['-a_srs', 'EPSG:31258', ...box(440_000, 250_000, 10)]],
  ['MGI M34', ['-a_srs', 'EPSG:31259', ...box(730_000, 320_000, 10)]],
  ['MGI Lambert', ['-a_srs', 'EPSG:31287', ...box(400_000, 400_000, 10)]],
  ['ETRS89 Austria Lambert', ['-a_srs', 'EPSG:3416', ...box(400_000, 400_000, 10)]],
  ['Krovak', ['-a_srs', 'EPSG:5514', ...box(-680_000, -1_050_000, 10)]],
  ['Krovak of JTSK03', ['-a_srs', 'EPSG:8353', ...box(-390_000, -1_230_000, 10)]],
  ['NAD83(2011) UTM', ['-a_srs', 'EPSG:6344', ...box(400_000, 4_400_000, 10)]],
  ['NAD83(CSRS) UTM', ['-a_srs', 'EPSG:2958', ...box(400_000, 5_000_000, 10)]],
  ['NAD83(CSRS) UTM, a zone out of order', ['-a_srs', 'EPSG:3159', ...box(400_000, 5_800_000, 10)]],
  ['RDN2008 UTM', ['-a_srs', 'EPSG:7792', ...box(400_000, 4_650_000, 10)]],
  ['RDN2008 UTM, north before east', ['-a_srs', 'EPSG:6708', ...box(400_000, 4_650_000, 10)]],
]

describe.skipIf(!hasGdal)('every sample in its place', () => {
  /** The farthest that any of the places lies from its pixel, in pixels, each height held to as much. */
  const farthest = async (path: string, shift: number): Promise<number> => {
    let most = 0
    const raster = (await read(path)).rasterFor(0)
    for (const [index, at] of centres(path, PIXELS).entries()) {
      const [column, row] = PIXELS[index] ?? [0, 0]
      const found = raster.pixelAt(at.lat, at.lon)
      // Shares of a pixel; datums that agree within a metre are taken for one by both.
      most = Math.max(most, Math.hypot(found.column - column, found.row - row))
      const { height } = await heightFrom(raster, at, makeChunkCache(), never)
      expect(Math.abs((height ?? 0) - hill(column, row))).toBeLessThan(25 * shift + 0.01)
    }
    return most
  }

  test.each(SYSTEMS)('%s', async (name, words) => {
    // GDAL shifts LV95 by a grid or by other parameters than ours where it can: a metre at cells of 10 m.
    // NAD83(CSRS) has drifted by a metre, which GDAL takes out; RD New has 1 mm of its shift's last digit in cells of 5 m.
    const shift = name === 'LV95' || name.startsWith('NAD83(CSRS)') ? 0.15 : 1e-3
    expect(await farthest(write([...words, '-ot', 'Float32']), shift)).toBeLessThan(shift)
  })

  test('a sample that is a point lies on its tie itself, as OGC 19-008r4 has it', async () => {
    const path = write([...WGS84, '-ot', 'Float32', '-mo', 'AREA_OR_POINT=Point'])
    expect(gdal('gdalinfo', [path])).toContain('AREA_OR_POINT=Point')
    expect(await farthest(path, 1e-3)).toBeLessThan(1e-3)
  })

  test.each([
    ['British National Grid', ['-a_srs', 'EPSG:27700', ...box(320_000, 510_000, 10)], /British.*within about 5 m/],
    ['NAD83(CSRS)', ['-a_srs', 'EPSG:2958', ...box(400_000, 5_000_000, 10)], /CSRS.*within about 2 m/],
  ])('how far off places may be is told: %s', async (_name, words, sentence) => {
    expect((await read(write([...words, '-ot', 'Int16']))).heights).toMatch(sentence)
  })

  test.each([
    [190, { west: -170, east: -170 + 309 / 3600 }],
    [179.97, { west: 179.97, east: 179.97 + 309 / 3600 - 360 }],
    [360 - 310 / 3600, { west: -310 / 3600, east: -1 / 3600 }],
  ])('longitudes from %f are told as everywhere else', async (west, expected) => {
    const { bounds } = await read(write(['-a_srs', 'EPSG:4326', ...box(west, 52, 1 / 3600), '-ot', 'Int16']))
    expect(bounds.west).toBeCloseTo(expected.west + 0.5 / 3600, 6)
    expect(bounds.east).toBeCloseTo(expected.east + 0.5 / 3600, 6)
  })

  test('all of a file is within the bounds told of it', async () => {
    const file = await read(write(['-a_srs', 'EPSG:32760', ...box(815_000, 8_100_000, 30), '-ot', 'Float32']))
    const { west, east, south, north } = file.bounds
    expect(west).toBeGreaterThan(east)
    expect([north - south, east + 360 - west].every((size) => size > 0.05 && size < 0.2)).toBe(true)
  })
})

describe.skipIf(!hasGdal)('what is refused, and in which words', () => {
  test.each([
    [
      'a system that is not read',
      ['-a_srs', 'EPSG:31467', ...box(3_500_000, 5_300_000, 10), '-ot', 'Int16'],
      /Gauss-Kruger.*EPSG:31467.*gdalwarp/,
    ],
    ['another datum', ['-a_srs', 'EPSG:4267', ...box(-100, 40, 0.001), '-ot', 'Int16'], /NAD27.*EPSG:4267/],
    ['projected feet', ['-a_srs', 'EPSG:2263', ...box(900_000, 200_000, 10), '-ot', 'Int16'], /New York.*EPSG:2263/],
    ['heights above the ellipsoid', ['-a_srs', 'EPSG:4979', ...box(10, 50, 0.001), '-ot', 'Int16'], /ellipsoid/],
    ['depths', ['-a_srs', 'EPSG:4326+5715', ...box(10, 50, 0.001), '-ot', 'Int16'], /depths/],
    ['shades of grey', [...WGS84, '-ot', 'Byte'], /shades \(8 bits\)/],
    ['three bands', [...WGS84, '-ot', 'Int16', '-b', '1', '-b', '1', '-b', '1'], /3 values in each place/],
    ['a packing with loss', [...WGS84, '-ot', 'Float32', ...co('COMPRESS=LERC')], /packed by LERC.*DEFLATE/],
    ['floats of 16 bits', [...WGS84, '-ot', 'Float32', ...co('NBITS=16')], /floating numbers of 16 bits.*Float32/],
    ['complex numbers', [...WGS84, '-ot', 'CInt16'], /another kind, such as complex/],
    [
      'high byte first with predictor 3',
      [...WGS84, '-ot', 'Float32', ...co('ENDIANNESS=BIG', 'COMPRESS=DEFLATE', 'PREDICTOR=3')],
      /predictor 3/,
    ],
    ['a mask', [...WGS84, '-ot', 'Int16', '-mask', '1', '--config', 'GDAL_TIFF_INTERNAL_MASK', 'YES'], /mask/],
    ['no place', ['-ot', 'Int16', '-co', 'PROFILE=BASELINE'], /where it lies/],
  ])('%s', async (_name, words, sentence) => {
    expect(await refusal(write(words))).toMatch(sentence)
  })

  test.each([
    ['centimetres', 100],
    ['feet', 30],
  ])('heights that look like %s', async (_name, scale) => {
    writeAscii(join(folder, 'scaled.asc'), 90, 80, (column, row) => (column * row * scale) / 3 + 100)
    const gaps = await gapsOf(write([...WGS84, '-ot', 'Int32'], 'scaled.asc'))
    expect(gaps.unlikely).toMatch(/\.tif holds heights of up to [\d,]+, .*centimetres or feet.*gdal_calc/)
  })

  test('a few spikes and an untold mark of gaps are no other unit', async () => {
    writeAscii(join(folder, 'spiked.asc'), 90, 80, (column, row) =>
      column < 20 ? 32_767 : column === 50 && row < 5 ? 20_000 + row : 400,
    )
    expect((await gapsOf(write([...WGS84, '-ot', 'Int32'], 'spiked.asc'))).unlikely).toBeNull()
  })

  test('a file cut short, at several places', async () => {
    const path = write([...WGS84, '-ot', 'Int16', ...co('TILED=YES')])
    for (const bytes of [3, 8, 100, 5_000, statSync(path).size - 1_000]) {
      truncateSync(path, bytes)
      expect(await refusal(path), String(bytes)).toMatch(/cut short|cannot be read/)
    }
  })

  test('a file that is something else', async () => {
    const path = join(folder, 'picture.tif')
    writeFileSync(
      path,
      pngOf(4, () => [1, 2, 3, 4]),
    )
    expect(await refusal(path)).toMatch(/picture\.tif cannot be read as a GeoTIFF/)
    writeFileSync(path, '')
    expect(await refusal(path)).toMatch(/picture\.tif cannot be read as a GeoTIFF/)
  })

  test('a part that was damaged is told and unknown, the others are read', async () => {
    const path = write([...WGS84, '-ot', 'Int16', ...co('TILED=YES', 'COMPRESS=DEFLATE')])
    const bytes = readFileSync(path)
    const middle = bytes.length - 3_000
    bytes.fill(0x55, middle, middle + 500)
    writeFileSync(path, bytes)
    const file = await read(path)
    expect((await gapsOf(path)).trouble).toMatch(/damaged/)
    const { height } = await heightFrom(
      file.rasterFor(0),
      { lat: 50 - 0.5 / 3600, lon: 10 + 0.5 / 3600 },
      makeChunkCache(),
      never,
    )
    expect(height).toBe(hill(0, 0))
  })
})
