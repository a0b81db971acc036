/** The search along a sightline: the nearest crossing, on either side, up to the edge of where a quantity exists. */
import { describe, expect, it } from 'vitest'
import { rootNear } from '#core/frame/bracketed-root.ts'

const near = (at: (log: number) => number | null, from: number): number | null => rootNear(at, from, -3, 10, 1e-12)

describe('the root near a place', () => {
  it('is found farther and nearer', () => {
    expect(near((log) => log - 2, 1)).toBeCloseTo(2, 10)
    expect(near((log) => log - 2, 7)).toBeCloseTo(2, 10)
    expect(near((log) => Math.expm1(log - 2), 9)).toBeCloseTo(2, 10)
  })

  it('is found where the quantity falls with the distance', () => {
    expect(near((log) => 2 - log, 1)).toBeCloseTo(2, 10)
    expect(near((log) => 2 - log, 7)).toBeCloseTo(2, 10)
  })

  it('is the start itself when that is one', () => {
    expect(near((log) => log - 2, 2)).toBe(2)
  })

  it('is found right at the edge of where the quantity exists, from within and from without', () => {
    const cliff = (log: number): number | null => (log < 1.95 ? null : log - 2)
    expect(near(cliff, 2.2)).toBeCloseTo(2, 10)
    expect(near(cliff, 5)).toBeCloseTo(2, 10)
    expect(near(cliff, 0)).toBeCloseTo(2, 10)
    const roof = (log: number): number | null => (log > 2.05 ? null : log - 2)
    expect(near(roof, -1)).toBeCloseTo(2, 10)
    expect(near(roof, 6)).toBeCloseTo(2, 10)
  })

  it('is the nearer of two when it starts where there is nothing', () => {
    const gap = (log: number): number | null => (Math.abs(log - 3) < 1 ? null : (log - 1.5) * (log - 5))
    expect(near(gap, 2.4)).toBeCloseTo(1.5, 10)
    expect(near(gap, 3.9)).toBeCloseTo(5, 10)
  })

  it('is null where nothing crosses, or nothing exists', () => {
    expect(near((log) => log * log + 1, 1)).toBeNull()
    expect(near(() => null, 1)).toBeNull()
  })

  it('stays within its bounds', () => {
    expect(near((log) => log - 11, 1)).toBeNull()
    expect(near((log) => log + 4, 1)).toBeNull()
    expect(near((log) => log + 2.9, 20)).toBeCloseTo(-2.9, 10)
  })
})
