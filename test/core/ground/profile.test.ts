/** The ground along a line, and the points kept of it for a drawing. */
import { describe, expect, it } from 'vitest'
import { elevationAt } from '#core/ground/elevation-grid.ts'
import { drawable, profile } from '#core/ground/profile.ts'
import { generator } from '#test/help/generator.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

describe('a profile', () => {
  it('is the ground at every grid line, in order, from end to end', () => {
    const land = mountains(201)
    const next = generator(6)
    for (let round = 0; round < 100; round++) {
      const [from, to] = [
        { east: (next() * 2 - 1) * 1000, north: (next() * 2 - 1) * 1000 },
        { east: (next() * 2 - 1) * 1000, north: (next() * 2 - 1) * 1000 },
      ]
      const found = profile(land, from, to)
      expect(found.distances[0]).toBe(0)
      expect(found.distances.at(-1)).toBe(found.length)
      for (const [index, distance] of found.distances.entries()) {
        const share = distance / found.length
        const ground = elevationAt(
          land,
          from.east + share * (to.east - from.east),
          from.north + share * (to.north - from.north),
        )
        expect(Math.abs((found.elevations[index] ?? 1e9) - (ground ?? -1e9))).toBeLessThan(1e-6)
        if (index > 0) expect(distance).toBeGreaterThan(found.distances[index - 1] ?? 0)
      }
      const lines = Math.abs(to.east - from.east) / 10 + Math.abs(to.north - from.north) / 10
      expect(Math.abs(found.distances.length - 2 - lines)).toBeLessThanOrEqual(2)
    }
  })

  it('breaks off over the unknown and beyond the grid', () => {
    const holed = groundOf(21, 10, (east) => (Math.abs(east) <= 20 ? Number.NaN : 3))
    const { distances, elevations } = profile(holed, { east: -90, north: 1 }, { east: 150, north: 1 })
    const known = [...distances].filter((_, index) => !Number.isNaN(elevations[index]))
    expect(known).toEqual(
      [0, 10, 20, 30, 40, 50, 60, 120, 130, 140, 150, 160, 170, 180, 190].map((metres) => expect.closeTo(metres, 9)),
    )
    expect(elevations.at(-1)).toBeNaN()
  })

  it('has a gap where one of the two posts is unknown', () => {
    const holed = groundOf(21, 10, (east, north) => (east === 0 && north === 10 ? Number.NaN : 3))
    const { distances, elevations } = profile(holed, { east: -50, north: 4 }, { east: 50, north: 4 })
    expect([...distances].filter((_, index) => Number.isNaN(elevations[index]))).toEqual([50])
  })

  it('of no length is its one place', () => {
    const found = profile(
      groundOf(5, 10, () => 8),
      { east: 1, north: 1 },
      { east: 1, north: 1 },
    )
    expect(found).toMatchObject({ length: 0, elevations: Float64Array.from([8, 8]) })
  })
})

describe('a drawing of it', () => {
  const land = mountains(401)
  const whole = profile(land, { east: -1900, north: -1500 }, { east: 1990, north: 1700 })

  it('has at most so many points, both ends, and every peak', () => {
    for (const points of [8, 50, 200]) {
      const kept = drawable(whole, points)
      expect(kept.distances.length).toBeLessThanOrEqual(points)
      expect(kept.distances.length).toBeGreaterThan(points / 2)
      expect([kept.distances[0], kept.distances.at(-1)]).toEqual([0, whole.length])
      expect(Math.max(...kept.elevations)).toBe(Math.max(...whole.elevations))
      expect(Math.min(...kept.elevations)).toBe(Math.min(...whole.elevations))
      expect([...kept.distances]).toEqual([...kept.distances].toSorted((one, other) => one - other))
    }
  })

  it('shows a gap however few the points', () => {
    const holed = groundOf(401, 10, (east) => (east === 110 ? Number.NaN : 3))
    const gap = drawable(profile(holed, { east: -1900, north: 3 }, { east: 1900, north: 3 }), 20)
    expect([...gap.elevations].some((elevation) => Number.isNaN(elevation))).toBe(true)
  })

  it('is the whole when that is short enough', () => {
    expect(drawable(whole, 10_000)).toBe(whole)
  })
})
