/** Refraction against published examples. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { HORIZON_REFRACTION, SUN_RISE_ALTITUDE, TWILIGHT_ALTITUDE } from '#core/light/day-events.ts'
import { apparentAltitude, refraction, refractionAtApparent } from '#core/light/refraction.ts'

describe('refraction at 1010 hectopascals and 10 degrees', () => {
  // J. Meeus, Astronomical Algorithms, 2nd edition, example 16.a, page 107.
  it("the sun's lower limb seen at 0 degrees 30' is raised by 28.754', and truly at 1.246'", () => {
    const raised = refractionAtApparent(0.5) * 60
    expect(Math.abs(raised - 28.754)).toBeLessThan(0.01)
    expect(Math.abs(30 - raised - 1.246)).toBeLessThan(0.01)
  })

  // The same example.
  it("its upper limb, truly at 33.246', is raised by 24.618' to 57.864'", () => {
    expect(Math.abs(refraction(33.246 / 60) * 60 - 24.618)).toBeLessThan(0.01)
    expect(Math.abs(apparentAltitude(33.246 / 60) * 60 - 57.864)).toBeLessThan(0.01)
  })

  // Meeus, page 106: Bennett's formula leaves -0.08 seconds of arc at the zenith.
  it("Bennett's formula at the zenith", () => {
    expect(Math.abs(refractionAtApparent(90) * 3600 + 0.08)).toBeLessThan(0.01)
  })

  it('is not below nothing at the zenith', () => {
    expect(refraction(90)).toBe(0)
  })
})

// NREL/TP-560-34302, appendix A.5: 820 hectopascals and 11 degrees raise the sun at 39.872046 by 0.016332.
it('thin air raises less: the example of the NREL algorithm', () => {
  expect(Math.abs(refraction(39.872046, { pressure: 820, temperature: 11 }) - 0.016332)).toBeLessThan(0.0001)
})

// Meeus, page 107: by P/1010 and by 283/(273 + T).
it('cold and heavy air raises more', () => {
  expect(refraction(10, { pressure: 1010, temperature: -20 }) / refraction(10)).toBeCloseTo(283 / 253, 9)
  expect(refraction(10, { pressure: 505, temperature: 10 }) / refraction(10)).toBeCloseTo(0.5, 9)
})

// USNO, Rise, Set and Twilight Definitions: 34' of refraction and 16' of radius; twilights of the centre without refraction.
it("the almanac's horizon and twilights", () => {
  expect(HORIZON_REFRACTION * 60).toBeCloseTo(34, 12)
  expect(SUN_RISE_ALTITUDE * 60).toBeCloseTo(-50, 12)
  expect(TWILIGHT_ALTITUDE).toEqual({ civil: -6, nautical: -12, astronomical: -18 })
})

it('a higher body appears higher, in any air, and none is raised at twilight', () => {
  const altitude = fc.double({ min: -90, max: 89.999, noNaN: true })
  const pressure = fc.double({ min: 500, max: 1085, noNaN: true })
  const temperature = fc.double({ min: -60, max: 50, noNaN: true })
  fc.assert(
    fc.property(altitude, fc.double({ min: 1e-4, max: 5, noNaN: true }), pressure, temperature, (low, more, p, t) => {
      const air = { pressure: p, temperature: t }
      const high = Math.min(90, low + more)
      expect(apparentAltitude(high, air)).toBeGreaterThan(apparentAltitude(low, air))
      // Continuous: no step is larger than what the altitude and a steep refraction make of it.
      expect(apparentAltitude(high, air) - apparentAltitude(low, air)).toBeLessThan(1.3 * more + 1e-9)
      if (low <= -6) expect(refraction(low, air)).toBe(0)
    }),
  )
})
