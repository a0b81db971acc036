/** The ground of a still map as one picture: the built-in sketch or tiles of a source, painted on a canvas of our own origin. */
import type { TileSourceBrief } from '#app/contract/tiles.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { COAST_ATTRIBUTION, loadCoast } from '#renderer/view/sketch/coast-data.ts'
import { loadIsland } from '#renderer/view/sketch/island-data.ts'
import { paintCoastMap } from '#renderer/view/sketch/paint-coast.ts'
import { paintSketch, showsIsland, windowAround } from '#renderer/view/sketch/paint-sketch.ts'
import { SKETCH_ATTRIBUTION } from '#renderer/view/map/sketch-layer.ts'
import { DARK_PALETTE, LIGHT_PALETTE } from '#renderer/view/sketch/sketch-palette.ts'
import { TILE_SIZE, mercatorView } from '#renderer/view/drawing/plan-view.ts'
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
  const [island, coast] = await Promise.all([loadIsland(), loadCoast()])
  const palette = base.dark ? DARK_PALETTE : LIGHT_PALETTE
  const window = windowAround(centre, zoom, width, height)
  paintCoastMap(context, coast, window, palette, SHARPNESS)
  if (!showsIsland(island, window)) return 0
  // The sketch clears what it paints on, so it is painted apart and laid over the coast.
  const over = document.createElement('canvas')
  over.width = context.canvas.width
  over.height = context.canvas.height
  const pen = over.getContext('2d')
  if (pen === null) return 0
  paintSketch(pen, island, window, { palette, pixelRatio: SHARPNESS, sea: false, labels: true })
  context.setTransform(1, 0, 0, 1, 0, 0)
  context.drawImage(over, 0, 0)
  return 0
}

/** What is owed to the makers of the sketch's data. */
export const SKETCH_CREDIT = `${SKETCH_ATTRIBUTION}. ${COAST_ATTRIBUTION}.`

interface Piece {
  readonly x: number
  readonly y: number
  readonly left: number
  readonly top: number
}

/** The tiles that cover the picture at a whole zoom, and where each falls; columns wrap round the world. */
export function piecesFor(
  centre: LatLon,
  zoom: number,
  tileZoom: number,
  width: number,
  height: number,
): { pieces: Piece[]; size: number } {
  const scale = 2 ** (zoom - tileZoom)
  const size = TILE_SIZE * scale
  const nowhere = { left: 0, top: 0, right: 0, bottom: 0 }
  const middle = mercatorView({ zoom, originX: 0, originY: 0, middleLon: centre.lon, box: nowhere }).toPoint(centre)
  const left = middle.x - width / 2
  const top = middle.y - height / 2
  const count = 2 ** tileZoom
  const pieces: Piece[] = []
  for (
    let row = Math.max(0, Math.floor(top / size));
    row <= Math.min(count - 1, Math.floor((top + height) / size));
    row++
  ) {
    for (let column = Math.floor(left / size); column <= Math.floor((left + width) / size); column++) {
      pieces.push({ x: ((column % count) + count) % count, y: row, left: column * size - left, top: row * size - top })
    }
  }
  return { pieces, size }
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
