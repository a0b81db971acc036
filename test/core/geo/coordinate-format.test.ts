/** Coordinates as written by the program: valid at every edge, and read back as the place they came from. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatCoordinates, formatDecimal, formatDms, formatMgrs, formatUtm } from '#core/geo/coordinate-format.ts'
import { type CoordinateForm, parseCoordinates } from '#core/geo/coordinate-text.ts'
import { formatGeoUri } from '#core/geo/geo-uri.ts'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { type LatLon, latLon } from '#core/geo/lat-lon.ts'

describe('degrees', () => {
  it('carries seconds into minutes and degrees', () => {
    expect(formatDms({ lat: 10.99999999, lon: -59.99999999 }, 1)).toBe('11°00′00.0″N 60°00′00.0″W')
    expect(formatDms({ lat: 46.402972, lon: -33.594528 })).toBe('46°24′10.7″N 33°35′40.3″W')
    expect(formatDms({ lat: -33.86, lon: 151.2 }, 0)).toBe('33°51′36″S 151°12′00″E')
  })

  it('has no negative zero', () => {
    expect(formatDecimal({ lat: -0.00001, lon: -0.00001 }, 4)).toBe('0.0000, 0.0000')
    expect(formatDms({ lat: -0.000001, lon: -0.000001 }, 1)).toBe('0°00′00.0″N 0°00′00.0″E')
    expect(formatDecimal({ lat: -0.4, lon: 0 }, 0)).toBe('0, 0')
  })

  it('writes the antimeridian and the poles', () => {
    expect(formatDms({ lat: 90, lon: -180 })).toBe('90°00′00.0″N 180°00′00.0″W')
    expect(formatDecimal({ lat: -90, lon: 179.9999999 }, 6)).toBe('-90.000000, 180.000000')
  })
})

describe('geo URI', () => {
  it('has neither exponent nor negative zero, and no needless zeros', () => {
    expect(formatGeoUri({ lat: 0.0000001, lon: 0 })).toBe('geo:0.0000001,0')
    expect(formatGeoUri({ lat: 1.23456789012e-7, lon: -1e-9 })).toBe('geo:0.0000001,0')
    expect(formatGeoUri({ lat: 48.2, lon: 100 })).toBe('geo:48.2,100')
    expect(formatGeoUri({ lat: 90, lon: 46 })).toBe('geo:90,0')
  })
})

const anywhere = fc
  .tuple(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true }))
  .map(([lat, lon]) => latLon(lat, lon))

function readBack(at: LatLon, form: CoordinateForm): number | null {
  const text = formatCoordinates(at, form)
  if (text === null) return null
  const result = parseCoordinates(text)
  if (!result.ok) throw new Error(`${text}: ${result.fault.message}`)
  expect(result.value.form).toBe(form)
  return geodesicDistance(at, result.value.at)
}

describe('format, then read', () => {
  // The farthest that rounding (or the middle of a square) may move a place, in metres.
  it.each<[CoordinateForm, number]>([
    ['decimal', 0.08],
    ['dms', 2.2],
    ['geo-uri', 0.008],
    ['olc', 2.3],
    ['utm', 0.72],
    ['mgrs', 0.75],
  ])('%s gives the place back within %d m', (form, metres) => {
    fc.assert(
      fc.property(anywhere, (at) => {
        const moved = readBack(at, form)
        if (moved === null) expect(at.lat > 84 || at.lat < -80).toBe(true)
        else expect(moved).toBeLessThan(metres)
      }),
      { numRuns: 1000, seed: 20_260_621 },
    )
  })

  it.each<[string, LatLon]>([
    ['the antimeridian', { lat: -16.8, lon: -180 }],
    ['just west of it', { lat: -16.8, lon: 179.999_999_9 }],
    ['as near west of it as a number can be', { lat: 0, lon: 179.999_999_999_999_97 }],
    ['the north pole', { lat: 90, lon: 0 }],
    ['the south pole', { lat: -90, lon: 0 }],
    ['the crossing of equator and first meridian', { lat: 0, lon: 0 }],
    ['a hair south of the equator', { lat: -1e-7, lon: 0 }],
    ['the northern end of the grid', { lat: 84, lon: 15 }],
    ['the northern end in an exceptional zone', { lat: 84, lon: 32.9 }],
    ['the southern end of the grid', { lat: -80, lon: 15 }],
    ['a band edge', { lat: 48, lon: 11 }],
    ['Bergen, in its exceptional zone', { lat: 60.3913, lon: 5.3221 }],
  ])('works at %s in every form', (_name, at) => {
    for (const form of ['decimal', 'dms', 'geo-uri', 'olc', 'utm', 'mgrs'] as const) {
      const moved = readBack(at, form)
      if (moved === null) expect(Math.abs(at.lat)).toBe(90)
      else expect(moved).toBeLessThan(2.3)
    }
  })

  it('reads every grid reference at every size as the middle of a square that holds the place', () => {
    fc.assert(
      fc.property(anywhere, fc.integer({ min: 0, max: 5 }), (at, digits) => {
        const text = formatMgrs(at, digits)
        if (text === null) return
        const result = parseCoordinates(text)
        if (!result.ok) throw new Error(`${text}: ${result.fault.message}`)
        expect(result.value.square).toBe(10 ** (5 - digits))
        // Half the diagonal, and a percent for the map's own scale far from its middle meridian.
        expect(geodesicDistance(at, result.value.at)).toBeLessThan(10 ** (5 - digits) * 0.7072 * 1.01 + 0.05)
      }),
      { numRuns: 1000, seed: 20_260_622 },
    )
  })

  it('always prints zone and hemisphere', () => {
    expect(formatUtm({ lat: 34, lon: -118.2 })).toMatch(/^11 North \d{6} \d{7}$/u)
  })
})

describe('reading never throws and never gives a place off the world', () => {
  it('for any text', () => {
    const bits = fc.constantFrom(
      ...'0 1 59 60 90 180 360 5.5 0,12 N S E W O ° \' " - + ; , / . 32U CAA geo: 8FVC 2222+22 lat lon 691000 5334000'.split(
        ' ',
      ),
      ' ',
    )
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(bits, { maxLength: 9 }).map((list) => list.join('')),
        ),
        (text) => {
          const result = parseCoordinates(text, { lat: 47, lon: 8 })
          if (!result.ok) {
            expect(result.fault.message).not.toBe('')
            return
          }
          const { at, swapped } = result.value
          for (const place of swapped === null ? [at] : [at, swapped]) {
            expect(Math.abs(place.lat)).toBeLessThanOrEqual(90)
            expect(place.lon >= -180 && place.lon < 180).toBe(true)
          }
        },
      ),
      { numRuns: 5000, seed: 20_260_623 },
    )
  })
})
