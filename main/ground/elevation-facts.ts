/** Owns what is known of an elevation file apart from its samples: plain facts, and the file that is made of them and a way to load. */
import type { Bounds } from '#core/geo/bounds.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { GeotiffFacts } from './geotiff-file.ts'
import { levelRaster } from './geotiff-level.ts'
import { hgtBounds, hgtRaster, hgtResolution } from './hgt.ts'
import type { Raster } from './raster.ts'

/** Plain: they pass from the thread that reads the file to the one that answers. */
export type ElevationFacts =
  | { readonly kind: 'hgt'; readonly corner: LatLon; readonly side: number }
  | ({ readonly kind: 'geotiff' } & GeotiffFacts)

export interface ElevationFile {
  readonly kind: ElevationFacts['kind']
  readonly bounds: Bounds
  /** Metres between samples. */
  readonly resolution: number
  /** What its heights are above and how its places are told, in words. */
  readonly heights: string
  /** The level of detail that fits cells of so many metres. */
  readonly rasterFor: (cell: number) => Raster
}

/** `loaderOf` gives the way to the samples of a level of detail, 0 the finest. */
export function elevationFile(
  id: string,
  facts: ElevationFacts,
  loaderOf: (level: number) => Raster['load'],
): ElevationFile {
  if (facts.kind === 'hgt') {
    const raster = hgtRaster(id, facts.corner, facts.side, loaderOf(0))
    return {
      kind: 'hgt',
      bounds: hgtBounds(facts.corner),
      resolution: hgtResolution(facts.side),
      heights: 'above the sea by EGM96, as SRTM gives them; WGS 84',
      rasterFor: () => raster,
    }
  }
  const { place, bounds } = facts
  const levels = facts.levels.map((level, at) => levelRaster(id, level, place, bounds, loaderOf(at)))
  const [finest] = levels
  if (finest === undefined) throw new Error('a GeoTIFF without a picture')
  return {
    kind: 'geotiff',
    bounds,
    resolution: finest.resolution,
    heights: `${place.heights}; ${place.systemName}`,
    rasterFor: (cell) => levels.findLast(({ resolution }) => resolution <= cell) ?? finest,
  }
}
