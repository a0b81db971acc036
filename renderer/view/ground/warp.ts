/** A mapping of the plane that bends little: exact on a coarse lattice, straight between its posts. */

export interface Pair {
  readonly x: number
  readonly y: number
}

/** Posts stand `step` apart over 0..width and 0..height, and one step beyond. */
export interface Warp {
  readonly step: number
  readonly columns: number
  readonly x: Float64Array
  readonly y: Float64Array
}

export function warpOf(width: number, height: number, step: number, exact: (x: number, y: number) => Pair): Warp {
  const columns = Math.floor(width / step) + 2
  const rows = Math.floor(height / step) + 2
  const warp: Warp = { step, columns, x: new Float64Array(columns * rows), y: new Float64Array(columns * rows) }
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const found = exact(column * step, row * step)
      warp.x[row * columns + column] = found.x
      warp.y[row * columns + column] = found.y
    }
  }
  return warp
}

export function warped({ step, columns, x: xs, y: ys }: Warp, x: number, y: number): Pair {
  const rows = xs.length / columns
  const column = Math.max(0, Math.min(columns - 2, Math.floor(x / step)))
  const row = Math.max(0, Math.min(rows - 2, Math.floor(y / step)))
  const [u, v] = [x / step - column, y / step - row]
  const post = row * columns + column
  const mix = (values: Float64Array): number =>
    (1 - v) * ((1 - u) * (values[post] ?? 0) + u * (values[post + 1] ?? 0)) +
    v * ((1 - u) * (values[post + columns] ?? 0) + u * (values[post + columns + 1] ?? 0))
  return { x: mix(xs), y: mix(ys) }
}

/** Fills in where the points (i + 0.5, y) fall, i = 0, 1, 2... as far as the line is long. */
export function warpLine(warp: Warp, y: number, intoX: Float64Array, intoY: Float64Array): void {
  const { step } = warp
  for (let from = 0; from < intoX.length; from += step) {
    const start = warped(warp, from, y)
    const end = warped(warp, from + step, y)
    const [runX, runY] = [(end.x - start.x) / step, (end.y - start.y) / step]
    const to = Math.min(intoX.length, from + step)
    for (let at = from; at < to; at++) {
      intoX[at] = start.x + runX * (at + 0.5 - from)
      intoY[at] = start.y + runY * (at + 0.5 - from)
    }
  }
}
