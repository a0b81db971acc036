/** UTM and MGRS against published figures. */
import { describe, expect, it } from 'vitest'
import { formatMgrs, formatUtm } from '#core/geo/coordinate-format.ts'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { fromMgrs, fromUtm, toMgrs, toUtm, utmZone } from '#core/geo/grid-reference.ts'

const sexagesimal = (degrees: number, minutes: number, seconds: number): number =>
  degrees + minutes / 60 + seconds / 3600

const flinders = { lat: -sexagesimal(37, 57, 3.7203), lon: sexagesimal(144, 25, 29.5244) }
const buninyong = { lat: -sexagesimal(37, 39, 10.1561), lon: sexagesimal(143, 55, 35.3839) }

describe('UTM', () => {
  // GDA Technical Manual (ICSM) chapter 5 (GRS80, within a millimetre of WGS84); zone 54 source seen.
  it.each([
    ['Flinders Peak in zone 55', flinders, 55, 273_741.297, 5_796_489.777],
    ['Buninyong in zone 55', buninyong, 55, 228_854.052, 5_828_259.038],
    ['Buninyong in zone 54', buninyong, 54, 758_173.797, 5_828_674.34],
  ])('%s', (_name, at, zone, easting, northing) => {
    const place = toUtm(at, zone)
    expect(place?.hemisphere).toBe('South')
    expect(Math.abs((place?.easting ?? 0) - easting)).toBeLessThan(0.0015)
    expect(Math.abs((place?.northing ?? 0) - northing)).toBeLessThan(0.0015)
  })

  // J. P. Snyder, USGS Professional Paper 1395 (1987) pp. 269-270 has the method; these figures: mgrs and PROJ, recomputed.
  it('takes the zone that maps print: Bergen lies in 32, and says so', () => {
    const bergen = { lat: 60.3913, lon: 5.3221 }
    expect(toUtm(bergen)).toMatchObject({ zone: 32, hemisphere: 'North' })
    expect(toUtm(bergen)?.easting).toBeCloseTo(297_353.93, 2)
    expect(toUtm(bergen)?.northing).toBeCloseTo(6_700_648.35, 2)
    expect(toUtm(bergen, 31)?.easting).toBeCloseTo(627_970.85, 2)
    expect(toUtm(bergen, 31)?.northing).toBeCloseTo(6_697_245.73, 2)
    expect(formatUtm(bergen)).toBe('32 North 297354 6700648')
    expect(formatMgrs(bergen)).toBe('32VKN9735300648')
  })

  it('keeps the hemisphere: without it the northing would be 10,000 km off', () => {
    const sydney = { lat: -33.86, lon: 151.2 }
    expect(formatUtm(sydney, 2)).toBe('56 South 333491.23 6251909.21')
    const place = toUtm(sydney)
    if (place === null) throw new Error('no grid at Sydney')
    expect(geodesicDistance(fromUtm(place), sydney)).toBeLessThan(1e-3)
  })
})

describe('zone exceptions', () => {
  // DMA TM 8358.1 (from memory), recomputed with GeographicLib.
  it.each([
    [60, 4, 32],
    [78, 10, 33],
    [72, 21, 35],
    [73, 20.9, 33],
    [78, 8.99, 31],
    [78, 9, 33],
    [78, 20.99, 33],
    [78, 21, 35],
    [78, 32.99, 35],
    [78, 33, 37],
    [78, 42, 38],
    [63.999, 3, 32],
    [64, 3, 31],
    [55.999, 3, 31],
    [0, 180, 1],
    [0, -180, 1],
    [0, 179.999, 60],
  ])('latitude %d, longitude %d lies in zone %d', (lat, lon, zone) => {
    expect(utmZone({ lat, lon })).toBe(zone)
  })
})

describe('MGRS', () => {
  // FGDC-STD-011-2001 section 5.2.2, Washington Monument (source seen): truncated, never rounded.
  it.each([
    [5, '18SUJ2348306479'],
    [4, '18SUJ23480647'],
    [3, '18SUJ234064'],
    [2, '18SUJ2306'],
  ])('Washington Monument with %d digits', (digits, reference) => {
    expect(toMgrs({ lat: 38.889467309501576, lon: -77.0352402156242 }, digits)).toBe(reference)
  })

  // GeographicLib manual, GeoConvert.
  it('Baghdad', () => {
    expect(toMgrs({ lat: 33.3, lon: 44.4 })).toBe('38SMB4414084706')
    const square = fromMgrs('38SMB4488')
    expect(square?.side).toBe(1000)
    expect(Math.abs((square?.at.lat ?? 0) - 33.33424)).toBeLessThan(1e-5)
    expect(Math.abs((square?.at.lon ?? 0) - 44.40363)).toBeLessThan(1e-5)
    const place = square && toUtm(square.at)
    expect(Math.abs((place?.easting ?? 0) - 444_500)).toBeLessThan(0.5)
    expect(Math.abs((place?.northing ?? 0) - 3_688_500)).toBeLessThan(0.5)
  })

  // mgrs issue 19: rounding would give 11SPA7235011844.
  it('truncates where rounding would name the next square', () => {
    expect(toMgrs({ lat: 36.2361322, lon: -115.0820944 })).toBe('11SPA7234911844')
  })

  it('ends at 84 north and 80 south', () => {
    for (const at of [
      { lat: 84.0001, lon: 15 },
      { lat: -80.0001, lon: 0 },
      { lat: 90, lon: 0 },
      { lat: -90, lon: 0 },
    ]) {
      expect(formatMgrs(at)).toBeNull()
      expect(formatUtm(at)).toBeNull()
    }
    expect(formatMgrs({ lat: 84, lon: 15 })).toMatch(/^33X/u)
    expect(formatMgrs({ lat: -80, lon: 0 })).toMatch(/^31C/u)
  })
})
