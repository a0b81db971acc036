/** Owns one level of detail of a GeoTIFF: the plain facts of it, and the raster made of them. */
import type { GeoTIFFImage } from 'geotiff'
import type { Bounds } from '#core/geo/bounds.ts'
import { LARGEST_PART } from './geotiff-fit.ts'
import { type GeotiffPlace, pixelFinder, resolutionOf } from './geotiff-place.ts'
import type { Raster } from './raster.ts'

/** Strips of few rows are read together up to so many rows. */
const ROWS_TOGETHER = 128

/** Plain: they pass from the thread that reads the file to the one that answers. */
export interface LevelFacts {
  readonly columns: number
  readonly rows: number
  readonly chunkColumns: number
  readonly chunkRows: number
  /** Metres between samples. */
  readonly resolution: number
}

export function chunkSize(image: GeoTIFFImage): { readonly columns: number; readonly rows: number } {
  return { columns: image.getTileWidth(), rows: image.getTileHeight() }
}

/** Strips are joined, as far as they stay no larger than the largest part; tiles are taken as they are. */
export function stripsTogether(image: GeoTIFFImage): number {
  const { columns, rows } = chunkSize(image)
  const most = Math.min(ROWS_TOGETHER, Math.floor(LARGEST_PART / columns))
  return image.isTiled ? 1 : Math.max(1, Math.floor(most / rows))
}

export function levelFacts(image: GeoTIFFImage, place: GeotiffPlace, bounds: Bounds): LevelFacts {
  const [columns, rows] = [image.getWidth(), image.getHeight()]
  const size = chunkSize(image)
  return {
    columns,
    rows,
    chunkColumns: size.columns,
    chunkRows: size.rows * stripsTogether(image),
    resolution: resolutionOf(place, bounds) / Math.min(columns / place.columns, rows / place.rows),
  }
}

export function levelRaster(
  id: string,
  facts: LevelFacts,
  place: GeotiffPlace,
  bounds: Bounds,
  load: Raster['load'],
): Raster {
  const [across, down] = [facts.columns / place.columns, facts.rows / place.rows]
  const find = pixelFinder(place, bounds)
  const degreesAcross = Math.hypot(place.affine.a, place.affine.d) / across
  const turn = place.epsg === null ? 360 / degreesAcross : null
  return {
    ...facts,
    id: `${id}/${facts.columns}`,
    turn,
    round: turn !== null && Math.abs(turn - facts.columns) < 0.01,
    reach: 0.5,
    remote: false,
    pixelAt: (lat, lon) => {
      const { column, row } = find(lat, lon)
      return { column: (column + 0.5) * across - 0.5, row: (row + 0.5) * down - 0.5 }
    },
    load,
  }
}
