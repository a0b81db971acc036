/** Where keys take the point that is read off the profile. */

/** Steps across the drawing by an arrow key; ten times as far with Shift or by the page keys. */
const STEPS = 100

/** Where a key takes the point; null when it is none of its keys. */
export function keyedPoint(key: string, shift: boolean, at: number, length: number): number | null {
  const step = (length / STEPS) * (shift ? 10 : 1)
  const to: Readonly<Record<string, number>> = {
    ArrowRight: at + step,
    ArrowUp: at + step,
    ArrowLeft: at - step,
    ArrowDown: at - step,
    PageUp: at + length / 10,
    PageDown: at - length / 10,
    Home: 0,
    End: length,
  }
  const wanted = to[key]
  return wanted === undefined ? null : Math.max(0, Math.min(length, wanted))
}
