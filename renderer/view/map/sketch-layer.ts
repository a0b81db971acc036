/** The sketch map as a Leaflet layer of canvas tiles; clear where there is no island, so it lies over any sea. */
import { type Coords, type DoneCallback, GridLayer, type GridLayerOptions } from 'leaflet'
import { type IslandData, SKETCH_ATTRIBUTION, loadIsland } from '#renderer/view/sketch/island-data.ts'
import { forgetLabels, paintSketch, showsIsland } from '#renderer/view/sketch/paint-sketch.ts'
import { LIGHT_PALETTE, type SketchPalette } from '#renderer/view/sketch/sketch-palette.ts'

const TILE = 256

let faces: Promise<unknown> | null = null

/** Both typefaces of the map's words; without them the labels would be measured in another one. */
function typefaces(): Promise<unknown> {
  faces ??= Promise.allSettled([
    document.fonts.load('italic 400 14px "Source Serif 4"'),
    document.fonts.load('400 11px "Source Sans 3"'),
  ])
  return faces
}

export class SketchLayer extends GridLayer {
  declare private palette: SketchPalette | undefined
  declare private island: IslandData | undefined

  /** Draws all tiles anew in another palette. */
  setPalette(palette: SketchPalette): void {
    this.palette = palette
    this.redraw()
  }

  protected override createTile(coords: Coords, done: DoneCallback): HTMLElement {
    const canvas = document.createElement('canvas')
    if (this.island !== undefined) {
      this.paint(canvas, coords, this.island)
      // Leaflet shows a tile only after createTile has returned.
      queueMicrotask(() => done(undefined, canvas))
      return canvas
    }
    void this.deliver(canvas, coords, done)
    return canvas
  }

  private async deliver(canvas: HTMLCanvasElement, coords: Coords, done: DoneCallback): Promise<void> {
    try {
      const [island] = await Promise.all([loadIsland(), typefaces()])
      if (this.island === undefined) forgetLabels(island)
      this.island = island
      this.paint(canvas, coords, island)
      done(undefined, canvas)
    } catch (cause) {
      done(cause instanceof Error ? cause : new Error(String(cause)), canvas)
    }
  }

  private paint(canvas: HTMLCanvasElement, coords: Coords, island: IslandData): void {
    const window = { zoom: coords.z, left: coords.x * TILE, top: coords.y * TILE, width: TILE, height: TILE }
    canvas.style.width = `${TILE}px`
    canvas.style.height = `${TILE}px`
    if (!showsIsland(island, window)) return
    const pixelRatio = devicePixelRatio
    canvas.width = Math.round(TILE * pixelRatio)
    canvas.height = Math.round(TILE * pixelRatio)
    const context = canvas.getContext('2d')
    if (context === null) return
    paintSketch(context, island, window, {
      palette: this.palette ?? LIGHT_PALETTE,
      pixelRatio,
      sea: false,
      labels: true,
    })
  }
}

/** The layer in a palette; it fetches the island when the first tile is asked for. */
export function createSketchLayer(palette: SketchPalette, options: GridLayerOptions = {}): SketchLayer {
  const layer = new SketchLayer({
    tileSize: TILE,
    minZoom: 8,
    maxZoom: 22,
    attribution: SKETCH_ATTRIBUTION,
    ...options,
  })
  layer.setPalette(palette)
  return layer
}
