/** The line of standpoints in its runs: those from which hills hide the body, and the rest. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runsOf } from '#renderer/view/drawing/hidden-runs.ts'

const points = (count: number) => Array.from({ length: count }, (_, x) => ({ x, y: 0 }))
const ends = (runs: ReturnType<typeof runsOf>) => runs.map((run) => [run[0]?.x, run.at(-1)?.x])

describe('runs', () => {
  test('are hidden as far as either end of a stretch is', () => {
    const hidden = [false, false, true, true, false, false]
    expect(ends(runsOf(points(6), hidden, true))).toEqual([[1, 4]])
    expect(ends(runsOf(points(6), hidden, false))).toEqual([
      [0, 1],
      [4, 5],
    ])
  })

  test('of unknown ground are drawn as free', () => {
    expect(ends(runsOf(points(3), [null, null, null], false))).toEqual([[0, 2]])
    expect(runsOf(points(3), [null, null, null], true)).toEqual([])
  })

  test('together are the whole line, no stretch twice', () => {
    fc.assert(
      fc.property(fc.array(fc.option(fc.boolean()), { minLength: 2, maxLength: 40 }), (hidden) => {
        const stretches = [true, false].flatMap((behind) =>
          runsOf(points(hidden.length), hidden, behind).flatMap((run) => run.slice(1).map(({ x }) => x)),
        )
        expect(stretches.toSorted((one, other) => one - other)).toEqual(
          Array.from({ length: hidden.length - 1 }, (_, index) => index + 1),
        )
      }),
    )
  })
})
