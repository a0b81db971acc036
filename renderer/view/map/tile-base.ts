/** Tiles of a source as a Leaflet layer: enlarged past what the source has, and asked for again when they did not come. */
import L from 'leaflet'
import type { TileSourceBrief } from '#app/contract/tiles.ts'
import { NEAREST_ZOOM } from './leaflet-seam.ts'
import { type Retry, retryMissing } from './missing-tiles.ts'

export interface TileBase {
  readonly layer: L.TileLayer
  readonly retry: Retry<HTMLImageElement>
}

export function makeTileBase(source: TileSourceBrief, prefix: string): TileBase {
  const layer = L.tileLayer(`${prefix}/${encodeURIComponent(source.id)}/{z}/{x}/{y}`, {
    maxZoom: NEAREST_ZOOM,
    maxNativeZoom: source.maxNativeZoom,
    // Finer screens would ask one zoom deeper, beyond what some sources have.
    detectRetina: false,
    keepBuffer: 2,
    updateWhenZooming: false,
  })
  const places = new WeakMap<HTMLImageElement, L.Coords>()
  const retry = retryMissing<HTMLImageElement>((tile) => {
    const coords = places.get(tile)
    // The same address set again makes the browser ask once more: a picture that failed is not kept.
    if (coords !== undefined) tile.src = layer.getTileUrl(coords)
  })
  layer.on('tileerror', (event: L.TileErrorEvent) => {
    const tile = event.tile
    places.set(tile, event.coords)
    tile.classList.add('tile-missing')
    retry.failed(tile)
  })
  layer.on('tileload', (event: L.TileEvent) => {
    event.tile.classList.remove('tile-missing')
    retry.settled(event.tile)
  })
  layer.on('tileunload', (event: L.TileEvent) => retry.settled(event.tile))
  layer.on('remove', () => retry.stop())
  return { layer, retry }
}
