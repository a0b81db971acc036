/** The demo's fixed places lie where they should: on track, mole and roadside, at the grid's own elevation, in sight of their landmark. */
import { booleanPointInPolygon } from '@turf/turf'
import type { Feature, Polygon } from 'geojson'
import { Geodesic } from 'geographiclib-geodesic'
import { describe, expect, it } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { islandDistance, toLatLon, toPlane } from '#app/demo/island-frame.ts'
import { BRIDGE, DEMO_PLACES, type DemoPlace, LIGHTHOUSE } from '#app/demo/island-places.ts'
import { gridHeights, islandFeatures, lineOf, ofKind } from './island-file.ts'

const features = islandFeatures()
const height = gridHeights()
const [track, harbour, layBy] = DEMO_PLACES
if (track === undefined || harbour === undefined || layBy === undefined)
  throw new Error('three demo spots are expected')

/** WGS84 inverse by GeographicLib. */
function line(from: LatLon, to: LatLon): { readonly metres: number; readonly bearing: number } {
  const { s12 = Number.NaN, azi1 = Number.NaN } = Geodesic.WGS84.Inverse(from.lat, from.lon, to.lat, to.lon)
  return { metres: s12, bearing: azi1 }
}

function landmarkOf(place: DemoPlace): LatLon {
  return place.landmark === 'bridge' ? BRIDGE.middle : LIGHTHOUSE.at
}

/** Metres by which the line from the lens to a point clears the ground where it clears it least. */
function clearance(place: DemoPlace, to: LatLon, top: number): number {
  const eye = place.standpointElevation + 1.5
  let least = Infinity
  for (let share = 0.03; share < 0.98; share += 0.002) {
    const at = {
      lat: place.standpoint.lat + (to.lat - place.standpoint.lat) * share,
      lon: place.standpoint.lon + (to.lon - place.standpoint.lon) * share,
    }
    least = Math.min(least, eye + (top - eye) * share - height(at))
  }
  return least
}

describe('the bridge and the plane it is laid out on', () => {
  it('has a main span of 180 to 260 m on the ellipsoid, as stated', () => {
    const [, west, east] = BRIDGE.line
    if (west === undefined || east === undefined) throw new Error('the bridge has four points')
    const { metres, bearing } = line(west, east)
    expect(Math.abs(metres - BRIDGE.mainSpan)).toBeLessThan(0.1)
    expect(Math.abs(bearing - BRIDGE.bearing)).toBeLessThan(0.1)
  })

  it('measures the island to within 3 m of the ellipsoid', () => {
    const [west, east] = [
      { east: -4000, north: 2500 },
      { east: 4000, north: -2500 },
    ]
    expect(Math.abs(line(toLatLon(west), toLatLon(east)).metres - islandDistance(west, east))).toBeLessThan(3)
  })
})

describe('the demo spots', () => {
  it.each(DEMO_PLACES)('$name: the standpoint is 5 to 15 m off, straight away from the landmark', (place) => {
    const back = line(place.stop, place.standpoint)
    const onward = line(place.standpoint, landmarkOf(place))
    const subject = line(place.standpoint, place.stop)
    expect(back.metres).toBeGreaterThanOrEqual(5)
    expect(back.metres).toBeLessThanOrEqual(15)
    expect(Math.abs(onward.bearing - subject.bearing)).toBeLessThan(0.5)
  })

  it.each(DEMO_PLACES)('$name: elevations are those of the grid', (place) => {
    expect(Math.abs(height(place.stop) - place.stopElevation)).toBeLessThan(0.3)
    expect(Math.abs(height(place.standpoint) - place.standpointElevation)).toBeLessThan(0.3)
  })

  it.each(DEMO_PLACES)('$name: the ground leaves the landmark in sight from two thirds up', (place) => {
    const [base, top]: readonly [number, number] =
      place.landmark === 'bridge'
        ? [BRIDGE.baseElevation, BRIDGE.towerHeight]
        : [LIGHTHOUSE.baseElevation, LIGHTHOUSE.height]
    expect(clearance(place, landmarkOf(place), base + (top * 2) / 3)).toBeGreaterThan(0)
  })

  it('stand 300 to 700 m, about 1.2 km and about 1.2 km before their landmarks', () => {
    expect(line(track.stop, BRIDGE.middle).metres).toBeGreaterThan(300)
    expect(line(track.stop, BRIDGE.middle).metres).toBeLessThan(700)
    expect(Math.abs(line(harbour.stop, BRIDGE.middle).metres - 1200)).toBeLessThan(150)
    expect(Math.abs(line(layBy.stop, LIGHTHOUSE.at).metres - 1200)).toBeLessThan(150)
  })

  it('stand on the track, on the mole, and beside the road', () => {
    const nearest = (place: LatLon, kind: string): number => {
      const at = toPlane(place)
      const lines = ofKind(features, kind).map((way) => lineOf(way).map(([lon = 0, lat = 0]) => toPlane({ lat, lon })))
      return Math.min(
        ...lines.flatMap((points) => points.slice(1).map((to, before) => off(at, points[before] ?? to, to))),
      )
    }
    expect(nearest(track.stop, 'track')).toBeLessThan(2)
    expect(nearest(layBy.stop, 'road')).toBeGreaterThan(4)
    expect(nearest(layBy.stop, 'road')).toBeLessThan(8)
    const quays = ofKind(features, 'quay') as Feature<Polygon>[]
    for (const place of [harbour.stop, harbour.standpoint, harbour.parking]) {
      expect(quays.some((quay) => booleanPointInPolygon([place.lon, place.lat], quay))).toBe(true)
    }
  })
})

interface Plane {
  readonly east: number
  readonly north: number
}

/** Metres from a point to a stretch of line. */
function off(at: Plane, from: Plane, to: Plane): number {
  const [east, north] = [to.east - from.east, to.north - from.north]
  const along = ((at.east - from.east) * east + (at.north - from.north) * north) / (east * east + north * north)
  const share = Math.min(1, Math.max(0, along))
  return Math.hypot(at.east - from.east - share * east, at.north - from.north - share * north)
}
