/** The ground along a straight line: its height at every line between cell centres that it crosses, and as many points as a drawing needs. */
import { type ElevationGrid, type GridPoint, elevationAt } from './elevation-grid.ts'
import { crossingsBetween, roomForCrossings } from './grid-line.ts'
import { ringLines, startOf } from './rings.ts'

/** Points in order along the line, both ends among them. */
export interface Profile {
  /** Metres from end to end. */
  readonly length: number
  /** Metres from the start. */
  readonly distances: Float64Array
  /** Metres above the sea; NaN where unknown, so that a drawing breaks off. */
  readonly elevations: Float64Array
}

/** The ground from one point to another, over every ring. Where none lies it is unknown. */
export function profile(grid: ElevationGrid, from: GridPoint, to: GridPoint): Profile {
  const length = Math.hypot(to.east - from.east, to.north - from.north)
  const distances = [0]
  const elevations = [elevationAt(grid, from.east, from.north) ?? Number.NaN]
  for (const line of ringLines(grid, from, to)) {
    const before = distances.at(-1) ?? 0
    if (distances.length > 1 && startOf(line) - before > 2 * line.grid.cell) {
      distances.push((before + startOf(line)) / 2)
      elevations.push(Number.NaN)
    }
    const met = roomForCrossings(Math.abs(line.leave - line.enter))
    crossingsBetween(line, line.enter, line.leave, met)
    for (let at = 0; at < met.count; at++) {
      const distance = met.distances[at] as number
      // Twice the same point where the line passes through a cell centre, and at either end.
      if (!(distance > (distances.at(-1) ?? 0) && distance < length)) continue
      distances.push(distance)
      // Half-known ground is drawn as a gap: better than a made-up edge.
      elevations.push(met.unknown[at] === 1 ? Number.NaN : (met.heights[at] as number))
    }
  }
  distances.push(length)
  elevations.push(elevationAt(grid, to.east, to.north) ?? Number.NaN)
  return { length, distances: Float64Array.from(distances), elevations: Float64Array.from(elevations) }
}

/** At most about so many points for drawing: of each equal stretch the highest, the lowest, and an unknown one if there is any. */
export function drawable(whole: Profile, points: number): Profile {
  const count = whole.distances.length
  if (count <= points) return whole
  const stretches = Math.max(1, Math.floor((points - 2) / 3))
  const kept = new Set([0, count - 1])
  let at = 1
  for (let stretch = 1; stretch <= stretches; stretch++) {
    const end = stretch === stretches ? count - 1 : firstAt(whole, at, (whole.length * stretch) / stretches)
    for (const index of tellingOf(whole, at, end)) kept.add(index)
    at = end
  }
  const order = Int32Array.from([...kept].toSorted((one, other) => one - other))
  return {
    length: whole.length,
    distances: Float64Array.from(order, (index) => whole.distances[index] as number),
    elevations: Float64Array.from(order, (index) => whole.elevations[index] as number),
  }
}

function firstAt(whole: Profile, from: number, distance: number): number {
  let at = from
  while (at < whole.distances.length - 1 && (whole.distances[at] as number) < distance) at++
  return at
}

/** Indices from one to before another: of the highest, the lowest and the first unknown. */
function tellingOf(whole: Profile, from: number, to: number): number[] {
  let [highest, lowest, unknown] = [-1, -1, -1]
  for (let at = from; at < to; at++) {
    const elevation = whole.elevations[at] as number
    if (Number.isNaN(elevation)) unknown = unknown === -1 ? at : unknown
    else {
      if (highest === -1 || elevation > (whole.elevations[highest] as number)) highest = at
      if (lowest === -1 || elevation < (whole.elevations[lowest] as number)) lowest = at
    }
  }
  return [highest, lowest, unknown].filter((index) => index !== -1)
}
