/** .hgt squares: names, sizes, layout, voids and shared edges, as SRTM's notes have them. */
import { describe, expect, test } from 'vitest'
import fc from 'fast-check'
import { makeChunkCache } from '#main/ground/chunk-cache.ts'
import { heightFrom } from '#main/ground/ground-source.ts'
import { hgtBounds, hgtCorner, hgtHeights, hgtLoader, hgtName, hgtRaster, hgtSide } from '#main/ground/hgt.ts'
import { newTally } from '#main/ground/possible-height.ts'
import type { Raster } from '#main/ground/raster.ts'
import { makeSampler } from '#main/ground/sample.ts'
import { hgtBytes } from '#test/help/elevation-files.ts'

const never = new AbortController().signal

/** The raster of an .hgt whose bytes are in memory. */
function rasterOf(name: string, bytes: Buffer): Raster {
  const corner = hgtCorner(name)
  const side = hgtSide(name, bytes.length)
  if (!corner.ok || !side.ok) throw new Error('not a square')
  const handle = {
    read: async (into: Buffer, _offset: number, length: number, position: number) => ({
      bytesRead: bytes.copy(into, 0, position, position + length),
    }),
  }
  return hgtRaster(
    name,
    corner.value,
    side.value,
    hgtLoader(corner.value, side.value, async () => handle as never, newTally()),
  )
}

async function at(raster: Raster, lat: number, lon: number): Promise<number | null> {
  return (await heightFrom(raster, { lat, lon }, makeChunkCache(), never)).height
}

describe('the name', () => {
  // SRTM's notes: the name is the south-west corner.
  test.each([
    [-0.5, -0.5, 'S01W001'],
    [0, 0, 'N00E000'],
    [-1, -1, 'S01W001'],
    [37.7, -122.4, 'N37W123'],
    [-33.86, 151.2, 'S34E151'],
    [59.99, 180, 'N59W180'],
    [59.99, -180, 'N59W180'],
    [0.5, 359.5, 'N00W001'],
    [90, 0, 'N89E000'],
  ])('of %f, %f is %s', (lat, lon, name) => {
    expect(hgtName({ lat, lon })).toBe(name)
  })

  test('leads back to the degree that holds the place', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -89.9, max: 89.9, noNaN: true }),
        fc.double({ min: -180, max: 179.999, noNaN: true }),
        (lat, lon) => {
          const corner = hgtCorner(`${hgtName({ lat, lon })}.hgt`)
          if (!corner.ok) throw new Error(corner.fault.message)
          const { south, north, west, east } = hgtBounds(corner.value)
          expect([south <= lat, lat < north, west <= lon, lon < east]).toEqual([true, true, true, true])
        },
      ),
    )
  })

  test.each(['n46e007.HGT', 'N46E007.hgt', 'N46E007.SRTMGL1.hgt', 'N46E007 (1).hgt'])('%s is understood', (name) => {
    expect(hgtCorner(name)).toEqual({ ok: true, value: { lat: 46, lon: 7 } })
  })

  test.each([
    'N46.hgt',
    'E007N46.hgt',
    'N46E0071.hgt',
    'N90E000.hgt',
    'N46E180.hgt',
    'S91W001.hgt',
    'N46W181.hgt',
    'height.hgt',
  ])('%s is refused in a sentence that names it', (name) => {
    const corner = hgtCorner(name)
    expect(corner.ok ? '' : corner.fault.message).toContain(`${name} `)
  })
})

describe('the size', () => {
  // JPL's SRTM FAQ: 1201 and 3601 samples a side, 2 bytes each.
  test.each([
    [2_884_802, 1201],
    [25_934_402, 3601],
  ])('of %i bytes is a side of %i', (bytes, side) => {
    expect(hgtSide('N00E000.hgt', bytes)).toEqual({ ok: true, value: side })
  })

  test.each([0, 2_884_800, 2_884_804, 25_934_401, 12_967_201])(
    'of %i bytes is refused, with the two there are',
    (bytes) => {
      const side = hgtSide('N00E000.hgt', bytes)
      expect(side.ok ? '' : side.fault.message).toMatch(/N00E000\.hgt.*2,884,802.*25,934,402/)
    },
  )
})

describe('the samples', () => {
  test('are 16 bits, high byte first, and −32768 is no data', () => {
    const heights = hgtHeights(Buffer.from([0x01, 0xcb, 0xff, 0xff, 0x80, 0x00]), newTally())
    expect([...heights]).toEqual([459, -1, Number.NaN])
  })

  test('are gaps where no ground is so high or so low, as in the other kinds of file', () => {
    const bytes = Buffer.alloc(12)
    for (const [at, height] of [9000, 9001, 32_640, -11_500, -11_501, -32_767].entries())
      bytes.writeInt16BE(height, at * 2)
    expect([...hgtHeights(bytes, newTally())]).toEqual([9000, Number.NaN, Number.NaN, -11_500, Number.NaN, Number.NaN])
  })

  test('run from the north-west; the name gives the centre of the south-west one', async () => {
    const raster = rasterOf(
      'S34W119.hgt',
      hgtBytes(1201, (column, row) => (row - 600) * 10 + Math.floor(column / 10)),
    )
    expect(await at(raster, -33, -119)).toBe(-6_000)
    expect(await at(raster, -34, -119)).toBe(6_000)
    expect(await at(raster, -34, -118)).toBe(6_120)
    expect(await at(raster, -33 - 1 / 1200, -118)).toBe(-5_870)
    expect(await at(raster, -33 - 0.5 / 1200, -119)).toBeCloseTo(-5_995, 6)
  })

  test('on a shared edge are answered by both neighbours alike, and no other place is', async () => {
    const height = (lon: number, lat: number): number => Math.round(lon * 1200) - 8000 + Math.round(lat * 1200) - 57_000
    const square = (west: number) => hgtBytes(1201, (column, row) => height(west + column / 1200, 47 - row / 1200))
    const [left, right] = [rasterOf('N46E007.hgt', square(7)), rasterOf('N46E008.hgt', square(8))]
    for (const lat of [46, 46.3333, 47]) expect(await at(left, lat, 8)).toBe(await at(right, lat, 8))
    expect(await at(left, 46.5, 8.0001)).toBeNull()
    expect(await at(right, 46.5, 7.9999)).toBeNull()
    expect(await at(left, 47.0001, 7.5)).toBeNull()
  })

  test('beside voids weigh alone: 459 and three voids give 459, never −10,265', async () => {
    const raster = rasterOf(
      'N00E000.hgt',
      hgtBytes(1201, (column, row) =>
        column === 10 && row === 10 ? 459 : column > 9 && column < 12 && row > 9 && row < 12 ? null : 100,
      ),
    )
    const half = 0.5 / 1200
    expect(await at(raster, 1 - 10 / 1200 - half, 10 / 1200 + half)).toBe(459)
    expect(await at(raster, 1 - 11 / 1200, 11 / 1200)).toBeNull()
  })

  test('across 180 are found from either side of it', async () => {
    const raster = rasterOf(
      'N59W180.hgt',
      hgtBytes(1201, () => 77),
    )
    for (const lon of [-180, 180, -179.5, 180.5]) expect(await at(raster, 59.5, lon)).toBe(77)
    expect(await at(raster, 59.5, 179.5)).toBeNull()
  })
})

test('a sampler answers nothing beyond its known corners’ least and most', async () => {
  const raster = rasterOf(
    'N00E000.hgt',
    hgtBytes(1201, (column, row) => ((column * 7 + row * 13) % 5 === 0 ? null : (column * row) % 900)),
  )
  const cache = makeChunkCache()
  const sampler = makeSampler(raster, cache)
  await sampler.load(0, never)
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1200, noNaN: true }),
      fc.double({ min: 0, max: 126.9, noNaN: true }),
      (column, row) => {
        const height = sampler.at(column, row)
        const known = [0, 1]
          .flatMap((right) =>
            [0, 1].map((down) => sampler.at(Math.min(1200, Math.floor(column) + right), Math.floor(row) + down)),
          )
          .filter((one) => !Number.isNaN(one))
        if (Number.isNaN(height)) return
        expect(height).toBeGreaterThanOrEqual(Math.min(...known) - 1e-6)
        expect(height).toBeLessThanOrEqual(Math.max(...known) + 1e-6)
      },
    ),
    { numRuns: 500 },
  )
})
