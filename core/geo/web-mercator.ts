/** The web's Mercator map: metres, tiles, their bounds and how much ground a pixel covers. */
import { RADIANS_PER_DEGREE, degrees } from '#core/units/angle.ts'
import type { Bounds } from './bounds.ts'
import { type LatLon, wrapLongitude } from './lat-lon.ts'
import { WGS84_SEMI_MAJOR } from './local-frame.ts'

/** Degrees at which the map is as high as it is wide: atan(sinh(pi)). */
export const MERCATOR_LATITUDE = degrees(Math.atan(Math.sinh(Math.PI)))

/** Metres round the equator: the width of the map. */
const CIRCUMFERENCE = 2 * Math.PI * WGS84_SEMI_MAJOR

export interface Tile {
  /** Columns eastward from 180 west, rows southward from the top. */
  readonly x: number
  readonly y: number
  readonly zoom: number
}

export interface MercatorPoint {
  readonly east: number
  readonly north: number
}

/** Metres from 0, 0; latitudes beyond the map are put on its edge. */
export function toMercator(at: LatLon): MercatorPoint {
  const lat = Math.max(-MERCATOR_LATITUDE, Math.min(MERCATOR_LATITUDE, at.lat)) * RADIANS_PER_DEGREE
  return {
    east: WGS84_SEMI_MAJOR * at.lon * RADIANS_PER_DEGREE,
    north: WGS84_SEMI_MAJOR * Math.asinh(Math.tan(lat)),
  }
}

export function fromMercator(point: MercatorPoint): LatLon {
  return {
    lat: degrees(Math.atan(Math.sinh(point.north / WGS84_SEMI_MAJOR))),
    lon: wrapLongitude(degrees(point.east / WGS84_SEMI_MAJOR)),
  }
}

/** The tile that holds a place. Row and column are clamped as indices: rounding at the edges must not give row -1. */
export function tileAt(at: LatLon, zoom: number): Tile {
  const { east, north } = toMercator({ lat: at.lat, lon: wrapLongitude(at.lon) })
  const count = 2 ** zoom
  const index = (share: number): number => Math.max(0, Math.min(count - 1, Math.floor(share * count)))
  return { x: index(0.5 + east / CIRCUMFERENCE), y: index(0.5 - north / CIRCUMFERENCE), zoom }
}

export function tileBounds(tile: Tile): Bounds {
  const count = 2 ** tile.zoom
  const latitude = (row: number): number => degrees(Math.atan(Math.sinh(Math.PI * (1 - (2 * row) / count))))
  return {
    west: (tile.x / count) * 360 - 180,
    east: ((tile.x + 1) / count) * 360 - 180,
    north: latitude(tile.y),
    south: latitude(tile.y + 1),
  }
}

/** Metres of ground per pixel at a latitude; zoom may be broken. */
export function metresPerPixel(lat: number, zoom: number, tileSize = 256): number {
  const edge = Math.max(-MERCATOR_LATITUDE, Math.min(MERCATOR_LATITUDE, lat))
  return (CIRCUMFERENCE * Math.cos(edge * RADIANS_PER_DEGREE)) / (tileSize * 2 ** zoom)
}

/** The n of a map scale 1:n when a pixel is drawn `pixelSize` metres wide (0.28 mm by the tile standard). */
export function scaleDenominator(lat: number, zoom: number, pixelSize = 0.000_28): number {
  return metresPerPixel(lat, zoom) / pixelSize
}

/** The tile's name in base four, as some servers want it in their URLs; empty for zoom 0. */
export function quadkey(tile: Tile): string {
  return Array.from({ length: tile.zoom }, (_, at) => {
    const scale = 2 ** (tile.zoom - 1 - at)
    return (Math.floor(tile.x / scale) % 2) + 2 * (Math.floor(tile.y / scale) % 2)
  }).join('')
}
