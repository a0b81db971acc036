/** Ground and sight worked out without any short cut: every grid line a line crosses, each in the plainest way. */
import type { ElevationGrid, GridPoint } from '#core/ground/elevation-grid.ts'

const MEAN_EARTH_RADIUS = 6_371_008.8

export interface PlainCrossing {
  readonly distance: number
  /** NaN where both posts are unknown. */
  readonly height: number
}

/** Crossings with all column lines, then with all row lines, out of order. */
export function plainCrossings(grid: ElevationGrid, from: GridPoint, to: GridPoint): PlainCrossing[] {
  const [x0, y0] = [(from.east - grid.west) / grid.cell, (grid.north - from.north) / grid.cell]
  const [x1, y1] = [(to.east - grid.west) / grid.cell, (grid.north - to.north) / grid.cell]
  const whole = Math.hypot(to.east - from.east, to.north - from.north)
  const found: PlainCrossing[] = []
  const post = (column: number, row: number): number => grid.heights[row * grid.columns + column] ?? Number.NaN
  const between = (one: number, other: number, share: number): number => {
    if (share === 0 || Number.isNaN(other)) return one
    return Number.isNaN(one) ? other : one + share * (other - one)
  }
  for (let column = Math.ceil(Math.min(x0, x1)); column <= Math.max(x0, x1); column++) {
    const share = (column - x0) / (x1 - x0)
    const y = y0 + share * (y1 - y0)
    const row = Math.floor(y)
    if (!(share >= 0) || column < 0 || column >= grid.columns || y < 0 || y > grid.rows - 1) continue
    found.push({ distance: share * whole, height: between(post(column, row), post(column, row + 1), y - row) })
  }
  for (let row = Math.ceil(Math.min(y0, y1)); row <= Math.max(y0, y1); row++) {
    const share = (row - y0) / (y1 - y0)
    const x = x0 + share * (x1 - x0)
    const column = Math.floor(x)
    if (!(share >= 0) || row < 0 || row >= grid.rows || x < 0 || x > grid.columns - 1) continue
    found.push({ distance: share * whole, height: between(post(column, row), post(column + 1, row), x - column) })
  }
  return found
}

/** The lowest elevation at the far end that is seen from the near one; -Infinity when nothing stands between. */
export function plainSill(
  grid: ElevationGrid,
  eye: GridPoint & { readonly elevation: number },
  to: GridPoint,
  refraction: number,
): number {
  const whole = Math.hypot(to.east - eye.east, to.north - eye.north)
  const curve = (1 - refraction) / (2 * MEAN_EARTH_RADIUS)
  let steepest = -Infinity
  for (const { distance, height } of plainCrossings(grid, eye, to)) {
    if (!(distance > 1e-6 * grid.cell && distance < whole - 1e-6 * grid.cell) || Number.isNaN(height)) continue
    steepest = Math.max(steepest, (height - curve * distance * distance - eye.elevation) / distance)
  }
  return eye.elevation + steepest * whole + curve * whole * whole
}
