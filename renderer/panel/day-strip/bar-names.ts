/** Where the names of a row of bars are written: in the bar where it is long enough, else beside it, never over another bar. */

export interface NamedBar {
  /** Pixels from the axis's beginning. */
  readonly from: number
  readonly until: number
  /** Pixels that the name takes. */
  readonly name: number
}

export type NamePlace = 'in' | 'after' | 'before'

/** Pixels between a bar and the name beside it. */
const GAP = 5

/** A place for each bar's name; null where there is none. */
export function placeBarNames(bars: readonly NamedBar[], width: number): (NamePlace | null)[] {
  // What is written beside a bar takes room from the next.
  let taken = 0
  return bars.map((bar, index) => {
    const next = bars[index + 1]?.from ?? width
    const before = Math.max(taken, bars[index - 1]?.until ?? 0)
    taken = Math.max(taken, bar.until)
    if (bar.name + 2 * GAP <= bar.until - bar.from) return 'in'
    if (bar.until + GAP + bar.name <= next) {
      taken = bar.until + GAP + bar.name
      return 'after'
    }
    return bar.from - GAP - bar.name >= before ? 'before' : null
  })
}

/** The one bar of a row that bears the name: the longest that has a place for it. */
export function placeOneName(
  bars: readonly Omit<NamedBar, 'name'>[],
  name: number,
  width: number,
): { readonly index: number; readonly place: NamePlace } | null {
  const order = bars.map((_, index) => index)
  const length = (index: number): number => (bars[index]?.until ?? 0) - (bars[index]?.from ?? 0)
  order.sort((one, other) => length(other) - length(one))
  const alone = (chosen: number): NamePlace | null =>
    placeBarNames(
      bars.map((bar, index) => ({ ...bar, name: index === chosen ? name : 0 })),
      width,
    )[chosen] ?? null
  for (const index of order) {
    const place = alone(index)
    if (place !== null) return { index, place }
  }
  const [longest] = order
  return longest === undefined ? null : { index: longest, place: 'in' }
}
