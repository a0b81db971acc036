/** The hills' shadow against the ray of each cell by itself, and against shadows whose length is known. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type ElevationGrid, elevationAt } from '#core/ground/elevation-grid.ts'
import { IN_SHADE, LIT, SHADE_UNKNOWN, type SunOverGrid, hillShadow } from '#core/ground/hill-shadow.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const RADIANS = Math.PI / 180
const NO_CURVE = 1

/** At every grid line that the ray mostly crosses. */
function shadedByRay(grid: ElevationGrid, cell: number, sun: SunOverGrid): boolean {
  const [column, row] = [cell % grid.columns, Math.floor(cell / grid.columns)]
  const east = grid.west + column * grid.cell
  const north = grid.north - row * grid.cell
  const own = grid.heights[cell] ?? Number.NaN
  const [toEast, toNorth] = [Math.sin(sun.azimuth * RADIANS), Math.cos(sun.azimuth * RADIANS)]
  const line = grid.cell / Math.max(Math.abs(toEast), Math.abs(toNorth))
  for (let run = line; ; run += line) {
    const ground = elevationAt(grid, east + run * toEast, north + run * toNorth)
    if (ground === null) return false
    if (ground > own + run * Math.tan(sun.altitude * RADIANS)) return true
  }
}

/** Cells that differ from their ray, and of those the ones that don't lie at the edge of a shadow. */
function apart(grid: ElevationGrid, sun: SunOverGrid): { readonly differing: number; readonly inside: number } {
  const shade = hillShadow(grid, sun, NO_CURVE)
  const { columns, rows } = grid
  const truth = Uint8Array.from(shade, (_, cell) => (shadedByRay(grid, cell, sun) ? IN_SHADE : LIT))
  let [differing, inside] = [0, 0]
  for (const [cell, told] of shade.entries()) {
    if (told === truth[cell]) continue
    differing++
    const [column, row] = [cell % columns, Math.floor(cell / columns)]
    // Along the rim the ray leaves the grid at once, where the sweep takes the ground to go on level for up to a cell.
    let edge = column < 2 || row < 2 || column > columns - 3 || row > rows - 3
    for (const beside of [-columns - 1, -columns, 1 - columns, -1, 1, columns - 1, columns, columns + 1]) {
      edge ||= truth[cell + beside] === told
    }
    if (!edge) inside++
  }
  return { differing, inside }
}

describe('against the ray of every cell', () => {
  it.each([
    [100, 20],
    [180, 12],
    [223, 30],
    [301, 8],
    [0, 25],
    [45, 15],
  ])('from %d at %d degrees only the edges of shadows differ, a cell at most', (azimuth, altitude) => {
    const grid = mountains(150)
    const { differing, inside } = apart(grid, { azimuth, altitude })
    const shaded = hillShadow(grid, { azimuth, altitude }, NO_CURVE).filter((told) => told === IN_SHADE).length
    expect(shaded).toBeGreaterThan(500)
    expect(differing / 22_500).toBeLessThan(0.02)
    // A cell all by itself, lit or shaded, may be lost between two rays.
    expect(inside).toBeLessThanOrEqual(3)
  })

  it('whatever the sun, on small ground', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 20 }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 3, max: 80, noNaN: true }),
        (seed, azimuth, altitude) => {
          const { differing, inside } = apart(mountains(40, 30, seed), { azimuth, altitude })
          expect(differing).toBeLessThanOrEqual(80)
          expect(inside).toBeLessThanOrEqual(1)
        },
      ),
      { numRuns: 40 },
    )
  })
})

describe('shadows of known length', () => {
  it.each([
    [90, (step: number) => -step],
    [270, (step: number) => step],
    [0, (step: number) => step * 61],
    [180, (step: number) => -step * 61],
  ])('a tower of 40 m at 45 degrees casts 40 m away from %d', (azimuth, away) => {
    const grid = groundOf(61, 4, (east, north) => (east === 0 && north === 0 ? 40 : 0))
    const shade = hillShadow(grid, { azimuth, altitude: 45 }, NO_CURVE)
    const foot = 30 * 61 + 30
    for (let step = -20; step <= 20; step++) {
      expect(shade[foot + away(step)]).toBe(step >= 1 && step <= 9 ? IN_SHADE : LIT)
    }
    expect(shade.filter((told) => told === IN_SHADE).length).toBe(9)
  })

  it('a wall that runs across a slanting sun shades a band as wide as height / tan', () => {
    // Wall along the north-south line; the sun at azimuth 120: the band to the west is 30 / tan(20) * sin(60) wide.
    const grid = groundOf(201, 2, (east) => (east === 100 ? 30 : 0))
    const shade = hillShadow(grid, { azimuth: 120, altitude: 20 }, NO_CURVE)
    const wide = (30 / Math.tan(20 * RADIANS)) * Math.sin(60 * RADIANS)
    const row = 60 * 201
    let last = 0
    for (let column = 149; column >= 0 && shade[row + column] === IN_SHADE; column--) last = 100 - (column - 100) * 2
    expect(Math.abs(last - wide)).toBeLessThanOrEqual(2)
    expect(shade[row + 170]).toBe(LIT)
  })
})

describe('a low sun', () => {
  it('at the level or under it leaves only what stands high enough over the bulge of the earth', () => {
    const grid = groundOf(41, 50, (east, north) => (east === 0 && north === 0 ? 300 : 0))
    const top = 20 * 41 + 20
    // Dip from 300 m: 0.5 degrees with a refraction of 0.13.
    expect(hillShadow(grid, { azimuth: 80, altitude: -0.45 }, 0.13)[top]).toBe(LIT)
    expect(hillShadow(grid, { azimuth: 80, altitude: -0.55 }, 0.13)[top]).toBe(IN_SHADE)
    const low = hillShadow(grid, { azimuth: 80, altitude: -0.45 }, 0.13)
    expect(low.filter((told) => told === LIT).length).toBe(1)
  })

  it('stands higher where the ground lies nearer to it: the level turns by a minute of arc in 1.85 km', () => {
    const grid = groundOf(101, 500, () => 0)
    // Level ground 50 km wide; the sun due east, exactly on the horizon of the centre.
    const shade = hillShadow(grid, { azimuth: 90, altitude: 0 }, 0)
    const row = 50 * 101
    expect(shade[row + 60]).toBe(LIT)
    expect(shade[row + 40]).toBe(IN_SHADE)
    // 0.03 degrees lower it still stands over the level 5 km to the east.
    const later = hillShadow(grid, { azimuth: 90, altitude: -0.03 }, 0)
    expect([later[row + 60], later[row + 50]]).toEqual([LIT, IN_SHADE])
  })

  it('straight above casts nothing', () => {
    expect(hillShadow(mountains(60), { azimuth: 10, altitude: 90 }, 0.13).every((told) => told === LIT)).toBe(true)
  })
})

it('unknown cells stay unknown and cast nothing', () => {
  const grid = groundOf(41, 10, (east) => (east === 50 ? Number.NaN : east === 100 ? 60 : 0))
  const shade = hillShadow(grid, { azimuth: 90, altitude: 30 }, NO_CURVE)
  const row = 20 * 41 + 20
  expect([shade[row + 9], shade[row + 5], shade[row + 4], shade[row - 1]]).toEqual([
    IN_SHADE,
    SHADE_UNKNOWN,
    IN_SHADE,
    LIT,
  ])
})
