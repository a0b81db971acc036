/** Tiles of a source as a Leaflet layer: enlarged past what the source has, and asked for again when they did not come. */
import L from 'leaflet'
import type { TileSourceBrief } from '#app/contract/tiles.ts'
import { NEAREST_ZOOM } from './leaflet-seam.ts'
import { type Retry, retryMissing } from './missing-tiles.ts'
import { tilePicture } from '#renderer/host/tile-picture.ts'

export interface TileBase {
  readonly layer: L.TileLayer
  readonly retry: Retry<HTMLImageElement>
}

interface Wish {
  /** As it was when the tile was made: the layer's own answer changes with its zoom. */
  readonly path: string
  readonly left: AbortController
  readonly done: L.DoneCallback
}

/** Leaflet would set each picture's address at once; here they take turns. */
class TurnTakingLayer extends L.TileLayer {
  readonly wishes = new WeakMap<HTMLElement, Wish>()

  override createTile(coords: L.Coords, done: L.DoneCallback): HTMLElement {
    const tile = document.createElement('img')
    tile.alt = ''
    const wish = { path: this.getTileUrl(coords), left: new AbortController(), done }
    this.wishes.set(tile, wish)
    void show(tile, wish)
    return tile
  }
}

async function show(tile: HTMLImageElement, { path, left, done }: Wish): Promise<void> {
  const picture = await tilePicture(path, left.signal).catch(() => null)
  if (left.signal.aborted) return
  if (picture === null) return done(new Error('no picture'), tile)
  const address = URL.createObjectURL(picture)
  const shown = (error?: Error) => (): void => {
    URL.revokeObjectURL(address)
    if (!left.signal.aborted) done(error, tile)
  }
  tile.addEventListener('load', shown(), { once: true })
  tile.addEventListener('error', shown(new Error('not a picture')), { once: true })
  tile.src = address
}

export function makeTileBase(source: TileSourceBrief, prefix: string): TileBase {
  const layer = new TurnTakingLayer(`${prefix}/${encodeURIComponent(source.id)}/{z}/{x}/{y}`, {
    maxZoom: NEAREST_ZOOM,
    maxNativeZoom: source.maxNativeZoom,
    // Finer screens would ask one zoom deeper, beyond what some sources have.
    detectRetina: false,
    keepBuffer: 2,
    updateWhenZooming: false,
  })
  const retry = retryMissing<HTMLImageElement>((tile) => {
    const wish = layer.wishes.get(tile)
    if (wish !== undefined) void show(tile, wish)
  })
  layer.on('tileerror', (event: L.TileErrorEvent) => {
    event.tile.classList.add('tile-missing')
    retry.failed(event.tile)
  })
  layer.on('tileload', (event: L.TileEvent) => {
    event.tile.classList.remove('tile-missing')
    retry.settled(event.tile)
  })
  layer.on('tileunload', (event: L.TileEvent) => {
    layer.wishes.get(event.tile)?.left.abort()
    retry.settled(event.tile)
  })
  layer.on('remove', () => retry.stop())
  return { layer, retry }
}
