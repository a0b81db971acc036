/** Side by side: the best is told only where there is one. */
import { describe, expect, it } from 'vitest'
import { compareFigures, compareWords } from '#core/plan/compare.ts'

describe('comparing figures', () => {
  it('marks the least or the most', () => {
    expect(compareFigures([4, 2, 6], 'less').best).toEqual([false, true, false])
    expect(compareFigures([4, 2, 6], 'more').best).toEqual([false, false, true])
    expect(compareFigures([4, 2, 6], null).best).toEqual([false, false, false])
  })

  it('never calls the unknown best, nor the only known one', () => {
    expect(compareFigures([null, 2, 3], 'less').best).toEqual([false, true, false])
    expect(compareFigures([null, 2], 'less').best).toEqual([false, false])
    expect(compareFigures([null, null], 'less')).toEqual({ alike: false, best: [false, false] })
  })

  it('marks none when all are alike, and all that tie when not', () => {
    expect(compareFigures([5, 5.001, 5], 'less')).toEqual({ alike: true, best: [false, false, false] })
    expect(compareFigures([5, 5, 9], 'less').best).toEqual([true, true, false])
    expect(compareFigures([0, 0], 'more').alike).toBe(true)
  })

  it('calls alike what differs by half a percent, and no more', () => {
    // Half a percent of 1000 is 5; figures of either sign, and about 0.
    expect(compareFigures([1000, 995.01], 'less')).toEqual({ alike: true, best: [false, false] })
    expect(compareFigures([1000, 994], 'less')).toEqual({ alike: false, best: [false, true] })
    expect(compareFigures([1000, 960], 'more')).toEqual({ alike: false, best: [true, false] })
    expect(compareFigures([-1000, -994], 'less').best).toEqual([true, false])
    expect(compareFigures([0, 0.001], 'less').best).toEqual([true, false])
    // What lies within it of the best ties with it.
    expect(compareFigures([1000, 996, 900], 'more').best).toEqual([true, true, false])
    expect(compareFigures([1000, 994, 900], 'more').best).toEqual([true, false, false])
  })

  it('says of words only whether they differ', () => {
    expect(compareWords(['a', 'a']).alike).toBe(true)
    expect(compareWords(['a', 'b']).alike).toBe(false)
  })
})
