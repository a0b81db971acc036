/** The viewshed: which cells a point sees, each told by its own line of sight over the ground. Exact on the rings it is given. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { maximaOf } from './block-maxima.ts'
import type { ElevationGrid } from './elevation-grid.ts'
import { lookFromOutside } from './outside-look.ts'
import { hideBehindObstructions } from './obstructed-viewshed.ts'
import { SightWalk } from './sight-walk.ts'
import { UNKNOWN, type ViewshedRequest } from './viewshed-request.ts'

/** A viewshed on its way: several workers may each fill rows of one shared array, in any order, each from its own state. */
export interface ViewshedState {
  readonly grid: ElevationGrid
  readonly request: ViewshedRequest
  /** HIDDEN, SEEN or UNKNOWN by cell; a row means something once it has been filled. */
  readonly seen: Uint8Array
  readonly walk: SightWalk
}

/**
 * Metres above the sea of the point of a landmark that must be seen for the upper `share` (0..1) of its height to show. What is seen
 * of an upright thing is always its upper part, since a line to a higher point passes higher over everything on its way. So the
 * ground from which at least that share shows is the ground this one point sees, looked for at the height of the lens.
 */
export function heightShowing(base: number, height: number, share: number): number {
  return base + height * (1 - Math.min(1, Math.max(0, share)))
}

/** Begins a viewshed; fill it by viewshedRows. `seen` may lie in shared memory. */
export function beginViewshed(
  grid: ElevationGrid,
  request: ViewshedRequest,
  seen: Uint8Array = new Uint8Array(grid.columns * grid.rows),
): ViewshedState {
  const walk = new SightWalk(grid, maximaOf(grid), {
    column: (request.east - grid.west) / grid.cell,
    row: (grid.north - request.north) / grid.cell,
    eye: request.height,
    targetHeight: request.targetHeight,
    curve: (1 - request.refraction) / (2 * MEAN_EARTH_RADIUS),
    outside: lookFromOutside(grid, request),
  })
  return { grid, request, seen, walk }
}

/** Fills rows from `fromRow` up to, not including, `toRow`: a part small enough to report progress and to stop in between. */
export function viewshedRows(state: ViewshedState, fromRow: number, toRow: number): void {
  const { grid, request, seen, walk } = state
  const { columns, cell } = grid
  const reach = (request.radius ?? Infinity) / cell
  const atColumn = (request.east - grid.west) / cell
  const atRow = (grid.north - request.north) / cell
  for (let row = Math.max(0, fromRow); row < Math.min(grid.rows, toRow); row++) {
    // Half a row's width of columns, or -1 where the whole row lies beyond the radius.
    const half = Math.abs(row - atRow) > reach ? -1 : Math.sqrt(reach * reach - (row - atRow) ** 2)
    const first = half < 0 ? columns : Math.max(0, Math.ceil(atColumn - half))
    const last = half < 0 ? -1 : Math.min(columns - 1, Math.floor(atColumn + half))
    const start = row * columns
    seen.fill(UNKNOWN, start, start + columns)
    for (let column = first; column <= last; column++) seen[start + column] = walk.look(column, row)
  }
  hideBehindObstructions(state, fromRow, toRow)
}

/** The whole viewshed at once: for small grids, tests, and callers that are workers themselves. */
export function viewshed(grid: ElevationGrid, request: ViewshedRequest): Uint8Array {
  const state = beginViewshed(grid, request)
  viewshedRows(state, 0, grid.rows)
  return state.seen
}
