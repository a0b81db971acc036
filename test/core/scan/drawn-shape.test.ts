/** Shapes on the plane of a place: insides, distances, crossings and areas by hand, and places there and back. */
import { array, assert, constant, integer, property, record, shuffledSubarray } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import {
  type PlanePoint,
  areaOf,
  awayFrom,
  crosses,
  holds,
  offPlane,
  onPlane,
  planeAt,
  planeBoxAround,
  within,
} from '#core/scan/drawn-shape.ts'
import { CENTRE } from '#test/help/scans.ts'
import { number } from '#test/help/arbitrary.ts'

const at = (east: number, north: number): PlanePoint => ({ east, north })
const point = record({ east: integer({ min: -9, max: 9 }), north: integer({ min: -9, max: 9 }) })

/** An L: six wide and six high, its upper right quarter of three by three left out. */
const CORNER = [at(0, 0), at(6, 0), at(6, 3), at(3, 3), at(3, 6), at(0, 6)]

describe('the plane of a place', () => {
  const plane = planeAt(CENTRE)

  it('holds places that come back within a centimetre', () => {
    assert(
      property(number(-3000, 3000), number(-3000, 3000), (east, north) => {
        const back = onPlane(plane, offPlane(plane, east, north))
        expect(Math.hypot(back.east - east, back.north - north)).toBeLessThan(0.01)
      }),
    )
  })

  it('has bearings and distances of the ellipsoid near by', () => {
    assert(
      property(number(0, 359.9), number(1, 500), (bearing, distance) => {
        const there = awayFrom(plane, bearing, distance)
        const exact = destination(CENTRE, bearing, distance)
        expect(geodesicLine(exact, there).distance).toBeLessThan(0.001)
      }),
    )
  })
})

describe('a ring', () => {
  it('holds what is inside, whichever way round and wherever it begins', () => {
    const inside = [at(1, 1), at(5, 1), at(1, 5), at(2.9, 3.1), at(3.1, 2.9)]
    const outside = [at(4, 4), at(-1, 1), at(7, 1), at(1, 7), at(1, -1), at(3.1, 3.1), at(9, 3), at(-9, 0)]
    for (let from = 0; from < CORNER.length; from++) {
      const turned = [...CORNER.slice(from), ...CORNER.slice(0, from)]
      for (const ring of [turned, turned.toReversed()]) {
        expect(inside.map((one) => holds(ring, one))).toEqual(inside.map(() => true))
        expect(outside.map((one) => holds(ring, one))).toEqual(outside.map(() => false))
        expect(areaOf(ring)).toBe(27)
      }
    }
    expect([holds([], at(0, 0)), areaOf([])]).toEqual([false, 0])
  })

  it('of a triangle holds a point just when the three corners see it on one hand', () => {
    const hand = (a: PlanePoint, b: PlanePoint, c: PlanePoint) =>
      Math.sign((b.east - a.east) * (c.north - a.north) - (b.north - a.north) * (c.east - a.east))
    assert(
      property(point, point, point, point, (a, b, c, one) => {
        const hands = [hand(a, b, one), hand(b, c, one), hand(c, a, one)]
        if (hands.includes(0) || hand(a, b, c) === 0) return
        expect(holds([a, b, c], one)).toBe(hands.every((each) => each === hands[0]))
        // Half the cross product of two sides.
        const twice = (b.east - a.east) * (c.north - a.north) - (b.north - a.north) * (c.east - a.east)
        expect(areaOf([a, b, c])).toBeCloseTo(Math.abs(twice) / 2, 9)
      }),
      { numRuns: 500 },
    )
  })
})

describe('a line', () => {
  const line = [at(0, 0), at(10, 0), at(10, 10)]

  it('has all within a distance of its stretches and of its ends, the very distance too', () => {
    const near = (east: number, north: number, metres = 2) => within(line, at(east, north), metres)
    expect([near(5, 2), near(5, -2), near(8, 5), near(12, 5), near(-2, 0), near(10, 12)]).toEqual(Array(6).fill(true))
    expect([near(5, 2.01), near(-2.01, 0), near(10, 12.01), near(-1.5, 1.5), near(12.01, 5)]).toEqual(
      Array(5).fill(false),
    )
    // It is not closed: between its two ends there is nothing.
    expect(near(3, 7)).toBe(false)
    expect(within([at(1, 1), at(1, 1)], at(1, 2), 1)).toBe(true)
    expect(within([at(1, 1)], at(1, 1), 1)).toBe(false)
    expect(within([], at(1, 1), 1)).toBe(false)
  })

  it('is crossed by a way from one side to the other, and met by one that ends on it', () => {
    const met = (...[a, b, c, d]: [number, number, number, number]) => crosses(line, false, at(a, b), at(c, d))
    expect([met(5, -1, 5, 1), met(5, 1, 5, -1), met(9, 5, 11, 5), met(5, 0, 5, 5), met(9, -1, 11, 1)]).toEqual(
      Array(5).fill(true),
    )
    expect([met(5, 1, 5, 5), met(11, -1, 11, 9), met(-3, -1, -1, 1), met(1, 1, 9, 9)]).toEqual(Array(4).fill(false))
    // Closed it has a third side, straight across.
    expect(crosses(line, true, at(1, 4), at(6, 4))).toBe(true)
    expect(crosses(line, false, at(1, 4), at(6, 4))).toBe(false)
  })

  it('is met along itself where the two lie over one another, and not where they but lie in one row', () => {
    const row = [at(0, 0), at(10, 0)]
    expect(crosses(row, false, at(2, 0), at(4, 0))).toBe(true)
    expect(crosses(row, false, at(-2, 0), at(12, 0))).toBe(true)
    expect(crosses(row, false, at(-2, 0), at(0, 0))).toBe(true)
    expect(crosses(row, false, at(8, 0), at(12, 0))).toBe(true)
    expect(crosses(row, false, at(11, 0), at(14, 0))).toBe(false)
    expect(crosses(row, false, at(-4, 0), at(-1, 0))).toBe(false)
  })

  it('is met or not whichever of the two is the line, and whichever end comes first', () => {
    assert(
      property(array(point, { minLength: 4, maxLength: 4 }), (ends) => {
        const [a, b, c, d] = ends
        if (a === undefined || b === undefined || c === undefined || d === undefined) return
        const met = crosses([a, b], false, c, d)
        expect(crosses([b, a], false, c, d)).toBe(met)
        expect(crosses([a, b], false, d, c)).toBe(met)
        expect(crosses([c, d], false, a, b)).toBe(met)
      }),
      { numRuns: 500 },
    )
  })
})

describe('the box around points', () => {
  it('holds them all with the margin, in whatever order', () => {
    const order = constant(CORNER).chain((all) => shuffledSubarray(all, { minLength: all.length }))
    assert(
      property(order, (shape) => {
        expect(planeBoxAround(shape)).toEqual({ west: 0, east: 6, south: 0, north: 6 })
        expect(planeBoxAround(shape, 2)).toEqual({ west: -2, east: 8, south: -2, north: 8 })
      }),
    )
    expect(planeBoxAround([at(-3, -7)])).toEqual({ west: -3, east: -3, south: -7, north: -7 })
  })
})
