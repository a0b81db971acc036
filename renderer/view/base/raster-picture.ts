/** Pictures of a raster laid on the map: in one stretched piece, since map and raster are both Mercator. */
import { type PaintContext, contextOf, type PaintCanvas, freshCanvas } from '#renderer/view/sketch/canvas-context.ts'
import type { MapRaster } from '#renderer/view/ground/map-raster.ts'
import type { Box } from '#renderer/view/drawing/plan-view.ts'

/** Pixels of a map: how many the world is across, and which of them lies at 0, 0 of the canvas. */
export interface OnMap {
  readonly size: number
  readonly left: number
  readonly top: number
}

/** Where a raster falls. */
export function rasterBox({ west, north, pixel, columns, rows }: MapRaster, { size, left, top }: OnMap): Box {
  return {
    left: west * size - left,
    top: north * size - top,
    right: (west + columns * pixel) * size - left,
    bottom: (north + rows * pixel) * size - top,
  }
}

export function rasterPicture(
  bytes: Uint8ClampedArray<ArrayBuffer>,
  { columns, rows }: Pick<MapRaster, 'columns' | 'rows'>,
): PaintCanvas {
  const canvas = freshCanvas(columns, rows)
  contextOf(canvas).putImageData(new ImageData(bytes, columns, rows), 0, 0)
  return canvas
}

/** Draws what of the picture falls into the box; a picture enlarged a thousandfold costs no more than its piece in sight. */
export function drawRaster(context: PaintContext, picture: PaintCanvas, raster: MapRaster, on: OnMap, box: Box): void {
  const whole = rasterBox(raster, on)
  const scale = raster.pixel * on.size
  const from = Math.max(0, Math.floor((box.left - whole.left) / scale) - 2)
  const to = Math.min(raster.columns, Math.ceil((box.right - whole.left) / scale) + 2)
  const above = Math.max(0, Math.floor((box.top - whole.top) / scale) - 2)
  const below = Math.min(raster.rows, Math.ceil((box.bottom - whole.top) / scale) + 2)
  if (to <= from || below <= above) return
  context.imageSmoothingEnabled = true
  context.imageSmoothingQuality = 'high'
  context.drawImage(
    picture,
    from,
    above,
    to - from,
    below - above,
    whole.left + from * scale,
    whole.top + above * scale,
    (to - from) * scale,
    (below - above) * scale,
  )
}
