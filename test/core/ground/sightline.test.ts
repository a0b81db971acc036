/** What shows of an upright thing: shapes known exactly, obstructions, unknown ground, and every crossing on mountains. */
import { describe, expect, it } from 'vitest'
import { type ElevationGrid, elevationAt, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { sightElevation } from '#core/ground/sight.ts'
import { type UprightTarget, sightline } from '#core/ground/sightline.ts'
import { plainCrossings, plainSill } from '#test/help/brute-sight.ts'
import { generator } from '#test/help/generator.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const REFRACTION = 0.13
const eye = { east: -500, north: 0, elevation: 2 }
const tower: UprightTarget = { east: 500, north: 0, low: 0, high: 40 }
/** No curve at all: refraction takes it back, so that rays are plain triangles. */
const STRAIGHT = 1

function walled(height: number, at = 0): ElevationGrid {
  return groundOf(121, 10, (east) => (east === at ? height : 0))
}

describe('a wall before a tower', () => {
  it('hides what is below the line over its top', () => {
    const seen = sightline(walled(12), eye, tower, STRAIGHT)
    expect(seen.hidden).toBeCloseTo(22, 9)
    expect(seen.visibleShare).toBeCloseTo(18 / 40, 9)
    expect(seen.hiddenBy).toMatchObject({ distance: 500, obstruction: null })
    expect(seen.hiddenBy?.clearance).toBeCloseTo(-11, 9)
    expect(seen.toLow?.clearance).toBeCloseTo(-11, 9)
    expect(seen.toHigh).toMatchObject({ obstruction: null })
    expect(seen.ground).toBe('known')
  })

  it('tells the clearance of the line to the top, also when nothing shows', () => {
    expect(sightline(walled(12), { ...eye, elevation: 12.5 }, tower, STRAIGHT).toHigh?.clearance).toBeGreaterThan(0)
    const gone = sightline(walled(30), eye, tower, STRAIGHT)
    expect(gone).toMatchObject({ hidden: 40, visibleShare: 0 })
    expect(gone.toHigh?.clearance).toBeCloseTo(21 - 30, 9)
    expect(gone.toHigh?.distance).toBeCloseTo(500, 9)
    expect([gone.toHigh?.east, gone.toHigh?.north].map((metres) => Math.round((metres ?? 1) * 1e6))).toEqual([0, 0])
  })

  it('a low wall near the lens can hide more than a high one far off', () => {
    const two = groundOf(121, 10, (east) => (east === -450 ? 4 : east === 400 ? 20 : 0))
    const seen = sightline(two, eye, tower, STRAIGHT)
    // 2 m up in 50 m: 42 m at the tower; the far wall alone would hide 2 + 18 / 0.9 = 22 m.
    expect(seen.hidden).toBe(40)
    expect(seen.hiddenBy?.distance).toBeCloseTo(50, 9)
    expect(seen.toLow?.distance).toBeCloseTo(900, 9)
  })

  it('with nothing between, all shows and nothing hides', () => {
    const free = sightline(walled(0), eye, tower, STRAIGHT)
    expect(free).toMatchObject({ hidden: 0, visibleShare: 1, hiddenBy: null, ground: 'known' })
    expect(free.toLow?.clearance).toBeGreaterThan(0)
  })

  it('a thing without height shows or does not', () => {
    const point = { ...tower, low: 10, high: 10 }
    expect(sightline(walled(5), eye, point, STRAIGHT)).toMatchObject({ visibleShare: 1, hidden: 0 })
    expect(sightline(walled(7), eye, point, STRAIGHT)).toMatchObject({ visibleShare: 0, hidden: 0 })
    expect(() => sightline(walled(5), eye, { ...tower, low: 50 }, STRAIGHT)).toThrow(RangeError)
  })

  it('lens and thing in one cell, or in one place, have nothing between', () => {
    const near = { ...tower, east: -497, north: 3 }
    expect(sightline(walled(5), { ...eye, east: -498 }, near, STRAIGHT)).toMatchObject({
      visibleShare: 1,
      toLow: null,
      ground: 'known',
    })
    expect(sightline(walled(5), eye, { ...eye, low: 0, high: 2 }, STRAIGHT)).toMatchObject({
      distance: 0,
      visibleShare: 1,
    })
  })
})

describe('a cone between', () => {
  it('hides by its tangent: the line from 2 m over a cone of 100 m', () => {
    // Through the axis the highest line touches the tip itself.
    const cone = groundOf(201, 5, (east, north) => Math.max(0, 100 - 0.5 * Math.hypot(east, north)))
    const seen = sightline(cone, eye, { ...tower, high: 400 }, STRAIGHT)
    expect(seen.hidden).toBeCloseTo(198, 6)
    // 100 m beside the axis the section is a hyperbola z = 100 - 0.5 sqrt(x^2 + 100^2); its tangent from (-500, 2) is found in closed form:
    // with a = 100 - 2, slope s solves a - s * 500 = 100 * sqrt(0.25 - s^2).
    const beside = sightline(cone, { ...eye, north: 100 }, { ...tower, north: 100, high: 400 }, STRAIGHT)
    const [a, d] = [98, 500]
    const [p, q, r] = [d * d + 10_000, -2 * a * d, a * a - 2500]
    const slope = (-q - Math.sqrt(q * q - 4 * p * r)) / (2 * p)
    expect(Math.abs((beside.hidden ?? 0) - (2 + slope * 1000))).toBeLessThan(0.05)
  })
})

describe('obstructions', () => {
  const grid = groundOf(121, 10, (east) => (east === 200 ? 6 : 3))
  const row = (east: number, from: number, to: number) => [placeOnGrid(grid, east, from), placeOnGrid(grid, east, to)]
  const high = { ...tower, low: 3, high: 43 }

  it('hide like a wall on the ground they stand on', () => {
    const trees = { line: row(-403, -50, 80), height: 8 }
    const seen = sightline(grid, { ...eye, elevation: 5 }, high, STRAIGHT, [trees])
    expect(seen.hiddenBy).toMatchObject({ obstruction: 0 })
    expect(seen.hiddenBy?.distance).toBeCloseTo(97, 3)
    expect(seen.hidden).toBe(40)
    expect(seen.toHigh).toMatchObject({ obstruction: 0 })
    const low = sightline(grid, { ...eye, elevation: 5 }, high, STRAIGHT, [{ ...trees, height: 3 }])
    expect(low.hidden).toBeCloseTo(5 + (1 / 97) * 1000 - 3, 2)
  })

  it('hide only where they stand, not beside the line nor beyond the thing', () => {
    const clear = (line: ReturnType<typeof row>): void => {
      expect(
        sightline(grid, { ...eye, elevation: 5 }, high, STRAIGHT, [{ line, height: 90 }]).hiddenBy?.obstruction ?? null,
      ).toBeNull()
    }
    clear(row(-400, 10, 80))
    clear(row(510, -50, 50))
    clear(row(-510, -50, 50))
    clear([placeOnGrid(grid, -300, 1), placeOnGrid(grid, 300, 1)])
    clear(row(-400, -50, 50).slice(0, 1))
    clear([])
  })

  it('the tallest of several is named, and a bent one counts at every corner', () => {
    const bent = [placeOnGrid(grid, -400, 40), placeOnGrid(grid, -300, -40), placeOnGrid(grid, -200, 40)]
    const seen = sightline(grid, { ...eye, elevation: 5 }, high, STRAIGHT, [
      { line: row(0, -5, 5), height: 1 },
      { line: bent, height: 5 },
    ])
    expect(seen.hiddenBy?.obstruction).toBe(1)
    expect(seen.hiddenBy?.distance).toBeCloseTo(150, 1)
  })

  it('on unknown ground are unknown', () => {
    const holed = {
      ...grid,
      heights: grid.heights.map((_, index) => (index % 121 < 30 && index % 121 > 10 ? Number.NaN : 3)),
    }
    const seen = sightline(holed, { ...eye, east: -550, elevation: 5 }, high, STRAIGHT, [
      { line: row(-400, -50, 50), height: 90 },
    ])
    expect(seen).toMatchObject({ ground: 'partly-known', visibleShare: 1 })
  })
})

describe('unknown ground', () => {
  const holed = (from: number, to: number, height = 0): ElevationGrid =>
    groundOf(121, 10, (east) => (east >= from && east <= to ? Number.NaN : east === 0 ? height : 0))

  it('is told, and what is known still counts', () => {
    expect(sightline(holed(100, 200, 12), eye, tower, STRAIGHT)).toMatchObject({ ground: 'partly-known' })
    expect(sightline(holed(100, 200, 12), eye, tower, STRAIGHT).hidden).toBeCloseTo(22, 9)
    expect(sightline(holed(100, 200), eye, tower, STRAIGHT).ground).toBe('partly-known')
    // A void to the side of the line does not count.
    const beside = groundOf(121, 10, (_east, north) => (north > 100 ? Number.NaN : 0))
    expect(sightline(beside, eye, tower, STRAIGHT).ground).toBe('known')
  })

  it('all along gives no share at all', () => {
    for (const seen of [
      sightline(holed(-600, 600), eye, tower, STRAIGHT),
      sightline(holed(-490, 490), eye, { ...tower, east: 495 }, STRAIGHT),
      sightline(holed(0, 0), { ...eye, north: 5000 }, { ...tower, north: 5000 }, STRAIGHT),
    ]) {
      expect(seen).toMatchObject({ ground: 'unknown', visibleShare: null, hidden: null, toLow: null, toHigh: null })
    }
  })

  it('beyond the edge of the grid is unknown too', () => {
    expect(sightline(walled(12), eye, { ...tower, east: 900 }, STRAIGHT).ground).toBe('partly-known')
    expect(sightline(walled(12), { ...eye, east: -900 }, tower, STRAIGHT).ground).toBe('partly-known')
  })
})

describe('on mountains', () => {
  const land = mountains(401)
  const HEIGHT = 41

  it('hides and clears as every crossing says', () => {
    const next = generator(9)
    const point = () => ({ east: (next() * 2 - 1) * 2000, north: (next() * 2 - 1) * 2000 })
    let [partly, whole] = [0, 0]
    for (let round = 0; round < 1000; round++) {
      const [from, to] = [point(), point()]
      const lens = { ...from, elevation: (elevationAt(land, from.east, from.north) ?? 0) + 1.6 }
      const low = elevationAt(land, to.east, to.north) ?? 0
      const seen = sightline(land, lens, { ...to, low, high: low + HEIGHT }, REFRACTION)
      const hidden = Math.min(HEIGHT, Math.max(0, plainSill(land, lens, to, REFRACTION) - low))
      expect(Math.abs((seen.hidden ?? -1) - hidden)).toBeLessThan(1e-6)
      expect(Math.abs((seen.visibleShare ?? -1) - (1 - hidden / HEIGHT))).toBeLessThan(1e-7)
      if (hidden > 0 && hidden < HEIGHT) partly++
      if (hidden === 0) whole++
      for (const [line, top] of [
        [seen.toLow, low],
        [seen.toHigh, low + HEIGHT],
      ] as const) {
        const clearances = plainCrossings(land, lens, to)
          .filter(({ distance }) => distance > 1e-5 && distance < seen.distance - 1e-5)
          .map(
            ({ distance, height }) => sightElevation(lens.elevation, top, distance, seen.distance, REFRACTION) - height,
          )
        expect(Math.abs((line?.clearance ?? 1e9) - Math.min(...clearances))).toBeLessThan(1e-6)
      }
    }
    expect(partly).toBeGreaterThan(20)
    expect(whole).toBeGreaterThan(20)
  })
})
