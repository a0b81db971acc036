/** Owns the sources of ground together: which there are, in which order they are asked, what each says of a place. */
import type { GroundSourceBrief } from '#app/contract/ground.ts'
import type { Settings } from '#app/contract/settings.ts'
import { boundsHold } from '#core/geo/bounds.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ChunkCache } from './chunk-cache.ts'
import { DEMO_BOUNDS, DEMO_RESOLUTION } from './demo-ground.ts'
import type { Listed } from './elevation-folder.ts'
import type { Raster } from './raster.ts'
import { makeSampler, MISSING } from './sample.ts'
import { type AskTile, WEB_TILES, webTileRaster, webTileSource } from './web-tiles.ts'
import { type WindowWish, pixelFor } from './window-wish.ts'

export interface GroundSource {
  readonly brief: Omit<GroundSourceBrief, 'here'>
  /** The samples that fit a window, null when it can't or need not be asked for it. */
  readonly rasterFor: (wish: WindowWish) => Raster | null
}

type GroundSettings = Pick<Settings, 'groundOrder' | 'elevationTiles'>

export const DEMO = 'demo'

/** By precedence: those the user put in order after those that came since, these by fineness; then demo and web. */
export function groundSources(
  settings: GroundSettings,
  files: readonly Listed[],
  demo: Raster | null,
  ask: AskTile,
): readonly GroundSource[] {
  const usual = [
    ...files.map(fileSource).toSorted((one, other) => fineness(one) - fineness(other)),
    ...(demo === null ? [] : [demoSource(demo)]),
    tileSource(settings.elevationTiles, demo !== null, ask),
  ]
  const place = new Map(settings.groundOrder.map((id, at) => [id, at]))
  return usual.toSorted((one, other) => (place.get(one.brief.id) ?? -1) - (place.get(other.brief.id) ?? -1))
}

function fineness({ brief }: GroundSource): number {
  return brief.resolution ?? Number.POSITIVE_INFINITY
}

function fileSource({ id, name, bytes, opened, gaps }: Listed): GroundSource {
  const file = opened.ok ? opened.value : null
  return {
    brief: {
      id,
      name,
      kind: file?.kind ?? (/\.hgt$/i.test(name) ? 'hgt' : 'geotiff'),
      on: true,
      removable: true,
      bounds: file?.bounds ?? null,
      resolution: file?.resolution ?? null,
      gaps,
      bytes,
      heights: file?.heights ?? '',
      attribution: '',
      attributionLink: '',
      trouble: opened.ok ? null : opened.fault.message,
    },
    rasterFor: (wish) => file?.rasterFor(pixelFor(wish)) ?? null,
  }
}

function demoSource(raster: Raster): GroundSource {
  return {
    brief: {
      id: DEMO,
      name: 'Demo island',
      kind: 'demo',
      on: true,
      removable: false,
      bounds: DEMO_BOUNDS,
      resolution: DEMO_RESOLUTION,
      gaps: 0,
      bytes: null,
      heights: 'above the sea around the island, all of it invented',
      attribution: '',
      attributionLink: '',
      trouble: null,
    },
    rasterFor: () => raster,
  }
}

function tileSource(settings: Settings['elevationTiles'], hasDemo: boolean, ask: AskTile): GroundSource {
  const { name, attribution, attributionLink } = webTileSource(settings)
  return {
    brief: {
      id: WEB_TILES,
      name,
      kind: 'tiles',
      on: settings.on,
      removable: false,
      bounds: null,
      resolution: null,
      gaps: null,
      bytes: null,
      heights: 'above the sea, by a level that differs from region to region; WGS 84',
      attribution,
      attributionLink,
      trouble: null,
    },
    rasterFor: (wish) => {
      // The island is invented: the real sea floor around it has nothing to do with it, and the demo needs no network.
      const onIsland = hasDemo && boundsHold(DEMO_BOUNDS, wish.centre)
      return settings.on && !onIsland ? webTileRaster(wish, settings, ask) : null
    },
  }
}

export interface HeightHere {
  readonly height: number | null
  readonly trouble: string | null
}

/** One height, read for itself. */
export async function heightFrom(
  raster: Raster,
  at: LatLon,
  cache: ChunkCache,
  signal: AbortSignal,
): Promise<HeightHere> {
  const sampler = makeSampler(raster, cache)
  const { column, row } = raster.pixelAt(at.lat, at.lon)
  let height = sampler.at(column, row)
  while (height === MISSING) {
    // oxlint-disable-next-line no-await-in-loop -- the next chunk is only known then
    await sampler.loadMissing(signal)
    signal.throwIfAborted()
    height = sampler.at(column, row)
  }
  return { height: Number.isNaN(height) ? null : height, trouble: sampler.trouble() }
}
