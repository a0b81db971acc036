/** The window of elevations on the Mercator map: its cells fall where the map itself puts their places. */
import { assert, double, integer, property } from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { laidGrid, worldAt } from '#renderer/view/ground/map-raster.ts'
import { warpLine, warped, warpOf } from '#renderer/view/ground/warp.ts'
import { distanceBetween, mercatorView } from '#renderer/view/drawing/plan-view.ts'
import { rasterBox } from '#renderer/view/base/raster-picture.ts'
import { worldPixels } from '#renderer/view/sketch/world.ts'

/** Windows are this large on the board: 25 km across. Heights are of no concern here. */
function windowAt(centre: LatLon, cell = 18, side = 1401): ElevationGrid {
  const reach = ((side - 1) / 2) * cell
  return { centre, cell, columns: side, rows: side, west: -reach, north: reach, heights: new Float32Array(0) }
}

const nowhere = { left: 0, top: 0, right: 0, bottom: 0 }

function viewOf(grid: ElevationGrid, zoom: number) {
  return mercatorView({ zoom, originX: 0, originY: 0, middleLon: grid.centre.lon, box: nowhere })
}

const columnShare = double({ min: 0, max: 1, noNaN: true })

describe('a window on the map', () => {
  test.each([
    { lat: 46.9, lon: 10.3 },
    { lat: -41.3, lon: 174.8 },
    { lat: 0, lon: 0 },
    { lat: 68, lon: -18 },
    { lat: 10, lon: 179.95 },
  ])('its corners at $lat, $lon lie within half a pixel of their places, as near as the map goes', (centre) => {
    const grid = windowAt(centre)
    const laid = laidGrid(grid)
    for (const zoom of [10, 14, 18]) {
      const view = viewOf(grid, zoom)
      for (const [east, north] of [
        [grid.west, grid.north],
        [-grid.west, grid.north],
        [grid.west, -grid.north],
        [-grid.west, -grid.north],
      ] as const) {
        const { x, y } = worldAt(laid, east, north)
        const drawn = { x: x * worldPixels(zoom), y: y * worldPixels(zoom) }
        expect(distanceBetween(drawn, view.toPoint(placeOnGrid(grid, east, north)))).toBeLessThan(0.5)
      }
    }
  })

  test('so does any of its points, and the way back leads to the same cell', () => {
    const cells = property(
      double({ min: -65, max: 65, noNaN: true }),
      double({ min: -179, max: 179, noNaN: true }),
      integer({ min: 10, max: 45 }),
      columnShare,
      columnShare,
      (lat, lon, cell, across, down) => {
        const grid = windowAt({ lat, lon }, cell, 401)
        const laid = laidGrid(grid)
        const [east, north] = [grid.west * (1 - 2 * across), grid.north * (1 - 2 * down)]
        const { x, y } = worldAt(laid, east, north)
        const size = worldPixels(18)
        const off = distanceBetween(
          { x: x * size, y: y * size },
          viewOf(grid, 18).toPoint(placeOnGrid(grid, east, north)),
        )
        expect(off).toBeLessThan(0.5)
        const { west, north: top, pixel } = laid.raster
        const back = warped(laid.toGrid, (x - west) / pixel, (y - top) / pixel)
        expect(Math.hypot(back.x - (east - grid.west) / cell, back.y - (grid.north - north) / cell)).toBeLessThan(0.02)
      },
    )
    assert(cells, { numRuns: 60 })
  })

  test('its raster holds all of it and little more', () => {
    const grid = windowAt({ lat: 59, lon: 6 })
    const { raster, toGrid } = laidGrid(grid)
    const box = rasterBox(raster, { size: 1 / raster.pixel, left: 0, top: 0 })
    expect(box.right - box.left).toBeCloseTo(raster.columns, 6)
    const corners = [0, raster.columns].flatMap((x) => [0, raster.rows].map((y) => warped(toGrid, x, y)))
    expect(Math.min(...corners.map(({ x }) => x))).toBeLessThan(0.5)
    expect(Math.max(...corners.map(({ x }) => x))).toBeGreaterThan(grid.columns - 1.5)
    expect(raster.columns).toBeLessThan(grid.columns * 1.05)
    expect(raster.rows).toBeLessThan(grid.rows * 1.05)
  })

  test('a pixel knows its place by the ellipsoid, not by a sphere', () => {
    const grid = windowAt({ lat: 51, lon: -1 })
    const { raster, toGrid } = laidGrid(grid)
    const [x, y] = [300.5, 1100.5]
    const size = 1 / raster.pixel
    const place = mercatorView({
      zoom: Math.log2(size / 256),
      originX: raster.west * size,
      originY: raster.north * size,
      middleLon: -1,
      box: nowhere,
    }).toPlace({ x, y })
    const { east, north } = gridPoint(grid, place)
    const found = warped(toGrid, x, y)
    expect(found.x).toBeCloseTo((east - grid.west) / grid.cell, 2)
    expect(found.y).toBeCloseTo((grid.north - north) / grid.cell, 2)
  })
})

describe('a warp', () => {
  test('is exact at its posts and straight between them; a whole line is its points', () => {
    const bent = warpOf(100, 70, 32, (x, y) => ({ x: x * x, y: x + y }))
    expect(warped(bent, 64, 32)).toEqual({ x: 4096, y: 96 })
    expect(warped(bent, 48, 10).x).toBeCloseTo((1024 + 4096) / 2, 9)
    const [xs, ys] = [new Float64Array(100), new Float64Array(100)]
    warpLine(bent, 33, xs, ys)
    for (const at of [0, 31, 32, 99]) {
      const point = warped(bent, at + 0.5, 33)
      expect(xs[at]).toBeCloseTo(point.x, 9)
      expect(ys[at]).toBeCloseTo(point.y, 9)
    }
  })
})
