/** Outlines that cross themselves, told the same as turf's own, slower search tells it. */
import { kinks, polygon } from '@turf/turf'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { wrapLongitude } from '#core/geo/lat-lon.ts'
import { ringCrossesItself } from '#core/geo/ring-crossing.ts'
import { ownTime } from '#test/help/own-time.ts'

const corner = fc.record({
  lat: fc.double({ min: 46, max: 46.01, noNaN: true }),
  lon: fc.double({ min: -33.61, max: -33.6, noNaN: true }),
})

function byTurf(ring: readonly LatLon[]): boolean {
  const corners = ring.map(({ lat, lon }): [number, number] => [lon, lat])
  return kinks(polygon([[...corners, ...corners.slice(0, 1)]])).features.length > 0
}

/** Round a place by bearing, so that nothing crosses until two corners are exchanged. */
const round = (reaches: readonly number[]): LatLon[] =>
  reaches.map((reach, index) => {
    const turn = (2 * Math.PI * index) / reaches.length
    return { lat: 46 + reach * Math.cos(turn), lon: -33 + reach * Math.sin(turn) }
  })

describe('an outline', () => {
  it('of any corners is told as turf tells it', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(corner, { minLength: 3, maxLength: 9, selector: ({ lat, lon }) => `${lat} ${lon}` }),
        (ring) => {
          expect(ringCrossesItself(ring)).toBe(byTurf(ring))
        },
      ),
      { numRuns: 400 },
    )
  })

  it('of many corners that goes round once does not cross, with two of them exchanged it does as turf says', () => {
    const reaches = fc.array(fc.double({ min: 0.001, max: 0.002, noNaN: true }), { minLength: 5, maxLength: 60 })
    fc.assert(
      fc.property(reaches, fc.nat(), fc.nat(), (list, some, other) => {
        const ring = round(list)
        expect(ringCrossesItself(ring)).toBe(false)
        const [one, two] = [some % ring.length, other % ring.length]
        const [first, second] = [ring[one], ring[two]]
        if (first === undefined || second === undefined) throw new Error('both are corners')
        const exchanged = ring.with(one, second).with(two, first)
        expect(ringCrossesItself(exchanged)).toBe(byTurf(exchanged))
      }),
    )
  })

  it('is told the same on both sides of the antimeridian', () => {
    const across = (ring: readonly LatLon[]): LatLon[] =>
      ring.map(({ lat, lon }) => ({ lat, lon: wrapLongitude(lon + 33 + 180) }))
    const ring = round([0.001, 0.002, 0.001, 0.002, 0.001])
    expect(ringCrossesItself(across(ring))).toBe(false)
    expect(ringCrossesItself(across([0, 2, 1, 3, 4].flatMap((n) => ring[n] ?? [])))).toBe(true)
  })

  it('that comes back to one of its corners, or lies along one of its sides, touches itself', () => {
    const places = (...pairs: readonly (readonly [number, number])[]): LatLon[] =>
      pairs.map(([lon, lat]) => ({ lat, lon }))
    expect(ringCrossesItself(places([0, 0], [2, 0], [1, 1], [2, 2], [0, 2], [1, 1]))).toBe(true)
    expect(ringCrossesItself(places([0, 0], [4, 0], [4, 2], [3, 2], [3, 0], [1, 0], [1, 2], [0, 2]))).toBe(true)
    expect(ringCrossesItself(places([0, 0], [4, 0], [4, 2], [0, 2]))).toBe(false)
  })
})

/** Every pair of sides looked at, on a grid of whole numbers, where all arithmetic is exact. */
function byPairs(ring: readonly LatLon[]): boolean {
  const turn = (a: LatLon, b: LatLon, c: LatLon): number =>
    Math.sign((b.lon - a.lon) * (c.lat - a.lat) - (b.lat - a.lat) * (c.lon - a.lon))
  const within = (a: LatLon, b: LatLon, c: LatLon): boolean =>
    turn(a, b, c) === 0 &&
    Math.min(a.lon, b.lon) <= c.lon &&
    c.lon <= Math.max(a.lon, b.lon) &&
    Math.min(a.lat, b.lat) <= c.lat &&
    c.lat <= Math.max(a.lat, b.lat)
  const sides = ring.map((from, index) => [from, ring[(index + 1) % ring.length] ?? from] as const)
  return sides.some(([a, b], one) =>
    sides.some(([c, d], other) => {
      if (other <= one + 1 || other - one === ring.length - 1) return false
      const [first, second, third, fourth] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)]
      if (first * second < 0 && third * fourth < 0) return true
      return within(a, b, c) || within(a, b, d) || within(c, d, a) || within(c, d, b)
    }),
  )
}

describe('an outline on a grid', () => {
  const grid = fc.record({ lat: fc.integer({ min: 0, max: 5 }), lon: fc.integer({ min: 0, max: 5 }) })
  it('with corners on sides and sides on sides is told as every pair of them tells', () => {
    fc.assert(
      fc.property(fc.array(grid, { minLength: 3, maxLength: 12 }), (corners) => {
        const ring = corners.filter(({ lat, lon }, at) => {
          const before = corners.at(at - 1)
          return before === undefined || lat !== before.lat || lon !== before.lon
        })
        fc.pre(ring.length >= 3)
        const [first, last] = [ring[0], ring.at(-1)]
        fc.pre(first?.lat !== last?.lat || first?.lon !== last?.lon)
        expect(ringCrossesItself(ring)).toBe(byPairs(ring))
      }),
      { numRuns: 20_000 },
    )
  })
})

describe('an outline of many long sides', () => {
  /** Teeth of a comb, each as long as the whole; turned about so that all of their boxes lie over one another. */
  const comb = (teeth: number, turn: number): LatLon[] => {
    const flat = Array.from({ length: teeth }, (_, tooth) => [
      [0, tooth * 2],
      [1000, tooth * 2],
      [1000, tooth * 2 + 1],
      [1, tooth * 2 + 1],
    ]).flat()
    const back = [
      [0, teeth * 2],
      [-5, teeth * 2],
      [-5, -1],
      [0, -1],
    ]
    return [...flat, ...back].map(([x = 0, y = 0]) => ({
      lon: (x * Math.cos(turn) - y * Math.sin(turn)) / 1e5,
      lat: (x * Math.sin(turn) + y * Math.cos(turn)) / 1e5,
    }))
  }

  it.each([0, 0.1, 0.7, 1.5])('is told in moments, turned by %f', (turn) => {
    const ring = comb(12_000, turn)
    const crossing = ring.with(ring.length - 10, { lat: 0.001, lon: 0.005 })
    const found: boolean[] = []
    const took = ownTime(() => {
      for (const one of [ring, crossing]) found.push(ringCrossesItself(one))
    })
    expect(found).toEqual([false, true])
    // A search pair by pair takes a thousand million looks and more for the first alone.
    expect(took).toBeLessThan(5_000)
  })
})
