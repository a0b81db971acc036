/** A line in its runs: those from which something is hidden, and the rest. */
import type { Point } from './plan-view.ts'

/** The runs of a line from which the body is hidden, or those from which it is not: a stretch is hidden when either of its ends is. */
export function runsOf(
  points: readonly Point[],
  hidden: readonly (boolean | null)[],
  behind: boolean,
): readonly (readonly Point[])[] {
  const runs: Point[][] = []
  points.slice(1).forEach((to, index) => {
    const from = points[index] ?? to
    if ((hidden[index] === true || hidden[index + 1] === true) !== behind) return
    const open = runs.at(-1)
    if (open !== undefined && open.at(-1) === from) open.push(to)
    else runs.push([from, to])
  })
  return runs
}
