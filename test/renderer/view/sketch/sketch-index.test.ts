/** The sketch's index: what a tile needs is found, and shapes are thinned no more than a zoom allows. */
import type { Feature } from 'geojson'
import { describe, expect, it } from 'vitest'
import { simplified } from '#core/geo/simplify.ts'
import { clipRing, cutCorners } from '#renderer/view/sketch/curve.ts'
import { shapedFor, SketchIndex, STRETCH } from '#renderer/view/sketch/sketch-index.ts'
import { worldBoxAround, boxesMeet, latitudeAt, worldPixels, worldX, worldY } from '#renderer/view/sketch/world.ts'

function line(kind: string, coordinates: [number, number][]): Feature {
  return { type: 'Feature', properties: { kind }, geometry: { type: 'LineString', coordinates } }
}

const south = line('road', [
  [-33.7, 46.3],
  [-33.6, 46.31],
])
const north = line('road', [
  [-33.7, 46.5],
  [-33.6, 46.51],
])
const wood: Feature = {
  type: 'Feature',
  properties: { kind: 'wood' },
  geometry: {
    type: 'Polygon',
    coordinates: [
      [
        [-33.7, 46.3],
        [-33.6, 46.3],
        [-33.6, 46.4],
        [-33.7, 46.3],
      ],
    ],
  },
}

describe('the world square', () => {
  it('puts the tile corners where the slippy map puts them', () => {
    // Web Mercator: the world's edges are +-180 and +-85.0511287798066 degrees (OGC 17-083r4, annex D).
    expect(worldX(-180)).toBe(0)
    expect(worldX(180)).toBe(1)
    expect(worldY(85.0511287798066)).toBeCloseTo(0, 12)
    expect(worldY(-85.0511287798066)).toBeCloseTo(1, 12)
    expect(worldY(0)).toBe(0.5)
    expect(worldY(90)).toBe(worldY(85.06))
    expect(latitudeAt(worldY(46.4))).toBeCloseTo(46.4, 10)
    expect(worldPixels(3)).toBe(2048)
  })
})

describe('the index', () => {
  const index = new SketchIndex({ type: 'FeatureCollection', features: [south, wood, north] })

  it('finds the features of one kind that touch a box, in their order', () => {
    const box = { west: worldX(-33.65), east: worldX(-33.64), north: worldY(46.6), south: worldY(46.4) }
    expect(index.within('road', box).map((feature) => index.features.indexOf(feature))).toEqual([2])
    expect(index.within('road', index.box)).toHaveLength(2)
    expect(index.within('wood', box)).toHaveLength(1)
    expect(index.within('stream', index.box)).toEqual([])
  })

  it('spans everything', () => {
    expect(index.box.west).toBe(worldX(-33.7))
    expect(index.box.north).toBe(worldY(46.51))
  })

  it('shapes a feature once for zooms that look alike', () => {
    const [road] = index.all('road')
    if (road === undefined) throw new Error('no road')
    expect(index.shape(road, 19)).toBe(index.shape(road, 21))
    expect(index.shape(road, 12)).not.toBe(index.shape(road, 13))
  })

  it('refuses geometry that the island has not', () => {
    const many: Feature = { type: 'Feature', properties: {}, geometry: { type: 'MultiPoint', coordinates: [] } }
    expect(() => new SketchIndex({ type: 'FeatureCollection', features: [many] })).toThrow('MultiPoint')
  })

  it('cuts long lines into stretches whose boxes hold every side', () => {
    const wave = Array.from({ length: 200 }, (_, place): [number, number] => [-33 + place / 1000, 46 + Math.sin(place)])
    const long = new SketchIndex({ type: 'FeatureCollection', features: [line('bridge', wave)] })
    const [feature] = long.features
    if (feature === undefined) throw new Error('no feature')
    const [part] = long.shape(feature, 16)
    if (part === undefined) throw new Error('no part')
    expect(part.points.length / 2).toBe(200)
    for (let side = 0; side < 199; side++) {
      const box = part.stretches[Math.floor(side / STRETCH)]
      const own = worldBoxAround(part.points, side * 2, side * 2 + 4)
      expect(box !== undefined && box.west <= own.west && box.east >= own.east && boxesMeet(box, own)).toBe(true)
    }
  })
})

describe('shapes', () => {
  it('thins a nearly straight line to its ends and keeps a corner', () => {
    expect([...simplified(Float64Array.of(0, 0, 5, 0.1, 10, 0), 0.2)]).toEqual([0, 0, 10, 0])
    expect([...simplified(Float64Array.of(0, 0, 5, 3, 10, 0), 0.2)]).toEqual([0, 0, 5, 3, 10, 0])
  })

  it('cuts corners at a quarter of the sides, keeps open ends, closes rings', () => {
    expect([...cutCorners(Float64Array.of(0, 0, 4, 0, 4, 4), false)]).toEqual([0, 0, 3, 0, 4, 1, 4, 4])
    const ring = cutCorners(Float64Array.of(0, 0, 4, 0, 4, 4, 0, 0), true)
    expect([...ring.subarray(0, 2)]).toEqual([...ring.subarray(-2)])
    expect(ring).toHaveLength(14)
  })

  it('leaves the corners of houses alone and rounds those of woods', () => {
    const ring = Float64Array.of(0.2, 0.2, 0.21, 0.2, 0.21, 0.21, 0.2, 0.2)
    expect([...shapedFor(ring, 'building', true, 18)]).toEqual([...ring])
    expect(shapedFor(ring, 'wood', true, 18).length).toBeGreaterThan(ring.length)
  })

  it('clips a ring to a box: a square over a corner leaves the quarter that is shared', () => {
    const clipped = clipRing(Float64Array.of(-1, -1, 1, -1, 1, 1, -1, 1), { west: 0, east: 5, north: 0, south: 5 })
    expect(worldBoxAround(clipped)).toEqual({ west: 0, east: 1, north: 0, south: 1 })
    expect(clipRing(Float64Array.of(-3, -3, -2, -3, -2, -2), { west: 0, east: 1, north: 0, south: 1 })).toHaveLength(0)
  })
})
