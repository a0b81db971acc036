/** Elevation tiles in Terrarium encoding: published colours, what is no height, the alpha channel, borders, zooms. */
import { describe, expect, test } from 'vitest'
import { tileAt } from '#core/geo/web-mercator.ts'
import { makeChunkCache } from '#main/ground/chunk-cache.ts'
import { heightFrom } from '#main/ground/ground-source.ts'
import { decodeTerrarium, terrariumHeight, terrariumRaster, TILE_SIDE, zoomFor } from '#main/ground/terrarium.ts'
import { pngOf, terrariumColour } from '#test/help/elevation-files.ts'

const never = new AbortController().signal

function decode(body: Uint8Array): Float32Array {
  const heights = decodeTerrarium(body)
  if (!heights.ok) throw new Error(heights.fault.message)
  return heights.value
}

describe('a colour', () => {
  // Tilezen's formula, (R 256 + G + B / 256) − 32768; steps of 1/256 m.
  test.each([
    [0, [128, 0, 0]],
    [1, [128, 1, 0]],
    [-1, [127, 255, 0]],
    [100.5, [128, 100, 128]],
    [-430.5, [126, 81, 128]],
    [8848.86, [162, 144, 220]],
    [-0.5, [127, 255, 128]],
    [1000.5, [131, 232, 128]],
  ] as const)('is %f m', (height, [red, green, blue]) => {
    expect(Math.abs(terrariumHeight(red, green, blue) - height)).toBeLessThanOrEqual(1 / 256)
    expect(terrariumColour(height).slice(0, 3)).toEqual([red, green, blue])
  })

  test.each([
    [255, 255, 0],
    [255, 255, 255],
    [0, 0, 0],
    [200, 0, 0],
  ])('of %i, %i, %i is no data', (red, green, blue) => {
    expect(terrariumHeight(red, green, blue)).toBeNaN()
  })

  // The other RGB form, −10000 + 0.1 (65536 R + 256 G + B), means 0, 100.5 and 8848.9 m by these.
  test.each([
    [1, 134, 160],
    [1, 138, 141],
    [2, 224, 73],
  ])('of another encoding (%i, %i, %i) is not taken for a height', (red, green, blue) => {
    expect(terrariumHeight(red, green, blue)).toBeNaN()
  })
})

describe('a tile', () => {
  test.each([0, 10, 255])('says the same with alpha %i', (alpha) => {
    const heights = decode(pngOf(TILE_SIDE, () => [131, 232, 128, alpha]))
    expect(heights.length).toBe(TILE_SIDE * TILE_SIDE)
    expect(heights.every((height) => height === 1000.5)).toBe(true)
  })

  test.each([
    ['the last column', (column: number, _row: number) => column === 255],
    ['the first column', (column: number, _row: number) => column === 0],
    ['the last row', (_column: number, row: number) => row === 255],
    ['the first row', (_column: number, row: number) => row === 0],
  ])('%s of zeros beside 800 m is not trusted', (_name, isEdge) => {
    const heights = decode(pngOf(TILE_SIDE, (column, row) => terrariumColour(isEdge(column, row) ? 0 : 800)))
    expect(heights.filter((height) => Number.isNaN(height)).length).toBe(TILE_SIDE)
    expect(heights.filter((height) => height === 800).length).toBe(TILE_SIDE * (TILE_SIDE - 1))
  })

  test('a shore along its edge is a shore: zeros beside low ground, or zeros here and there', () => {
    const flat = decode(pngOf(TILE_SIDE, (column) => terrariumColour(column === 255 ? 0 : 3)))
    expect(flat[255]).toBe(0)
    const some = decode(pngOf(TILE_SIDE, (column, row) => terrariumColour(column === 255 && row > 9 ? 0 : 800)))
    expect(some[20 * TILE_SIDE + 255]).toBe(0)
  })

  test.each([
    ['of another size', pngOf(512, () => [128, 0, 0, 255]), /512 × 512/],
    [
      'that claims to be huge',
      Buffer.from('89504e470d0a1a0a0000000d494844520000ffff0000ffff080600000000000000', 'hex'),
      /65535/,
    ],
    ['cut short', pngOf(TILE_SIDE, (column) => [128, column, 7, 255]).subarray(0, 900), /damaged/],
    ['that is no PNG', Buffer.from('<!doctype html>'.repeat(9)), /not a PNG/],
    ['of nothing', Buffer.alloc(0), /not a PNG/],
  ])('%s is refused', (_name, body, sentence) => {
    const heights = decodeTerrarium(body)
    expect(heights.ok ? '' : heights.fault.message).toMatch(sentence)
  })
})

describe('the tiles of a zoom', () => {
  const ZOOM = 10
  /** Height that grows by a metre a pixel eastward, from the tile's own west edge at 100 m. */
  const raster = (load: (x: number, y: number) => Float32Array | null) =>
    terrariumRaster('t', ZOOM, 46, async (_z, x, y) => ({ heights: load(x, y), trouble: null }))
  const tile = tileAt({ lat: 46.3, lon: 7.1 }, ZOOM)
  /** Longitude at a share of the tile's width. */
  const lonAt = (share: number): number => ((tile.x + share) / 2 ** ZOOM) * 360 - 180
  const at = async (one: ReturnType<typeof raster>, lon: number) =>
    (await heightFrom(one, { lat: 46.3, lon }, makeChunkCache(), never)).height

  test('have pixel centres half a pixel inside', async () => {
    const ramp = Float32Array.from({ length: TILE_SIDE ** 2 }, (_, pixel) => pixel % TILE_SIDE)
    const one = raster(() => ramp)
    expect(await at(one, lonAt(0.5 / 256))).toBeCloseTo(0, 4)
    expect(await at(one, lonAt(100.5 / 256))).toBeCloseTo(100, 4)
    expect(await at(one, lonAt(100.75 / 256))).toBeCloseTo(100.25, 4)
  })

  test('are read across their edge with the neighbour, half a pixel from it', async () => {
    const one = raster((x) => new Float32Array(TILE_SIDE ** 2).fill(x === tile.x ? 800 : 600))
    expect(await at(one, lonAt(1))).toBeCloseTo(700, 3)
    expect(await at(one, lonAt(1 + 0.25 / 256))).toBeCloseTo(650, 3)
    const alone = raster((x) => (x === tile.x ? new Float32Array(TILE_SIDE ** 2).fill(800) : null))
    expect(await at(alone, lonAt(1 + 0.25 / 256))).toBeCloseTo(800, 3)
    expect(await at(alone, lonAt(1.5))).toBeNull()
  })

  test('go round the earth', async () => {
    const one = terrariumRaster('t', 2, 0, async (_z, x) => ({
      heights: new Float32Array(TILE_SIDE ** 2).fill(x * 100),
      trouble: null,
    }))
    const height = async (lon: number) => (await heightFrom(one, { lat: 1, lon }, makeChunkCache(), never)).height
    expect(await height(179.99999)).toBeCloseTo(150, 0)
    expect(await height(-180)).toBeCloseTo(150, 0)
    expect(await height(180 + 45)).toBe(0)
    expect((await heightFrom(one, { lat: 86, lon: 0 }, makeChunkCache(), never)).height).toBeNull()
  })

  test('are as fine as the cells, and no more than a hundred at once', () => {
    expect(zoomFor(46, 20, 20 * 1001, 15, false)).toBe(13)
    expect(zoomFor(46, 0.5, 0.5, 15, false)).toBe(14)
    expect(zoomFor(46, 10, 10 * 1001, 9, false)).toBe(9)
    for (const cell of [0.5, 5, 20, 100, 500]) {
      const zoom = zoomFor(60, cell, cell * 3001, 15, false)
      const across = (cell * 3001) / ((40_075_017 * 0.5) / 2 ** zoom)
      expect((across + 1) ** 2).toBeLessThanOrEqual(101)
    }
  })
})
