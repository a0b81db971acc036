/** True directions on a grid: away from its centre, true north leans off the grid's own. */
import { between, localFrame } from '#core/geo/local-frame.ts'
import { RADIANS_PER_DEGREE, degrees } from '#core/units/angle.ts'
import { type ElevationGrid, type GridPoint, placeOnGrid } from './elevation-grid.ts'

/** Steps on the grid, metres east and north, for one metre to the true east and one to the true north at a point. */
export interface TrueAxes {
  readonly east: GridPoint
  readonly north: GridPoint
}

export function trueAxesAt(grid: ElevationGrid, point: GridPoint): TrueAxes {
  const there = localFrame(placeOnGrid(grid, point.east, point.north), 0)
  const plane = localFrame(grid.centre, 0)
  const origin = between(there, plane, 0, 0, 0)
  const step = (east: number, north: number): GridPoint => {
    const end = between(there, plane, east, north, 0)
    return { east: end.east - origin.east, north: end.north - origin.north }
  }
  return { east: step(1, 0), north: step(0, 1) }
}

/** The step on the grid for one metre along a bearing from true north. */
export function alongBearing(axes: TrueAxes, bearing: number): GridPoint {
  const sine = Math.sin(bearing * RADIANS_PER_DEGREE)
  const cosine = Math.cos(bearing * RADIANS_PER_DEGREE)
  return {
    east: sine * axes.east.east + cosine * axes.north.east,
    north: sine * axes.east.north + cosine * axes.north.north,
  }
}

/** The bearing from true north, -180..180, of a step on the grid: alongBearing undone. */
export function bearingAlong({ east, north }: TrueAxes, step: GridPoint): number {
  const whole = east.east * north.north - north.east * east.north
  const toEast = (step.east * north.north - step.north * north.east) / whole
  const toNorth = (step.north * east.east - step.east * east.north) / whole
  return degrees(Math.atan2(toEast, toNorth))
}
