/** Owns the demo island's ground as a raster: known within its own box, its sea level water as the file has it. */
import { readFile } from 'node:fs/promises'
import header from '#app/demo/elevation.json' with { type: 'json' }
import { type Bounds, unwrapNear } from '#core/geo/bounds.ts'
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import type { Raster } from './raster.ts'

export const DEMO_BOUNDS: Bounds = {
  north: header.north,
  south: header.north - (header.rows - 1) * header.degreesSouth,
  west: header.west,
  east: header.west + (header.columns - 1) * header.degreesEast,
}

export const DEMO_RESOLUTION = MEAN_EARTH_RADIUS * RADIANS_PER_DEGREE * header.degreesSouth

/** Null where the build's copy of the file is missing or of another size. */
export async function demoRaster(file: string): Promise<Raster | null> {
  const bytes = await readFile(file).catch(() => null)
  const { columns, rows } = header
  if (bytes === null || bytes.length !== columns * rows * 2) return null
  const heights = new Float32Array(columns * rows)
  for (let post = 0; post < heights.length; post++) heights[post] = bytes.readInt16LE(post * 2) * header.metresPerUnit
  return {
    id: 'demo',
    columns,
    rows,
    chunkColumns: columns,
    chunkRows: rows,
    turn: 360 / header.degreesEast,
    round: false,
    reach: 0,
    remote: false,
    resolution: DEMO_RESOLUTION,
    pixelAt: (lat, lon) => ({
      column: (unwrapNear(lon, (DEMO_BOUNDS.west + DEMO_BOUNDS.east) / 2) - header.west) / header.degreesEast,
      row: (header.north - lat) / header.degreesSouth,
    }),
    load: async () => ({ heights, trouble: null }),
  }
}
