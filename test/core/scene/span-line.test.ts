/** The line of a span made longer and turned: what was asked for is what the geodesic measures afterwards, and the first point stays. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { lineLength } from '#core/geo/line-length.ts'
import { endToEnd, turnedToward, withLength } from '#core/scene/span-line.ts'
import { turnBetween } from '#core/units/angle.ts'

const START: LatLon = { lat: 46.4, lon: -33.59 }

/** A line whose points follow one another with their own bearings and distances. */
const line = fc
  .tuple(
    fc.record({
      lat: fc.double({ min: -80, max: 80, noNaN: true }),
      lon: fc.double({ min: -180, max: 179, noNaN: true }),
    }),
    fc.array(fc.tuple(fc.double({ min: 10, max: 60, noNaN: true }), fc.double({ min: 5, max: 2_000, noNaN: true })), {
      minLength: 1,
      maxLength: 5,
    }),
  )
  .map(([start, legs]) => {
    const points = [start]
    for (const [bearing, metres] of legs) points.push(destination(points.at(-1) ?? start, bearing, metres))
    return points
  })

describe('a span', () => {
  test('of two points is as long as the geodesic between them, and lies toward its bearing', () => {
    const points = [START, destination(START, 94, 340)]
    expect(endToEnd(points).distance).toBeCloseTo(340, 6)
    expect(endToEnd(points).bearing).toBeCloseTo(94, 6)
    expect(lineLength(points)).toBeCloseTo(340, 6)
  })

  test('with a corner is longer along its points than from end to end', () => {
    const corner = destination(START, 0, 300)
    const points = [START, corner, destination(corner, 90, 400)]
    expect(lineLength(points)).toBeCloseTo(700, 6)
    // The triangle of 3, 4 and 5.
    expect(endToEnd(points).distance).toBeCloseTo(500, 2)
  })

  test('takes any length: the first point and the bearing stay, the others keep their shares', () => {
    fc.assert(
      fc.property(line, fc.double({ min: 1, max: 50_000, noNaN: true }), (points, metres) => {
        const [before, longer] = [endToEnd(points), withLength(points, metres)]
        const after = endToEnd(longer)
        expect(longer[0]).toEqual(points[0])
        expect(longer).toHaveLength(points.length)
        expect(Math.abs(after.distance - metres)).toBeLessThan(1e-5)
        expect(Math.abs(turnBetween(after.bearing ?? 0, before.bearing ?? 0)) * metres).toBeLessThan(1e-3)
        for (const [index, at] of longer.entries()) {
          const share = geodesicDistance(longer[0] ?? at, at) / metres
          const was = geodesicDistance(points[0] ?? START, points[index] ?? START) / before.distance
          expect(Math.abs(share - was)).toBeLessThan(1e-6)
        }
      }),
      { numRuns: 50 },
    )
  })

  test('takes any bearing: the first point and every distance from it stay', () => {
    fc.assert(
      fc.property(line, fc.double({ min: 0, max: 359.999, noNaN: true }), (points, toward) => {
        const turned = turnedToward(points, toward)
        const { bearing, distance } = endToEnd(turned)
        expect(turned[0]).toEqual(points[0])
        expect(Math.abs(turnBetween(bearing ?? Number.NaN, toward)) * distance).toBeLessThan(1e-3)
        for (const [index, at] of turned.entries()) {
          const was = geodesicDistance(points[0] ?? START, points[index] ?? START)
          expect(Math.abs(geodesicDistance(turned[0] ?? at, at) - was)).toBeLessThan(1e-5)
        }
      }),
      { numRuns: 50 },
    )
  })

  test('turned and turned back is where it was', () => {
    const points = [START, destination(START, 20, 100), destination(START, 60, 250)]
    const back = turnedToward(turnedToward(points, 200), endToEnd(points).bearing ?? 0)
    for (const [index, at] of back.entries()) expect(geodesicDistance(at, points[index] ?? START)).toBeLessThan(1e-5)
  })

  test('that closes has no length to change and no bearing to turn from', () => {
    const points = [START, destination(START, 0, 50), destination(START, 90, 50), START]
    expect(endToEnd(points).bearing).toBeNull()
    expect(withLength(points, 500)).toEqual(points)
    expect(turnedToward(points, 90)).toEqual(points)
    expect(lineLength(points)).toBeGreaterThan(150)
  })

  test('is never turned by a wrap of the bearing', () => {
    const points = [START, destination(START, 350, 100)]
    const { bearing } = geodesicLine(START, turnedToward(points, 370)[1] ?? START)
    expect(bearing).toBeCloseTo(10, 6)
  })
})
