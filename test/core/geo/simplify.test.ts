/** Lines thinned to a number of points: as the walk for one tolerance thins them, and lines that turn to and fro in moments. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { simplifiedPlaces, simplifiedTo } from '#core/geo/simplify.ts'
import { ownTime } from '#test/help/own-time.ts'

const place = fc.record({
  lat: fc.double({ min: 46, max: 46.1, noNaN: true }),
  lon: fc.double({ min: -33.1, max: -33, noNaN: true }),
})

describe('a line thinned to a number of points', () => {
  test('is the line thinned by the metres told, by no more than need be', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 80 }), fc.integer({ min: 2, max: 40 }), (line, most) => {
        const { places, metres } = simplifiedTo(line, most)
        expect(places.length).toBeLessThanOrEqual(most)
        if (line.length <= most) expect({ places, metres }).toEqual({ places: line, metres: 0 })
        else {
          expect(places).toEqual(simplifiedPlaces(line, metres))
          if (metres > 0.1) expect(simplifiedPlaces(line, metres / 2).length).toBeGreaterThan(most)
        }
      }),
    )
  })

  test('of a hundred thousand teeth is done in moments, its ends kept', () => {
    const teeth: LatLon[] = Array.from({ length: 100_000 }, (_, at) => ({
      lat: 46 + at * 1e-6,
      lon: at % 2 === 0 ? -33 : -32.99,
    }))
    let simple: ReturnType<typeof simplifiedTo> = { places: [], metres: 0 }
    const took = ownTime(() => {
      simple = simplifiedTo(teeth, 5_000)
    })
    // A walk for each tooth is five thousand million looks for each of the tolerances tried.
    expect(took).toBeLessThan(5_000)
    const { places, metres } = simple
    expect([places[0], places.at(-1), places.length <= 5_000]).toEqual([teeth[0], teeth.at(-1), true])
    expect(metres).toBeGreaterThan(10)
  })
})
