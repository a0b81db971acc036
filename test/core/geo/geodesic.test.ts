/** Lines on the ellipsoid at their edges: no length, the poles, the antimeridian, the antipode. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import { latLon } from '#core/geo/lat-lon.ts'
import { between, localFrame, placeUnder, toEarth, toLocal } from '#core/geo/local-frame.ts'
import { turnBetween } from '#core/units/angle.ts'

const anywhere = fc
  .tuple(fc.double({ min: -89.9, max: 89.9, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true }))
  .map(([lat, lon]) => latLon(lat, lon))

describe('a line', () => {
  it('from a place to itself has no length and no bearing', () => {
    expect(geodesicLine({ lat: 50, lon: 10 }, { lat: 50, lon: 10 })).toEqual({ distance: 0, bearing: null })
    expect(geodesicLine({ lat: 0, lon: -180 }, { lat: 0, lon: 180 })).toEqual({ distance: 0, bearing: null })
  })

  it('from a pole has no bearing, since every direction is one', () => {
    const line = geodesicLine({ lat: 90, lon: 77 }, { lat: 50, lon: 10 })
    expect(line.bearing).toBeNull()
    // Karney's method: the meridian from 50 degrees to the pole is 4,459,881 m (a quarter, 10,001,966 m, less 5,540,847 m
    // to 50 degrees, recomputed) whatever longitude was typed for the pole.
    expect(line.distance).toBe(geodesicDistance({ lat: 90, lon: -13 }, { lat: 50, lon: 10 }))
    expect(geodesicLine({ lat: -90, lon: 0 }, { lat: 0, lon: 0 }).bearing).toBeNull()
  })

  it('to a pole points north or south', () => {
    expect(geodesicLine({ lat: 50, lon: 10 }, { lat: 90, lon: 0 }).bearing).toBeCloseTo(0, 9)
    expect(geodesicLine({ lat: 50, lon: 10 }, { lat: -90, lon: 0 }).bearing).toBeCloseTo(180, 9)
  })

  // geographiclib-js issue 3: once NaN.
  it('solves a nearly antipodal pair', () => {
    expect(geodesicDistance({ lat: 45, lon: 0 }, { lat: -45, lon: 179.572719 })).toBeCloseTo(19_987_083.0, 0)
  })

  it('goes the short way over the antimeridian', () => {
    // Turf issue 770: the destination must come back with a wrapped longitude.
    const east = destination({ lat: -16.8, lon: 179.95 }, 90, 10_000)
    expect(east.lon).toBeCloseTo(-179.9562, 4)
    expect(geodesicDistance({ lat: -17, lon: 179.9 }, { lat: -17, lon: -179.9 })).toBeCloseTo(21_300, -2)
    const line = geodesicLine({ lat: 0, lon: -178 }, { lat: 0, lon: 176 })
    const middle = destination({ lat: 0, lon: -178 }, line.bearing ?? 0, line.distance / 2)
    expect(middle.lon).toBeCloseTo(179, 9)
  })

  it('passes over a pole', () => {
    const beyond = destination({ lat: 89.9, lon: 0 }, 0, 22_339)
    // +180 and -180 are one meridian, written -180.
    expect(beyond.lon).toBe(-180)
    expect(beyond.lat).toBeGreaterThan(89.89)
    expect(beyond.lat).toBeLessThan(90)
  })

  it('goes backwards for a negative distance', () => {
    const back = destination({ lat: 50, lon: 10 }, 0, -1000)
    expect(back.lat).toBeLessThan(50)
    expect(geodesicDistance(back, { lat: 50, lon: 10 })).toBeCloseTo(1000, 6)
  })

  it('leads to the place that its bearing and distance name', () => {
    fc.assert(
      fc.property(
        anywhere,
        fc.double({ min: 0, max: 359.99, noNaN: true }),
        fc.double({ min: 1, max: 100_000, noNaN: true }),
        (from, bearing, distance) => {
          const line = geodesicLine(from, destination(from, bearing, distance))
          expect(Math.abs(line.distance - distance)).toBeLessThan(1e-6)
          // Sideways by less than a micrometre; close to a pole the bearing itself turns fast, not the place.
          const aside = Math.abs(turnBetween(bearing, line.bearing ?? 0)) * (Math.PI / 180) * distance
          expect(aside).toBeLessThan(1e-5)
        },
      ),
      { numRuns: 500, seed: 20_260_621 },
    )
  })
})

describe('a local frame', () => {
  const metres = fc.double({ min: -50_000, max: 50_000, noNaN: true })

  it('leads to earth-centred metres and back', () => {
    fc.assert(
      fc.property(anywhere, metres, metres, metres, (at, east, north, up) => {
        const frame = localFrame(at, 120)
        const earth = toEarth(frame, east, north, up)
        const back = toLocal(frame, earth)
        expect(Math.hypot(back.east - east, back.north - north, back.up - up)).toBeLessThan(1e-7)
      }),
      { numRuns: 500, seed: 20_260_622 },
    )
  })

  it('agrees with another frame about one point', () => {
    fc.assert(
      fc.property(anywhere, anywhere, metres, metres, metres, (one, other, east, north, up) => {
        const [first, second] = [localFrame(one, 0), localFrame(other, 500)]
        const there = between(first, second, east, north, up)
        const back = between(second, first, there.east, there.north, there.up)
        expect(Math.hypot(back.east - east, back.north - north, back.up - up)).toBeLessThan(1e-6)
      }),
      { numRuns: 500, seed: 20_260_623 },
    )
  })

  it.each([
    [0, 0],
    [90, 0],
    [-90, 0],
    [89.999999, 45],
    [48, -180],
    [48, 179.999999],
    [-33.86, 151.2],
  ])('finds the place under a point at %d, %d from 0 to 9000 m', (lat, lon) => {
    for (const height of [0, 9000]) {
      const place = placeUnder(localFrame({ lat, lon }, height).origin)
      expect(geodesicDistance(place, { lat, lon })).toBeLessThan(1e-4)
    }
  })

  it('has its axes right: east, north and up', () => {
    const frame = localFrame({ lat: 50, lon: 10 }, 0)
    const east = toLocal(frame, localFrame({ lat: 50, lon: 10.001 }, 0).origin)
    const north = toLocal(frame, localFrame({ lat: 50.001, lon: 10 }, 0).origin)
    const up = toLocal(frame, localFrame({ lat: 50, lon: 10 }, 100).origin)
    expect(east.east).toBeGreaterThan(70)
    expect(north.north).toBeGreaterThan(110)
    expect(up.up).toBeCloseTo(100, 9)
    expect(up.east).toBeCloseTo(0, 9)
    expect(up.north).toBeCloseTo(0, 9)
  })
})
