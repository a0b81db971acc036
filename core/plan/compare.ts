/** Side by side: which of several assessed spots is best at a figure, and whether they differ in it at all. */

/** Whether less or more of a figure is better; null where neither is. */
export type Better = 'less' | 'more' | null

/** As many spots stand side by side at most. */
export const MOST_COMPARED = 4

export interface Compared {
  /** True when all the values are alike, or fewer than two are known. */
  readonly alike: boolean
  /** For each value, whether it is the best known one; never when all are alike. */
  readonly best: readonly boolean[]
}

/** Values that differ by less than this part of the larger count as alike: nobody sees it. */
const SAME = 0.005

/** Compares figures; null is "unknown" and is never best. */
export function compareFigures(values: readonly (number | null)[], better: Better): Compared {
  const known = values.filter((value) => value !== null)
  const least = Math.min(...known)
  const most = Math.max(...known)
  const alike = known.length < 2 ? values.length === known.length : close(least, most) && known.length === values.length
  if (better === null || known.length < 2 || close(least, most)) return { alike, best: values.map(() => false) }
  const target = better === 'less' ? least : most
  return { alike, best: values.map((value) => value !== null && close(value, target)) }
}

/** Compares words: only whether they differ. */
export function compareWords(values: readonly string[]): Compared {
  const [first] = values
  return { alike: values.every((value) => value === first), best: values.map(() => false) }
}

function close(one: number, other: number): boolean {
  return Math.abs(one - other) <= SAME * Math.max(Math.abs(one), Math.abs(other))
}
