/** All the ground that an eye sees in one direction, near to far: every point of it stands above all before it. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import type { ElevationGrid } from './elevation-grid.ts'
import { AT_END, type Crossings } from './grid-line.ts'
import { ringRays } from './rings.ts'
import { type Raised, walkRings } from './sight.ts'
import { alongBearing, trueAxesAt } from './true-north.ts'

/** Both rise from point to point. */
export interface SeenGround {
  /** Metres. */
  readonly distances: Float64Array
  /** Metres up by metre along, from the level through the eye; the earth's curve and refraction in them. */
  readonly slopes: Float64Array
  /** 1 where the ground is the sea's own level: water. */
  readonly water: Uint8Array
  /** 1 where ground beyond drops out of view, and at the last point, which stands against the sky. */
  readonly edges: Uint8Array
}

/** Less is not told apart: a ten-thousandth of a degree. */
const FINEST_RISE = 2e-6

/** Ground must be hidden for this share of the distance beyond an edge, and for so many cells, or it is no ridge but a bump. */
const GAP_SHARE = 0.1
const GAP_CELLS = 3

/** Metres from a point at a distance within which the next ground seen still belongs to it. */
export function sameGround(distance: number, cell: number): number {
  return Math.max(GAP_CELLS * cell, GAP_SHARE * distance)
}

/** What is found in one direction; every look fills it again and hands out copies. */
interface Found {
  count: number
  distances: Float64Array
  slopes: Float64Array
  water: Uint8Array
  edges: Uint8Array
}

const scratch: Found = roomFor(1024)

function roomFor(points: number): Found {
  return {
    count: 0,
    distances: new Float64Array(points),
    slopes: new Float64Array(points),
    water: new Uint8Array(points),
    edges: new Uint8Array(points),
  }
}

function makeRoom(): void {
  const wider = roomFor(scratch.distances.length * 2)
  wider.distances.set(scratch.distances)
  wider.slopes.set(scratch.slopes)
  wider.water.set(scratch.water)
  wider.edges.set(scratch.edges)
  Object.assign(scratch, { ...wider, count: scratch.count })
}

function add(distance: number, slope: number, atSea: boolean): void {
  if (scratch.count === scratch.distances.length) makeRoom()
  const at = scratch.count++
  scratch.distances[at] = distance
  scratch.slopes[at] = slope
  scratch.water[at] = atSea ? 1 : 0
  scratch.edges[at] = 0
}

/** The point seen last is an edge; it may have been left out for rising too little. */
function addEdge(distance: number, slope: number, atSea: boolean): void {
  if (scratch.distances[scratch.count - 1] !== distance) add(distance, slope, atSea)
  scratch.edges[scratch.count - 1] = 1
}

/** Bytes of a point in a look: its distance and slope, and whether it is water and an edge. */
const POINT_BYTES = 18
/** Looks are cut from blocks of so many bytes: hundreds a frame, each with a buffer of its own, would keep the collector busy. */
const BLOCK_BYTES = 131_072

let block = new ArrayBuffer(0)
let blockUsed = 0

function toldSoFar(): SeenGround {
  const { count } = scratch
  const bytes = Math.ceil((count * POINT_BYTES) / 8) * 8
  if (blockUsed + bytes > block.byteLength) {
    block = new ArrayBuffer(Math.max(BLOCK_BYTES, bytes))
    blockUsed = 0
  }
  const distances = new Float64Array(block, blockUsed, count)
  const slopes = new Float64Array(block, blockUsed + 8 * count, count)
  const water = new Uint8Array(block, blockUsed + 16 * count, count)
  const edges = new Uint8Array(block, blockUsed + 17 * count, count)
  blockUsed += bytes
  for (let at = 0; at < count; at++) {
    distances[at] = scratch.distances[at] as number
    slopes[at] = scratch.slopes[at] as number
    water[at] = scratch.water[at] as number
    edges[at] = scratch.edges[at] as number
  }
  return { distances, slopes, water, edges }
}

/** Levels measured by hand near the eye: the ground there is taken to lie by so much off the elevations, metres. */
export interface Settled {
  readonly underEye: number
  /** Metres from the eye to where it lies `there` off, and to where it is as the elevations have it. */
  readonly at: number
  readonly there: number
  readonly gone: number
}

const UNSETTLED: Settled = { underEye: 0, at: 0, there: 0, gone: 0 }

function settledBy({ underEye, at, there, gone }: Settled, distance: number): number {
  if (distance >= gone) return 0
  return distance < at ? underEye + ((there - underEye) * distance) / at : there * (1 - (distance - at) / (gone - at))
}

/**
 * Looks along azimuths from true north, out to where the last ring ends. Unknown ground is passed over. Points but `least` above the one
 * before are left out, unless they are edges.
 */
export function groundSeer(
  grid: ElevationGrid,
  eye: Raised,
  refraction: number,
  least = FINEST_RISE,
  settled = UNSETTLED,
): (azimuth: number) => SeenGround {
  const axes = trueAxesAt(grid, eye)
  const curve = (1 - refraction) / (2 * MEAN_EARTH_RADIUS)
  const nearest = AT_END * grid.cell
  const most = Math.max(0, settled.underEye, settled.there)
  let [steepest, edgeSlope, last, atSea] = [-Infinity, -Infinity, 0, false]
  let { cell } = grid
  const meets = (met: Crossings): boolean => {
    for (let at = 0; at < met.count; at++) {
      const distance = met.distances[at] as number
      if (distance < nearest) continue
      const height = met.heights[at] as number
      const off = distance < settled.gone ? settledBy(settled, distance) : 0
      const slope = (height + off - eye.elevation) / distance - curve * distance
      if (!(slope > steepest + FINEST_RISE)) continue
      if (scratch.count > 0 && distance - last > sameGround(last, cell)) addEdge(last, steepest, atSea)
      steepest = slope
      last = distance
      atSea = height === 0
      if (slope <= edgeSlope + least && scratch.edges[scratch.count - 1] === 0) continue
      edgeSlope = slope
      add(distance, slope, atSea)
    }
    return false
  }
  const passes = (highest: number, near: number, far: number): boolean => {
    const rise = highest + (near < settled.gone ? most : 0) - eye.elevation
    if (rise < 0) return rise / far - curve * near <= steepest + FINEST_RISE
    return near > 0 && rise / near - curve * near <= steepest + FINEST_RISE
  }
  const walk = { passes, seeksUnknown: () => false, meets }
  return (azimuth) => {
    ;[steepest, edgeSlope, last, atSea] = [-Infinity, -Infinity, 0, false]
    scratch.count = 0
    const way = alongBearing(axes, azimuth)
    for (const line of ringRays(grid, eye, way.east, way.north, Infinity)) {
      cell = line.grid.cell
      walkRings([line], walk)
    }
    if (scratch.count > 0) addEdge(last, steepest, atSea)
    return toldSoFar()
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

/**
 * Slope up to which ground no farther than a distance covers what stands there; -Infinity where none is known. Ground that goes on
 * between two points is even between them, and even ground rises to the eye as one by its distance.
 */
export function slopeWithin(seen: SeenGround, distance: number): number {
  const count = pointsWithin(seen, distance)
  if (count === 0) return -Infinity
  const { distances, slopes, edges } = seen
  const slope = slopes[count - 1] as number
  if (edges[count - 1] === 1) return slope
  const [near, far] = [1 / (distances[count - 1] as number), 1 / (distances[count] as number)]
  return slope + (((slopes[count] as number) - slope) * (near - 1 / distance)) / (near - far)
}
