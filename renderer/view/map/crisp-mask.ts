/** A mask enlarged on the map: a clear edge midway between what is so and what is not, where mere enlarging would smear it over a cell. */
import type { MapRaster } from '#renderer/view/ground/map-raster.ts'
import type { Box } from '#renderer/view/drawing/plan-view.ts'
import { type OnMap, rasterBox } from '#renderer/view/base/raster-picture.ts'

/** CSS pixels to a pixel of what is made. */
export const GRAIN = 2
/** CSS pixels over which the edge fades. */
const EDGE = 2

export interface CrispMask {
  readonly columns: number
  readonly rows: number
  /** Four bytes a pixel, black with opacity alone; nothing beyond the raster. */
  readonly bytes: Uint8ClampedArray<ArrayBuffer>
}

/** The piece of a mask that falls into a box of the map, from its left upper corner on. */
export function crispMask(mask: Uint8ClampedArray, raster: MapRaster, on: OnMap, box: Box): CrispMask {
  const whole = rasterBox(raster, on)
  const scale = raster.pixel * on.size
  const steep = Math.max(1, scale / EDGE) / 255
  const columns = Math.ceil((box.right - box.left) / GRAIN)
  const rows = Math.ceil((box.bottom - box.top) / GRAIN)
  const bytes = new Uint8ClampedArray(columns * rows * 4)
  const alpha = (column: number, row: number): number => mask[row * raster.columns + column] as number
  for (let row = 0; row < rows; row++) {
    const y = (box.top + (row + 0.5) * GRAIN - whole.top) / scale - 0.5
    if (y < -0.5 || y > raster.rows - 0.5) continue
    const top = Math.max(0, Math.min(raster.rows - 2, Math.floor(y)))
    const v = Math.max(0, Math.min(1, y - top))
    for (let column = 0; column < columns; column++) {
      const x = (box.left + (column + 0.5) * GRAIN - whole.left) / scale - 0.5
      if (x < -0.5 || x > raster.columns - 0.5) continue
      const left = Math.max(0, Math.min(raster.columns - 2, Math.floor(x)))
      const u = Math.max(0, Math.min(1, x - left))
      const upper = alpha(left, top) + u * (alpha(left + 1, top) - alpha(left, top))
      const lower = alpha(left, top + 1) + u * (alpha(left + 1, top + 1) - alpha(left, top + 1))
      bytes[(row * columns + column) * 4 + 3] = ((upper + v * (lower - upper) - 127.5) * steep + 0.5) * 255
    }
  }
  return { columns, rows, bytes }
}
