/** A preview of the viewshed in a single pass, for while something moves: some hundredths of what it calls seen is wrong, either way. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { type ElevationGrid, elevationAt } from './elevation-grid.ts'
import { hideBehindObstructions } from './obstructed-viewshed.ts'
import { HIDDEN, SEEN, UNKNOWN, type ViewshedRequest } from './viewshed-request.ts'

/** What the passes over rows share; slopes are rises over cells of the longer axis. */
interface Pass {
  readonly grid: ElevationGrid
  readonly seen: Uint8Array
  readonly eye: number
  readonly targetHeight: number
  /** Metres of drop by the square of cells. */
  readonly curve: number
  readonly atColumn: number
  readonly atRow: number
  /** Cells looked at to each side. */
  readonly reach: number
  /** One by the number of cells: divisions are slow. */
  readonly inverse: Float64Array
  /** By column: the slope at which ground first shows above what is nearer, for the row before and for this one. */
  before: Float64Array
  now: Float64Array
}

/**
 * HIDDEN, SEEN or UNKNOWN by cell. Ring by ring outward, the slope that hides a cell is read between those of its two inner neighbours
 * (Wang, Robinson and White, PE&RS 66, 2000, by planes; Franklin and Ray, 1994, by rings). The eye is put on the nearest cell centre, as
 * far above the ground as it was. The cells beside it are seen, whatever their height. Unknown ground is marked but hides nothing.
 * `seen` is filled again; one and the same may serve all along a drag.
 */
export function viewshedPreview(
  grid: ElevationGrid,
  request: ViewshedRequest,
  seen: Uint8Array = new Uint8Array(grid.columns * grid.rows),
): Uint8Array {
  const { columns, rows, cell } = grid
  seen.fill(HIDDEN)
  const column = Math.round((request.east - grid.west) / cell)
  const row = Math.round((grid.north - request.north) / cell)
  const eye = eyeOver(grid, request, column, row)
  if (eye === null) return seen.fill(UNKNOWN)
  const pass: Pass = {
    grid,
    seen,
    eye,
    targetHeight: request.targetHeight,
    curve: ((1 - request.refraction) / (2 * MEAN_EARTH_RADIUS)) * cell * cell,
    atColumn: column,
    atRow: row,
    reach: Math.min(columns + rows, Math.floor((request.radius ?? Infinity) / cell)),
    inverse: Float64Array.from({ length: Math.max(columns, rows) + 1 }, (_, cells) => 1 / cells),
    before: new Float64Array(columns),
    now: new Float64Array(columns),
  }
  ownRow(pass)
  const own = pass.before.slice()
  for (let down = 1; down <= Math.min(pass.reach, rows - 1 - row); down++) farRow(pass, row + down, down)
  pass.before.set(own)
  for (let up = 1; up <= Math.min(pass.reach, row); up++) farRow(pass, row - up, up)
  if (request.radius !== null) forgetBeyond(pass, request.radius / cell)
  hideBehindObstructions({ grid, request, seen }, 0, rows)
  return seen
}

/** Metres above the sea of the eye over a cell; null outside the grid and on unknown ground. */
function eyeOver(grid: ElevationGrid, request: ViewshedRequest, column: number, row: number): number | null {
  if (!(column >= 0 && row >= 0 && column < grid.columns && row < grid.rows)) return null
  const ground = grid.heights[row * grid.columns + column] as number
  const below = elevationAt(grid, request.east, request.north)
  if (Number.isNaN(ground) || below === null) return null
  return ground === below ? request.height : request.height - below + ground
}

function ownRow(pass: Pass): void {
  const { grid, seen, atColumn, atRow, before, inverse, curve, eye, targetHeight } = pass
  const start = atRow * grid.columns
  seen[start + atColumn] = SEEN
  for (const way of [-1, 1]) {
    let needed = -Infinity
    for (let run = 1, last = runs(pass, way); run <= last; run++) {
      const column = atColumn + way * run
      const ground = (grid.heights[start + column] as number) - curve * run * run - eye
      const perCell = inverse[run] as number
      seen[start + column] =
        (ground + targetHeight) * perCell >= needed ? SEEN : Number.isNaN(ground) ? UNKNOWN : HIDDEN
      if (ground * perCell > needed) needed = ground * perCell
      before[column] = needed
    }
  }
}

/** Cells from the eye's column to the end of the row, or of the radius. */
function runs(pass: Pass, way: number): number {
  return Math.min(pass.reach, way < 0 ? pass.atColumn : pass.grid.columns - 1 - pass.atColumn)
}

/** A row `away` rows from the eye's: outward both ways from the column of the eye. Written for speed. */
function farRow(pass: Pass, row: number, away: number): void {
  const { grid, before, now, seen, atColumn, eye, curve, inverse, targetHeight } = pass
  const { heights } = grid
  const centre = row * grid.columns + atColumn
  const base = eye + curve * away * away
  const perAway = inverse[away] as number
  const own = ((heights[centre] as number) - base) * perAway
  const inner = away === 1 ? -Infinity : (before[atColumn] as number)
  seen[centre] = own + targetHeight * perAway >= inner ? SEEN : Number.isNaN(own) ? UNKNOWN : HIDDEN
  now[atColumn] = own > inner ? own : inner
  for (let way = -1; way <= 1; way += 2) {
    const last = runs(pass, way)
    const steepLast = Math.min(last, away)
    let corner = before[atColumn] as number
    let needed = 0
    let column = atColumn
    let cell = centre
    // Where rows count for more, both inner neighbours lie in the row before; on the diagonal only the corner counts.
    for (let run = 1; run <= steepLast; run++) {
      column = (column + way) | 0
      cell = (cell + way) | 0
      const straight = before[column] as number
      needed = away === 1 ? -Infinity : run === away ? corner : straight + run * perAway * (corner - straight)
      const slope = ((heights[cell] as number) - base - curve * run * run) * perAway
      if (slope + targetHeight * perAway >= needed) seen[cell] = SEEN
      else if (slope !== slope) seen[cell] = UNKNOWN
      if (slope > needed) needed = slope
      now[column] = needed
      corner = straight
    }
    // Where columns count for more, one of them lies in this row.
    for (let run = steepLast + 1; run <= last; run++) {
      column = (column + way) | 0
      cell = (cell + way) | 0
      const perCell = inverse[run] as number
      const share = away * perCell
      const height = (heights[cell] as number) - base
      const slope = height * perCell - curve * run
      needed = needed * (1 - share) + corner * share
      if (slope + targetHeight * perCell >= needed) seen[cell] = SEEN
      else if (slope !== slope) seen[cell] = UNKNOWN
      if (slope > needed) needed = slope
      now[column] = needed
      corner = before[column] as number
    }
  }
  pass.before = now
  pass.now = before
}

/** Marks what lies farther than the radius, in cells, as not looked at. */
function forgetBeyond({ grid, seen, atColumn, atRow }: Pass, radius: number): void {
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      if (Math.hypot(column - atColumn, row - atRow) > radius) seen[row * grid.columns + column] = UNKNOWN
    }
  }
}
