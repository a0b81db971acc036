/** Elevations in square cells on the plane that touches the ellipsoid at a place, read between their centres, voids left out. */
import { type Bounds, boundsOf } from '#core/geo/bounds.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type LocalFrame, localFrame, placeUnder, toEarth, toLocal } from '#core/geo/local-frame.ts'
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { degrees, wrapBearing } from '#core/units/angle.ts'

/** Square cells on the plane that touches the ellipsoid at `centre`: east and north of it in metres, true north at the centre. */
export interface ElevationGrid {
  readonly centre: LatLon
  /** Metres between neighbouring cell centres. */
  readonly cell: number
  readonly columns: number
  readonly rows: number
  /** Metres east of `centre` at which the first column's cell centres lie (negative as a rule). */
  readonly west: number
  /** Metres north of `centre` at which the first row's cell centres lie. */
  readonly north: number
  /** Row by row from the north-west; metres above the sea (geoid); NaN where unknown, never 0 for unknown. */
  readonly heights: Float32Array
  /** Metres between the samples of the source that most cells come from; without it the cells count as the samples. */
  readonly step?: number | null
  /** Whether below 0 off the coasts the sea's surface was taken. */
  readonly sea?: boolean
  /** Further cells on the same plane, asked where these do not reach: coarser, and so farther. Absent: nothing is known beyond. */
  readonly beyond?: ElevationGrid
}

/** A window of cells on a plane: `half` of them to each side of the middle one, which lies east and north of where the plane touches. */
export interface SquareWindow extends GridPoint {
  readonly centre: LatLon
  /** Metres. */
  readonly cell: number
  readonly half: number
}

/** The grid of such a window. */
export function squareGrid({ centre, east, north, cell, half }: SquareWindow, heights: Float32Array): ElevationGrid {
  const side = 2 * half + 1
  return { centre, cell, columns: side, rows: side, west: east - half * cell, north: north + half * cell, heights }
}

/** Metres between the samples that a grid's heights come from. */
export function stepOf({ step, cell }: ElevationGrid): number {
  return step ?? cell
}

/** Metres east and north of a grid's centre. */
export interface GridPoint {
  readonly east: number
  readonly north: number
}

/** Where a place lies on the grid's plane, straight down on it. */
export function gridPoint(grid: ElevationGrid, place: LatLon): GridPoint {
  const { east, north } = toLocal(localFrame(grid.centre, 0), localFrame(place, 0).origin)
  return { east, north }
}

/** The place under a point of the plane: gridPoint undone. */
export function placeOnGrid(grid: ElevationGrid, east: number, north: number): LatLon {
  const frame = localFrame(grid.centre, 0)
  let [x, y] = [east, north]
  let place = underPlane(frame, x, y)
  // The plane leaves the ellipsoid, so the vertical of the far point leans a little: one correction is below a millimetre at 100 km.
  for (let round = 0; round < 2; round++) {
    const found = toLocal(frame, localFrame(place, 0).origin)
    x += east - found.east
    y += north - found.north
    place = underPlane(frame, x, y)
  }
  return place
}

function underPlane(frame: LocalFrame, east: number, north: number): LatLon {
  return placeUnder(toEarth(frame, east, north, -(east * east + north * north) / (2 * MEAN_EARTH_RADIUS)))
}

/**
 * Metres above the sea at a point of the plane, bilinear between the four centres around it. Unknown corners are left out and the
 * others weigh for them. Outside the outermost centres the cells beyond are read; null where there are none, and where no corner
 * of any weight is known.
 */
export function elevationAt(grid: ElevationGrid, east: number, north: number): number | null {
  const x = (east - grid.west) / grid.cell
  const y = (grid.north - north) / grid.cell
  if (!(x >= 0 && y >= 0 && x <= grid.columns - 1 && y <= grid.rows - 1))
    return grid.beyond === undefined ? null : elevationAt(grid.beyond, east, north)
  const column = Math.min(Math.floor(x), Math.max(0, grid.columns - 2))
  const row = Math.min(Math.floor(y), Math.max(0, grid.rows - 2))
  const [u, v] = [x - column, y - row]
  let [sum, weight] = [0, 0]
  const add = (share: number, atColumn: number, atRow: number): void => {
    const height = share > 0 ? (grid.heights[atRow * grid.columns + atColumn] ?? Number.NaN) : Number.NaN
    if (Number.isNaN(height)) return
    sum += share * height
    weight += share
  }
  add((1 - u) * (1 - v), column, row)
  add(u * (1 - v), column + 1, row)
  add((1 - u) * v, column, row + 1)
  add(u * v, column + 1, row + 1)
  return weight > 0 ? sum / weight : null
}

/** Metres above the sea at a place; null outside the grid and where unknown. */
export function elevationAtPlace(grid: ElevationGrid, place: LatLon): number | null {
  const { east, north } = gridPoint(grid, place)
  return elevationAt(grid, east, north)
}

export interface SlopeAndAspect {
  /** Degrees from the level, 0..90. */
  readonly slope: number
  /** Bearing 0..360 towards which the ground falls; null on level ground. */
  readonly aspect: number | null
}

/**
 * Slope and aspect at the cell centre nearest to a point, by Horn's weights over it and its eight neighbours (Proc. IEEE 69, 1981);
 * null outside the grid, on its outermost cells and where any of the nine is unknown.
 */
export function slopeAndAspectAt(grid: ElevationGrid, east: number, north: number): SlopeAndAspect | null {
  const { heights, columns, rows, cell } = grid
  const column = Math.round((east - grid.west) / cell)
  const row = Math.round((grid.north - north) / cell)
  if (!(column >= 1 && row >= 1 && column <= columns - 2 && row <= rows - 2)) return null
  const at = (right: number, down: number): number => heights[(row + down) * columns + column + right] ?? Number.NaN
  const right = at(1, -1) + 2 * at(1, 0) + at(1, 1)
  const left = at(-1, -1) + 2 * at(-1, 0) + at(-1, 1)
  const up = at(-1, -1) + 2 * at(0, -1) + at(1, -1)
  const down = at(-1, 1) + 2 * at(0, 1) + at(1, 1)
  if (Number.isNaN(right + left + up + down + at(0, 0))) return null
  const eastward = (right - left) / (8 * cell)
  const northward = (up - down) / (8 * cell)
  return {
    slope: degrees(Math.atan(Math.hypot(eastward, northward))),
    aspect: eastward === 0 && northward === 0 ? null : wrapBearing(degrees(Math.atan2(-eastward, -northward))),
  }
}

const POINTS_ALONG_EDGE = 8

/** The box of latitudes and longitudes around the outermost cell centres. */
export function boundsOfGrid(grid: ElevationGrid): Bounds {
  const width = (grid.columns - 1) * grid.cell
  const height = (grid.rows - 1) * grid.cell
  const places: LatLon[] = []
  for (let step = 0; step <= POINTS_ALONG_EDGE; step++) {
    const [across, down] = [(width * step) / POINTS_ALONG_EDGE, (height * step) / POINTS_ALONG_EDGE]
    places.push(
      placeOnGrid(grid, grid.west + across, grid.north),
      placeOnGrid(grid, grid.west + across, grid.north - height),
      placeOnGrid(grid, grid.west, grid.north - down),
      placeOnGrid(grid, grid.west + width, grid.north - down),
    )
  }
  const bounds = boundsOf(places)
  if (bounds === null) throw new RangeError('a grid without cells has no bounds')
  return bounds
}
