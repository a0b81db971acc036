/** Marching squares: the rings on which a height field passes a level, with the higher ground on their left. */
import type { IslandPoint } from './island-frame.ts'

/** Values row by row from the south-west corner at `origin`; the outermost values must lie below every level asked for. */
export interface ScalarField {
  readonly columns: number
  readonly rows: number
  /** Metres between neighbours. */
  readonly spacing: number
  readonly origin: IslandPoint
  readonly values: Float64Array
}

export type IslandRing = readonly IslandPoint[]

/** Samples a function over the rectangle from `origin`, and forces its rim below every level. */
export function sampleField(
  origin: IslandPoint,
  size: { readonly columns: number; readonly rows: number; readonly spacing: number },
  valueAt: (point: IslandPoint) => number,
): ScalarField {
  const { columns, rows, spacing } = size
  const values = new Float64Array(columns * rows)
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const rim = row === 0 || column === 0 || row === rows - 1 || column === columns - 1
      const point = { east: origin.east + column * spacing, north: origin.north + row * spacing }
      values[row * columns + column] = rim ? -1000 : valueAt(point)
    }
  }
  return { columns, rows, spacing, origin, values }
}

/** Edges of a cell: 0 south, 1 east, 2 north, 3 west. Lines run with the higher corner on their left. */
const LINES: readonly (readonly (readonly [number, number])[])[] = [
  [],
  [[0, 3]],
  [[1, 0]],
  [[1, 3]],
  [[2, 1]],
  [
    [0, 3],
    [2, 1],
  ],
  [[2, 0]],
  [[2, 3]],
  [[3, 2]],
  [[0, 2]],
  [
    [1, 0],
    [3, 2],
  ],
  [[1, 2]],
  [[3, 1]],
  [[0, 1]],
  [[3, 0]],
  [],
]

/** All closed rings at `level`. */
export function isolines(field: ScalarField, level: number): IslandRing[] {
  const next = new Map<number, number>()
  const { columns, rows, values } = field
  for (let row = 0; row < rows - 1; row++) {
    for (let column = 0; column < columns - 1; column++) {
      const cell = row * columns + column
      const corners = cornerBits(values, cell, columns, level)
      for (const [from, to] of LINES[corners] ?? []) next.set(edgeKey(cell, from, columns), edgeKey(cell, to, columns))
    }
  }
  return chain(next).map((edges) => edges.map((edge) => crossing(field, edge, level)))
}

/** Bits of the corners above the level: 1 south-west, 2 south-east, 4 north-east, 8 north-west. */
function cornerBits(values: Float64Array, cell: number, columns: number, level: number): number {
  const southWest = (values[cell] ?? 0) > level ? 1 : 0
  const southEast = (values[cell + 1] ?? 0) > level ? 2 : 0
  const northEast = (values[cell + columns + 1] ?? 0) > level ? 4 : 0
  const northWest = (values[cell + columns] ?? 0) > level ? 8 : 0
  return southWest | southEast | northEast | northWest
}

/** A number of its own for each grid edge: even for edges to the east of a corner, odd for edges to its north. */
function edgeKey(cell: number, side: number, columns: number): number {
  if (side === 0) return cell * 2
  if (side === 1) return (cell + 1) * 2 + 1
  if (side === 2) return (cell + columns) * 2
  return cell * 2 + 1
}

function chain(next: Map<number, number>): number[][] {
  const rings: number[][] = []
  for (const start of next.keys()) {
    const ring: number[] = []
    let edge: number | undefined = start
    while (edge !== undefined && next.has(edge)) {
      ring.push(edge)
      const following: number | undefined = next.get(edge)
      next.delete(edge)
      edge = following
    }
    if (ring.length > 3 && edge === start) rings.push(ring)
  }
  return rings
}

function crossing(field: ScalarField, edge: number, level: number): IslandPoint {
  const corner = edge >> 1
  const column = corner % field.columns
  const row = (corner - column) / field.columns
  const upward = (edge & 1) === 1
  const start = field.values[corner] ?? 0
  const end = field.values[corner + (upward ? field.columns : 1)] ?? 0
  const share = Math.min(0.98, Math.max(0.02, (level - start) / (end - start)))
  return {
    east: field.origin.east + (column + (upward ? 0 : share)) * field.spacing,
    north: field.origin.north + (row + (upward ? share : 0)) * field.spacing,
  }
}
