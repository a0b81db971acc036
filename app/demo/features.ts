/** The demo island as GeoJSON features (RFC 7946: longitude first, outer rings anticlockwise, six decimals). */
import { type IslandPoint, step, toLatLon } from './island-frame.ts'
import { BRIDGE, BRIDGE_PLAN, LIGHTHOUSE, LIGHTHOUSE_PLAN } from './island-places.ts'
import type { IslandRing } from './isolines.ts'
import { islandRingArea } from './outline.ts'

/** Everything that a feature of the island can be. */
export const ISLAND_KINDS = [
  'land',
  'rock',
  'crag',
  'beach',
  'field',
  'wood',
  'lake',
  'stream',
  'contour',
  'road',
  'minor',
  'track',
  'path',
  'quay',
  'wall',
  'building',
  'lighthouse',
  'bridge',
  'place',
] as const
export type IslandKind = (typeof ISLAND_KINDS)[number]

type Pair = readonly [number, number]

export interface IslandFeature {
  readonly type: 'Feature'
  readonly properties: { readonly kind: IslandKind } & Readonly<Record<string, string | number | boolean>>
  readonly geometry:
    | { readonly type: 'Point'; readonly coordinates: Pair }
    | { readonly type: 'LineString'; readonly coordinates: readonly Pair[] }
    | { readonly type: 'Polygon'; readonly coordinates: readonly (readonly Pair[])[] }
}

type Extra = Readonly<Record<string, string | number | boolean>>

function pair(point: IslandPoint): Pair {
  const place = toLatLon(point)
  return [Math.round(place.lon * 1e6) / 1e6, Math.round(place.lat * 1e6) / 1e6]
}

export function pointFeature(kind: IslandKind, at: IslandPoint, extra: Extra): IslandFeature {
  return { type: 'Feature', properties: { kind, ...extra }, geometry: { type: 'Point', coordinates: pair(at) } }
}

export function lineFeature(kind: IslandKind, line: readonly IslandPoint[], extra: Extra = {}): IslandFeature {
  return {
    type: 'Feature',
    properties: { kind, ...extra },
    geometry: { type: 'LineString', coordinates: line.map(pair) },
  }
}

/** A polygon of rings that are not closed yet; the first is the outer one, whichever way it runs. */
export function areaFeature(kind: IslandKind, rings: readonly IslandRing[], extra: Extra = {}): IslandFeature {
  const coordinates = rings.map((ring, place) => {
    const turned = islandRingArea(ring) > 0 === (place === 0) ? ring : ring.toReversed()
    const pairs = turned.map(pair)
    return pairs[0] === undefined ? pairs : [...pairs, pairs[0]]
  })
  return { type: 'Feature', properties: { kind, ...extra }, geometry: { type: 'Polygon', coordinates } }
}

export function bridgeFeature(): IslandFeature {
  return lineFeature('bridge', BRIDGE_PLAN, { name: BRIDGE.name, width: BRIDGE.width, deck: BRIDGE.deckHeight })
}

export function lighthouseFeature(): IslandFeature {
  const ring = Array.from({ length: 16 }, (_, side) => step(LIGHTHOUSE_PLAN, side * -22.5, LIGHTHOUSE.width / 2))
  return areaFeature('lighthouse', [ring], { name: LIGHTHOUSE.name, height: LIGHTHOUSE.height })
}

interface DrawnBox {
  readonly west: number
  readonly north: number
  readonly east: number
  readonly south: number
}

function corners({ geometry }: IslandFeature): readonly Pair[] {
  if (geometry.type === 'Point') return [geometry.coordinates]
  return geometry.type === 'LineString' ? geometry.coordinates : geometry.coordinates.flat()
}

/** Degrees around all that is drawn of the island, so that whoever looks elsewhere need not fetch it. */
export function drawnBox(features: readonly IslandFeature[]): DrawnBox {
  const box = { west: Infinity, north: -Infinity, east: -Infinity, south: Infinity }
  for (const [lon, lat] of features.flatMap(corners)) {
    box.west = Math.min(box.west, lon)
    box.east = Math.max(box.east, lon)
    box.south = Math.min(box.south, lat)
    box.north = Math.max(box.north, lat)
  }
  return box
}

/** One feature a line, so that changes can be read. */
export function collection(features: readonly IslandFeature[]): string {
  const lines = features.map((feature) => JSON.stringify(feature))
  return `{"type":"FeatureCollection","features":[\n${lines.join(',\n')}\n]}\n`
}
