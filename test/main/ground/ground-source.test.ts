/** Which level of detail of a file a window is cut from: cells that want their crests are not served from levelled ones. */
import { expect, test } from 'vitest'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import { done } from '#core/result.ts'
import { makeChunkCache } from '#main/ground/chunk-cache.ts'
import { elevationFile } from '#main/ground/elevation-facts.ts'
import { fillFrom } from '#main/ground/fill.ts'
import type { GeotiffPlace } from '#main/ground/geotiff-place.ts'
import { groundSources } from '#main/ground/ground-source.ts'
import { latticeOf } from '#main/ground/lattice.ts'
import type { Raster } from '#main/ground/raster.ts'
import { emptyGrid } from '#main/ground/window-wish.ts'

const never = new AbortController().signal
/** Samples along the finest level, a second of arc apart. */
const SIDE = 512
const SECOND = 1 / 3600
/** A summit of one sample in a plain. */
const SUMMIT = { column: 257, row: 258, height: 640 }
const PLACE: GeotiffPlace = {
  affine: { a: SECOND, b: 0, c: 10, d: 0, e: -SECOND, f: 46 },
  columns: SIDE,
  rows: SIDE,
  epsg: null,
  systemName: 'WGS 84',
  metresPerUnit: 1,
  heights: 'above the sea',
}

/** The mean of what lies in each sample, as overviews are mostly made. */
function averaged(level: number): Raster['load'] {
  const [times, side] = [2 ** level, SIDE / 2 ** level]
  const heights = new Float32Array(side * side)
  const summit = Math.floor(SUMMIT.row / times) * side + Math.floor(SUMMIT.column / times)
  heights[summit] = SUMMIT.height / times ** 2
  return async () => ({ heights, trouble: null })
}

function source() {
  const levels = [0, 1, 2, 3].map((level) => {
    const side = SIDE / 2 ** level
    return { columns: side, rows: side, chunkColumns: side, chunkRows: side, resolution: 30.87 * 2 ** level }
  })
  const bounds = { south: 46 - (SIDE - 1) * SECOND, north: 46, west: 10, east: 10 + (SIDE - 1) * SECOND }
  const opened = done(elevationFile('hills', { kind: 'geotiff', place: PLACE, bounds, levels }, averaged))
  const listed = { id: 'file:hills.tif', name: 'hills.tif', bytes: 1, opened, gaps: 0 }
  const [first] = groundSources(DEFAULT_SETTINGS, [listed], null, async () => {
    throw new Error('no tiles here')
  })
  if (first === undefined) throw new Error('no source')
  return first
}

/** The height told at the summit, in the middle of a window. */
async function heightAtSummit(cell: number, peaks: boolean): Promise<number> {
  const centre = { lat: 46 - SUMMIT.row * SECOND, lon: 10 + SUMMIT.column * SECOND }
  const wish = { centre, east: 0, north: 0, cell, half: 2, peaks }
  const raster = source().rasterFor(wish)
  if (raster === null) throw new Error('no raster')
  const grid = emptyGrid(wish)
  await fillFrom(grid, await latticeOf(grid, never), raster, makeChunkCache(), never, peaks)
  return grid.heights[12] ?? Number.NaN
}

test.each([60, 90, 125])('a summit in cells of %d m that want their crests is there in full', async (cell) => {
  expect(await heightAtSummit(cell, true)).toBe(SUMMIT.height)
})

test('in coarser cells it is levelled over no more than a quarter of one', async () => {
  // Two samples of 31 m in each direction lie in a quarter of 250 m.
  expect(await heightAtSummit(250, true)).toBe(SUMMIT.height / 4)
})

test('cells that want none are served from the level that fits them', async () => {
  expect(
    source().rasterFor({ centre: { lat: 46, lon: 10 }, east: 0, north: 0, cell: 130, half: 2, peaks: false }),
  ).toMatchObject({ columns: SIDE / 4 })
})
