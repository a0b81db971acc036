/** How far apart contours should stand in height: close enough to tell the ground's shape, far enough not to run together. */
import type { ElevationGrid } from './elevation-grid.ts'

/** Metres; what maps use. */
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500] as const
/** Pixels that lines keep on the steepest tenth of the ground's edge: nearer, they read as a grey. */
const CLOSEST = 6
const STEEP = 0.9
/** Cells looked at; more tell nothing new. */
const SAMPLES = 20_000
/** Every fifth line is drawn stronger and labelled. */
const STRONG = 5

/** Metres from contour to contour for a map of so many pixels to the metre; null where nothing is known of the ground. */
export function contourStep(grid: ElevationGrid, pixelsPerMetre: number): number | null {
  const slopes = sampledSlopes(grid)
  const steep = slopes[Math.floor(slopes.length * STEEP)]
  if (steep === undefined) return null
  const least = (CLOSEST * steep) / pixelsPerMetre
  return STEPS.find((step) => step >= least) ?? STEPS[STEPS.length - 1] ?? null
}

export function isStrongContour(level: number, step: number): boolean {
  return Math.round(level / step) % STRONG === 0
}

/** Rise over run at cells spread over the grid, in ascending order. */
function sampledSlopes(grid: ElevationGrid): Float64Array {
  const { columns, rows, heights, cell } = grid
  const apart = Math.max(1, Math.floor(Math.sqrt((columns * rows) / SAMPLES)))
  const slopes: number[] = []
  for (let row = 0; row < rows - 1; row += apart) {
    for (let column = 0; column < columns - 1; column += apart) {
      const own = heights[row * columns + column] ?? Number.NaN
      const right = heights[row * columns + column + 1] ?? Number.NaN
      const below = heights[(row + 1) * columns + column] ?? Number.NaN
      const slope = Math.hypot(right - own, below - own) / cell
      if (!Number.isNaN(slope)) slopes.push(slope)
    }
  }
  return Float64Array.from(slopes).toSorted()
}
