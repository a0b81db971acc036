/** Weather on a height grid: rivers cut by the stream-power law (Braun and Willett 2013, implicit form), slopes creep. */
import { MinHeap } from './min-heap.ts'

/** Heights row by row from the south-west, metres; `sea` marks cells whose height stays at the sea's. */
export interface HeightGrid {
  readonly columns: number
  readonly rows: number
  /** Metres between neighbours. */
  readonly spacing: number
  readonly heights: Float64Array
  readonly sea: Uint8Array
}

const AROUND = [
  [-1, 0],
  [1, 0],
  [0, -1],
  [0, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
] as const

/** Where each cell drains to, and the cells in an order in which a cell comes after the one it drains to. */
export interface Drainage {
  readonly receiver: Int32Array
  readonly order: Int32Array
  /** Square metres that drain through each cell, its own included. */
  readonly area: Float64Array
}

/** Drains every cell to the sea by flooding upward from it (Barnes et al. 2014): hollows drain over their lowest rim. */
export function drain(grid: HeightGrid): Drainage {
  const { columns, rows, heights, sea } = grid
  const count = columns * rows
  const receiver = new Int32Array(count).fill(-1)
  const order = new Int32Array(count)
  const heap = new MinHeap(count)
  const seen = new Uint8Array(count)
  for (let cell = 0; cell < count; cell++) {
    if (sea[cell] !== 1) continue
    seen[cell] = 1
    receiver[cell] = cell
    heap.push(cell, 0)
  }
  let filled = 0
  for (let cell = heap.pop(); cell >= 0; cell = heap.pop()) {
    order[filled++] = cell
    const column = cell % columns
    const row = (cell - column) / columns
    for (const [east, north] of AROUND) {
      if (column + east < 0 || column + east >= columns || row + north < 0 || row + north >= rows) continue
      const next = cell + east + north * columns
      if (seen[next] === 1) continue
      seen[next] = 1
      receiver[next] = cell
      heap.push(next, Math.max(heights[next] ?? 0, heap.lastPriority))
    }
  }
  steepen(grid, receiver)
  return { receiver, order, area: gather(grid, receiver, order) }
}

/** Lets cells outside hollows drain down their steepest side instead of to whichever neighbour flooded them. */
function steepen(grid: HeightGrid, receiver: Int32Array): void {
  const { columns, rows, heights, sea } = grid
  for (let row = 1; row < rows - 1; row++) {
    for (let column = 1; column < columns - 1; column++) {
      const cell = row * columns + column
      if (sea[cell] === 1) continue
      let steepest = 0
      for (const [east, north] of AROUND) {
        const next = cell + east + north * columns
        const fall = ((heights[cell] ?? 0) - (heights[next] ?? 0)) / (east !== 0 && north !== 0 ? Math.SQRT2 : 1)
        if (fall > steepest) {
          steepest = fall
          receiver[cell] = next
        }
      }
    }
  }
}

/** Sums the drained area from the heads of the valleys to the sea, cell by cell in falling order of height. */
function gather(grid: HeightGrid, receiver: Int32Array, order: Int32Array): Float64Array {
  const area = new Float64Array(receiver.length).fill(grid.spacing * grid.spacing)
  for (let place = order.length - 1; place >= 0; place--) {
    const cell = order[place] ?? 0
    const next = receiver[cell] ?? cell
    if (next !== cell && next >= 0) area[next] = (area[next] ?? 0) + (area[cell] ?? 0)
  }
  return area
}

export interface Weather {
  readonly rounds: number
  /** How strongly rivers cut, per round. */
  readonly cut: number
  /** Share of the difference to the neighbours' mean that creeps off per round. */
  readonly creep: number
  /** Share of the way back to `target` that the land is lifted per round. */
  readonly uplift: number
}

/** Carves the grid in place, round by round, while lifting it toward `target`. */
export function weather(grid: HeightGrid, target: Float64Array, how: Weather): void {
  const { heights, sea, spacing } = grid
  for (let round = 0; round < how.rounds; round++) {
    for (let cell = 0; cell < heights.length; cell++) {
      if (sea[cell] !== 1) heights[cell] = (heights[cell] ?? 0) + how.uplift * (target[cell] ?? 0)
    }
    const { receiver, order, area } = drain(grid)
    for (const cell of order) {
      const next = receiver[cell] ?? cell
      if (next === cell || sea[cell] === 1) continue
      const power = (how.cut * Math.sqrt(area[cell] ?? 0)) / spacing
      heights[cell] = ((heights[cell] ?? 0) + power * (heights[next] ?? 0)) / (1 + power)
    }
    creep(grid, how.creep)
  }
}

/** Rounds ridges and fills gullies: each cell moves toward the mean of its four neighbours. */
function creep(grid: HeightGrid, share: number): void {
  const { columns, rows, heights, sea } = grid
  const before = Float64Array.from(heights)
  for (let row = 1; row < rows - 1; row++) {
    for (let column = 1; column < columns - 1; column++) {
      const cell = row * columns + column
      if (sea[cell] === 1) continue
      const around =
        (before[cell - 1] ?? 0) +
        (before[cell + 1] ?? 0) +
        (before[cell - columns] ?? 0) +
        (before[cell + columns] ?? 0)
      heights[cell] = (before[cell] ?? 0) * (1 - share) + (around / 4) * share
    }
  }
}
