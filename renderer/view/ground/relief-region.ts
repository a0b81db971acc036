/** By what light the relief is drawn, and for which of its cells contours are wanted. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { ReliefLight } from '#core/ground/relief.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { sunAt } from '#core/light/sky.ts'
import { type Cells, strideFor } from './contour-drawing.ts'
import { boxesMeet } from '#renderer/view/sketch/world.ts'
import { type MapRaster, laidGrid } from './map-raster.ts'
import { warped } from './warp.ts'

/** Degrees above the horizon from which the sun lights the drawn relief. */
const SUN_HIGH = 3
/** Degrees in which the light turns: less is not seen, and would draw the map again with every minute. */
const TURN = 2

/** The sun's own light at an instant; null while it is too low to draw by. */
export function sunLight(grid: ElevationGrid, instant: number): ReliefLight | null {
  const { azimuth, altitude } = sunAt(grid.centre, instant)
  const apparent = apparentAltitude(altitude)
  if (apparent < SUN_HIGH) return null
  return { azimuth: (Math.round(azimuth / TURN) * TURN) % 360, altitude: Math.max(SUN_HIGH, Math.round(apparent)) }
}

/** What the map shows, in world coordinates, at a zoom. */
export interface MapWindow {
  readonly zoom: number
  readonly west: number
  readonly north: number
  readonly east: number
  readonly south: number
}

/** On the turn of the world nearest to where the window looks. */
function turnsTo(raster: MapRaster, window: MapWindow): number {
  return Math.round((window.west + window.east) / 2 - (raster.west + (raster.columns * raster.pixel) / 2))
}

/** Whether any of the ground that is drawn of a grid lies in the window. */
export function showsGround(grid: ElevationGrid, window: MapWindow): boolean {
  const { raster } = laidGrid(grid)
  const west = raster.west + turnsTo(raster, window)
  return boxesMeet(window, {
    west,
    north: raster.north,
    east: west + raster.columns * raster.pixel,
    south: raster.north + raster.rows * raster.pixel,
  })
}

/** Cells by which a region of contours is rounded outward, times the cells that are skipped. */
const BLOCK = 32

/** The cells in a window and about it; null when it shows none of the grid. */
export function cellsAround(grid: ElevationGrid, window: MapWindow, beyond: number): Cells | null {
  const { raster, toGrid } = laidGrid(grid)
  const turn = turnsTo(raster, window)
  const width = (window.east - window.west) * beyond
  const height = (window.south - window.north) * beyond
  const corners = [window.west - width, window.east + width].flatMap((x) =>
    [window.north - height, window.south + height].map((y) =>
      warped(toGrid, (x - turn - raster.west) / raster.pixel, (y - raster.north) / raster.pixel),
    ),
  )
  const block = BLOCK * strideFor(grid, window.zoom)
  const round = (value: number, way: (value: number) => number, most: number): number =>
    Math.max(0, Math.min(most, way(value / block) * block))
  const cells = {
    left: round(Math.min(...corners.map(({ x }) => x)), Math.floor, grid.columns),
    right: round(Math.max(...corners.map(({ x }) => x)), Math.ceil, grid.columns),
    top: round(Math.min(...corners.map(({ y }) => y)), Math.floor, grid.rows),
    bottom: round(Math.max(...corners.map(({ y }) => y)), Math.ceil, grid.rows),
  }
  return cells.right - cells.left < 2 || cells.bottom - cells.top < 2 ? null : cells
}

export function holdsCells(outer: Cells, inner: Cells): boolean {
  return (
    inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom
  )
}
