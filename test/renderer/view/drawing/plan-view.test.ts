/** Places and pixels agree both ways, at the antimeridian as elsewhere, and metres on the close plan are true. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import { type MapLook, distanceBetween, levelView, mercatorView } from '#renderer/view/drawing/plan-view.ts'

const BOX = { left: 0, top: 0, right: 800, bottom: 600 }

function look(zoom: number, middleLon: number): MapLook {
  return { zoom, originX: 0, originY: 0, middleLon, box: BOX }
}

describe('mercatorView', () => {
  it('puts the middle of the world in the middle of its square and its edge at the published latitude', () => {
    const view = mercatorView(look(0, 0))
    expect(view.toPoint({ lat: 0, lon: 0 })).toEqual({ x: 128, y: 128 })
    // EPSG:3857: the square ends at 85.0511 degrees.
    expect(view.toPoint({ lat: 85.051_128_78, lon: -180 }).y).toBeCloseTo(0, 4)
  })

  it('gives a place back from its pixel', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -84, max: 84, noNaN: true }),
        fc.double({ min: -180, max: 179.999, noNaN: true }),
        fc.integer({ min: 2, max: 22 }),
        (lat, lon, zoom) => {
          const view = mercatorView(look(zoom, lon))
          const back = view.toPlace(view.toPoint({ lat, lon }))
          expect(geodesicDistance(back, { lat, lon })).toBeLessThan(1e-3)
        },
      ),
    )
  })

  it('draws two places on both sides of the antimeridian side by side', () => {
    for (const middleLon of [180, -180, 179.99]) {
      const view = mercatorView(look(10, middleLon))
      const east = view.toPoint({ lat: -16.8, lon: 179.9 })
      const west = view.toPoint({ lat: -16.8, lon: -179.9 })
      expect(west.x - east.x).toBeCloseTo((0.2 / 360) * 256 * 1024, 3)
      expect(view.toPlace(west).lon).toBeCloseTo(-179.9, 9)
    }
  })
})

describe('levelView', () => {
  it('keeps true metres to a millimetre within its sixty', () => {
    const middle = { lat: 62.3, lon: 6.9 }
    const view = levelView(middle, 20, 286, 236)
    for (const bearing of [0, 77, 201, 300]) {
      const at = destination(middle, bearing, 30)
      expect(distanceBetween(view.toPoint(middle), view.toPoint(at)) / 20).toBeCloseTo(30, 3)
      expect(geodesicDistance(view.toPlace(view.toPoint(at)), at)).toBeLessThan(1e-3)
    }
  })

  it('draws across the antimeridian without a jump', () => {
    const view = levelView({ lat: -16.8, lon: 179.999_95 }, 10, 286, 236)
    const over = view.toPoint({ lat: -16.8, lon: -179.999_95 })
    // 0.0001 degrees of longitude at 16.8 degrees south are 10.66 m on WGS84.
    expect((over.x - 143) / 10).toBeCloseTo(10.66, 1)
  })
})
