/** Crossings and spans of known curves, among them those that touch zero between two samples. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Crossing, crossings, spansAbove } from '#core/light/crossing.ts'

const MINUTE = 60_000
const HOUR = 60 * MINUTE
const DAY = 24 * HOUR
const CLOSE = 500

/** A wave of one period, raised. */
const wave =
  (period: number, crest: number, raised: number) =>
  (instant: number): number =>
    raised + Math.cos((2 * Math.PI * (instant - crest)) / period)

/** Half the length of the stretch above zero of such a wave. */
const halfAbove = (period: number, raised: number): number => (period * Math.acos(-raised)) / (2 * Math.PI)

describe('crossings', () => {
  test('of a wave stand where its inverse says, alternate and lie on the side not below', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3 * HOUR, max: 30 * HOUR, noNaN: true }),
        fc.double({ min: 0, max: DAY, noNaN: true }),
        fc.double({ min: -0.999_999, max: 0.999_999, noNaN: true }),
        (period, crest, raised) => {
          const value = wave(period, crest, raised)
          const half = halfAbove(period, raised)
          const expected: number[] = []
          for (let turn = -12; turn <= 12; turn++)
            expected.push(crest + turn * period - half, crest + turn * period + half)
          const found = crossings(value, 0, DAY, 20 * MINUTE)
          const sure = expected.filter((instant) => instant > CLOSE && instant < DAY - CLOSE)
          // Two crossings closer together than the turning point is looked for may be missed both.
          const shortest = Math.min(half, period / 2 - half)
          if (shortest > 2000) expect(found.length).toBeGreaterThanOrEqual(sure.length)
          for (const { instant, rising } of found) {
            const nearest = expected.reduce((best, one) =>
              Math.abs(one - instant) < Math.abs(best - instant) ? one : best,
            )
            expect(Math.abs(nearest - instant)).toBeLessThan(CLOSE)
            expect(value(instant)).toBeGreaterThanOrEqual(-1e-12)
            expect(Number.isInteger(instant)).toBe(true)
            if (shortest > 2000) expect(expected.indexOf(nearest) % 2 === 0).toBe(rising)
          }
          found.slice(1).forEach((one, index) => {
            expect(one.rising).toBe(!found[index]?.rising)
            expect(one.instant).toBeGreaterThanOrEqual(found[index]?.instant ?? Number.NaN)
          })
        },
      ),
      { numRuns: 400 },
    )
  })

  test('of a tent whose tip alone is above, anywhere between the samples and at both ends', () => {
    const step = 10 * MINUTE
    const offsets = [0.01, 0.2, 0.5, 0.8, 0.99, 1.3, 1.5, 2.7, 141.2, 142.5, 143.02, 143.4, 143.99]
    for (const offset of offsets) {
      for (const [up, down] of [[1, 1] as const, [1, 5] as const, [5, 1] as const]) {
        const tip = offset * step
        // A tip one tenth of a step wide.
        const value = (instant: number): number =>
          instant < tip ? 0.05 - (up * (tip - instant)) / step : 0.05 - (down * (instant - tip)) / step
        const spans = spansAbove(value, 0, DAY, step)
        expect(spans.length, `${offset} ${up} ${down}`).toBe(1)
        expect(Math.abs((spans[0]?.from ?? 0) - Math.max(0, tip - (0.05 * step) / up))).toBeLessThan(CLOSE)
        expect(Math.abs((spans[0]?.until ?? 0) - Math.min(DAY, tip + (0.05 * step) / down))).toBeLessThan(CLOSE)
        const dips = spansAbove((instant) => -value(instant), 0, DAY, step)
        expect(dips.length, `dip ${offset}`).toBe(tip > 0.05 * step && tip < DAY - 0.05 * step ? 2 : dips.length)
      }
    }
  })

  test('of a jump stand at the jump', () => {
    const at = 7 * HOUR + 1234
    const found = crossings((instant) => (instant < at ? -1 : 1), 0, DAY, 20 * MINUTE)
    expect(found.map((one) => one.rising)).toEqual([true])
    expect(Math.abs((found[0]?.instant ?? 0) - at)).toBeLessThan(CLOSE)
  })

  test('need few looks', () => {
    let looks = 0
    const value = wave(DAY, 13 * HOUR, 0.3)
    crossings(
      (instant) => {
        looks++
        return value(instant)
      },
      0,
      DAY,
      20 * MINUTE,
    )
    // 73 samples and two crossings; the turns at noon and midnight are far from zero.
    expect(looks).toBeLessThan(90)
  })
})

describe('looks', () => {
  /** The looks beyond the samples that one crossing takes, and where it is found. */
  function looked(value: (instant: number) => number, samples: number): { extra: number; found: Crossing[] } {
    let looks = 0
    const found = crossings(
      (instant) => {
        looks++
        return value(instant)
      },
      0,
      DAY,
      DAY / samples,
    )
    return { extra: looks - samples - 1, found }
  }

  test('at a straight line are on its zero at once, and on either side of it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.constantFrom(1, -1),
        fc.double({ min: 1e-9, max: 1e9, noNaN: true }),
        (share, side, steep) => {
          const zero = share * DAY
          const { extra, found } = looked((instant) => side * steep * ((instant - zero) / DAY), 24)
          expect(found.map(({ rising }) => rising)).toEqual([side > 0])
          expect(Math.abs((found[0]?.instant ?? Number.NaN) - zero)).toBeLessThan(CLOSE)
          expect(extra).toBeLessThanOrEqual(3)
        },
      ),
    )
  })

  test('at smooth curves are half as many as halving takes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        fc.double({ min: -0.6, max: 0.6, noNaN: true }),
        fc.constantFrom(1, -1),
        (share, bend, side) => {
          // Rises throughout, and bends within a step by up to six tenths of its slope.
          const value = (instant: number): number => {
            const x = (instant / DAY - share) * 24
            return side * (x + (bend / 2) * x * Math.abs(x))
          }
          fc.pre(Math.abs(bend) * 24 < 1 || Math.abs(bend) < 0.04)
          const { extra, found } = looked(value, 24)
          expect(found.length).toBe(1)
          // An hour down to a quarter of a second: halving looks 14 times.
          expect(extra).toBeLessThanOrEqual(7)
        },
      ),
    )
  })

  test('at a jump are no more than thrice as many as halving takes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        (share, high) => {
          const { extra, found } = looked((instant) => (instant < share * DAY ? -1 : high), 24)
          expect(found.length).toBe(1)
          expect(Math.abs((found[0]?.instant ?? 0) - share * DAY)).toBeLessThan(CLOSE)
          expect(extra).toBeLessThanOrEqual(3 * 14)
        },
      ),
    )
  })
})

describe('spans above', () => {
  test('are the whole stretch, or none', () => {
    expect(spansAbove(() => 1, 5, DAY, HOUR)).toEqual([{ from: 5, until: DAY }])
    expect(spansAbove(() => 0, 5, DAY, HOUR)).toEqual([{ from: 5, until: DAY }])
    expect(spansAbove(() => -1, 5, DAY, HOUR)).toEqual([])
    expect(spansAbove(() => Number.NEGATIVE_INFINITY, 5, DAY, HOUR)).toEqual([])
    expect(spansAbove(() => 1, DAY, DAY, HOUR)).toEqual([])
    expect(spansAbove(() => 1, DAY, 0, HOUR)).toEqual([])
  })

  test('agree with a look at every few seconds', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: 0, max: DAY, noNaN: true }), fc.double({ min: -0.9, max: 0.95, noNaN: true })),
          {
            minLength: 1,
            maxLength: 4,
          },
        ),
        (waves) => {
          const values = waves.map(([crest, raised]) => wave(DAY, crest, raised))
          const value = (instant: number): number => Math.min(...values.map((one) => one(instant)))
          const spans = spansAbove(value, 0, DAY, 10 * MINUTE)
          for (let instant = 0; instant < DAY; instant += 37_000) {
            const within = spans.some((one) => instant >= one.from - CLOSE && instant <= one.until + CLOSE)
            const inside = spans.some((one) => instant >= one.from && instant <= one.until)
            if (value(instant) >= 0) expect(within).toBe(true)
            else expect(inside).toBe(false)
          }
        },
      ),
      { numRuns: 40 },
    )
  })
})
