/** Findings by cell turned into pictures for the map: how much of each of the map's pixels is so, as opacity. */
import type { LaidGrid, MapRaster } from './map-raster.ts'
import { warpLine } from './warp.ts'

/** Opacities on one raster, a byte a pixel, row by row. */
export interface Masks {
  readonly raster: MapRaster
  /** What is hidden or in the shade. */
  readonly veiled: Uint8ClampedArray
  /** Null where everything is known. */
  readonly unknown: Uint8ClampedArray | null
}

/** Which value of a cell is veiled, and which is unknown. */
export interface Meaning {
  readonly veiled: number
  readonly unknown: number
}

/** Four shares of one pixel, by the cells around its middle. */
export function masksOf(laid: LaidGrid, found: Uint8Array, meaning: Meaning): Masks {
  const { grid, raster, toGrid } = laid
  const { columns, rows } = raster
  const veiled = new Uint8ClampedArray(columns * rows)
  const unknown = new Uint8ClampedArray(columns * rows)
  const xs = new Float64Array(columns)
  const ys = new Float64Array(columns)
  let anyUnknown = false
  for (let row = 0; row < rows; row++) {
    warpLine(toGrid, row + 0.5, xs, ys)
    for (let column = 0; column < columns; column++) {
      const [x, y] = [xs[column] as number, ys[column] as number]
      const at = row * columns + column
      // Beyond the outermost centres by more than rounding nothing was found.
      if (x < -0.5 || y < -0.5 || x > grid.columns - 0.5 || y > grid.rows - 0.5) {
        unknown[at] = 255
        anyUnknown = true
        continue
      }
      const left = Math.max(0, Math.min(grid.columns - 2, Math.floor(x)))
      const top = Math.max(0, Math.min(grid.rows - 2, Math.floor(y)))
      const cell = top * grid.columns + left
      const northWest = found[cell] as number
      const northEast = found[cell + 1] as number
      const southWest = found[cell + grid.columns] as number
      const southEast = found[cell + grid.columns + 1] as number
      if (northWest === northEast && northWest === southWest && northWest === southEast) {
        if (northWest === meaning.veiled) veiled[at] = 255
        else if (northWest === meaning.unknown) {
          unknown[at] = 255
          anyUnknown = true
        }
        continue
      }
      const u = Math.max(0, Math.min(1, x - left))
      const v = Math.max(0, Math.min(1, y - top))
      const share = (value: number): number =>
        (1 - v) * ((northWest === value ? 1 - u : 0) + (northEast === value ? u : 0)) +
        v * ((southWest === value ? 1 - u : 0) + (southEast === value ? u : 0))
      veiled[at] = 255 * share(meaning.veiled)
      const notKnown = share(meaning.unknown)
      if (notKnown > 0) {
        unknown[at] = 255 * notKnown
        anyUnknown = true
      }
    }
  }
  return { raster, veiled, unknown: anyUnknown ? unknown : null }
}
