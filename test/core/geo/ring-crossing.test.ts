/** Outlines that cross themselves, told the same as turf's own, slower search tells it. */
import { kinks, polygon } from '@turf/turf'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { wrapLongitude } from '#core/geo/lat-lon.ts'
import { ringCrossesItself } from '#core/geo/ring-crossing.ts'

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
