/** Relief: how steep the ground is, where it falls to, and how bright a light leaves it, by Horn's weights (Proc. IEEE 69, 1981). */
import { RADIANS_PER_DEGREE, degrees, wrapBearing } from '#core/units/angle.ts'
import type { ElevationGrid } from './elevation-grid.ts'

/** Where the light stands: degrees clockwise from north, and degrees above the level. */
export interface ReliefLight {
  readonly azimuth: number
  readonly altitude: number
}

/** The light that maps are drawn by: from the north-west, so that hills look raised. */
export const MAP_LIGHT: ReliefLight = { azimuth: 315, altitude: 45 }

/** What hillshade leaves where the ground is unknown; 1 is fully turned away from the light, 255 faces it. */
export const UNKNOWN_SHADE = 0

/** Rise over run of one row, east and north positive; NaN where the cell itself is unknown. */
interface RowGradient {
  readonly eastward: Float64Array
  readonly northward: Float64Array
  /** Scratch: the column's own weighted sum and its fall from north to south. */
  readonly sums: Float64Array
  readonly falls: Float64Array
}

/** Brightness of each cell under a light, cosine of its incidence, 1..255; cast shadows are another matter. */
export function hillshade(grid: ElevationGrid, light: ReliefLight, exaggeration = 1): Uint8Array {
  const { columns, rows } = grid
  const shade = new Uint8Array(columns * rows)
  const upward = 254 * Math.sin(light.altitude * RADIANS_PER_DEGREE)
  const level = 254 * Math.cos(light.altitude * RADIANS_PER_DEGREE) * exaggeration
  const toEast = level * Math.sin(light.azimuth * RADIANS_PER_DEGREE)
  const toNorth = level * Math.cos(light.azimuth * RADIANS_PER_DEGREE)
  const squared = exaggeration * exaggeration
  const gradient = rowGradient(columns)
  const { eastward, northward } = gradient
  for (let row = 0; row < rows; row++) {
    fillGradient(grid, row, gradient)
    const start = row * columns
    for (let column = 0; column < columns; column++) {
      const east = eastward[column] as number
      const north = northward[column] as number
      const lit = (upward - toEast * east - toNorth * north) / Math.sqrt(1 + squared * (east * east + north * north))
      if (lit > 0) shade[start + column] = lit + 1.5
      else if (lit <= 0) shade[start + column] = 1
    }
  }
  return shade
}

export interface SlopesAndAspects {
  /** Degrees from the level, 0..90; NaN where unknown. */
  readonly slopes: Float32Array
  /** Bearings 0..360 to which the ground falls; NaN where level or unknown. */
  readonly aspects: Float32Array
}

/** Slope and aspect of every cell. */
export function slopesAndAspects(grid: ElevationGrid): SlopesAndAspects {
  const { columns, rows } = grid
  const slopes = new Float32Array(columns * rows)
  const aspects = new Float32Array(columns * rows)
  const gradient = rowGradient(columns)
  for (let row = 0; row < rows; row++) {
    fillGradient(grid, row, gradient)
    for (let column = 0; column < columns; column++) {
      const east = gradient.eastward[column] as number
      const north = gradient.northward[column] as number
      slopes[row * columns + column] = degrees(Math.atan(Math.hypot(east, north)))
      aspects[row * columns + column] =
        east === 0 && north === 0 ? Number.NaN : wrapBearing(degrees(Math.atan2(-east, -north)))
    }
  }
  return { slopes, aspects }
}

function rowGradient(columns: number): RowGradient {
  return {
    eastward: new Float64Array(columns),
    northward: new Float64Array(columns),
    sums: new Float64Array(columns),
    falls: new Float64Array(columns),
  }
}

function fillGradient(grid: ElevationGrid, row: number, into: RowGradient): void {
  const { columns, rows, heights, cell } = grid
  const { eastward, northward, sums, falls } = into
  if (row === 0 || row === rows - 1) {
    for (let column = 0; column < columns; column++) fillWithCare(grid, column, row, into)
    return
  }
  const start = row * columns
  for (let column = 0; column < columns; column++) {
    const above = heights[start - columns + column] as number
    const below = heights[start + columns + column] as number
    sums[column] = above + 2 * (heights[start + column] as number) + below
    falls[column] = above - below
  }
  const share = 1 / (8 * cell)
  fillWithCare(grid, 0, row, into)
  for (let column = 1; column < columns - 1; column++) {
    const east = (sums[column + 1] as number) - (sums[column - 1] as number)
    const north = (falls[column - 1] as number) + 2 * (falls[column] as number) + (falls[column + 1] as number)
    // The centre has no weight in its own gradient, so its being unknown shows in its column's sum alone.
    if (Number.isNaN(east + north + (sums[column] as number))) {
      fillWithCare(grid, column, row, into)
    } else {
      eastward[column] = east * share
      northward[column] = north * share
    }
  }
  if (columns > 1) fillWithCare(grid, columns - 1, row, into)
}

/** One cell beside the grid's edge or unknown ground. */
function fillWithCare(grid: ElevationGrid, column: number, row: number, into: RowGradient): void {
  const around = (right: number, down: number): number => neighbour(grid, column, row, right, down)
  const right = around(1, -1) + 2 * around(1, 0) + around(1, 1)
  const left = around(-1, -1) + 2 * around(-1, 0) + around(-1, 1)
  const up = around(-1, -1) + 2 * around(0, -1) + around(1, -1)
  const down = around(-1, 1) + 2 * around(0, 1) + around(1, 1)
  into.eastward[column] = (right - left) / (8 * grid.cell)
  into.northward[column] = (up - down) / (8 * grid.cell)
}

/**
 * A neighbour's height. An unknown one lies on the line from its opposite through the cell; at a corner, in the plane of the
 * sides; else level with the cell. NaN where the cell itself is unknown.
 */
function neighbour(grid: ElevationGrid, column: number, row: number, right: number, down: number): number {
  const own = heightIn(grid, column, row)
  const there = heightIn(grid, column + right, row + down)
  if (Number.isNaN(own) || !Number.isNaN(there)) return Number.isNaN(own) ? own : there
  const opposite = heightIn(grid, column - right, row - down)
  if (!Number.isNaN(opposite)) return 2 * own - opposite
  if (right === 0 || down === 0) return own
  return neighbour(grid, column, row, right, 0) + neighbour(grid, column, row, 0, down) - own
}

function heightIn(grid: ElevationGrid, column: number, row: number): number {
  if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) return Number.NaN
  return grid.heights[row * grid.columns + column] as number
}
