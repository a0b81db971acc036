/** Crests in the far rings of elevation tiles: a made massif, levelled by each coarser zoom, against rays over all of it. */
import { expect, test } from 'vitest'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { laidTogether } from '#core/ground/rings.ts'
import { skyline } from '#core/ground/skyline.ts'
import { alongBearing, trueAxesAt } from '#core/ground/true-north.ts'
import { metresPerPixel } from '#core/geo/web-mercator.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { makeChunkCache } from '#main/ground/chunk-cache.ts'
import { fillFrom } from '#main/ground/fill.ts'
import { latticeOf } from '#main/ground/lattice.ts'
import { TILE_SIDE, zoomFor } from '#main/ground/terrarium.ts'
import { webTileRaster } from '#main/ground/web-tiles.ts'
import { emptyGrid, pixelFor, type WindowWish } from '#main/ground/window-wish.ts'
import { ringWindows } from '#renderer/state/plan/ring-plan.ts'

const never = new AbortController().signal
/** The zoom that holds all there is, 6.6 m a pixel here. */
const FULL = 14
/** From here the skyline lies in every ring. */
const AT: LatLon = { lat: 46.2, lon: 8.1 }
/** Metres of the lens above the ground. */
const LENS = 2
const REFRACTION = 0.13
const RADIUS = 6_371_008.8

/** Columns and rows of the whole, its pixels' edges at whole numbers. */
const SIDE = TILE_SIDE * 2 ** FULL
const columnOf = ({ lon }: LatLon): number => (lon / 360 + 0.5) * SIDE
const rowOf = ({ lat }: LatLon): number => (0.5 - Math.asinh(Math.tan(lat * RADIANS_PER_DEGREE)) / (2 * Math.PI)) * SIDE

/** 0.4 to 1, another for every whole number. */
function chance(number: number, seed: number): number {
  const turned = Math.sin(number * 127.1 + seed * 311.7) * 43_758.5453
  return 0.4 + 0.6 * (turned - Math.floor(turned))
}

/** Gables of so many pixels from foot to foot, each as high as chance will have it. */
function gables(at: number, period: number, seed: number): number {
  const part = at / period
  return (1 - Math.abs(2 * (part - Math.floor(part)) - 1)) * chance(Math.floor(part), seed)
}

/** Mountains, their crests and what is rough on them: gables one way times gables the other, so that each pixel's mean is a product too. */
const ORDERS = [
  { across: 1_390, down: 1_710, height: 3_400 },
  { across: 211, down: 263, height: 420 },
  { across: 47, down: 61, height: 70 },
]

function heightAt(place: LatLon): number {
  const [column, row] = [columnOf(place), rowOf(place)]
  return ORDERS.reduce(
    (sum, { across, down, height }, order) =>
      sum + height * gables(column, across, order) * gables(row, down, order + 10),
    200,
  )
}

/** The means of gables over a tile's pixels. */
function means(tile: number, zoom: number, period: number, seed: number): Float64Array {
  const wide = 2 ** (FULL - zoom)
  return Float64Array.from({ length: TILE_SIDE }, (_, pixel) => {
    let sum = 0
    for (let at = 0; at < wide; at++) sum += gables((tile * TILE_SIDE + pixel) * wide + at + 0.5, period, seed)
    return sum / wide
  })
}

interface Asked {
  readonly tiles: Set<string>
  most: number
}

/** A server's tiles by the very way they are asked, short of the picture they come in. */
async function windowOf(wish: WindowWish, asked: Asked) {
  const raster = webTileRaster(wish, { ...DEFAULT_SETTINGS.elevationTiles, maxZoom: FULL }, async () => {
    throw new Error('made here')
  })
  const zoom = Math.log2(raster.columns / TILE_SIDE)
  let running = 0
  const grid = emptyGrid(wish)
  const load = async (x: number, y: number) => {
    running += 1
    asked.most = Math.max(asked.most, running)
    asked.tiles.add(`${zoom}/${x}/${y}`)
    await Promise.resolve()
    running -= 1
    const sides = ORDERS.map(({ across, down, height }, order) => ({
      height,
      columns: means(x, zoom, across, order),
      rows: means(y, zoom, down, order + 10),
    }))
    const heights = new Float32Array(TILE_SIDE ** 2)
    for (let pixel = 0; pixel < heights.length; pixel++) {
      const [column, row] = [pixel % TILE_SIDE, Math.floor(pixel / TILE_SIDE)]
      let sum = 200
      for (const { height, columns, rows } of sides) sum += height * (columns[column] ?? 0) * (rows[row] ?? 0)
      heights[pixel] = sum
    }
    return { heights, trouble: null }
  }
  const filled = await fillFrom(
    grid,
    await latticeOf(grid, never),
    { ...raster, load },
    makeChunkCache(),
    never,
    wish.peaks,
  )
  expect(filled.cells).toBe(grid.heights.length)
  return { ...grid, step: raster.resolution }
}

/** Degrees up to the ground at an azimuth by rays over the whole, and metres to it. */
function byRays(ground: ElevationGrid, azimuth: number): { readonly altitude: number; readonly away: number } {
  const eye = { east: 0, north: 0, elevation: heightAt(AT) + LENS }
  const way = alongBearing(trueAxesAt(ground, eye), azimuth)
  let [steepest, away] = [-Infinity, 0]
  for (let distance = 5; distance < 150_000; distance += Math.min(20, Math.max(3, distance / 2000))) {
    const place = placeOnGrid(ground, way.east * distance, way.north * distance)
    const slope = (heightAt(place) - eye.elevation) / distance - ((1 - REFRACTION) / (2 * RADIUS)) * distance
    if (slope > steepest) [steepest, away] = [slope, distance]
  }
  return { altitude: Math.atan(steepest) / RADIANS_PER_DEGREE, away }
}

test('the skyline of far crests is that of rays over all of it, though the far rings come of levelled tiles', async () => {
  const asked: Asked = { tiles: new Set(), most: 0 }
  const rings: ElevationGrid[] = []
  for (const { kind, east, north } of ringWindows(AT, AT, null)) {
    const half = Math.ceil(kind.reach / kind.cell)
    const before = asked.tiles.size
    // oxlint-disable-next-line no-await-in-loop -- one after the other, as the page asks for them
    rings.push(await windowOf({ centre: AT, east, north, cell: kind.cell, half, peaks: kind.peaks }, asked))
    expect(asked.tiles.size - before).toBeLessThanOrEqual(220)
  }
  expect(asked.most).toBeLessThanOrEqual(100)
  const ground = laidTogether(rings)
  if (ground === null) throw new Error('no ground')
  const line = skyline(ground, { east: 0, north: 0, elevation: heightAt(AT) + LENS }, REFRACTION, 2)
  const found = [...line.altitudes].map((altitude, index) => {
    const rays = byRays(ground, index * line.step)
    return { ...rays, low: rays.altitude - altitude }
  })
  const off = (from: number) => found.filter(({ away }) => away > from).map(({ low }) => low)
  const sized = (values: readonly number[]) => values.map(Math.abs).toSorted((one, other) => one - other)
  const most = (values: readonly number[], share: number) => sized(values)[Math.ceil(values.length * share) - 1]
  expect(off(500).length).toBeGreaterThan(90)
  expect(most(off(500), 0.95)).toBeLessThan(0.05)
  expect(most(off(500), 1)).toBeLessThan(0.3)
  // Of the wide rings alone: neither far off the rays, nor too low all along as means are.
  expect(off(12_000).length).toBeGreaterThan(40)
  expect(most(off(12_000), 0.95)).toBeLessThan(0.03)
  expect(off(12_000).reduce((sum, low) => sum + low, 0) / off(12_000).length).toBeLessThan(0.01)
}, 120_000)

test.each([0, 20, 46, 60, 70])(
  'at %i degrees a wide ring is asked for in pixels no coarser than its cells, by a bounded number of tiles',
  (lat) => {
    const at = { lat, lon: 8.1 }
    for (const { kind } of ringWindows(at, at, null).filter((window) => window.kind.peaks)) {
      const width = 2 * kind.reach + kind.cell
      const zoom = zoomFor(lat, pixelFor(kind), width, FULL, true)
      expect(metresPerPixel(lat, zoom)).toBeLessThanOrEqual(kind.cell)
      expect((width / (metresPerPixel(lat, zoom) * TILE_SIDE) + 1) ** 2).toBeLessThanOrEqual(220)
    }
  },
)
