/** Owns the exact places of a window's cells at the corners of blocks: within a block all else is read in between. */
import { type Bounds, unwrapNear } from '#core/geo/bounds.ts'
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { type ElevationGrid, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { timeSlices } from './time-slices.ts'

export interface Lattice {
  /** Cells from corner to corner; the last block may reach beyond the window. */
  readonly block: number
  readonly columns: number
  readonly rows: number
  readonly lats: Float64Array
  /** Within half a turn of the window's centre, beyond 180 where it lies across. */
  readonly lons: Float64Array
}

/** Metres that a place read in between may lie off; a thousandth of a cell where cells are large. */
const TOLERANCE = 0.005
const LONGEST_BLOCK = 64

/** Rejects with the signal's reason once nobody waits. */
export async function latticeOf(grid: ElevationGrid, signal: AbortSignal): Promise<Lattice> {
  const nextSlice = timeSlices(signal)
  const block = blockOf(grid)
  const columns = Math.ceil((grid.columns - 1) / block) + 1
  const rows = Math.ceil((grid.rows - 1) / block) + 1
  const lats = new Float64Array(columns * rows)
  const lons = new Float64Array(columns * rows)
  for (let row = 0; row < rows; row++) {
    // oxlint-disable-next-line no-await-in-loop -- only to let others have a turn
    await nextSlice()
    for (let column = 0; column < columns; column++) {
      const east = grid.west + column * block * grid.cell
      const north = grid.north - row * block * grid.cell
      const { lat, lon } = placeOnGrid(grid, east, north)
      lats[row * columns + column] = lat
      lons[row * columns + column] = unwrapNear(lon, grid.centre.lon)
    }
  }
  return { block, columns, rows, lats, lons }
}

/**
 * Meridians and parallels bend by tan(latitude) / radius against the plane's lines, so that a chord of length h misses by
 * h² tan / 8R along each axis. Near a pole that leaves no block at all, and every cell is computed.
 */
function blockOf(grid: ElevationGrid): number {
  const reach = (Math.max(grid.columns, grid.rows) * grid.cell) / MEAN_EARTH_RADIUS / RADIANS_PER_DEGREE
  const steepest = Math.abs(grid.centre.lat) + reach
  if (steepest >= 89) return 1
  const bend = Math.tan(steepest * RADIANS_PER_DEGREE) + 1
  const allowed = Math.max(TOLERANCE, grid.cell / 1000)
  const length = Math.sqrt((8 * MEAN_EARTH_RADIUS * allowed) / bend / 2)
  return Math.max(1, Math.min(LONGEST_BLOCK, Math.floor(length / grid.cell)))
}

/** False when the box lies wholly outside the window: a cheap look before a file is read. Null boxes may lie anywhere. */
export function mayMeet({ lats, lons }: Lattice, bounds: Bounds | null): boolean {
  if (bounds === null) return true
  const [south, north] = extent(lats)
  const [west, east] = extent(lons)
  if (north < bounds.south - MARGIN || south > bounds.north + MARGIN) return false
  const width = bounds.west <= bounds.east ? bounds.east - bounds.west : bounds.east + 360 - bounds.west
  return [-360, 0, 360].some(
    (turn) => bounds.west + turn - MARGIN <= east && bounds.west + turn + width + MARGIN >= west,
  )
}

/** Degrees: more than half a sample of any source. */
const MARGIN = 0.1

export function extent(values: Float64Array): readonly [least: number, most: number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of values) {
    if (value < least) least = value
    if (value > most) most = value
  }
  return [least, most]
}
