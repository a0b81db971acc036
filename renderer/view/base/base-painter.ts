/** The base of the map on one canvas: coasts, over them the ground by its elevations, over that the built-in island. */
import type { ContourDrawing } from '#renderer/view/ground/contour-drawing.ts'
import type { ReliefPictures } from '#renderer/view/ground/relief-pictures.ts'
import { type PaintCanvas, type PaintContext, contextOf, freshCanvas } from '#renderer/view/sketch/canvas-context.ts'
import { loadCoast } from '#renderer/view/sketch/coast-data.ts'
import type { CoastData } from '#renderer/view/sketch/coast-shapes.ts'
import { type IslandData, loadIsland } from '#renderer/view/sketch/island-data.ts'
import { paintCoastMap } from '#renderer/view/sketch/paint-coast.ts'
import { paintSketch, showsIsland } from '#renderer/view/sketch/paint-sketch.ts'
import { DARK_PALETTE, LIGHT_PALETTE } from '#renderer/view/sketch/sketch-palette.ts'
import { worldPixels } from '#renderer/view/sketch/world.ts'
import type { BaseLook, BaseRequest, BaseWindow } from './base-request.ts'
import { type GroundContours, type GroundRelief, groundContours, paintGround } from './paint-ground.ts'
import { rasterPicture } from './raster-picture.ts'

/** Farther away the window of elevations is a speck, and the island a dot. */
const GROUND_FROM = 8

export interface BasePainter {
  readonly look: (look: BaseLook) => void
  readonly relief: (pictures: ReliefPictures | null) => void
  readonly contours: (drawing: ContourDrawing | null) => void
  /** Fetches what is missing, then paints. */
  readonly paint: (request: BaseRequest) => Promise<PaintCanvas>
}

/** On the turn of the world on which the island lies, or nearest to it. */
function homeTurn(window: BaseWindow): BaseWindow {
  const scale = worldPixels(window.zoom)
  const turn = Math.floor((window.left + window.width / 2) / scale)
  return { ...window, left: window.left - turn * scale }
}

/** `typefaces` is waited for before names are written: measured in another face they would be placed for good where they don't fit. */
export function basePainter(typefaces: () => Promise<unknown>): BasePainter {
  let look: BaseLook = { palette: 'light', sketch: true }
  let relief: GroundRelief | null = null
  let contours: GroundContours | null = null
  let over: PaintCanvas | null = null

  /** What the island is painted on before it is laid over the rest: it clears what it paints on. */
  function spare(width: number, height: number): PaintCanvas {
    if (over?.width !== width || over.height !== height) over = freshCanvas(width, height)
    return over
  }

  function layIsland(context: PaintContext, island: IslandData, request: BaseRequest, size: PaintCanvas): void {
    const window = homeTurn(request.window)
    if (!showsIsland(island, window)) return
    const canvas = spare(size.width, size.height)
    const palette = look.palette === 'dark' ? DARK_PALETTE : LIGHT_PALETTE
    paintSketch(contextOf(canvas), island, window, {
      palette,
      pixelRatio: request.sharpness,
      sea: false,
      labels: request.labels,
    })
    context.setTransform(1, 0, 0, 1, 0, 0)
    context.drawImage(canvas, 0, 0)
  }

  function lay(request: BaseRequest, coast: CoastData, island: IslandData | null): PaintCanvas {
    const { window, sharpness } = request
    const [width, height] = [window.width, window.height].map((side) => Math.max(1, Math.round(side * sharpness)))
    const canvas = freshCanvas(width ?? 1, height ?? 1)
    const context = contextOf(canvas)
    const palette = look.palette === 'dark' ? DARK_PALETTE : LIGHT_PALETTE
    paintCoastMap(context, coast, window, palette, sharpness)
    if (relief !== null && window.zoom >= GROUND_FROM)
      paintGround(context, window, sharpness, { relief, contours, palette })
    if (island !== null) layIsland(context, island, request, canvas)
    return canvas
  }

  return {
    look: (next) => {
      look = next
    },
    relief: (pictures) => {
      if (pictures === null) relief = null
      else {
        const { raster, ground, light } = pictures
        relief = { raster, ground: rasterPicture(ground, raster), light: rasterPicture(light, raster) }
      }
    },
    contours: (drawing) => {
      contours = drawing === null ? null : groundContours(drawing)
    },
    async paint(request) {
      const wantsIsland = look.sketch && request.window.zoom >= GROUND_FROM
      const [coast, island] = await Promise.all([
        loadCoast(),
        wantsIsland ? loadIsland() : null,
        request.labels ? typefaces() : null,
      ])
      return lay(request, coast, island)
    },
  }
}
