/** The base of the map on one canvas: coasts, over them the ground by its elevations, over that the built-in island. */
import type { ContourDrawing } from '#renderer/view/ground/contour-drawing.ts'
import type { ReliefPictures } from '#renderer/view/ground/relief-pictures.ts'
import { type PaintCanvas, contextOf, freshCanvas } from '#renderer/view/sketch/canvas-context.ts'
import { loadCoast } from '#renderer/view/sketch/coast-data.ts'
import type { CoastData } from '#renderer/view/sketch/coast-shapes.ts'
import { type IslandData, loadIsland } from '#renderer/view/sketch/island-data.ts'
import { GROUND_FROM, showsIsland } from '#renderer/view/sketch/island-box.ts'
import { layIsland } from '#renderer/view/sketch/lay-island.ts'
import { paintCoastMap } from '#renderer/view/sketch/paint-coast.ts'
import { DARK_PALETTE, LIGHT_PALETTE } from '#renderer/view/sketch/sketch-palette.ts'
import type { BaseLook, BaseRequest } from './base-request.ts'
import { type GroundContours, type GroundRelief, groundContours, paintGround } from './paint-ground.ts'
import { rasterPicture } from './raster-picture.ts'

export interface BasePainter {
  readonly look: (look: BaseLook) => void
  readonly relief: (pictures: ReliefPictures | null) => void
  readonly contours: (drawing: ContourDrawing | null) => void
  /** Fetches what is missing, then paints. */
  readonly paint: (request: BaseRequest) => Promise<PaintCanvas>
}

/** `typefaces` is waited for before names are written: measured in another face they would be placed for good where they don't fit. */
export function basePainter(typefaces: () => Promise<unknown>): BasePainter {
  let look: BaseLook = { palette: 'light', sketch: true }
  let relief: GroundRelief | null = null
  let contours: GroundContours | null = null
  let over: PaintCanvas | null = null

  /** What the island is painted on before it is laid over the rest: kept from picture to picture. */
  function spare(width: number, height: number): PaintCanvas {
    if (over?.width !== width || over.height !== height) over = freshCanvas(width, height)
    return over
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
    if (island !== null)
      layIsland(canvas, island, window, { palette, pixelRatio: sharpness, labels: request.labels }, spare)
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
      const wantsIsland = look.sketch && showsIsland(request.window)
      const [coast, island] = await Promise.all([
        loadCoast(),
        wantsIsland ? loadIsland() : null,
        request.labels ? typefaces() : null,
      ])
      return lay(request, coast, island)
    },
  }
}
