/** Owns elevation from the web: its address by the settings, and its tiles by the one way tiles are fetched. */
import type { Settings } from '#app/contract/settings.ts'
import type { TileSource } from '#main/tiles/source.ts'
import { faultInJson } from '#core/parsed-json.ts'
import type { Fault } from '#core/result.ts'
import { makeTurnstile } from './time-slices.ts'
import type { Chunk, Raster } from './raster.ts'
import { decodeTerrarium, terrariumRaster, zoomFor } from './terrarium.ts'
import { type WindowWish, pixelFor } from './window-wish.ts'

export const WEB_TILES = 'tiles'

const SOURCE_ID = 'elevation-tiles'
const NAME = 'Elevation tiles from the web'

/** An open data set in Terrarium encoding; address, attribution and depth are from memory, not read off the service. */
const USUAL_TEMPLATE = 'https://s3.amazonaws.com/elevation-tiles-prod/terrarium/{z}/{x}/{y}.png'
const USUAL_ATTRIBUTION =
  'Terrain Tiles: SRTM and 3DEP courtesy of the U.S. Geological Survey, ETOPO1 by NOAA, and national surveys'
export const USUAL_ATTRIBUTION_LINK = 'https://github.com/tilezen/joerd/blob/master/docs/attribution.md'

type TileSettings = Settings['elevationTiles']

export function webTileSource({ template, maxZoom, attribution }: TileSettings): TileSource {
  const own = template.trim()
  const usual = own === '' || own === USUAL_TEMPLATE
  return {
    id: SOURCE_ID,
    name: NAME,
    template: usual ? USUAL_TEMPLATE : own,
    maxNativeZoom: maxZoom,
    attribution: attribution.trim() === '' ? (usual ? USUAL_ATTRIBUTION : '') : attribution.trim(),
    attributionLink: usual ? USUAL_ATTRIBUTION_LINK : '',
    terms: '',
    own: false,
    changed: !usual,
  }
}

const unpacking = makeTurnstile()

/** A tile as the tile service answers it: a picture, or JSON that tells why there is none. */
export type AskTile = (
  source: string,
  z: number,
  x: number,
  y: number,
  signal: AbortSignal,
) => Promise<{ readonly status: number; readonly type: string; readonly body: Uint8Array }>

export function webTileRaster(wish: WindowWish, settings: TileSettings, ask: AskTile): Raster {
  const { centre, cell, half, peaks } = wish
  const zoom = zoomFor(centre.lat, pixelFor(wish), (2 * half + 1) * cell, settings.maxZoom, peaks)
  const { template } = webTileSource(settings)
  return terrariumRaster(`${WEB_TILES}|${template}`, zoom, centre.lat, async (z, x, y, signal) => {
    const answer = await ask(SOURCE_ID, z, x, y, signal)
    // Tiles kept from earlier all come at once: each is unpacked in a turn of its own.
    await unpacking()
    return chunkOf(answer)
  })
}

function chunkOf(answer: Awaited<ReturnType<AskTile>>): Chunk {
  if (answer.status === 200) {
    if (answer.type !== 'image/png')
      return {
        heights: null,
        trouble: 'An elevation tile is not a PNG picture. Check the address of the elevation tiles.',
      }
    const heights = decodeTerrarium(answer.body)
    return heights.ok ? { heights: heights.value, trouble: null } : { heights: null, trouble: heights.fault.message }
  }
  const { reason, message } = whyNot(answer.body)
  // Outside the area the server has: nothing is known there, and asking again would not help.
  return { heights: null, trouble: reason === 'not-covered' || reason === 'no-such-tile' ? null : message }
}

function whyNot(body: Uint8Array): Fault {
  const usual = { reason: 'unknown', message: 'Elevation tiles did not arrive. Try again later.' }
  return faultInJson(new TextDecoder().decode(body)) ?? usual
}
