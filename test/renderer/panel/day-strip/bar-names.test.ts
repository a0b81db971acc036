/** Where names of bars are written: never one over another, never beyond the axis. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type NamedBar, placeBarNames, placeOneName } from '#renderer/panel/day-strip/bar-names.ts'

const WIDTH = 1000

const rows = fc
  .array(
    fc.tuple(fc.integer({ min: 2, max: 200 }), fc.integer({ min: 2, max: 300 }), fc.integer({ min: 10, max: 220 })),
    {
      maxLength: 6,
    },
  )
  .map((parts) => {
    let at = 0
    return parts.flatMap(([gap, length, name]): NamedBar[] => {
      const from = at + gap
      at = from + length
      return at <= WIDTH ? [{ from, until: at, name }] : []
    })
  })

function written(bar: NamedBar, place: 'in' | 'after' | 'before'): readonly [number, number] {
  if (place === 'in') return [bar.from, bar.until]
  return place === 'after' ? [bar.until, bar.until + bar.name] : [bar.from - bar.name, bar.from]
}

test('names overlap neither each other nor another bar, and stay on the axis', () => {
  fc.assert(
    fc.property(rows, (bars) => {
      const taken = placeBarNames(bars, WIDTH).flatMap((place, index) => {
        const bar = bars[index]
        return place === null || bar === undefined ? [] : [{ index, span: written(bar, place) }]
      })
      for (const { index, span } of taken) {
        expect(span[0]).toBeGreaterThanOrEqual(0)
        expect(span[1]).toBeLessThanOrEqual(WIDTH)
        const others = [
          ...taken.filter((other) => other.index !== index).map((other) => other.span),
          ...bars.filter((_, at) => at !== index).map(({ from, until }) => [from, until] as const),
        ]
        for (const other of others)
          expect(Math.min(span[1], other[1]) - Math.max(span[0], other[0])).toBeLessThanOrEqual(0)
      }
    }),
  )
})

test('a long bar bears its name, a short one has it beside', () => {
  expect(placeBarNames([{ from: 100, until: 400, name: 90 }], WIDTH)).toEqual(['in'])
  expect(placeBarNames([{ from: 100, until: 140, name: 90 }], WIDTH)).toEqual(['after'])
  expect(placeBarNames([{ from: 940, until: 980, name: 90 }], WIDTH)).toEqual(['before'])
})

test('of several bars the longest with room bears the one name', () => {
  const bars = [
    { from: 0, until: 60 },
    { from: 200, until: 500 },
    { from: 600, until: 620 },
  ]
  expect(placeOneName(bars, 120, WIDTH)).toEqual({ index: 1, place: 'in' })
  expect(placeOneName([{ from: 990, until: 1000 }], 400, WIDTH)).toEqual({ index: 0, place: 'before' })
})
