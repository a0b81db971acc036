/** A window of elevations laid on the Mercator map: where its cells fall there, and a raster of the map's own square pixels over it. */
import { unwrapNear } from '#core/geo/bounds.ts'
import { WGS84_SEMI_MAJOR } from '#core/geo/local-frame.ts'
import { wrapLongitude } from '#core/geo/lat-lon.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { type ElevationGrid, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { latitudeAt, worldX, worldY } from '#renderer/view/sketch/world.ts'
import { type Pair, type Warp, warpOf, warped } from './warp.ts'

/** Pixels in world coordinates (0..1 from west to east and from north to south); x may leave 0..1 across the antimeridian. */
export interface MapRaster {
  readonly west: number
  readonly north: number
  /** Side of a pixel. */
  readonly pixel: number
  readonly columns: number
  readonly rows: number
}

/** Cells or pixels between the posts where the mapping is exact: between them it errs by centimetres. */
const POSTS_APART = 32

/** From cells of a grid (centres at whole numbers, columns and rows) to world coordinates. */
function worldOver(grid: ElevationGrid): Warp {
  const { centre, cell, west, north, columns, rows } = grid
  return warpOf(columns - 1, rows - 1, POSTS_APART, (column, row) => {
    const { lat, lon } = placeOnGrid(grid, west + column * cell, north - row * cell)
    return { x: worldX(unwrapNear(lon, centre.lon)), y: worldY(lat) }
  })
}

/** Pixels about as wide as a cell on the ground, around all of the grid. */
function rasterOver(grid: ElevationGrid, world: Warp): MapRaster {
  const { columns, rows, cell, centre } = grid
  const pixel = cell / (2 * Math.PI * WGS84_SEMI_MAJOR * Math.cos(centre.lat * RADIANS_PER_DEGREE))
  let [west, east, north, south] = [Infinity, -Infinity, Infinity, -Infinity]
  const reach = (column: number, row: number): void => {
    const { x, y } = warped(world, column, row)
    ;[west, east] = [Math.min(west, x), Math.max(east, x)]
    ;[north, south] = [Math.min(north, y), Math.max(south, y)]
  }
  for (let step = 0; step <= POSTS_APART; step++) {
    const [column, row] = [((columns - 1) * step) / POSTS_APART, ((rows - 1) * step) / POSTS_APART]
    reach(column, 0)
    reach(column, rows - 1)
    reach(0, row)
    reach(columns - 1, row)
  }
  const raster = { west: west - pixel / 2, north: north - pixel / 2, pixel }
  return {
    ...raster,
    columns: Math.ceil((east - raster.west) / pixel + 0.5),
    rows: Math.ceil((south - raster.north) / pixel + 0.5),
  }
}

/** From pixels of the raster (their middles at halves) to the grid's columns and rows. */
function gridUnder(grid: ElevationGrid, raster: MapRaster): Warp {
  return warpOf(raster.columns, raster.rows, POSTS_APART, (x, y) => {
    const lon = wrapLongitude((raster.west + x * raster.pixel - 0.5) * 360)
    const { east, north } = gridPoint(grid, { lat: latitudeAt(raster.north + y * raster.pixel), lon })
    return { x: (east - grid.west) / grid.cell, y: (grid.north - north) / grid.cell }
  })
}

/** A grid as it lies on the map. */
export interface LaidGrid {
  readonly grid: ElevationGrid
  readonly raster: MapRaster
  readonly toWorld: Warp
  readonly toGrid: Warp
}

const laid = new WeakMap<ElevationGrid, LaidGrid>()

export function laidGrid(grid: ElevationGrid): LaidGrid {
  const known = laid.get(grid)
  if (known !== undefined) return known
  const toWorld = worldOver(grid)
  const raster = rasterOver(grid, toWorld)
  const made = { grid, raster, toWorld, toGrid: gridUnder(grid, raster) }
  laid.set(grid, made)
  return made
}

/** World coordinates of a point of the grid's plane, metres east and north of its centre. */
export function worldAt({ grid, toWorld }: LaidGrid, east: number, north: number): Pair {
  return warped(toWorld, (east - grid.west) / grid.cell, (grid.north - north) / grid.cell)
}
