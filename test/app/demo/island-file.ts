/** The committed demo island, read back for the tests: its features, its elevation grid, and a bilinear height in it. */
import { readFileSync } from 'node:fs'
import type { Feature, FeatureCollection, Position } from 'geojson'
import type { LatLon } from '#core/geo/lat-lon.ts'

const folder = new URL('./', import.meta.resolve('#app/demo/make-island.ts'))

export function committed(name: string): Buffer {
  return readFileSync(new URL(name, folder))
}

export function islandFeatures(): Feature[] {
  return (JSON.parse(committed('island.geojson').toString('utf8')) as FeatureCollection).features
}

export function ofKind(features: readonly Feature[], ...kinds: readonly string[]): Feature[] {
  return features.filter((feature) => kinds.includes(String(feature.properties?.['kind'])))
}

export function lineOf(feature: Feature): Position[] {
  if (feature.geometry.type !== 'LineString') throw new TypeError(`${feature.geometry.type} is no line`)
  return feature.geometry.coordinates
}

interface Header {
  readonly columns: number
  readonly rows: number
  readonly west: number
  readonly north: number
  readonly degreesEast: number
  readonly degreesSouth: number
  readonly metresPerUnit: number
}

/** Metres above the sea in the committed grid, bilinear between its posts. */
export function gridHeights(): (place: LatLon) => number {
  const header = JSON.parse(committed('elevation.json').toString('utf8')) as Header
  const bytes = committed('elevation.bin')
  const post = (column: number, row: number): number =>
    bytes.readInt16LE((row * header.columns + column) * 2) * header.metresPerUnit
  return ({ lat, lon }) => {
    const x = (lon - header.west) / header.degreesEast
    const y = (header.north - lat) / header.degreesSouth
    const [column, row] = [Math.floor(x), Math.floor(y)]
    const [east, south] = [x - column, y - row]
    const north = post(column, row) * (1 - east) + post(column + 1, row) * east
    return north * (1 - south) + (post(column, row + 1) * (1 - east) + post(column + 1, row + 1) * east) * south
  }
}
