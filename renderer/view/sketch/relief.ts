/** The island's elevation grid: posts in rows from the north-west, read smoothly between them. */

export interface Relief {
  readonly columns: number
  readonly rows: number
  /** Degrees of the north-western post. */
  readonly west: number
  readonly north: number
  /** Degrees from post to post. */
  readonly degreesEast: number
  readonly degreesSouth: number
  readonly metresPerUnit: number
  /** In units of `metresPerUnit` above the sea. */
  readonly heights: Int16Array
}

/** Shares of four neighbouring posts at `share` of the way between the middle two: cubic B-spline, and its slope. */
export function splineShares(share: number): readonly [number, number, number, number] {
  const rest = 1 - share
  const first = (rest * rest * rest) / 6
  const last = (share * share * share) / 6
  const second = (4 - 6 * share * share + 3 * share * share * share) / 6
  return [first, second, 1 - first - second - last, last]
}

export function splineSlopes(share: number): readonly [number, number, number, number] {
  const rest = 1 - share
  return [(-rest * rest) / 2, 1.5 * share * share - 2 * share, 0.5 + share - 1.5 * share * share, (share * share) / 2]
}

/** Reads an int16 little-endian file of heights under its header; throws when they don't fit together. */
export function readRelief(header: Omit<Relief, 'heights'>, bytes: ArrayBuffer): Relief {
  if (bytes.byteLength !== header.columns * header.rows * 2) {
    throw new RangeError(`elevation grid: ${bytes.byteLength} bytes for ${header.columns} x ${header.rows} posts`)
  }
  const view = new DataView(bytes)
  const heights = new Int16Array(header.columns * header.rows)
  for (let post = 0; post < heights.length; post++) heights[post] = view.getInt16(post * 2, true)
  return { ...header, heights }
}
