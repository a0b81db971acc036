/** Outlines to scale, and questions to shapes, at map scale and at the close plan's decimetres. */
import { circle, point, sector } from '@turf/turf'
import { describe, expect, it } from 'vitest'
import { geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { localFrame, toLocal } from '#core/geo/local-frame.ts'
import { circleRing, offsetPlace, rectangleFootprint, viewWedge } from '#core/geo/outline.ts'
import { nearestOnLine, ringArea, ringHolds } from '#core/geo/shape.ts'

const PLACES: readonly (readonly [string, LatLon])[] = [
  ['the equator', { lat: 0, lon: 0 }],
  ['middle latitudes', { lat: 48, lon: 11 }],
  ['the antimeridian', { lat: -16.8, lon: 179.9999 }],
  ['near the north pole', { lat: 89.99, lon: 20 }],
]

describe.each(PLACES)('at %s', (_name, at) => {
  it('the wedge has its apex, its angle and its range', () => {
    const [apex, ...arc] = viewWedge(at, 350, 40, 2000)
    expect(apex).toEqual(at)
    for (const each of arc) expect(geodesicDistance(at, each)).toBeCloseTo(2000, 5)
    expect(geodesicLine(at, arc[0] ?? at).bearing).toBeCloseTo(330, 6)
    expect(geodesicLine(at, arc.at(-1) ?? at).bearing).toBeCloseTo(10, 6)
  })

  it('the footprint has its sides and its heading to a tenth of a millimetre', () => {
    const heading = 30
    const corners = rectangleFootprint(at, heading, 2.5, 0.65)
    const frame = localFrame(at, 0)
    const own = corners.map((corner) => toLocal(frame, localFrame(corner, 0).origin))
    const [sin, cos] = [Math.sin(Math.PI / 6), Math.cos(Math.PI / 6)]
    const ahead = own.map((corner) => corner.east * sin + corner.north * cos)
    const right = own.map((corner) => corner.east * cos - corner.north * sin)
    for (const [index, expected] of [1.25, 1.25, -1.25, -1.25].entries()) expect(ahead[index]).toBeCloseTo(expected, 4)
    for (const [index, expected] of [-0.325, 0.325, 0.325, -0.325].entries()) {
      expect(right[index]).toBeCloseTo(expected, 4)
    }
  })

  it('the ring holds its middle and not what lies outside', () => {
    const ring = circleRing(at, 100)
    expect(ring).toHaveLength(72)
    expect(ringHolds(ring, offsetPlace(at, 77, 50, 20))).toBe(true)
    expect(ringHolds(ring, offsetPlace(at, 77, 120, 20))).toBe(false)
  })

  it('the area is good to one percent', () => {
    if (at.lat > 80) return
    const area = ringArea(rectangleFootprint(at, 20, 200, 100))
    expect(Math.abs(area / 20_000 - 1)).toBeLessThan(0.01)
  })

  it('the nearest point of a line is found to a decimetre in a kilometre', () => {
    if (at.lat > 80) return
    const line = [offsetPlace(at, 0, 300, -500), offsetPlace(at, 0, 300, 0), offsetPlace(at, 0, 300, 500)]
    const nearest = nearestOnLine(line, offsetPlace(at, 0, 0, 200))
    expect(nearest?.segment).toBe(1)
    expect(Math.abs((nearest?.distance ?? 0) - 300)).toBeLessThan(0.1)
    expect(geodesicDistance(nearest?.at ?? at, offsetPlace(at, 0, 300, 200))).toBeLessThan(1.5)
  })
})

describe('turf’s own shapes on the sphere', () => {
  it('are up to 17 cm out in 30 m, visible on the close plan, which is why these are set out on the ellipsoid', () => {
    const at = { lat: 0, lon: 0 }
    const radii = (ring: readonly (readonly number[])[] | undefined): number[] =>
      (ring ?? []).map(([lon = 0, lat = 0]) => geodesicDistance(at, { lat, lon }))
    const round = radii(circle(point([0, 0]), 30, { units: 'meters', steps: 64 }).geometry.coordinates[0])
    const worst = Math.max(...round.map((radius) => Math.abs(radius - 30)))
    // 0.5614 percent along the equator's meridian, by the constants of WGS84.
    expect(worst).toBeGreaterThan(0.1)
    expect(worst).toBeLessThan(0.005615 * 30)
    const wedge = radii(sector(point([0, 0]), 30, -20, 20, { units: 'meters' }).geometry.coordinates[0])
    expect(Math.max(...wedge.map((radius) => Math.min(Math.abs(radius - 30), radius)))).toBeGreaterThan(0.1)
  })
})

describe('odd shapes', () => {
  it('a wedge of a whole turn is a circle', () => {
    expect(viewWedge({ lat: 1, lon: 2 }, 0, 360, 10)).toHaveLength(72)
  })

  it('rings of fewer than three points hold nothing and have no area', () => {
    expect(ringHolds([], { lat: 0, lon: 0 })).toBe(false)
    expect(ringHolds([{ lat: 0, lon: 0 }], { lat: 0, lon: 0 })).toBe(false)
    expect(ringArea([{ lat: 0, lon: 0 }])).toBe(0)
  })

  it('lines of fewer than two points have no nearest point', () => {
    expect(nearestOnLine([], { lat: 0, lon: 0 })).toBeNull()
    expect(nearestOnLine([{ lat: 0, lon: 0 }], { lat: 0, lon: 0 })).toBeNull()
  })

  it('the end of a line is nearest when the foot falls beyond it', () => {
    const line = [
      { lat: 50, lon: 10 },
      { lat: 50, lon: 10.01 },
    ]
    const nearest = nearestOnLine(line, { lat: 50.001, lon: 10.02 })
    expect(nearest?.segment).toBe(0)
    expect(geodesicDistance(nearest?.at ?? { lat: 0, lon: 0 }, { lat: 50, lon: 10.01 })).toBeLessThan(0.01)
  })
})
