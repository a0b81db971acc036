/** Sea and land of the whole world as a Leaflet layer of canvas tiles: what lies under the sketch map. */
import { type Coords, type DoneCallback, GridLayer, type GridLayerOptions } from 'leaflet'
import { COAST_ATTRIBUTION, loadCoast } from '#renderer/view/sketch/coast-data.ts'
import type { CoastData } from '#renderer/view/sketch/coast-shapes.ts'
import { paintCoastMap } from '#renderer/view/sketch/paint-coast.ts'
import { LIGHT_PALETTE, type SketchPalette } from '#renderer/view/sketch/sketch-palette.ts'

const TILE = 256

export class CoastLayer extends GridLayer {
  declare private palette: SketchPalette | undefined
  declare private coast: CoastData | undefined

  /** Draws all tiles anew in another palette. */
  setPalette(palette: SketchPalette): void {
    this.palette = palette
    this.redraw()
  }

  protected override createTile(coords: Coords, done: DoneCallback): HTMLElement {
    const canvas = document.createElement('canvas')
    canvas.width = Math.round(TILE * devicePixelRatio)
    canvas.height = canvas.width
    canvas.style.width = `${TILE}px`
    canvas.style.height = `${TILE}px`
    if (this.coast !== undefined) {
      this.paint(canvas, coords, this.coast)
      // Leaflet shows a tile only after createTile has returned.
      queueMicrotask(() => done(undefined, canvas))
      return canvas
    }
    void this.deliver(canvas, coords, done)
    return canvas
  }

  private async deliver(canvas: HTMLCanvasElement, coords: Coords, done: DoneCallback): Promise<void> {
    try {
      this.coast = await loadCoast()
      this.paint(canvas, coords, this.coast)
      done(undefined, canvas)
    } catch (cause) {
      done(cause instanceof Error ? cause : new Error(String(cause)), canvas)
    }
  }

  private paint(canvas: HTMLCanvasElement, coords: Coords, coast: CoastData): void {
    const context = canvas.getContext('2d')
    const window = { zoom: coords.z, left: coords.x * TILE, top: coords.y * TILE, width: TILE, height: TILE }
    if (context !== null) paintCoastMap(context, coast, window, this.palette ?? LIGHT_PALETTE, canvas.width / TILE)
  }
}

/** The layer in a palette; it fetches the coast when the first tile is asked for. */
export function createCoastLayer(palette: SketchPalette, options: GridLayerOptions = {}): CoastLayer {
  const layer = new CoastLayer({ tileSize: TILE, maxZoom: 22, attribution: COAST_ATTRIBUTION, ...options })
  layer.setPalette(palette)
  return layer
}
