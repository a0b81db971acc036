/** The ground by its elevations as a Leaflet layer of canvas tiles: repainted where they are when relief or contours come in. */
import { type Coords, GridLayer, type GridLayerOptions } from 'leaflet'
import { contoursShown, reliefShown } from '#renderer/view/ground/shown-relief.ts'
import { DARK_PALETTE, LIGHT_PALETTE } from '#renderer/view/sketch/sketch-palette.ts'
import { dark } from '#renderer/state/library/settings.ts'
import { type GroundPicture, groundContours, paintGround } from './paint-ground.ts'
import { calmly } from '#renderer/state/plan/calmly.ts'
import { pictureOf } from './raster-picture.ts'

const TILE = 256
/** Tiles repainted in one frame. */
const TILES_A_FRAME = 8

export class GroundLayer extends GridLayer {
  declare private picture: GroundPicture | undefined
  declare private tiles: Map<HTMLCanvasElement, Coords> | undefined
  declare private waiting: Set<HTMLCanvasElement> | undefined

  /** Paints all tiles anew, a few in each frame, without taking any away. */
  show(picture: GroundPicture): void {
    this.picture = picture
    const idle = this.waiting === undefined || this.waiting.size === 0
    this.waiting = new Set(this.tiles?.keys())
    if (idle) this.repaintSome()
  }

  private repaintSome(): void {
    let painted = 0
    for (const canvas of this.waiting ?? []) {
      if (painted === TILES_A_FRAME) break
      this.waiting?.delete(canvas)
      const coords = this.tiles?.get(canvas)
      if (coords === undefined) continue
      this.paint(canvas, coords)
      painted++
    }
    if ((this.waiting?.size ?? 0) > 0) requestAnimationFrame(() => this.repaintSome())
  }

  protected override createTile(coords: Coords): HTMLElement {
    const canvas = document.createElement('canvas')
    canvas.className = 'ground-tile'
    canvas.width = Math.round(TILE * devicePixelRatio)
    canvas.height = canvas.width
    canvas.style.width = `${TILE}px`
    canvas.style.height = `${TILE}px`
    this.tiles ??= new Map()
    this.tiles.set(canvas, coords)
    this.paint(canvas, coords)
    return canvas
  }

  /** A tile out of sight is forgotten. */
  forget(tile: HTMLElement): void {
    if (!(tile instanceof HTMLCanvasElement)) return
    this.tiles?.delete(tile)
    this.waiting?.delete(tile)
  }

  private paint(canvas: HTMLCanvasElement, coords: Coords): void {
    const context = canvas.getContext('2d')
    if (context === null || this.picture === undefined) return
    const window = { zoom: coords.z, left: coords.x * TILE, top: coords.y * TILE, width: TILE, height: TILE }
    paintGround(context, window, canvas.width / TILE, this.picture)
  }
}

/** Farther away the window of elevations is a speck. */
const FARTHEST = 8

/** The layer, kept in step with what is known; `stop` ends that. */
export function createGroundLayer(options: GridLayerOptions): {
  readonly layer: GroundLayer
  readonly stop: () => void
} {
  const layer = new GroundLayer({ tileSize: TILE, minZoom: FARTHEST, maxZoom: 22, ...options })
  layer.on('tileunload', (event: { readonly tile: HTMLElement }) => layer.forget(event.tile))
  let relief: { readonly of: object; readonly made: GroundPicture['relief'] } | null = null
  let lines: { readonly of: object; readonly made: GroundPicture['contours'] } | null = null
  const stop = calmly(() => {
    const pictures = reliefShown.value
    const drawing = contoursShown.value
    if (pictures === null) relief = null
    else if (relief?.of !== pictures) {
      const { raster, ground, light } = pictures
      relief = { of: pictures, made: { raster, ground: pictureOf(ground, raster), light: pictureOf(light, raster) } }
    }
    if (drawing === null) lines = null
    else if (lines?.of !== drawing) lines = { of: drawing, made: groundContours(drawing) }
    layer.show({
      relief: relief?.made ?? null,
      contours: lines?.made ?? null,
      palette: dark.value ? DARK_PALETTE : LIGHT_PALETTE,
    })
  })
  return { layer, stop }
}
