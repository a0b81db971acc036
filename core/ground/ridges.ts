/** Ridges behind each other as the eye sees them: every edge beyond which ground drops out of view, joined into lines. */
import { degrees } from '#core/units/angle.ts'
import type { ElevationGrid } from './elevation-grid.ts'
import { type SeenGround, groundSeer, sameGround } from './seen-ground.ts'
import type { Raised } from './sight.ts'

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

/** The ridges from one azimuth clockwise to another, the farthest first. What lies beyond the grid is left out. */
export function ridges(
  grid: ElevationGrid,
  eye: Raised,
  refraction: number,
  from: number,
  to: number,
  step: number,
): Ridge[] {
  const look = groundSeer(grid, eye, refraction)
  const count = Math.floor((to - from) / step + 1e-9) + 1
  return ridgesOf(
    Array.from({ length: count }, (_, index) => look(from + index * step)),
    from,
    step,
    grid.cell,
  )
}

/** The same from looks at hand, in equal steps of azimuth, over cells of `cell` metres. */
export function ridgesOf(looks: readonly SeenGround[], from: number, step: number, cell: number): Ridge[] {
  const edges = looks.map(edgesAlong)
  return joined(edges, from, step, cell).toSorted((one, other) => farthest(other) - farthest(one))
}

function farthest(ridge: Ridge): number {
  return ridge.distances.reduce((one, other) => Math.max(one, other), 0)
}

/** The edges in one direction, the nearest first; the last of them stands against the sky. */
function edgesAlong({ distances, slopes, edges }: SeenGround): readonly Edge[] {
  const found: Edge[] = []
  // Hundreds of points a look and few edges: by index, for an iterator makes a pair of each.
  for (let index = edges.indexOf(1); index !== -1; index = edges.indexOf(1, index + 1))
    found.push({ altitude: degrees(Math.atan(slopes[index] as number)), distance: distances[index] as number })
  return found
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
      const reach = sameGround(edge.distance, cell)
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
