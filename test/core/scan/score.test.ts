/** Margins, degrees and the score: the edge, the middle and the outside of a demand, and how demands weigh together. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bandMargin, degreeOf, meets, scoreOf } from '#core/scan/score.ts'

describe('the margin of a band', () => {
  it.each([
    [0.3, 0],
    [0.45, 1],
    [0.6, 0],
    [0.15, -1],
    [0.675, -0.5],
  ])('of 0.3 to 0.6 is, at %d, %d', (value, margin) => {
    expect(bandMargin(value, { least: 0.3, most: 0.6 }, { finest: 0.005 })).toBeCloseTo(margin, 12)
  })

  it.each([
    [0, 1],
    [20, 0],
    [40, -1],
  ])('open toward head on is, at %d of 0 to 20 degrees, %d', (value, margin) => {
    expect(bandMargin(value, { least: 0, most: 20 }, { finest: 0.5, floor: 0, ceiling: 180 })).toBeCloseTo(margin, 12)
  })

  it.each([
    [180, 1],
    [160, 0],
    [140, -1],
  ])('open toward the rear is, at %d of 160 to 180 degrees, %d', (value, margin) => {
    expect(bandMargin(value, { least: 160, most: 180 }, { finest: 0.5, floor: 0, ceiling: 180 })).toBeCloseTo(
      margin,
      12,
    )
  })

  it('open on both sides is always met', () => {
    expect(bandMargin(77, { least: 0, most: 180 }, { finest: 0.5, floor: 0, ceiling: 180 })).toBe(1)
    expect(bandMargin(77, { least: -1, most: 181 }, { finest: 0.5, floor: 0, ceiling: 180 })).toBe(1)
  })

  it('is open only where an end is given and reached', () => {
    const shape = { finest: 0.5, floor: 0, ceiling: 180 }
    // From just above the one end to just below the other: both edges count, and the middle is best.
    for (const value of [1, 179]) expect(bandMargin(value, { least: 1, most: 179 }, shape)).toBeCloseTo(0, 12)
    expect(bandMargin(90, { least: 1, most: 179 }, shape)).toBe(1)
    expect(bandMargin(0, { least: 0, most: 20 }, { finest: 0.5 })).toBeCloseTo(0, 12)
    expect(bandMargin(180, { least: 160, most: 180 }, { finest: 0.5, floor: 0 })).toBeCloseTo(0, 12)
  })

  it('narrower than the finest is measured by that, open on a side too', () => {
    const shape = { finest: 5, floor: 0, ceiling: 180 }
    expect(bandMargin(11, { least: 0, most: 1 }, shape)).toBeCloseTo(-2, 12)
    expect(bandMargin(169, { least: 179, most: 180 }, shape)).toBeCloseTo(-2, 12)
    expect(bandMargin(87, { least: 92, most: 94 }, shape)).toBeCloseTo(-1, 12)
    // The finest is a half-width: a band twice as wide goes by its own.
    expect(bandMargin(78, { least: 90, most: 102 }, shape)).toBeCloseTo(-2, 12)
  })

  it('of one value alone is measured by the finest half-width', () => {
    expect(bandMargin(0.51, { least: 0.5, most: 0.5 }, { finest: 0.005 })).toBeCloseTo(-2, 9)
  })
})

describe('the degree', () => {
  it('is 0 one half-width outside, 0.8 at the edge, 1 in the middle', () => {
    expect([-2, -1, 0, 1, 2].map(degreeOf)).toEqual([0, 0, 0.8, 1, 1])
  })

  it('never falls as the margin rises, and moves without leaps', () => {
    const margin = fc.double({ min: -3, max: 3, noNaN: true })
    fc.assert(
      fc.property(margin, margin, (one, other) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)]
        const rise = degreeOf(high) - degreeOf(low)
        expect(rise).toBeGreaterThanOrEqual(0)
        expect(rise).toBeLessThanOrEqual(0.8 * (high - low) + 1e-12)
      }),
    )
  })

  it('counts the very edge as met, though rounding may miss it', () => {
    expect([1, 0, -1e-9, -1e-6, -1e-4, -1].map(meets)).toEqual([true, true, true, true, false, false])
  })
})

describe('the score', () => {
  it('weighs each degree', () => {
    expect(
      scoreOf([
        { weight: 3, degree: 1 },
        { weight: 1, degree: 0.2 },
      ]),
    ).toBeCloseTo(0.8, 12)
  })

  it('of nothing demanded is 1', () => {
    expect(scoreOf([])).toBe(1)
    expect(scoreOf([{ weight: 0, degree: 0 }])).toBe(1)
  })

  it('is the degree itself where all are met alike, whatever their weights', () => {
    const weights = fc.array(fc.double({ min: 0.01, max: 10, noNaN: true }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(weights, fc.double({ min: 0, max: 1, noNaN: true }), (all, degree) => {
        expect(scoreOf(all.map((weight) => ({ weight, degree })))).toBeCloseTo(degree, 12)
      }),
    )
  })
})
