/** Heights for pins: each place by the first source that knows the ground there, as finely as it does. */
import type { Output } from '#app/contract/index.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Coast } from '#core/geo/coast.ts'
import { done, type Result } from '#core/result.ts'
import type { ChunkCache } from './chunk-cache.ts'
import { type GroundSource, heightFrom } from './ground-source.ts'
import { isSea } from './sea.ts'
import type { WindowWish } from './window-wish.ts'

export interface PinSources {
  readonly cache: ChunkCache
  readonly sources: () => Promise<readonly GroundSource[]>
  readonly coast: () => Promise<Coast | null>
}

/** Pins want the finest there is. */
export function pinWish(centre: LatLon): WindowWish {
  return { centre, east: 0, north: 0, cell: 0.5, half: 0, peaks: false }
}

type Heights = Output<'ground.heights'>

export async function pinHeights(
  places: readonly LatLon[],
  { cache, sources, coast }: PinSources,
  signal: AbortSignal,
): Promise<Result<Heights>> {
  const all = await sources()
  let trouble: string | null = null
  const found: Heights['heights'] = []
  for (const at of places) {
    let known: Heights['heights'][number] = null
    for (const source of all) {
      const raster = source.rasterFor(pinWish(at))
      if (raster === null) continue
      // oxlint-disable-next-line no-await-in-loop -- the next source is only asked where this one knows nothing
      const here = await heightFrom(raster, at, cache, signal)
      trouble ??= here.trouble
      if (here.height === null) continue
      // oxlint-disable-next-line no-await-in-loop -- the coasts are read once
      const sea = await isSea(here.height, at, coast)
      known = { height: sea ? 0 : here.height, source: source.brief.name, resolution: raster.resolution, sea }
      break
    }
    found.push(known)
  }
  return done({ heights: found, trouble })
}
