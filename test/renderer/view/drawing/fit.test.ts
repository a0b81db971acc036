/** Fits stay capped for one place and narrow across the antimeridian, and keep the covered sides free. */
import { describe, expect, it } from 'vitest'
import { bestFit, placesFitted } from '#renderer/view/drawing/fit.ts'
import { mercatorView } from '#renderer/view/drawing/plan-view.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { FitWindow, Fitted } from '#renderer/view/drawing/fit.ts'

const WINDOW: FitWindow = { width: 800, height: 600, left: 40, right: 40, top: 40, bottom: 40 }

function pointsIn(window: FitWindow, fitted: Fitted, places: readonly LatLon[]): { x: number; y: number }[] {
  const box = { left: 0, top: 0, right: window.width, bottom: window.height }
  const bare = mercatorView({ zoom: fitted.zoom, originX: 0, originY: 0, middleLon: fitted.centre.lon, box })
  const middle = bare.toPoint(fitted.centre)
  return places.map((at) => {
    const point = bare.toPoint(at)
    return { x: point.x - middle.x + window.width / 2, y: point.y - middle.y + window.height / 2 }
  })
}

describe('fitPlaces', () => {
  it('shows one place at the nearest zoom allowed, never at infinity', () => {
    const fitted = placesFitted([{ lat: 46.4, lon: -33.6 }], WINDOW, 16)
    expect(fitted?.zoom).toBe(16)
    expect(fitted?.centre.lat).toBeCloseTo(46.4, 9)
    expect(fitted?.centre.lon).toBeCloseTo(-33.6, 9)
  })

  it('fits two places 21 km apart across the antimeridian at zoom 12 on longitude 180', () => {
    const places = [
      { lat: -16.8, lon: 179.9 },
      { lat: -16.8, lon: -179.9 },
    ]
    const fitted = placesFitted(places, WINDOW, 16)
    expect(fitted?.zoom).toBe(12)
    expect(Math.abs(fitted?.centre.lon ?? 0)).toBeCloseTo(180, 9)
  })

  it('puts every place inside the free part of the window, and would not one zoom nearer', () => {
    const places = [
      { lat: 46.39, lon: -33.62 },
      { lat: 46.41, lon: -33.59 },
      { lat: 46.4, lon: -33.6 },
    ]
    const window = { ...WINDOW, left: 320, bottom: 120 }
    const fitted = placesFitted(places, window, 20)
    if (fitted === null) throw new Error('nothing fitted')
    const inside = (zoom: number): boolean =>
      pointsIn(window, { ...fitted, zoom }, places).every(
        ({ x, y }) => x >= 319.9 && x <= 760.1 && y >= 39.9 && y <= 480.1,
      )
    expect(inside(fitted.zoom)).toBe(true)
    const nearer = pointsIn(window, { ...fitted, zoom: fitted.zoom + 1 }, places)
    const wide = Math.max(...nearer.map(({ x }) => x)) - Math.min(...nearer.map(({ x }) => x))
    const high = Math.max(...nearer.map(({ y }) => y)) - Math.min(...nearer.map(({ y }) => y))
    expect(wide > 440 || high > 440).toBe(true)
  })

  it('has no answer without places, or in a window with nothing left free', () => {
    expect(placesFitted([], WINDOW, 16)).toBeNull()
    expect(placesFitted([{ lat: 0, lon: 0 }], { ...WINDOW, left: 500, right: 400 }, 16)).toBeNull()
    expect(placesFitted([{ lat: 0, lon: 0 }], { ...WINDOW, width: 0, height: 0 }, 16)).toBeNull()
  })

  it('takes the way of keeping sides free that comes nearest', () => {
    const row = [
      { lat: 0, lon: 0 },
      { lat: 0, lon: 0.02 },
    ]
    const beside = { ...WINDOW, left: 700 }
    const above = { ...WINDOW, bottom: 400 }
    expect(bestFit(row, [beside, above], 20)).toEqual(placesFitted(row, above, 20))
  })
})
