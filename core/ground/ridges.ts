/** Ridges behind each other as the eye sees them: every edge beyond which ground drops out of view, joined into lines. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature.ts'
import { degrees } from '#core/units/angle.ts'
import { type BlockMaxima, maximaOf } from './block-maxima.ts'
import type { ElevationGrid, GridPoint } from './elevation-grid.ts'
import { AT_END, type Crossings, gridRay } from './grid-line.ts'
import { type Raised, walkLine } from './sight.ts'
import { alongBearing, trueAxesAt } from './true-north.ts'

/** A line of edges at neighbouring azimuths, from left to right. All of it is seen; between two such lines lies ground or sky. */
export interface Ridge {
  /** Azimuth of its first point; it may pass 360, so that a ridge across north stays in one piece. */
  readonly azimuth: number
  /** Degrees from point to point. */
  readonly step: number
  /** Degrees above the level, refraction in them. */
  readonly altitudes: readonly number[]
  /** Metres. */
  readonly distances: readonly number[]
}

interface Edge {
  readonly altitude: number
  readonly distance: number
}

/** Ground must be hidden for this share of the distance beyond an edge, and for so many cells, or it is no ridge but a bump. */
const GAP_SHARE = 0.1
const GAP_CELLS = 3

/** The ridges from one azimuth clockwise to another, the farthest first. What lies beyond the grid is left out. */
export function ridges(
  grid: ElevationGrid,
  eye: Raised,
  refraction: number,
  from: number,
  to: number,
  step: number,
): Ridge[] {
  const axes = trueAxesAt(grid, eye)
  const maxima = maximaOf(grid)
  const count = Math.floor((to - from) / step + 1e-9) + 1
  const looks = Array.from({ length: count }, (_, index) =>
    edgesAlong(grid, maxima, eye, alongBearing(axes, from + index * step), refraction),
  )
  return joined(looks, from, step, grid.cell).toSorted((one, other) => farthest(other) - farthest(one))
}

function farthest(ridge: Ridge): number {
  return ridge.distances.reduce((one, other) => Math.max(one, other), 0)
}

/** The edges in one direction, the nearest first; the last of them stands against the sky. */
function edgesAlong(
  grid: ElevationGrid,
  maxima: BlockMaxima,
  eye: Raised,
  way: GridPoint,
  refraction: number,
): readonly Edge[] {
  const line = gridRay(grid, eye, way.east, way.north, Infinity)
  if (line === null) return []
  const curve = (1 - refraction) / (2 * MEAN_EARTH_RADIUS)
  const edges: Edge[] = []
  let [steepest, last] = [-Infinity, Number.NaN]
  const addEdge = (): number => edges.push({ altitude: degrees(Math.atan(steepest)), distance: last })
  const meets = (met: Crossings): boolean => {
    for (let at = 0; at < met.count; at++) {
      const distance = met.distances[at] as number
      if (distance < AT_END * grid.cell) continue
      const slope = ((met.heights[at] as number) - eye.elevation) / distance - curve * distance
      if (!(slope > steepest)) continue
      if (distance - last > Math.max(GAP_CELLS * grid.cell, GAP_SHARE * last)) addEdge()
      steepest = slope
      last = distance
    }
    return false
  }
  walkLine(line, maxima, {
    passes: (highest, near, far) => {
      const rise = highest - eye.elevation
      return !(rise < 0 ? rise / far - curve * near > steepest : near <= 0 || rise / near - curve * near > steepest)
    },
    seeksUnknown: () => false,
    meets,
  })
  if (steepest !== -Infinity) addEdge()
  return edges
}

/** A ridge while it grows. */
interface Growing {
  readonly start: number
  readonly altitudes: number[]
  readonly distances: number[]
}

/** Neighbouring azimuths see the same ridge where its distance changes little. */
function joined(looks: readonly (readonly Edge[])[], from: number, step: number, cell: number): Ridge[] {
  const all: Growing[] = []
  let open: readonly Growing[] = []
  for (const [index, edges] of looks.entries()) {
    let next = 0
    open = edges.map((edge) => {
      const reach = Math.max(GAP_CELLS * cell, GAP_SHARE * edge.distance)
      while (next < open.length && lastOf(open[next]) < edge.distance - reach) next++
      const before = open[next]
      const grown =
        before !== undefined && lastOf(before) <= edge.distance + reach
          ? before
          : { start: index, altitudes: [], distances: [] }
      if (grown === before) next++
      else all.push(grown)
      grown.altitudes.push(edge.altitude)
      grown.distances.push(edge.distance)
      return grown
    })
  }
  return all.map(({ start, altitudes, distances }) => ({ azimuth: from + start * step, step, altitudes, distances }))
}

function lastOf(ridge: Growing | undefined): number {
  return ridge?.distances.at(-1) ?? Infinity
}
