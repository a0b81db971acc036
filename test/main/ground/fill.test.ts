/** Windows of cells out of a raster: each cell is the height at its own place, wherever on earth, and gaps stay gaps. */
import { describe, expect, test } from 'vitest'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { wrapLongitude } from '#core/geo/lat-lon.ts'
import { placeOnGrid } from '#core/ground/elevation-grid.ts'
import { makeChunkCache } from '#main/ground/chunk-cache.ts'
import { fillFrom } from '#main/ground/fill.ts'
import { latticeOf } from '#main/ground/lattice.ts'
import type { Raster } from '#main/ground/raster.ts'
import { emptyGrid } from '#main/ground/window-wish.ts'

/** Samples along a chunk. */
const SIDE = 200
const never = new AbortController().signal

/** Degrees of the whole earth in samples of a thousandth: column and row tell the place a cell was read at. */
function earth(load: Raster['load'], more: Partial<Raster> = {}): Raster {
  return {
    id: 'earth',
    columns: 360_000,
    rows: 180_001,
    chunkColumns: SIDE,
    chunkRows: SIDE,
    turn: 360_000,
    round: true,
    reach: 0,
    remote: false,
    resolution: 111,
    pixelAt: (lat, lon) => ({ column: (lon + 180) * 1000, row: (90 - lat) * 1000 }),
    load,
    ...more,
  }
}

const ramp =
  (axis: 'column' | 'row'): Raster['load'] =>
  async (x, y) => {
    const heights = new Float32Array(SIDE * SIDE)
    for (let sample = 0; sample < heights.length; sample++)
      heights[sample] =
        axis === 'column' ? (x * SIDE + (sample % SIDE)) % 7000 : y * SIDE + Math.floor(sample / SIDE) - 90_000
    return { heights, trouble: null }
  }

interface Window {
  readonly lat: number
  readonly lon: number
  readonly cell: number
  readonly half: number
}

/** Nothing of it known yet. */
function windowAt({ lat, lon, cell, half }: Window) {
  return emptyGrid({ centre: { lat, lon }, east: 0, north: 0, cell, half })
}

async function filled(wish: Window, raster: Raster) {
  const grid = windowAt(wish)
  const lattice = await latticeOf(grid, never)
  const result = await fillFrom(grid, lattice, raster, makeChunkCache(), never, false)
  return { grid, lattice, ...result }
}

describe('the place of a cell read between exact ones', () => {
  test.each([
    [46.4, -33.6, 10, 500],
    [46.4, -33.6, 20, 500],
    [0, 0, 5, 300],
    [-33.9, 151.2, 30, 700],
    [69.6, 18.9, 25, 600],
    [80, 20, 100, 400],
    [52, 179.99, 500, 200],
    [89.5, 10, 50, 60],
    [60, 5, 500, 1500],
  ])('at %f, %f with cells of %i m', async (lat, lon, cell, half) => {
    const grid = windowAt({ lat, lon, cell, half })
    const { block, columns, lats, lons } = await latticeOf(grid, never)
    let worst = 0
    for (let step = 0; step < 400; step++) {
      const column = (step * 7919) % (grid.columns - 1)
      const row = (step * 104_729) % (grid.rows - 1)
      const [left, top] = [Math.floor(column / block), Math.floor(row / block)]
      const [u, v] = [column / block - left, row / block - top]
      const between = (values: Float64Array): number => {
        const corner = (x: number, y: number): number => values[(top + y) * columns + left + x] ?? 0
        const upper = corner(0, 0) * (1 - u) + (u > 0 ? corner(1, 0) * u : 0)
        return v > 0 ? upper * (1 - v) + (corner(0, 1) * (1 - u) + (u > 0 ? corner(1, 1) * u : 0)) * v : upper
      }
      const exact = placeOnGrid(grid, grid.west + column * cell, grid.north - row * cell)
      worst = Math.max(worst, geodesicDistance(exact, { lat: between(lats), lon: between(lons) }))
    }
    expect(worst).toBeLessThan(Math.max(0.01, cell / 500))
  })
})

describe('a window', () => {
  test.each([
    [46.4, 7.6, 20],
    [-33.86, 151.2, 100],
    [70, -179.999, 50],
    [0.0001, 0, 500],
  ])('at %f, %f holds the latitude and longitude of every cell', async (lat, lon, cell) => {
    const half = 60
    const rows = await filled({ lat, lon, cell, half }, earth(ramp('row')))
    const columns = await filled({ lat, lon, cell, half }, earth(ramp('column')))
    expect([rows.cells, columns.cells]).toEqual([121 * 121, 121 * 121])
    let seams = 0
    for (let at = 0; at < 121 * 121; at += 37) {
      const [column, row] = [at % 121, Math.floor(at / 121)]
      const exact = placeOnGrid(rows.grid, rows.grid.west + column * cell, rows.grid.north - row * cell)
      expect(rows.grid.heights[at]).toBeCloseTo(-exact.lat * 1000, 1)
      const wanted = ((exact.lon + 180) * 1000) % 7000
      const given = columns.grid.heights[at] ?? 0
      // Where the ramp falls back a cell may lie on its slope down.
      if (Math.abs(given - wanted) > 0.1) seams += 1
    }
    expect(seams).toBeLessThan(6)
  })

  test('across the seam of a raster reads its two ends, not all that lies between', async () => {
    const seamed = (load: Raster['load'], round: boolean) =>
      earth(load, {
        round,
        pixelAt: (lat, lon) => ({ column: (wrapLongitude(lon) + 180) * 1000, row: (90 - lat) * 1000 }),
      })
    const ends: Raster['load'] = async (x) => {
      const near = x < 10 || x >= 360_000 / SIDE - 10
      return { heights: new Float32Array(SIDE * SIDE).fill(near ? 3 : -3), trouble: null }
    }
    const whole = await filled({ lat: 10, lon: 179.999, cell: 50, half: 60 }, seamed(ends, true))
    expect([whole.cells, new Set(whole.grid.heights)]).toEqual([121 * 121, new Set([3])])
    // One that does not go round is read on the side the window's middle lies on.
    const open = await filled({ lat: 10, lon: 179.999, cell: 50, half: 60 }, seamed(ends, false))
    expect(open.cells).toBeGreaterThan(121 * 55)
    expect(open.cells).toBeLessThan(121 * 70)
    expect(open.grid.heights.includes(-3)).toBe(false)
  })

  test('at a pole is filled all round it', async () => {
    const { cells, grid } = await filled({ lat: 90, lon: 0, cell: 100, half: 20 }, earth(ramp('row')))
    expect(cells).toBe(41 * 41)
    // 2 km from the pole at 111.7 km a degree.
    expect(grid.heights[20]).toBeCloseTo(-90_000 + 17.9, 0)
  })

  test('keeps what was known and fills only the rest', async () => {
    const grid = windowAt({ lat: 10, lon: 10, cell: 50, half: 5 })
    grid.heights[60] = 1234
    const result = await fillFrom(
      grid,
      await latticeOf(grid, never),
      earth(ramp('row')),
      makeChunkCache(),
      never,
      false,
    )
    expect([result.cells, grid.heights[60]]).toEqual([120, 1234])
  })

  test('outside a raster stays unknown, never 0', async () => {
    const small = earth(async () => ({ heights: new Float32Array(SIDE * SIDE).fill(5), trouble: null }), {
      columns: 1000,
      rows: 1000,
      round: false,
      pixelAt: (lat, lon) => ({ column: (lon - 10) * 1000, row: (50 - lat) * 1000 }),
    })
    const { grid, cells } = await filled({ lat: 49.5, lon: 10, cell: 100, half: 10 }, small)
    expect(cells).toBe(21 * 11)
    expect([...grid.heights].every((height) => height === 5 || Number.isNaN(height))).toBe(true)
    expect((await filled({ lat: 49.5, lon: -170, cell: 100, half: 10 }, small)).cells).toBe(0)
  })

  test('of a part that fails is unknown there, tells why once, and asks again the next time', async () => {
    let asked = 0
    const broken = earth(async (x) => {
      asked += 1
      return x % 2 === 0
        ? { heights: new Float32Array(SIDE * SIDE).fill(7), trouble: null }
        : { heights: null, trouble: 'It failed.' }
    })
    const cache = makeChunkCache()
    const once = async () => {
      const grid = windowAt({ lat: 45.5, lon: 11, cell: 200, half: 20 })
      return { grid, ...(await fillFrom(grid, await latticeOf(grid, never), broken, cache, never, false)) }
    }
    const first = await once()
    expect(first.trouble).toBe('It failed.')
    expect(first.cells).toBeGreaterThan(600)
    expect(first.cells).toBeLessThan(41 * 41)
    const askedFirst = asked
    await once()
    expect(asked - askedFirst).toBe(1)
  })

  test('ends when nobody waits any more', async () => {
    const left = new AbortController()
    const slow = earth(async () => {
      left.abort()
      return { heights: null, trouble: null }
    })
    const grid = windowAt({ lat: 45.5, lon: 11, cell: 200, half: 20 })
    await expect(
      fillFrom(grid, await latticeOf(grid, never), slow, makeChunkCache(), left.signal, false),
    ).rejects.toThrow('aborted')
  })
})

describe('chunks', () => {
  const chunk = (bytes: number) => ({ heights: new Float32Array(bytes / 4), trouble: null })
  test('longest unused go first, and memory stays bounded', () => {
    const cache = makeChunkCache(10_000)
    const raster = earth(ramp('row'))
    for (let key = 0; key < 4; key++) {
      cache.put(raster, key, chunk(3_000))
      cache.get(raster, 0)
    }
    expect(cache.bytes()).toBeLessThanOrEqual(10_000)
    expect([0, 1, 2, 3].map((key) => cache.get(raster, key) !== undefined)).toEqual([true, false, true, true])
    cache.forget('ear')
    expect([cache.bytes(), cache.get(raster, 0)]).toEqual([0, undefined])
  })

  test('larger than all the room are kept while they are the newest', () => {
    const cache = makeChunkCache(1_000)
    const raster = earth(ramp('row'))
    cache.put(raster, 1, chunk(5_000))
    expect(cache.get(raster, 1)).toBeDefined()
    cache.put(raster, 2, chunk(400))
    expect(cache.get(raster, 1)).toBeUndefined()
  })
})
