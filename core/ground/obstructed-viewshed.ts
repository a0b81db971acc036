/** Trees and walls in a viewshed: cells whose line of sight an obstruction crosses above the line are hidden. */
import type { ElevationGrid, GridPoint } from './elevation-grid.ts'
import { AT_END } from './grid-line.ts'
import { placedObstructions, obstructionTop, shareOfCrossing } from './obstruction.ts'
import { GRAZE } from './sight-walk.ts'
import { sightElevation } from './sight.ts'
import { HIDDEN, SEEN, UNKNOWN, type ViewshedRequest } from './viewshed-request.ts'

interface Casting {
  readonly grid: ElevationGrid
  readonly request: ViewshedRequest
  readonly seen: Uint8Array
}

/** Metres to the east between which a row lies behind a stretch as the eye has it; infinite where it goes on for ever, null when none does. */
function behindOn(eye: GridPoint, one: GridPoint, other: GridPoint, north: number): readonly [number, number] | null {
  const [a, b] = [one, other].map(({ east, north: up }) => ({ x: east - eye.east, y: up - eye.north }))
  if (a === undefined || b === undefined) return null
  const row = north - eye.north
  let [low, high] = [Infinity, -Infinity]
  const meets = (x: number): void => {
    low = Math.min(low, x)
    high = Math.max(high, x)
  }
  // The rays beyond both ends, and the stretch itself.
  for (const { x, y } of [a, b]) if (y * row > 0 && row / y >= 1) meets((x * row) / y)
  if (a.y !== b.y && (a.y - row) * (b.y - row) <= 0) meets(a.x + ((b.x - a.x) * (row - a.y)) / (b.y - a.y))
  const turn = Math.sign(a.x * b.y - a.y * b.x)
  if (turn === 0) return null
  if (-a.y * turn >= 0 && b.y * turn >= 0) high = Infinity
  if (a.y * turn >= 0 && -b.y * turn >= 0) low = -Infinity
  // A row that meets no border of what lies behind is wholly behind or wholly beside: the exact look tells.
  if (low === Infinity && high === Infinity) low = -Infinity
  if (low === -Infinity && high === -Infinity) high = Infinity
  return low <= high ? [eye.east + low, eye.east + high] : null
}

/** What an obstruction makes of the look at one cell. */
function lookPast(
  { grid, request, seen }: Casting,
  column: number,
  row: number,
  one: GridPoint,
  other: GridPoint,
  height: number,
): void {
  const index = row * grid.columns + column
  if (seen[index] === HIDDEN) return
  const ground = grid.heights[index] as number
  if (Number.isNaN(ground)) return
  const cell = { east: grid.west + column * grid.cell, north: grid.north - row * grid.cell }
  const share = shareOfCrossing(request, cell, one, other)
  if (share === null) return
  const whole = Math.hypot(cell.east - request.east, cell.north - request.north)
  if (whole > (request.radius ?? Infinity)) return
  const distance = share * whole
  const nearest = AT_END * grid.cell
  if (distance < nearest || distance > whole - nearest) return
  const top = obstructionTop(grid, request, cell, share, height)
  if (top === null) {
    if (seen[index] === SEEN) seen[index] = UNKNOWN
  } else if (
    top >
    sightElevation(request.height, ground + request.targetHeight, distance, whole, request.refraction) + GRAZE
  )
    seen[index] = HIDDEN
}

/** Hides what the asked-for obstructions hide in rows that are filled already, from one up to, not including, another. */
export function hideBehindObstructions(casting: Casting, fromRow: number, toRow: number): void {
  const { grid, request } = casting
  const { obstructions = [] } = request
  if (obstructions.length === 0) return
  for (const { corners, height } of placedObstructions(grid, obstructions)) {
    for (let at = 1; at < corners.length; at++) {
      const [one, other] = [corners[at - 1] as GridPoint, corners[at] as GridPoint]
      for (let row = Math.max(0, fromRow); row < Math.min(grid.rows, toRow); row++) {
        const span = behindOn(request, one, other, grid.north - row * grid.cell)
        if (span === null) continue
        const first = Math.max(0, Math.floor((span[0] - grid.west) / grid.cell) - 1)
        const last = Math.min(grid.columns - 1, Math.ceil((span[1] - grid.west) / grid.cell) + 1)
        for (let column = first; column <= last; column++) lookPast(casting, column, row, one, other, height)
      }
    }
  }
}
