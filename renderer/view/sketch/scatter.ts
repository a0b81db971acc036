/** Marks strewn over the map at places that depend on the world alone, so that neighbouring tiles agree on them. */
import { cellNumber } from '#core/geo/cell-number.ts'

export interface Mark {
  /** CSS pixels on the canvas. */
  readonly x: number
  readonly y: number
  /** 0..1, the mark's own. */
  readonly chance: number
}

interface Window {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** One mark per cell of a lattice in world pixels, shifted at random within its cell; every other row is set off by half. */
export function scatterMarks(window: Window, spacing: number): Mark[] {
  const marks: Mark[] = []
  const firstRow = Math.floor(window.top / spacing) - 1
  const lastRow = Math.ceil((window.top + window.height) / spacing) + 1
  const firstColumn = Math.floor(window.left / spacing) - 1
  const lastColumn = Math.ceil((window.left + window.width) / spacing) + 1
  for (let row = firstRow; row <= lastRow; row++) {
    for (let column = firstColumn; column <= lastColumn; column++) {
      const number = cellNumber(column, row)
      const shiftX = ((number & 1023) / 1023 - 0.5) * 0.6 + (row % 2 === 0 ? 0.25 : -0.25)
      const shiftY = (((number >>> 10) & 1023) / 1023 - 0.5) * 0.6
      marks.push({
        x: (column + 0.5 + shiftX) * spacing - window.left,
        y: (row + 0.5 + shiftY) * spacing - window.top,
        chance: ((number >>> 20) & 1023) / 1023,
      })
    }
  }
  return marks
}
