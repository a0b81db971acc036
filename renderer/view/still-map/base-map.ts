/** The ground of a still map as one picture: the built-in sketch or tiles of a source, painted on a canvas of our own origin. */
import type { TileSourceBrief } from '#app/contract/tiles.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { loadCoast } from '#renderer/view/sketch/coast-data.ts'
import { layIsland } from '#renderer/view/sketch/lay-island.ts'
import { paintCoastMap } from '#renderer/view/sketch/paint-coast.ts'
import { showsIsland } from '#renderer/view/sketch/island-box.ts'
import { windowAround } from '#renderer/view/sketch/world.ts'
import { loadIsland } from '#renderer/view/sketch/island-data.ts'
import { DARK_PALETTE, LIGHT_PALETTE } from '#renderer/view/sketch/sketch-palette.ts'
import { piecesFor } from './tile-pieces.ts'
import { tilePicture } from '#renderer/host/tile-picture.ts'

export interface BaseMap {
  /** Changes when the picture would. */
  readonly key: string
  /** Null is the sketch map. */
  readonly source: TileSourceBrief | null
  /** Path before a source's id, from the services. */
  readonly prefix: string
  readonly dark: boolean
}

export interface Painted {
  /** A picture as a data address, so that a saved page carries it within itself. */
  readonly picture: string
  readonly missing: number
}

/** Pixels painted per pixel shown: a printed sheet has about three times a screen's. */
const SHARPNESS = 2

export function baseMap(source: TileSourceBrief | null, prefix: string, dark: boolean): BaseMap {
  return { key: `${source?.id ?? 'sketch'} ${dark}`, source, prefix, dark }
}

export async function paintBase(
  base: BaseMap,
  centre: LatLon,
  zoom: number,
  width: number,
  height: number,
  stop: AbortSignal,
): Promise<Painted> {
  const canvas = document.createElement('canvas')
  canvas.width = width * SHARPNESS
  canvas.height = height * SHARPNESS
  const context = canvas.getContext('2d')
  if (context === null) return { picture: '', missing: 0 }
  const missing =
    base.source === null
      ? await paintSketchOn(context, base, centre, zoom, width, height)
      : await paintTiles(context, base, base.source, centre, zoom, width, height, stop)
  return { picture: canvas.toDataURL(base.source === null ? 'image/png' : 'image/jpeg', 0.88), missing }
}

async function paintSketchOn(
  context: CanvasRenderingContext2D,
  base: BaseMap,
  centre: LatLon,
  zoom: number,
  width: number,
  height: number,
): Promise<number> {
  const window = windowAround(centre, zoom, width, height)
  const [island, coast] = await Promise.all([showsIsland(window) ? loadIsland() : null, loadCoast()])
  const palette = base.dark ? DARK_PALETTE : LIGHT_PALETTE
  paintCoastMap(context, coast, window, palette, SHARPNESS)
  if (island !== null) layIsland(context.canvas, island, window, { palette, pixelRatio: SHARPNESS, labels: true })
  return 0
}

async function paintTiles(
  context: CanvasRenderingContext2D,
  base: BaseMap,
  source: TileSourceBrief,
  centre: LatLon,
  zoom: number,
  width: number,
  height: number,
  stop: AbortSignal,
): Promise<number> {
  const tileZoom = Math.max(0, Math.min(source.maxNativeZoom, Math.ceil(zoom)))
  const { pieces, size } = piecesFor(centre, zoom, tileZoom, width, height)
  context.scale(SHARPNESS, SHARPNESS)
  const painted = await Promise.all(
    pieces.map(async (piece) => {
      const picture = await bitmapOf(
        `${base.prefix}/${encodeURIComponent(source.id)}/${tileZoom}/${piece.x}/${piece.y}`,
        stop,
      )
      if (picture === null) return false
      context.drawImage(picture, piece.left, piece.top, size, size)
      return true
    }),
  )
  return painted.filter((done) => !done).length
}

async function bitmapOf(path: string, stop: AbortSignal): Promise<ImageBitmap | null> {
  try {
    const picture = await tilePicture(path, stop)
    return picture === null ? null : await createImageBitmap(picture)
  } catch {
    return null
  }
}
