/** Web map tiles and geo URIs against published figures. */
import { describe, expect, it } from 'vitest'
import { parseGeoUri } from '#core/geo/geo-uri.ts'
import {
  MERCATOR_LATITUDE,
  fromMercator,
  metresPerPixel,
  quadkey,
  scaleDenominator,
  tileAt,
  tileBounds,
  toMercator,
} from '#core/geo/web-mercator.ts'

describe('the web Mercator map', () => {
  // IOGP Publication 373-7-2, section 3.2.1.2 (method 1024).
  it('places a point in metres', () => {
    const at = { lat: 24 + 22 / 60 + 54.433 / 3600, lon: -(100 + 20 / 60) }
    const { east, north } = toMercator(at)
    expect(Math.abs(east + 11_169_055.58)).toBeLessThan(0.01)
    expect(Math.abs(north - 2_800_000)).toBeLessThan(0.01)
    expect(fromMercator({ east, north }).lat).toBeCloseTo(at.lat, 9)
    expect(fromMercator({ east, north }).lon).toBeCloseTo(at.lon, 9)
  })

  // The tile system's first description, table of ground resolution.
  it.each([
    [1, 78_271.517],
    [10, 152.8741],
    [15, 4.7773],
    [18, 0.5972],
    [23, 0.0187],
  ])('covers at zoom %d on the equator %d m in a pixel', (zoom, metres) => {
    expect(metresPerPixel(0, zoom)).toBeCloseTo(metres, 4)
  })

  it('covers half as much at 60 degrees', () => {
    expect(metresPerPixel(60, 10) / metresPerPixel(0, 10)).toBeCloseTo(0.5, 12)
  })

  // The same source, map scale at 96 dots to the inch.
  it('has the printed scale', () => {
    expect(scaleDenominator(0, 1, 0.0254 / 96)).toBeCloseTo(295_829_355.45, 2)
    expect(scaleDenominator(0, 23, 0.0254 / 96)).toBeCloseTo(70.53, 2)
  })

  // OGC Two Dimensional Tile Matrix Set, WebMercatorQuad.
  it('has the standard extent', () => {
    expect(scaleDenominator(0, 0)).toBeCloseTo(559_082_264.0287, 3)
    expect(toMercator({ lat: 0, lon: 180 }).east).toBeCloseTo(20_037_508.342789, 6)
    expect(toMercator({ lat: 90, lon: 0 }).north).toBeCloseTo(20_037_508.342789, 5)
    expect(MERCATOR_LATITUDE).toBeCloseTo(85.0511287798, 10)
  })

  // The tile system's first description; mercantile documentation.
  it('names tiles in base four', () => {
    expect(quadkey({ x: 3, y: 5, zoom: 3 })).toBe('213')
    expect(quadkey({ x: 486, y: 332, zoom: 10 })).toBe('0313102310')
    expect(quadkey({ x: 0, y: 0, zoom: 0 })).toBe('')
  })

  // mercantile documentation.
  it('bounds a tile', () => {
    const bounds = tileBounds({ x: 486, y: 332, zoom: 10 })
    expect(bounds.west).toBe(-9.140625)
    expect(bounds.east).toBe(-8.7890625)
    expect(bounds.north).toBeCloseTo(53.33087298301705, 12)
    expect(bounds.south).toBeCloseTo(53.12040528310657, 12)
  })

  // mercantile documentation (from memory), recomputed.
  it('finds the tile of a place', () => {
    expect(tileAt({ lat: 40.1222, lon: 20.6852 }, 9)).toEqual({ x: 285, y: 193, zoom: 9 })
  })

  it('clamps rows and columns by index at every edge', () => {
    const last = 2 ** 15 - 1
    expect(tileAt({ lat: 85.0511287798066, lon: 0 }, 15).y).toBe(0)
    expect(tileAt({ lat: 90, lon: 0 }, 15).y).toBe(0)
    expect(tileAt({ lat: -90, lon: 0 }, 15).y).toBe(last)
    expect(tileAt({ lat: -85.0511287798066, lon: 0 }, 15).y).toBe(last)
    expect(tileAt({ lat: 0, lon: 179.9999999 }, 15).x).toBe(last)
    expect(tileAt({ lat: 0, lon: 180 }, 15).x).toBe(0)
    expect(tileAt({ lat: 0, lon: -180 }, 15).x).toBe(0)
    expect(tileAt({ lat: 0, lon: 0 }, 0)).toEqual({ x: 0, y: 0, zoom: 0 })
  })
})

describe('geo URI', () => {
  // RFC 5870 sections 6.1 to 6.4; latitude first.
  it.each([
    ['geo:13.4125,103.8667', 13.4125, 103.8667, null, null],
    ['geo:48.2010,16.3695,183', 48.201, 16.3695, 183, null],
    ['geo:48.198634,16.371648;crs=wgs84;u=40', 48.198634, 16.371648, null, 40],
    ['geo:66,30;u=6.500;FOo=this%2dthat', 66, 30, null, 6.5],
    ['geo:22.300,-118.44', 22.3, -118.44, null, null],
  ])('reads %s', (uri, lat, lon, altitude, uncertainty) => {
    const read = parseGeoUri(uri)
    expect(read).toEqual({ ok: true, value: { at: { lat, lon }, altitude, uncertainty } })
  })

  it.each([
    ['geo:90,-22.43;crs=WGS84', 'geo:90,46'],
    ['geo:22.300,-118.44', 'geo:22.3,-118.4400'],
    ['geo:66,30;u=6.500;FOo=this%2dthat', 'geo:66.0,30;u=6.5;foo=this-that'],
    ['geo:47,11;foo=blue;bar=white', 'geo:47,11;bar=white;foo=blue'],
    ['geo:10,180', 'geo:10,-180'],
  ])('%s and %s are one place', (one, other) => {
    expect(parseGeoUri(one)).toEqual(parseGeoUri(other))
    expect(parseGeoUri(one).ok).toBe(true)
  })
})
