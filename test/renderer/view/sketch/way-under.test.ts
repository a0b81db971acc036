/** Taking over from the sketch map: the stretch between junctions, as far as the window shows, and whole areas. */
import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { FeatureCollection } from 'geojson'
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { nearestOnLine } from '#core/geo/shape.ts'
import { lineLength } from '#core/geo/line-length.ts'
import { SketchIndex } from '#renderer/view/sketch/sketch-index.ts'
import { wayUnder } from '#renderer/view/sketch/way-under.ts'
import { worldBoxAround, grown, worldX, worldY } from '#renderer/view/sketch/world.ts'

const EVERYWHERE = { west: 0, east: 1, north: 0, south: 1 }
/** About five metres in world coordinates. */
const REACH = 2e-7
const HERE: LatLon = { lat: 46.4, lon: -33.6 }
const at = (bearing: number, metres: number): LatLon => destination(HERE, bearing, metres)
const pair = ({ lat, lon }: LatLon): [number, number] => [lon, lat]

function indexOf(
  ...features: readonly (readonly [string, 'LineString' | 'Polygon', readonly LatLon[], object?])[]
): SketchIndex {
  return new SketchIndex({
    type: 'FeatureCollection',
    features: features.map(([kind, type, points, more]) => ({
      type: 'Feature',
      properties: { kind, ...more },
      geometry:
        type === 'LineString'
          ? { type, coordinates: points.map(pair) }
          : { type, coordinates: [[...points, ...points.slice(0, 1)].map(pair)] },
    })),
  })
}

/** A road of 2 km eastward with a corner every 100 m; a track leaves it at 500 m, a path at 1500 m. */
const road = Array.from({ length: 21 }, (_, n) => at(90, n * 100))
const track = [road[5] ?? HERE, destination(road[5] ?? HERE, 0, 300)]
const path = [road[15] ?? HERE, destination(road[15] ?? HERE, 180, 300)]
const field = [at(0, 1000), at(0, 1200), destination(at(0, 1200), 90, 200), destination(at(0, 1000), 90, 200)]
const crossing = indexOf(
  ['road', 'LineString', road],
  ['track', 'LineString', track],
  ['path', 'LineString', path],
  ['field', 'Polygon', field],
  ['stream', 'LineString', [at(270, 100), at(270, 400)], { name: 'Little stream' }],
)

function ends(shape: { readonly points: readonly LatLon[] } | undefined): [LatLon, LatLon] {
  const [first] = shape?.points ?? []
  const last = shape?.points.at(-1)
  if (first === undefined || last === undefined) throw new Error('nothing was taken')
  return [first, last]
}

describe('a way to stop on', () => {
  it('is the stretch between the junctions about the press', () => {
    const way = wayUnder(crossing, 'stopping', at(90, 1010), REACH, EVERYWHERE)
    expect(way?.feature).toBe('road')
    const [from, to] = ends(way?.shape)
    expect(geodesicDistance(from, road[5] ?? HERE)).toBeLessThan(1)
    expect(geodesicDistance(to, road[15] ?? HERE)).toBeLessThan(1)
  })

  it('ends at its own end where no junction comes before', () => {
    const [from, to] = ends(wayUnder(crossing, 'stopping', at(90, 120), REACH, EVERYWHERE)?.shape)
    expect(geodesicDistance(from, HERE)).toBeLessThan(1)
    expect(geodesicDistance(to, road[5] ?? HERE)).toBeLessThan(1)
  })

  it('is cut where the window ends', () => {
    const [west, east] = [at(90, 800), at(90, 1130)]
    const window = grown(
      worldBoxAround(Float64Array.of(...[west, east].flatMap(({ lat, lon }) => [worldX(lon), worldY(lat)]))),
      0,
    )
    const tall = { ...window, north: window.north - 1e-5, south: window.south + 1e-5 }
    const way = wayUnder(crossing, 'stopping', at(90, 1010), REACH, tall)
    expect(lineLength(way?.shape.points ?? [])).toBeCloseTo(330, 0)
  })

  it('lies where the map draws it, near the press', () => {
    const press = destination(at(90, 640), 0, 4)
    const way = wayUnder(crossing, 'stopping', press, REACH, EVERYWHERE)
    expect(nearestOnLine(way?.shape.points ?? [], press)?.distance).toBeCloseTo(4, 0)
  })

  it('is not met from farther than the reach, nor is a stream or a field one', () => {
    expect(wayUnder(crossing, 'stopping', destination(at(90, 1010), 0, 40), REACH, EVERYWHERE)).toBeNull()
    expect(wayUnder(crossing, 'stopping', at(270, 200), REACH, EVERYWHERE)).toBeNull()
    expect(wayUnder(crossing, 'stopping', destination(at(0, 1100), 90, 100), REACH, EVERYWHERE)).toBeNull()
  })
})

describe('a keep-out', () => {
  it('is the whole of a road, as a carriageway', () => {
    const way = wayUnder(crossing, 'keep-out', at(90, 1010), REACH, EVERYWHERE)
    expect(way).toMatchObject({ kind: 'carriageway', name: '', shape: { form: 'line' } })
    expect(lineLength(way?.shape.points ?? [])).toBeCloseTo(2000, 0)
  })

  it('is a stream as water, with its name', () => {
    expect(wayUnder(crossing, 'keep-out', at(270, 200), REACH, EVERYWHERE)).toMatchObject({
      kind: 'water',
      name: 'Little stream',
    })
  })

  it('is a field as crops, its corners as they are', () => {
    const way = wayUnder(crossing, 'keep-out', destination(at(0, 1100), 90, 100), REACH, EVERYWHERE)
    expect(way).toMatchObject({ kind: 'crops', shape: { form: 'area' } })
    expect(way?.shape.points).toHaveLength(4)
  })
})

describe('the island', () => {
  const text = readFileSync(join(resolve(import.meta.dirname, '../../../..'), 'app/demo/island.geojson'), 'utf8')
  const island = JSON.parse(text) as FeatureCollection
  const index = new SketchIndex(island)

  it('gives every road, track and path from the middle of any of its legs', () => {
    for (const { kind, raw } of index.features) {
      if (!['road', 'minor', 'track', 'path'].includes(kind)) continue
      const [drawn] = raw
      const leg = Math.floor((drawn?.length ?? 0) / 4)
      const place = island.features[index.features.findIndex((one) => one.raw === raw)]?.geometry
      if (place?.type !== 'LineString') throw new Error('ways are lines')
      const [lon = 0, lat = 0] = place.coordinates[leg] ?? []
      const way = wayUnder(index, 'stopping', { lat, lon }, 20 * REACH, EVERYWHERE)
      expect(way?.shape.form).toBe('line')
      expect(lineLength(way?.shape.points ?? [])).toBeGreaterThan(5)
    }
  })

  it('gives its lake as one area of water', () => {
    const lake = island.features.find((feature) => feature.properties?.['kind'] === 'lake')
    if (lake?.geometry.type !== 'Polygon') throw new Error('the lake is an area')
    const ring = lake.geometry.coordinates[0] ?? []
    const [lon, lat] = [0, 1].map((axis) => ring.reduce((sum, at) => sum + (at[axis] ?? 0), 0) / ring.length)
    const way = wayUnder(index, 'keep-out', { lat: lat ?? 0, lon: lon ?? 0 }, REACH, EVERYWHERE)
    expect(way).toMatchObject({ kind: 'water', name: 'Kesper Water', shape: { form: 'area' } })
  })
})
