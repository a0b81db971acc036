/** Magnetic declination against the World Magnetic Model's official test values, and at the ends of its years. */
import { describe, expect, it } from 'vitest'
import { DECLINATION_YEARS, declination } from '#core/geo/declination.ts'

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

describe('WMM2015v2', () => {
  // NOAA NCEI, test values delivered with WMM2015v2 (as given in a public unit test of another program): year, km, latitude,
  // longitude, north and east of the field in nanotesla. The first version has the north 10 nT less at 80 north in 2015.
  it.each([
    [2015, 0, 80, 0, 6636.6, -451.9],
    [2015, 0, 0, 120, 39521.1, 377.7],
    [2015, 0, -80, 240, 5796.3, 15759.1],
    [2015, 100, 80, 0, 6323.4, -477.6],
    [2015, 100, 0, 120, 37538.1, 351.1],
    [2015, 100, -80, 240, 5612.2, 14789.3],
    [2017.5, 0, 80, 0, 6605.2, -298.7],
    [2017.5, 0, 0, 120, 39569.4, 252.3],
    [2017.5, 0, -80, 240, 5864.6, 15764.1],
    [2017.5, 100, 80, 0, 6294.3, -331.1],
    [2017.5, 100, 0, 120, 37584.4, 235.7],
    [2017.5, 100, -80, 240, 5674.9, 14793.1],
  ])('%d at %d km, %d, %d: %d north, %d east', (year, kilometres, lat, lon, north, east) => {
    const found = declination({ lat, lon }, kilometres * 1000, instant(year))
    const degrees = (Math.atan2(east, north) * 180) / Math.PI
    // A tenth of a nanotesla in six thousand is a thousandth of a degree.
    expect(Math.abs((found?.degrees ?? Number.NaN) - degrees)).toBeLessThan(0.001)
    expect(found?.model).toBe('WMM-2015v2')
  })

  it('counts for all of its five years, and WMM2020 and WMM2025 for theirs', () => {
    const at = { lat: 50, lon: 10 }
    const modelOf = (epochMs: number): string | undefined => declination(at, 0, epochMs)?.model
    for (let year = 2015; year < 2030; year++) {
      const model = year < 2020 ? 'WMM-2015v2' : year < 2025 ? 'WMM-2020' : 'WMM-2025'
      expect([modelOf(Date.UTC(year)), modelOf(Date.UTC(year, 6, 1)), modelOf(Date.UTC(year + 1) - 1)]).toEqual([
        model,
        model,
        model,
      ])
    }
    expect([DECLINATION_YEARS.first, DECLINATION_YEARS.last]).toEqual([2015, 2029])
    expect(modelOf(Date.UTC(2015) - 1)).toBeUndefined()
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
