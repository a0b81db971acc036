/** Coasts: which side of them a place lies on, islands in closed waters, the antimeridian, and the file they are kept in. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Coast, coastOf, onLand, readCoast, sidesWithin, writeCoast } from '#core/geo/coast.ts'

function ring(west: number, south: number, east: number, north: number): number[][] {
  return [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
    [west, south],
  ]
}

/** Two lands, one with an island in the closed waters that its own outline goes around, and one across the antimeridian. */
const coast = coastOf([
  ring(0, 40, 10, 50),
  ring(4, 44, 5, 45),
  [
    [178, -20],
    [-178, -20],
    [-178, -16],
    [178, -16],
    [178, -20],
  ],
  ring(20, -75, 30, -65),
])

describe('a place', () => {
  test('is on land within an outline, as reckoned plainly', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -59, max: 89, noNaN: true }),
        fc.double({ min: -540, max: 540, noNaN: true }),
        (lat, lon) => {
          const turned = ((lon % 360) + 360) % 360
          // On a border itself either side is right.
          const borders = [lat - 40, lat - 50, lat + 20, lat + 16, ...[0, 10, 178, 182, 360].map((at) => turned - at)]
          fc.pre(borders.every((away) => Math.abs(away) > 1e-4))
          const first = turned > 0 && turned < 10 && lat > 40 && lat < 50
          const across = turned > 178 && turned < 182 && lat > -20 && lat < -16
          expect(onLand(coast, { lat, lon })).toBe(first || across)
        },
      ),
      { numRuns: 2_000 },
    )
  })

  test('on an island in waters that land closes in is on land too', () => {
    expect(coast).toHaveLength(2)
    expect(onLand(coast, { lat: 44.5, lon: 4.5 })).toBe(true)
  })

  test('by the southern ice counts as land: no coast is told there', () => {
    expect(onLand(coast, { lat: -70, lon: 25 })).toBe(true)
    expect(onLand(coast, { lat: -70, lon: 120 })).toBe(true)
  })
})

test('the sides within a box are those that may run through it, in its own turn', () => {
  const sides = sidesWithin(coast, { south: -19, north: -17, west: 177, east: 179 })
  expect(sides).toHaveLength(1)
  expect(sides[0]?.from.lon).toBeCloseTo(178, 5)
  const other = sidesWithin(coast, { south: -19, north: -17, west: -183, east: -179 })
  expect(other.map(({ from }) => Math.round(from.lon))).toEqual([-182])
  expect(sidesWithin(coast, { south: 42, north: 43, west: 2, east: 3 })).toEqual([])
})

test('a coast comes back from its file as it was; what is no such file is none', () => {
  const numbers = writeCoast(coast)
  expect(readCoast(numbers)).toEqual(coast)
  expect(readCoast(writeCoast([]))).toEqual([] satisfies Coast)
  for (const bad of [
    new Int32Array(0),
    numbers.subarray(0, numbers.length - 1),
    Int32Array.of(5),
    Int32Array.of(1, -3),
    Int32Array.of(-1),
  ])
    expect(readCoast(bad)).toBeNull()
})
