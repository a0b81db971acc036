/** A preview of the viewshed in a single pass, for while something moves: some hundredths of what it calls seen is wrong, either way. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature.ts'
import { type ElevationGrid, elevationAt } from './elevation-grid.ts'
import { SEEN, UNKNOWN, type ViewshedAsk } from './viewshed.ts'

/** What the passes over rows share; slopes are rises over cells of the longer axis. */
interface Pass {
  readonly grid: ElevationGrid
  readonly seen: Uint8Array
  readonly eye: number
  readonly targetHeight: number
  /** Metres of drop by the square of cells. */
  readonly curve: number
  /** Cells, squared. */
  readonly reach: number
  readonly atColumn: number
  readonly atRow: number
  /** By column: the slope at which ground first shows above what is nearer, for the row before and for this one. */
  before: Float64Array
  now: Float64Array
}

/**
 * HIDDEN, SEEN or UNKNOWN by cell. Ring by ring outward, the slope that hides a cell is read between those of its two inner neighbours
 * (Wang, Robinson and White, PE&RS 66, 2000, by planes; Franklin and Ray, 1994, by rings). The eye is put on the nearest cell centre, as
 * far above the ground as it was. The cells beside it are seen, whatever their height. Unknown ground is marked but hides nothing.
 */
export function viewshedPreview(grid: ElevationGrid, ask: ViewshedAsk): Uint8Array {
  const seen = new Uint8Array(grid.columns * grid.rows)
  const column = Math.round((ask.east - grid.west) / grid.cell)
  const row = Math.round((grid.north - ask.north) / grid.cell)
  const eye = eyeOver(grid, ask, column, row)
  if (eye === null) return seen.fill(UNKNOWN)
  const pass: Pass = {
    grid,
    seen,
    eye,
    targetHeight: ask.targetHeight,
    curve: ((1 - ask.refraction) / (2 * MEAN_EARTH_RADIUS)) * grid.cell * grid.cell,
    reach: ask.radius === null ? Infinity : (ask.radius / grid.cell) ** 2,
    atColumn: column,
    atRow: row,
    before: new Float64Array(grid.columns),
    now: new Float64Array(grid.columns),
  }
  ownRow(pass)
  const own = pass.before.slice()
  for (let down = 1; row + down < grid.rows; down++) farRow(pass, row + down, down)
  pass.before.set(own)
  for (let up = 1; row - up >= 0; up++) farRow(pass, row - up, up)
  return seen
}

/** Metres above the sea of the eye over a cell; null outside the grid and on unknown ground. */
function eyeOver(grid: ElevationGrid, ask: ViewshedAsk, column: number, row: number): number | null {
  if (!(column >= 0 && row >= 0 && column < grid.columns && row < grid.rows)) return null
  const ground = grid.heights[row * grid.columns + column] as number
  const below = elevationAt(grid, ask.east, ask.north)
  if (Number.isNaN(ground) || below === null) return null
  return ground === below ? ask.height : ask.height - below + ground
}

function ownRow(pass: Pass): void {
  const { grid, seen, atColumn, atRow } = pass
  seen[atRow * grid.columns + atColumn] = SEEN
  for (const way of [-1, 1]) {
    let needed = -Infinity
    for (let run = 1; ; run++) {
      const column = atColumn + way * run
      if (column < 0 || column >= grid.columns) break
      needed = look(pass, atRow * grid.columns + column, run, run * run, needed)
      pass.before[column] = needed
    }
  }
}

/** A row `away` rows from the eye's: first the column of the eye, then outward both ways. */
function farRow(pass: Pass, row: number, away: number): void {
  const { grid, before, now, atColumn } = pass
  const start = row * grid.columns
  const inner = away === 1 ? -Infinity : (before[atColumn] as number)
  now[atColumn] = look(pass, start + atColumn, away, away * away, inner)
  for (const way of [-1, 1]) {
    const ends = way < 0 ? atColumn : grid.columns - 1 - atColumn
    const steepEnd = Math.min(ends, away)
    const perAway = 1 / away
    // Where rows count for more: both inner neighbours lie in the row before.
    for (let run = 1; run <= steepEnd; run++) {
      const column = atColumn + way * run
      const share = run * perAway
      const corner = before[column - way] as number
      const straight = run === away ? corner : (before[column] as number)
      const needed = away === 1 ? -Infinity : straight + share * (corner - straight)
      now[column] = look(pass, start + column, away, away * away + run * run, needed)
    }
    // Where columns count for more: one of them lies in this row.
    for (let run = steepEnd + 1; run <= ends; run++) {
      const column = atColumn + way * run
      const corner = before[column - way] as number
      const straight = now[column - way] as number
      const needed = straight + (away / run) * (corner - straight)
      now[column] = look(pass, start + column, run, away * away + run * run, needed)
    }
  }
  pass.before = now
  pass.now = before
}

/** Marks a cell; answers the slope that ground behind it needs. */
function look(pass: Pass, cell: number, run: number, squared: number, needed: number): number {
  const ground = (pass.grid.heights[cell] as number) - pass.curve * squared - pass.eye
  if (squared > pass.reach || Number.isNaN(ground)) {
    pass.seen[cell] = UNKNOWN
    return needed
  }
  if (ground + pass.targetHeight >= needed * run) pass.seen[cell] = SEEN
  const slope = ground / run
  return slope > needed ? slope : needed
}
