/** What people type and paste as coordinates: read right, or refused with a reason. */
import { describe, expect, it } from 'vitest'
import { type CoordinateReason, type CoordinatesRead, parseCoordinates } from '#core/geo/coordinate-text.ts'

function read(text: string): CoordinatesRead {
  const result = parseCoordinates(text)
  if (!result.ok) throw new Error(`${text}: ${result.fault.reason}: ${result.fault.message}`)
  return result.value
}

function reason(text: string): CoordinateReason | 'read' {
  const result = parseCoordinates(text)
  return result.ok ? 'read' : result.fault.reason
}

function expectPlace(text: string, lat: number, lon: number, digits = 6): void {
  const { at } = read(text)
  expect(at.lat).toBeCloseTo(lat, digits)
  expect(at.lon).toBeCloseTo(lon, digits)
}

describe('decimal degrees', () => {
  it.each([
    ['51,5 0,12', 51.5, 0.12],
    ['51,5; −0,12', 51.5, -0.12],
    ['51,5, 0,12', 51.5, 0.12],
    ['51.5,0.12', 51.5, 0.12],
    ['51.5, -0.12', 51.5, -0.12],
    ['51.5 -0.12', 51.5, -0.12],
    ['  51.5\t0.12\n', 51.5, 0.12],
    ['51.5/0.12', 51.5, 0.12],
    ['51.5 | 0.12', 51.5, 0.12],
    ['51, 5', 51, 5],
    ['51,5/-0,12', 51.5, -0.12],
    ['+46.4030-033.5945/', 46.403, -33.5945],
    ['51.5-0.12', 51.5, -0.12],
    ['51.5° 0.12°', 51.5, 0.12],
    ['N51.5 W0.12', 51.5, -0.12],
    ['51.5n, 0.12w', 51.5, -0.12],
    ['51,5N 0,12W', 51.5, -0.12],
    ['51N,0W', 51, 0],
    ['0.12 W 51.5 N', 51.5, -0.12],
    ['-33.86 S, 151.2 E', -33.86, 151.2],
    ['lat 51.5 lon -0.12', 51.5, -0.12],
    ['Longitude: -0,12 Latitude: 51,5', 51.5, -0.12],
    ['90, 0', 90, 0],
    ['-90 -180', -90, -180],
    ['0 180', 0, -180],
    ['５１．５　０．１２', 51.5, 0.12],
    ['51．5，0．12', 51.5, 0.12],
    ['10 S 120 E', -10, 120],
    ['32N 7E', 32, 7],
  ])('%s', (text, lat, lon) => {
    expectPlace(text, lat, lon, 9)
    expect(read(text).form).toBe('decimal')
    expect(read(text).square).toBeNull()
  })

  it('never gives a negative zero', () => {
    const { at } = read('-0.0, -0')
    expect(Object.is(at.lat, 0) && Object.is(at.lon, 0)).toBe(true)
  })
})

describe('degrees, minutes, seconds', () => {
  it.each([
    ['４６°２４′１０．７″Ｎ ３３°３５′４０．３″Ｗ', 46.402972, -33.594528],
    ['46º24’10.7’’N 33º35’40.3’’W', 46.402972, -33.594528],
    ['46˚24\'10.7"N, 33˚35\'40.3"W', 46.402972, -33.594528],
    ['46°24′10,7″N 33°35′40,3″W', 46.402972, -33.594528],
    ['46°24\'10.7" 33°35\'40.3"', 46.402972, 33.594528],
    ['46 24 10.7 33 35 40.3', 46.402972, 33.594528],
    ['46d24m10.7s N 33d35m40.3s W', 46.402972, -33.594528],
    ['46 deg 24 min 10.7 sec north, 33 deg 35 min 40.3 sec west', 46.402972, -33.594528],
    ['W000 07.2, N51 30.0', 51.5, -0.12],
    ['50 11 30.0N 8 30 30.0E', 50.191667, 8.508333],
    ['51-30-00N 000-07-30W', 51.5, -0.125],
    ['51-30-00 000-07-30', 51.5, 0.125],
    ['51‑30‑00N 000‑07‑30W', 51.5, -0.125],
    ['51 30 -0 7.5', 51.5, -0.125],
    ['-0 30, -0 7.5', -0.5, -0.125],
    ['51°30.0′N 0°07.5′W', 51.5, -0.125],
    ['51 30,5 N 0 7,2 W', 51.508333, -0.12],
    ['51 30 00,0 07 30', 51.5, 0.125],
    ['51 N 0 7.5 W', 51, -0.125],
  ])('%s', (text, lat, lon) => {
    expectPlace(text, lat, lon)
    expect(read(text).form).toBe('dms')
  })
})

describe('order', () => {
  it('takes latitude first (ISO 6709) and offers the swap when nothing tells', () => {
    expect(read('2.35, 48.86')).toMatchObject({ at: { lat: 2.35, lon: 48.86 }, swapped: { lat: 48.86, lon: 2.35 } })
  })

  it.each(['48.86 N 2.35 E', 'lat 48.86, lon 2.35', '48.86, 120', 'geo:48.86,2.35', '32 North 691000 5334000', '5, 5'])(
    'offers no swap for %s',
    (text) => {
      expect(read(text).swapped).toBeNull()
    },
  )
})

describe('what is refused', () => {
  it.each<[string, CoordinateReason]>([
    ['', 'empty'],
    [' \t\u{200b}', 'empty'],
    ['51,5', 'ambiguous'],
    ['-33,151', 'ambiguous'],
    ['51.5 - 0.12', 'ambiguous'],
    ['51.5N 0.12', 'ambiguous'],
    ['33.86 S 151.2 O', 'ambiguous'],
    ['-33.86N 151.2E', 'sign-against-letter'],
    ['+33.86S 151.2E', 'sign-against-letter'],
    ['lat 51.5 E lon 0.12 N', 'sign-against-letter'],
    ['91, 0', 'out-of-range'],
    ['-157.4, 1.87', 'out-of-range'],
    ['151.2, -33.86', 'out-of-range'],
    ['45, 181', 'out-of-range'],
    ["51°75' 0°1'", 'out-of-range'],
    ['51°10\'60" 0°1\'0"', 'out-of-range'],
    ['51.5', 'unreadable'],
    ['51-30', 'unreadable'],
    ['1 2 3', 'unreadable'],
    ['1 2 3 4 5', 'unreadable'],
    ['1 2 3 4 5 6 7 8', 'unreadable'],
    ["51.5°30' 0°1'", 'unreadable'],
    ["51'30° 0'1°", 'unreadable'],
    ['12.5N 13N', 'unreadable'],
    ['--51.5 0.12', 'unreadable'],
    ['51.5 0.12 <img src=x>', 'unreadable'],
    ['Springfield', 'unreadable'],
    ['NaN, Infinity', 'unreadable'],
    ['1e3, 5', 'ambiguous'],
    ['°', 'unreadable'],
    [';', 'unreadable'],
    [','.repeat(150), 'unreadable'],
    ['9'.repeat(10_000), 'unreadable'],
    [`${'9'.repeat(190)} 1`, 'out-of-range'],
  ])('%s is %s', (text, expected) => {
    expect(reason(text)).toBe(expected)
  })

  it('says what to do, in a sentence that repeats what was typed', () => {
    const result = parseCoordinates('151.2, -33.86')
    expect(result.ok ? '' : result.fault.message).toContain('write -33.86, 151.2')
  })
})

describe('UTM', () => {
  it.each([
    ['32U 691000 5334000', 48.1306, 11.5671],
    ['32 N 691000 5334000', 48.1306, 11.5671],
    ['32N 691000 5334000', 48.1306, 11.5671],
    ['UTM zone 32 north, 691000 5334000', 48.1306, 11.5671],
    ['32u 691000,0 5334000,0', 48.1306, 11.5671],
    ['32V 297353.93mE 6700648.35mN', 60.3913, 5.3221],
    ['32V E 297353.93 N 6700648.35', 60.3913, 5.3221],
    ['31V 627970.85 6697245.73', 60.3913, 5.3221],
    ['56 South 333491.23 / 6251909.21', -33.86, 151.2],
    ['56S 333491.23 6251909.21', -33.86, 151.2],
    ['56H 333491.23 6251909.21', -33.86, 151.2],
    ['３２Ｕ ６９１０００ ５３３４０００', 48.1306, 11.5671],
  ])('%s', (text, lat, lon) => {
    expectPlace(text, lat, lon, 4)
    expect(read(text)).toMatchObject({ form: 'utm', square: null, swapped: null })
  })

  it.each<[string, CoordinateReason]>([
    // S is a latitude band of the north and the initial of south: both are possible here.
    ['11S 387000 3763000', 'ambiguous'],
    ['UTM 32: 297353.93 / 6700648.35', 'ambiguous'],
    ['33U 500000 6700648', 'out-of-range'],
    ['61 North 500000 500000', 'no-such-zone'],
    ['0 North 500000 500000', 'no-such-zone'],
    ['32X 500000 8500000', 'no-such-zone'],
    ['32 North 50000 5334000', 'out-of-range'],
    ['32 North 500000 9900000', 'out-of-range'],
    ['32 South 500000 100000', 'out-of-range'],
    ['32I 500000 5334000', 'out-of-range'],
  ])('%s is refused as %s', (text, expected) => {
    expect(reason(text)).toBe(expected)
  })
})

describe('MGRS', () => {
  it('reads full-width figures', () => {
    const { at } = read('32VLM９７５０８００６４５')
    expect(at.lat).toBeCloseTo(59.5316, 5)
    expect(at.lon).toBeCloseTo(7.18791, 5)
  })

  it.each([
    ['38SMB4414084706', 1, 33.3, 44.4],
    ['38 SMB 44140 84706', 1, 33.3, 44.4],
    ['mgrs 38s mb 4414 8470', 10, 33.3, 44.4],
    ['38SMB48', 10_000, 33.3, 44.4],
    ['18SUJ2348306479', 1, 38.889467, -77.03524],
  ])('%s is the middle of a square of %d m', (text, square, lat, lon) => {
    const { at, ...rest } = read(text)
    expect(rest).toEqual({ form: 'mgrs', square, swapped: null })
    expect(Math.abs(at.lat - lat)).toBeLessThan(0.06)
    expect(Math.abs(at.lon - lon)).toBeLessThan(0.06)
  })

  it.each([
    ['1CAA', 100_000],
    ['60CAA', 100_000],
  ])('%s, a square over the antimeridian, keeps its longitude within 180', (text, square) => {
    const { at, ...rest } = read(text)
    expect(rest.square).toBe(square)
    expect(at.lon).toBeGreaterThanOrEqual(-180)
    expect(at.lon).toBeLessThan(180)
    expect(at.lat).toBeGreaterThan(-81)
    expect(at.lat).toBeLessThan(-71)
  })

  it.each<[string, CoordinateReason]>([
    ['00CAA', 'no-such-zone'],
    ['61CAA', 'no-such-zone'],
    ['32XMB4488', 'no-such-zone'],
    ['38SMB448', 'unreadable'],
    ['38SIB4488', 'unreadable'],
    ['38SMO4488', 'unreadable'],
    ['ZAH 12345 12345', 'out-of-range'],
  ])('%s is refused as %s', (text, expected) => {
    expect(reason(text)).toBe(expected)
  })
})

describe('Open Location Code and geo URI', () => {
  it('reads a full code as the middle of its square', () => {
    expectPlace('8fvc2222+22', 47.0000625, 8.0000625, 9)
    expect(read('8FVC2222+22').square).toBeCloseTo(13.9, 1)
    expect(read('CFX30000+').at.lat).toBeLessThanOrEqual(90)
  })

  it('refuses a short code without a place nearby, and recovers it with one', () => {
    expect(reason('9QCJ+2VX')).toBe('short-code')
    expect(reason('9QCJ+2VX Springfield')).toBe('short-code')
    const near = parseCoordinates('2GGG+GG', { lat: 46.976, lon: 8.526 })
    expect(near).toEqual(parseCoordinates('8FVC2GGG+GG'))
  })

  it.each<[string, CoordinateReason]>([
    ['8FVC222+22', 'unreadable'],
    ['8FVC2222+2', 'unreadable'],
    ['geo:91,0', 'out-of-range'],
    ['geo:0,181', 'out-of-range'],
    ['geo:0,0?q=48,2', 'unreadable'],
    ['geo:48,2;crs=epsg25832', 'unreadable'],
    ['geo:48,2;u=-5', 'unreadable'],
    ['geo:1e-7,0', 'unreadable'],
    ['geo:', 'unreadable'],
  ])('%s is refused as %s', (text, expected) => {
    expect(reason(text)).toBe(expected)
  })

  it('reads geo URIs in any case', () => {
    expect(read('GEO:48.2010,16.3695,183')).toEqual({
      at: { lat: 48.201, lon: 16.3695 },
      form: 'geo-uri',
      square: null,
      swapped: null,
    })
  })
})

it('what is none is quoted as it was typed, words and all', () => {
  const read = parseCoordinates('somewhere north of 12 deg')
  expect(read.ok ? '' : read.fault.message).toContain('"somewhere north of 12 deg"')
})
