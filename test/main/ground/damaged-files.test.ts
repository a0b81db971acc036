/** Damaged and hostile elevation files: every one ends in heights or in a sentence that names it, within bounds of time and memory. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { crc32, deflateSync, zstdCompressSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { zipSync } from 'fflate'
import { type FileReader, openFileReader } from '#main/ground/file-reader.ts'
import type { Gaps } from '#main/ground/local-file.ts'
import { decodeTerrarium } from '#main/ground/terrarium.ts'
import type { Result } from '#core/result.ts'
import { gdal, hasGdal, hgtBytes, pngOf, terrariumColour, writeAscii } from '#test/help/elevation-files.ts'
import { READER_CODE } from '#test/help/reader-code.ts'
import { elevationTiff, type TiffEntry } from '#test/help/tiff.ts'

const NAME = 'ground.tif'

let folder = ''
let reader: FileReader
let state = 0

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'damaged-'))
  reader = openFileReader(READER_CODE)
})

afterAll(async () => {
  await reader.close()
  rmSync(folder, { recursive: true, force: true })
})

/** Looked at and read through, as when it is put into the folder. */
async function answerTo(bytes: Uint8Array, name = NAME): Promise<Result<Gaps>> {
  const path = join(folder, name)
  writeFileSync(path, bytes)
  const ref = { path, name, bytes: bytes.length, state: String((state += 1)) }
  const looked = await reader.look(ref)
  return looked.ok ? reader.countGaps(ref) : looked
}

/** What is said of it: empty when all of it is read. */
async function said(bytes: Uint8Array): Promise<string> {
  const answer = await answerTo(bytes)
  return answer.ok ? (answer.value.trouble ?? '') : answer.fault.message
}

const heights = (columns: number, rows: number): Uint8Array =>
  new Uint8Array(Int16Array.from({ length: columns * rows }, (_, at) => 400 + ((at * 13) % 97)).buffer)

const SMALL = heights(12, 10)
const whole = { columns: 12, rows: 10, packing: 8, part: deflateSync(SMALL) }

describe('a TIFF made by hand', () => {
  test('is read whole when nothing is wrong with it', async () => {
    expect(await said(elevationTiff(whole))).toBe('')
    expect(await said(elevationTiff({ ...whole, packing: 50_000, part: zstdCompressSync(SMALL) }))).toBe('')
  })

  const damaged: readonly (readonly [string, readonly TiffEntry[]])[] = [
    ['a width that is no whole number', [[256, 11, [12.5]]]],
    ['a width without end', [[256, 12, [Number.POSITIVE_INFINITY]]]],
    ['a height that is none', [[257, 12, [Number.NaN]]]],
    ['a width of nothing', [[256, 4, [0]]]],
    ['more columns than there can be', [[256, 4, [4_000_000_000]]]],
    ['several widths', [[256, 3, [12, 12]]]],
    ['rows in a strip that are no whole number', [[278, 12, [2.5]]]],
    ['a packing with a fraction', [[259, 11, [8.5]]]],
    ['a list of places larger than the file', [[273, 4, [0], 2_000_000_000]]],
    ['a list of sizes larger than the file', [[279, 4, [0], 4_000_000_000]]],
    ['bits larger than the file', [[258, 3, [16], 3_000_000_000]]],
    ['a no-data text larger than the file', [[42_113, 2, '-9999\0', 2_000_000_000]]],
    ['keys larger than the file', [[34_735, 3, [1, 1, 0, 0], 2_000_000_000]]],
    ['a part larger than its samples can be', [[279, 4, [3_000_000_000]]]],
    [
      'tiles of a fraction',
      [
        [322, 11, [16.5]],
        [323, 4, [16]],
        [324, 4, [0]],
        [325, 4, [10]],
      ],
    ],
  ]
  test.each(damaged)('with %s is refused in a sentence', async (_name, change) => {
    expect(await said(elevationTiff(whole, ...change))).toMatch(
      /ground\.tif (cannot be read as a GeoTIFF \(it.*\)\. Download|.*: the file is damaged\. Download)/,
    )
  })

  const zeros = new Uint8Array(100_000_000)
  test.each([
    ['deflate', 8, () => deflateSync(zeros)],
    ['Zstandard', 50_000, () => zstdCompressSync(zeros)],
    ['PackBits', 32_773, () => Uint8Array.from({ length: 4_000_000 }, (_, at) => (at % 2 === 0 ? 0x81 : 0))],
    ['LZW', 5, () => new Uint8Array(4_000_000).fill(0xff)],
  ])('whose part is a bomb of %s is told, and costs no memory', async (_name, packing, part) => {
    const file = elevationTiff({ ...whole, packing, part: part() })
    const before = process.memoryUsage().rss
    expect(await said(file)).toMatch(/A part of ground\.tif cannot be read: the file is damaged\. Download it again\./)
    expect(process.memoryUsage().rss - before).toBeLessThan(60_000_000)
  })

  test('whose directories lead round in a circle is left', async () => {
    const bytes = elevationTiff(whole)
    bytes.writeUInt32LE(8, 8 + 2 + bytes.readUInt16LE(8) * 12)
    expect(typeof (await said(bytes))).toBe('string')
  })
})

describe.skipIf(!hasGdal)('every byte turned over', { timeout: 120_000 }, () => {
  const co = (...options: string[]) => options.flatMap((option) => ['-co', option])
  test.each([
    ['plain', []],
    ['deflate, differences', co('COMPRESS=DEFLATE', 'PREDICTOR=2')],
    ['LZW', co('COMPRESS=LZW')],
    ['PackBits', co('COMPRESS=PACKBITS')],
    ['Zstandard', co('COMPRESS=ZSTD')],
    ['tiles, BigTIFF', co('BIGTIFF=YES', 'TILED=YES', 'BLOCKXSIZE=16', 'BLOCKYSIZE=16', 'COMPRESS=DEFLATE')],
    ['high byte first', co('ENDIANNESS=BIG', 'COMPRESS=LZW')],
  ])('of a GeoTIFF: %s', async (_name, words) => {
    writeAscii(join(folder, 'small.asc'), 20, 18, (column, row) => 300 + column * row)
    const path = join(folder, 'whole.tif')
    const place = ['-a_srs', 'EPSG:4326', '-a_ullr', '10', '50', '10.01', '49.99']
    gdal('gdal_translate', ['-q', '-of', 'GTiff', '-ot', 'Int16', ...place, ...words, join(folder, 'small.asc'), path])
    const bytes = readFileSync(path)
    expect(await said(bytes)).toBe('')
    for (let at = 0; at < bytes.length; at++) {
      const turned = Buffer.from(bytes)
      turned[at] = (turned[at] ?? 0) ^ 0xff
      // oxlint-disable-next-line no-await-in-loop -- one file at a time
      const answer = await answerTo(turned)
      if (answer.ok) expect(answer.value.share, String(at)).toBeLessThanOrEqual(1)
      else expect(answer.fault.message, String(at)).toMatch(/^ground\.tif .*\./s)
      // Nothing may come as far as the last guard, the clock.
      expect(answer.ok ? '' : answer.fault.reason, String(at)).not.toMatch(/too-long|too-much-memory|broke/)
    }
  })
})

/** A picture in seven passes (RFC 2083), all of it one colour, whose pixels unpack to so many bytes. */
function interlaced(bytes: number): Buffer {
  const chunk = (name: string, data: Uint8Array): Buffer => {
    const body = Buffer.concat([Buffer.from(name, 'latin1'), data])
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
    length.writeUInt32BE(data.length)
    sum.writeUInt32BE(crc32(body))
    return Buffer.concat([length, body, sum])
  }
  const header = Buffer.alloc(13)
  header.writeUInt32BE(256, 0)
  header.writeUInt32BE(256, 4)
  header.set([8, 2, 0, 0, 1], 8)
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  const data = deflateSync(new Uint8Array(bytes), { level: 9 })
  return Buffer.concat([signature, chunk('IHDR', header), chunk('IDAT', data), chunk('IEND', new Uint8Array())])
}

describe('an elevation tile', () => {
  /** Rows of each pass with the byte before them, by the steps of RFC 2083, section 2.6. */
  const passes = [
    [8, 8, 0, 0],
    [8, 8, 4, 0],
    [4, 8, 0, 4],
    [4, 4, 2, 0],
    [2, 4, 0, 2],
    [2, 2, 1, 0],
    [1, 2, 0, 1],
  ] as const
  const exact = passes.reduce(
    (sum, [across, down, x, y]) => sum + Math.ceil((256 - y) / down) * (Math.ceil((256 - x) / across) * 3 + 1),
    0,
  )

  test('in seven passes is read', () => {
    const read = decodeTerrarium(interlaced(exact))
    expect(read.ok ? read.value.every((height) => Number.isNaN(height)) : read.fault.message).toBe(true)
  })

  test('in seven passes that unpacks to more than it says is damaged, and costs no memory', () => {
    const bomb = interlaced(150_000_000)
    const before = process.memoryUsage().rss
    const read = decodeTerrarium(bomb)
    expect(read.ok ? '' : read.fault.message).toMatch(/tile is damaged\. Check the address/)
    expect(process.memoryUsage().rss - before).toBeLessThan(50_000_000)
  })

  test.each([
    ['as it usually is', pngOf(256, (column) => terrariumColour(column % 3))],
    ['in seven passes', interlaced(exact)],
  ])('with any byte turned over is heights or a sentence: %s', (_name, bytes) => {
    const step = Math.max(1, Math.floor(bytes.length / 400))
    for (let at = 0; at < bytes.length; at += step) {
      const turned = Buffer.from(bytes)
      turned[at] = (turned[at] ?? 0) ^ 0xff
      const read = decodeTerrarium(turned)
      if (read.ok) expect(read.value.length).toBe(65_536)
      else expect(read.fault.message).toMatch(/^An elevation tile .*\. Check/)
    }
  })
})

describe('an archive', () => {
  const flat = (height: number) => hgtBytes(1201, () => height)
  const unpack = async (bytes: Uint8Array) => {
    const archive = join(folder, 'squares.zip')
    writeFileSync(archive, bytes)
    const answer = await reader.unpack(archive, 'squares.zip', { folder, prefix: '.incoming-test' })
    const left = readdirSync(folder).filter((name) => name.startsWith('.incoming-test'))
    const sizes = left.map((name) => statSync(join(folder, name)).size)
    for (const name of left) rmSync(join(folder, name))
    return { answer, sizes }
  }

  test('of thirty flat squares of an arc second is unpacked with little memory', { timeout: 120_000 }, async () => {
    const square = Buffer.alloc(25_934_402)
    const one = zipSync({ 'N00E000.hgt': [square, { level: 9 }] })
    expect(one.length).toBeLessThan(40_000)
    const names = Array.from({ length: 30 }, (_, at) => `N${String(at).padStart(2, '0')}E000.hgt`)
    // Copies of one entry, each under a name of its own: the central directory behind them is not read.
    const entry = Buffer.from(one.subarray(0, Buffer.from(one).indexOf('PK\u0001\u0002', 0, 'latin1')))
    const many = Buffer.concat(
      names.map((name) => {
        const copy = Buffer.from(entry)
        copy.write(name, 30, 'latin1')
        return copy
      }),
    )
    let most = 0
    const before = process.memoryUsage().rss
    const watch = setInterval(() => (most = Math.max(most, process.memoryUsage().rss - before)), 20)
    const { answer, sizes } = await unpack(many)
    clearInterval(watch)
    expect(answer.ok ? answer.value.fault : answer.fault).toBeNull()
    expect(sizes).toEqual(names.map(() => 25_934_402))
    // Far less than half of what is in it: 778 MB.
    expect(most).toBeLessThan(300_000_000)
  })

  test('with any byte turned over gives whole squares or a sentence, and leaves nothing half-written', async () => {
    const bytes = Buffer.from(zipSync({ 'N46E007.hgt': [flat(700), { level: 9 }] }))
    const places = Array.from({ length: 60 }, (_, at) => Math.floor((at * bytes.length) / 60)).concat([26, 27, 28, 29])
    for (const at of places) {
      const turned = Buffer.from(bytes)
      turned[at] = (turned[at] ?? 0) ^ 0xff
      // oxlint-disable-next-line no-await-in-loop -- one archive at a time
      const { answer, sizes } = await unpack(turned)
      if (!answer.ok) throw new Error(`${at}: ${answer.fault.message}`)
      expect(sizes.length, String(at)).toBe(answer.value.entries.filter(({ path }) => path !== null).length)
    }
  })
})
