/** The f-numbers engraved on lenses in third stops, and the exact values behind the marks, 2^(i/6). */

const FIRST_THIRD = -3
/** Marks from f/0.7; trade marks, each within 0.085 stop of its exact value (1.2 as a third stop: 0.14). */
const MARKS = [
  0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14,
  16, 18, 20, 22, 25, 29, 32, 36, 40, 45, 51, 57, 64,
] as const

export interface FStop {
  /** As engraved. */
  readonly mark: number
  readonly exact: number
}

export const THIRD_STOPS: readonly FStop[] = MARKS.map((mark, index) => ({
  mark,
  exact: 2 ** ((index + FIRST_THIRD) / 6),
}))

/** How much rounding of a needed f-number is forgiven before the next stop is asked for, in parts of its value. */
const FORGIVEN = 1e-9

/** The first third stop that is at least `needed`; null beyond f/64. */
export function nextThirdStop(needed: number): FStop | null {
  return THIRD_STOPS.find((stop) => stop.exact >= needed * (1 - FORGIVEN)) ?? null
}

/**
 * The exact value behind an f-number as marked: at the marks themselves 2^(i/6), between them evenly over the logarithm, so that
 * a larger number is always a smaller opening; beyond the marks the number itself, scaled as at the last mark.
 */
export function exactAperture(marked: number): number {
  const above = THIRD_STOPS.findIndex((stop) => stop.mark >= marked)
  const upper = THIRD_STOPS[above === -1 ? THIRD_STOPS.length - 1 : above]
  const lower = THIRD_STOPS[above - 1]
  if (upper === undefined) return marked
  if (lower === undefined || marked >= upper.mark) return (marked * upper.exact) / upper.mark
  const along = Math.log(marked / lower.mark) / Math.log(upper.mark / lower.mark)
  return lower.exact * (upper.exact / lower.exact) ** along
}
