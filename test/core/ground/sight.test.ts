/** One point sees another: pruned against every crossing, and the same from either end. */
import { describe, expect, it } from 'vitest'
import { elevationAt } from '#core/ground/elevation-grid.ts'
import { type Raised, bulge, lowestBetween, sees, sightElevation } from '#core/ground/sight.ts'
import { plainSill } from '#test/help/brute-sight.ts'
import { generator } from '#test/help/generator.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const REFRACTION = 0.13
const SIZE = 701
const land = mountains(SIZE)
const REACH = ((SIZE - 1) / 2) * 10

/** Pairs of points anywhere, off the cell centres, at most 10 km apart: an eye at 1.6 m and a thing of 20 m, above the ground. */
function pairs(count: number, seed: number): (readonly [Raised, Raised])[] {
  const next = generator(seed)
  const point = (height: number): Raised => {
    const [east, north] = [(next() * 2 - 1) * REACH, (next() * 2 - 1) * REACH]
    return { east, north, elevation: (elevationAt(land, east, north) ?? Number.NaN) + height }
  }
  return Array.from({ length: count }, () => [point(1.6), point(20)] as const)
}

describe('one point sees another', () => {
  it('as the walk over every crossing says, for 2000 random pairs', () => {
    const all = pairs(2000, 1)
    const differing = all.filter(
      ([eye, point]) =>
        sees(land, eye, point, REFRACTION) !== plainSill(land, eye, point, REFRACTION) <= point.elevation,
    )
    expect(differing).toEqual([])
    const seen = all.filter(([eye, point]) => sees(land, eye, point, REFRACTION)).length
    expect(seen).toBeGreaterThan(100)
    expect(seen).toBeLessThan(1900)
  })

  it('and is seen by it: at most one of 10,000 random pairs disagrees', () => {
    let disagreeing = 0
    for (const [eye, point] of pairs(100_000, 2)) {
      if (Math.hypot(eye.east - point.east, eye.north - point.north) > 10_000) continue
      if (sees(land, eye, point, REFRACTION) !== sees(land, point, eye, REFRACTION)) disagreeing++
    }
    expect(disagreeing).toBeLessThanOrEqual(10)
  })

  it('over a wall as high as the line, not over a higher one', () => {
    const wall = (height: number) => groundOf(41, 10, (east) => (east === 0 ? height : 0))
    const [eye, point] = [
      { east: -100, north: 3, elevation: 5 },
      { east: 100, north: 3, elevation: 15 },
    ]
    const line = sightElevation(5, 15, 100, 200, REFRACTION)
    expect(sees(wall(line - 0.001), eye, point, REFRACTION)).toBe(true)
    expect(sees(wall(line + 0.001), eye, point, REFRACTION)).toBe(false)
    // Behind the point, and before the eye, nothing hides.
    expect(sees(wall(50), eye, { ...point, east: -10 }, REFRACTION)).toBe(true)
    expect(sees(wall(50), { ...eye, east: 10 }, point, REFRACTION)).toBe(true)
  })

  it('leaves the ends out: points on the ground of cell centres see each other over level ground', () => {
    const level = groundOf(21, 10, () => 0)
    const [eye, point] = [
      { east: -50, north: 0, elevation: 0 },
      { east: 50, north: 0, elevation: 2 },
    ]
    expect(sees(level, eye, point, 1)).toBe(true)
    expect(sees(level, point, eye, 1)).toBe(true)
    expect(sees(level, eye, eye, 1)).toBe(true)
    // Stored as 32 bits the ground is 0.1000000015 m high, above the point told to lie on it.
    const tenth = groundOf(21, 10, () => 0.1)
    expect(sees(tenth, { ...eye, elevation: 2 }, { ...point, elevation: 0.1 }, 1)).toBe(true)
    expect(sees(tenth, { ...point, elevation: 0.1 }, { ...eye, elevation: 2 }, 1)).toBe(true)
  })

  it('through the unknown', () => {
    const holed = groundOf(41, 10, (east) => (Math.abs(east) <= 50 ? Number.NaN : 0))
    const [eye, point] = [
      { east: -150, north: 0, elevation: 1 },
      { east: 150, north: 0, elevation: 1 },
    ]
    expect(sees(holed, eye, point, REFRACTION)).toBe(true)
  })
})

describe('the line of sight', () => {
  it('is the same from either end, and sinks below the straight line by the bulge', () => {
    expect(sightElevation(2, 9, 300, 1000, REFRACTION)).toBeCloseTo(sightElevation(9, 2, 700, 1000, REFRACTION), 12)
    expect(sightElevation(5, 5, 500, 1000, 0)).toBeCloseTo(5 - bulge(500, 1000, 0), 12)
    expect(bulge(0, 1000, 0)).toBe(0)
    expect(bulge(1000, 1000, 0)).toBe(0)
  })

  it('is nowhere lower than told between two distances', () => {
    const next = generator(4)
    for (let round = 0; round < 2000; round++) {
      const [from, to, whole] = [next() * 500, next() * 500, 1 + next() * 90_000]
      const start = next() * whole
      const end = start + next() * (whole - start)
      const low = lowestBetween(from, to, whole, REFRACTION, start, end)
      for (let part = 0; part <= 10; part++) {
        const at = start + ((end - start) * part) / 10
        expect(sightElevation(from, to, at, whole, REFRACTION)).toBeGreaterThanOrEqual(low)
      }
    }
  })
})
