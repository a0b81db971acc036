/** All the ground that an eye sees in one direction, near to far: every point of it stands above all before it. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature.ts'
import { maximaOf } from './block-maxima.ts'
import type { ElevationGrid } from './elevation-grid.ts'
import { AT_END, type Crossings, gridRay } from './grid-line.ts'
import { type Raised, walkLine } from './sight.ts'
import { alongBearing, trueAxesAt } from './true-north.ts'

/** Both rise from point to point. */
export interface SeenGround {
  /** Metres. */
  readonly distances: Float64Array
  /** Metres up by metre along, from the level through the eye; the earth's curve and refraction in them. */
  readonly slopes: Float64Array
  /** 1 where the ground is the sea's own level: water. */
  readonly water: Uint8Array
}

/** Less is not told apart: a ten-thousandth of a degree. */
const FINEST_RISE = 2e-6

/** Scratch: every look fills it anew and hands out copies. */
let distances = new Float64Array(1024)
let slopes = new Float64Array(1024)
let water = new Uint8Array(1024)

function makeRoom(): void {
  const [oldDistances, oldSlopes, oldWater] = [distances, slopes, water]
  distances = new Float64Array(oldDistances.length * 2)
  slopes = new Float64Array(distances.length)
  water = new Uint8Array(distances.length)
  distances.set(oldDistances)
  slopes.set(oldSlopes)
  water.set(oldWater)
}

/**
 * Looks along azimuths from true north, out to the grid's edge. Unknown ground is passed over, and so is what rises by less than
 * `least` above all before it: the more that is, the faster.
 */
export function groundSeer(
  grid: ElevationGrid,
  eye: Raised,
  refraction: number,
  least = FINEST_RISE,
): (azimuth: number) => SeenGround {
  const axes = trueAxesAt(grid, eye)
  const maxima = maximaOf(grid)
  const curve = (1 - refraction) / (2 * MEAN_EARTH_RADIUS)
  const nearest = AT_END * grid.cell
  return (azimuth) => {
    const way = alongBearing(axes, azimuth)
    const line = gridRay(grid, eye, way.east, way.north, Infinity)
    let count = 0
    let steepest = -Infinity
    const meets = (met: Crossings): boolean => {
      for (let at = 0; at < met.count; at++) {
        const distance = met.distances[at] as number
        if (distance < nearest) continue
        const height = met.heights[at] as number
        const slope = (height - eye.elevation) / distance - curve * distance
        if (!(slope > steepest + least)) continue
        if (count === distances.length) makeRoom()
        distances[count] = distance
        slopes[count] = slope
        water[count++] = height === 0 ? 1 : 0
        steepest = slope
      }
      return false
    }
    if (line !== null) {
      walkLine(line, maxima, {
        passes: (highest, near, far) => {
          const rise = highest - eye.elevation
          if (rise < 0) return rise / far - curve * near <= steepest + least
          return near > 0 && rise / near - curve * near <= steepest + least
        },
        seeksUnknown: () => false,
        meets,
      })
    }
    return {
      distances: distances.slice(0, count),
      slopes: slopes.slice(0, count),
      water: water.slice(0, count),
    }
  }
}

/** How many of the points lie no farther than a distance. */
export function pointsWithin(seen: SeenGround, distance: number): number {
  let [low, high] = [0, seen.distances.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((seen.distances[middle] as number) <= distance) low = middle + 1
    else high = middle
  }
  return low
}

/** Slope up to which ground no farther than a distance covers what stands there; -Infinity where none is known. */
export function slopeWithin(seen: SeenGround, distance: number): number {
  const count = pointsWithin(seen, distance)
  return count === 0 ? -Infinity : (seen.slopes[count - 1] as number)
}
