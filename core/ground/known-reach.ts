/** How far the elevations go around a place: out to what distance they were read, and where they end sooner. */
import type { ElevationGrid } from './elevation-grid.ts'
import { gapsOf, lastEnd, ringRays, startOf } from './rings.ts'
import { walkRings } from './sight.ts'
import { alongBearing, trueAxesAt } from './true-north.ts'

export interface KnownReach {
  /** Metres to which ground is known in the direction in which it is known farthest. */
  readonly most: number
  /** Metres to which it is known in the one where it ends first, and the true bearing of that. */
  readonly least: number
  readonly leastToward: number
}

/** Degrees from one direction looked in to the next. */
const STEP = 5

const reachByGrid = new WeakMap<ElevationGrid, KnownReach>()

/** Around the middle of the finest cells; a gap narrower than some cells ends nothing. Worked out once for each ground. */
export function knownReach(grid: ElevationGrid): KnownReach {
  const before = reachByGrid.get(grid)
  if (before !== undefined) return before
  const reaches = Array.from({ length: 360 / STEP }, (_, index) => reachToward(grid, index * STEP))
  const least = Math.min(...reaches)
  const found = { most: Math.max(...reaches), least, leastToward: reaches.indexOf(least) * STEP }
  reachByGrid.set(grid, found)
  return found
}

function reachToward(grid: ElevationGrid, bearing: number): number {
  const from = {
    east: grid.west + ((grid.columns - 1) / 2) * grid.cell,
    north: grid.north - ((grid.rows - 1) / 2) * grid.cell,
  }
  const way = alongBearing(trueAxesAt(grid, from), bearing)
  const lines = ringRays(grid, from, way.east, way.north, Infinity)
  const [gap = Infinity] = gapsOf(lines, 1)
  for (const line of lines) {
    if (startOf(line) > gap) return gap
    let ends: number | null = null
    walkRings([line], {
      // Wherever a whole block is unknown the ground ends.
      passes: (highest) => highest !== -Infinity,
      seeksUnknown: () => false,
      meets: (met) => {
        if (met.count === 0) return false
        ends = met.distances[0] as number
        return true
      },
    })
    if (ends !== null) return ends
  }
  return lastEnd(lines)
}
