/** Which cells are open water, by the heights and a coarse map of the seas: land may lie below the sea, and sources tell the sea's floor. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { LaidGrid } from './map-raster.ts'
import { worldAt } from './map-raster.ts'

/** Metres above the sea to which open water is taken to reach: sources round, and tell waves and tide in their own way. */
export const WATER_LINE = 0.5

/** Coarse squares over the grid's raster, row by row from the north-west: 1 where the map of the world has sea. */
export interface Seas {
  readonly columns: number
  readonly rows: number
  readonly sea: Uint8Array
}

/** The sea spreads from where the coarse map has it, over ground no higher than its surface. 1 is water. */
export function waterOf(laid: LaidGrid, seas: Seas): Uint8Array {
  const { grid } = laid
  const { columns, rows, heights } = grid
  const water = new Uint8Array(columns * rows)
  const open: number[] = []
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const cell = row * columns + column
      if (!((heights[cell] as number) <= WATER_LINE) || !seaAt(laid, seas, column, row)) continue
      water[cell] = 1
      open.push(cell)
    }
  }
  spread(grid, water, open)
  return water
}

function spread({ columns, heights }: ElevationGrid, water: Uint8Array, open: number[]): void {
  const wet = (cell: number): void => {
    if (!((heights[cell] as number) <= WATER_LINE) || water[cell] === 1) return
    water[cell] = 1
    open.push(cell)
  }
  for (let cell = open.pop(); cell !== undefined; cell = open.pop()) {
    const column = cell % columns
    if (column > 0) wet(cell - 1)
    if (column < columns - 1) wet(cell + 1)
    wet(cell - columns)
    wet(cell + columns)
  }
}

function seaAt(laid: LaidGrid, { columns, rows, sea }: Seas, column: number, row: number): boolean {
  const { grid, raster } = laid
  const { x, y } = worldAt(laid, grid.west + column * grid.cell, grid.north - row * grid.cell)
  const across = Math.floor(((x - raster.west) / (raster.columns * raster.pixel)) * columns)
  const down = Math.floor(((y - raster.north) / (raster.rows * raster.pixel)) * rows)
  return sea[Math.max(0, Math.min(rows - 1, down)) * columns + Math.max(0, Math.min(columns - 1, across))] === 1
}
