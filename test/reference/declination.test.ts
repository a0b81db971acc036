/** Magnetic declination against the World Magnetic Model's official test values, and at the ends of its years. */
import { describe, expect, it } from 'vitest'
import { declination } from '#core/geo/declination.ts'

/** A year with decimals as an instant, in years of 365 days as the model counts 2025 and 2027. */
const instant = (year: number): number => Date.UTC(Math.floor(year)) + (year % 1) * 365 * 86_400_000

describe('WMM2025', () => {
  // NOAA NCEI and BGS, WMM2025_TEST_VALUES.txt (table 6 of the WMM2025 report): year, km, latitude, longitude, declination.
  it.each([
    [2025, 0, 80, 0, 1.28],
    [2025, 0, 0, 120, -0.16],
    [2025, 0, -80, 240, 68.78],
    [2025, 100, 80, 0, 0.85],
    [2025, 100, 0, 120, -0.15],
    [2025, 100, -80, 240, 68.21],
    [2027.5, 0, 80, 0, 2.59],
    [2027.5, 0, 0, 120, -0.24],
    [2027.5, 0, -80, 240, 68.49],
  ])('%d at %d km, %d, %d: %d degrees', (year, kilometres, lat, lon, degrees) => {
    const found = declination({ lat, lon }, kilometres * 1000, instant(year))
    expect(Math.abs((found?.degrees ?? Number.NaN) - degrees)).toBeLessThan(0.01)
    expect(found?.model).toBe('WMM-2025')
  })

  // GeographicLib manual, MagneticField: Timbuktu.
  it('Timbuktu at 300 m', () => {
    const at = { lat: 16 + 46 / 60 + 33 / 3600, lon: -(3 + 34 / 3600) }
    expect(Math.abs((declination(at, 300, instant(2025))?.degrees ?? Number.NaN) + 1.04)).toBeLessThan(0.01)
  })
})

describe('where the model ends', () => {
  const place = { lat: 50, lon: 10 }
  const degreesAt = (epochMs: number): number => declination(place, null, epochMs)?.degrees ?? Number.NaN

  it('is a value to the last instant of 2029, though the package stops on 13 November, and unknown after', () => {
    expect(Number.isFinite(degreesAt(Date.UTC(2029, 10, 14)))).toBe(true)
    expect(Number.isFinite(degreesAt(Date.UTC(2030, 0, 1) - 1))).toBe(true)
    expect(declination(place, null, Date.UTC(2030, 0, 1))).toBeNull()
    expect(declination(place, null, Date.UTC(2040, 0, 1))).toBeNull()
  })

  it('goes on in the same straight line over the package’s end', () => {
    const day = 86_400_000
    const end = Date.UTC(2029, 10, 13)
    const before = degreesAt(end - 1) - degreesAt(end - 30 * day)
    const after = degreesAt(end + 30 * day) - degreesAt(end)
    expect(Math.abs(degreesAt(end) - degreesAt(end - 1))).toBeLessThan(1e-6)
    expect(Math.abs(after - before)).toBeLessThan(1e-3)
  })

  it('is unknown before the oldest model and for what is no instant or no place', () => {
    expect(declination(place, null, Date.UTC(2010, 0, 1))).toBeNull()
    expect(declination(place, null, Number.NaN)).toBeNull()
    expect(declination(place, null, Number.POSITIVE_INFINITY)).toBeNull()
    expect(declination({ lat: Number.NaN, lon: 0 }, null, instant(2026))).toBeNull()
    expect(declination({ lat: 91, lon: 0 }, null, instant(2026))).toBeNull()
  })

  it('counts an unknown elevation as sea level, which a mountain hardly changes', () => {
    const low = declination(place, null, instant(2026))?.degrees ?? Number.NaN
    const high = declination(place, 4000, instant(2026))?.degrees ?? Number.NaN
    expect(Math.abs(low - high)).toBeLessThan(0.02)
    expect(declination(place, 0, instant(2026))).toEqual(declination(place, null, instant(2026)))
  })

  it('answers at the poles, on the antimeridian and at the date line alike', () => {
    for (const lat of [90, -90]) expect(declination({ lat, lon: 0 }, 0, instant(2026))).not.toBeNull()
    const [west, east] = [-180, 180].map((lon) => declination({ lat: 10, lon }, 0, instant(2026))?.degrees ?? 0)
    expect(west).toBeCloseTo(east ?? Number.NaN, 9)
  })

  it('warns near the magnetic pole, where a compass is of no use', () => {
    // WMM2025's north dip pole lay near 85.8 N, 139.3 E in 2025 (from memory of the NCEI page).
    expect(declination({ lat: 85.8, lon: 139.3 }, 0, instant(2025))?.compass).toBe('unreliable')
    expect(declination(place, 0, instant(2025))?.compass).toBe('good')
  })
})
