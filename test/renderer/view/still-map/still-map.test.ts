/** Still maps: where they look, which tiles cover them, and the length of their scale bar. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { METRES_PER_FOOT, METRES_PER_MILE } from '#core/units/length.ts'
import { niceLength } from '#renderer/view/drawing/nice-length.ts'
import { stillView } from '#renderer/view/still-map/still-view.ts'
import { piecesFor } from '#renderer/view/still-map/tile-pieces.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'

describe('a scale bar', () => {
  test('is 1, 2 or 5 times a power of ten of the reader’s own unit, and the longest that fits', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 6.5, noNaN: true }),
        fc.constantFrom('metric', 'imperial'),
        (log, units) => {
          const most = 10 ** log
          const length = niceLength(most, units)
          expect(length).toBeLessThanOrEqual(most * (1 + 1e-6))
          // From 5 to the next 10 is the widest step but one, 2 to 5 the widest.
          expect(length * 2.5).toBeGreaterThan(most * (1 - 1e-6))
          const unit = units === 'metric' ? 1 : most >= METRES_PER_MILE / 2 ? METRES_PER_MILE : METRES_PER_FOOT
          const size = length / unit
          expect([1, 2, 5]).toContain(Math.round(size / 10 ** Math.floor(Math.log10(size) + 1e-9)))
        },
      ),
    )
  })

  test.each([
    [100, 'metric', 100],
    [99.9, 'metric', 50],
    [499, 'metric', 200],
    [0.9, 'metric', 0.5],
    [100, 'imperial', 200 * METRES_PER_FOOT],
    [METRES_PER_MILE / 2, 'imperial', METRES_PER_MILE / 2],
    [METRES_PER_MILE / 2 - 1, 'imperial', 2000 * METRES_PER_FOOT],
    [METRES_PER_MILE * 3, 'imperial', METRES_PER_MILE * 2],
  ] as const)('of at most %d m, %s, is %d m', (most, units, length) => {
    expect(niceLength(most, units)).toBeCloseTo(length, 6)
  })
})

const place = fc.record({
  lat: fc.double({ min: -84, max: 84, noNaN: true }),
  lon: fc.double({ min: -180, max: 179.999, noNaN: true }),
})

describe('the tiles of a still map', () => {
  test('cover it without a gap, each once, within the world', () => {
    fc.assert(
      fc.property(place, fc.integer({ min: 8, max: 76 }), (centre, quarters) => {
        const zoom = quarters / 4
        const tileZoom = Math.ceil(zoom)
        const [width, height] = [340, 230]
        const { pieces, size } = piecesFor(centre, zoom, tileZoom, width, height)
        expect(size).toBeGreaterThan(127.9)
        expect(size).toBeLessThanOrEqual(256)
        const count = 2 ** tileZoom
        for (const { x, y } of pieces) {
          expect(x >= 0 && x < count && y >= 0 && y < count).toBe(true)
        }
        expect(new Set(pieces.map(({ left, top }) => `${left} ${top}`)).size).toBe(pieces.length)
        const [lefts, tops] = [pieces.map(({ left }) => left), pieces.map(({ top }) => top)]
        expect(Math.min(...lefts)).toBeLessThanOrEqual(1e-6)
        expect(Math.max(...lefts) + size).toBeGreaterThanOrEqual(width - 1e-6)
        // North and south the world ends, so a map near there may lack a strip.
        const worldTop = Math.min(...tops) - (pieces[0]?.y ?? 0) * size
        expect(Math.min(...tops)).toBeLessThanOrEqual(Math.max(0, worldTop) + 1e-6)
        const columns = new Set(lefts.map((left) => Math.round(left))).size
        expect(columns * new Set(tops.map((top) => Math.round(top))).size).toBe(pieces.length)
      }),
    )
  })

  test('hold the centre in the tile that the slippy-map rule names', () => {
    // OpenStreetMap wiki, "Slippy map tilenames": x = (lon + 180) / 360 * 2^z, y by asinh(tan lat).
    fc.assert(
      fc.property(place, fc.integer({ min: 2, max: 19 }), (centre: LatLon, zoom) => {
        const { pieces, size } = piecesFor(centre, zoom, zoom, 340, 230)
        const count = 2 ** zoom
        const column = ((centre.lon + 180) / 360) * count
        const row = ((1 - Math.asinh(Math.tan((centre.lat * Math.PI) / 180)) / Math.PI) / 2) * count
        const tile = pieces.find(({ left, top }) => left <= 170 && 170 < left + size && top <= 115 && 115 < top + size)
        const inTile = [(170 - (tile?.left ?? 0)) / size, (115 - (tile?.top ?? 0)) / size] as const
        const apart = Math.abs((tile?.x ?? Number.NaN) + inTile[0] - column)
        expect(Math.min(apart, count - apart)).toBeLessThan(1e-5)
        expect(Math.abs((tile?.y ?? Number.NaN) + inTile[1] - row)).toBeLessThan(1e-5)
      }),
    )
  })

  test('wrap round the world where the map crosses 180 degrees', () => {
    const { pieces } = piecesFor({ lat: 0, lon: 179.99 }, 3, 3, 340, 230)
    expect([...new Set(pieces.map(({ x }) => x))].toSorted((one, other) => one - other)).toEqual([0, 7])
  })
})

describe('a still map looks', () => {
  const [width, height] = [340, 230]
  function inside(plan: Parameters<typeof stillView>[0], places: readonly LatLon[]): void {
    const still = stillView(plan, width, height)
    const room = Math.min(width, height) * 0.12
    for (const one of places) {
      const at = still?.view.toPoint(one) ?? { x: Number.NaN, y: Number.NaN }
      expect(at.x).toBeGreaterThan(room - 0.01)
      expect(at.x).toBeLessThan(width - room + 0.01)
      expect(at.y).toBeGreaterThan(room - 0.01)
      expect(at.y).toBeLessThan(height - room + 0.01)
    }
  }

  // oxlint-disable-next-line vitest/expect-expect -- each place is expected inside by `inside`
  test('at camera, subject, landmark and parking, with room around, wherever they lie', () => {
    fc.assert(
      fc.property(
        place,
        fc.double({ min: 50, max: 60_000, noNaN: true }),
        fc.integer({ min: 0, max: 359 }),
        (at, away, bearing) => {
          const landmark = bridgeAt(at, bearing, away)
          const parking = bridgeAt(at, bearing + 120, 400).line[0] ?? at
          const plan = examplePlan({ at, landmark, spot: { access: { parking, walkMinutes: null, surface: '' } } })
          inside(plan, [at, plan.spot.stop.at, parking, ...landmark.line])
        },
      ),
      { numRuns: 60 },
    )
  })

  test('no nearer than its nearest zoom, and at no landmark when there is none', () => {
    const plan = examplePlan({ landmark: null })
    expect(stillView(plan, width, height)?.zoom).toBe(19)
    inside(plan, [plan.spot.standpoint.at, plan.spot.stop.at])
  })

  test('nowhere when there is no room', () => {
    expect(stillView(examplePlan(), 0, 0)).toBeNull()
  })
})
