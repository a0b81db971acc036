/** Relief over planes, whose slope and light are known everywhere, at the rim and beside unknown ground too. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { MAP_LIGHT, UNKNOWN_SHADE, hillshade, slopesAndAspects } from '#core/ground/relief.ts'
import { groundOf } from '#test/help/terrain.ts'

const RADIANS = Math.PI / 180

describe('a plane', () => {
  it('has one slope, one aspect and one brightness, to the very rim', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.double({ min: 1, max: 90, noNaN: true }),
        (slope, aspect, azimuth, altitude) => {
          const fall = Math.tan(slope * RADIANS)
          const grid = groundOf(7, 8, (east, north) => {
            return -fall * (east * Math.sin(aspect * RADIANS) + north * Math.cos(aspect * RADIANS))
          })
          const { slopes, aspects } = slopesAndAspects(grid)
          for (const told of slopes) expect(told).toBeCloseTo(slope, 2)
          for (const told of aspects) {
            expect(Math.abs(((told - aspect + 540) % 360) - 180)).toBeLessThan(0.02)
          }
          const incidence =
            Math.cos(slope * RADIANS) * Math.sin(altitude * RADIANS) +
            Math.sin(slope * RADIANS) * Math.cos(altitude * RADIANS) * Math.cos((azimuth - aspect) * RADIANS)
          const bright = 1 + 254 * Math.max(0, incidence)
          for (const told of hillshade(grid, { azimuth, altitude })) {
            expect(Math.abs(told - bright)).toBeLessThan(0.52)
          }
        },
      ),
      { numRuns: 100 },
    )
  })

  it('is bright towards the light and dark away from it, the more so exaggerated', () => {
    const northWest = groundOf(5, 10, (east, north) => 0.3 * (east - north))
    const southEast = groundOf(5, 10, (east, north) => -0.3 * (east - north))
    const toward = hillshade(northWest, MAP_LIGHT)[12] ?? 0
    const away = hillshade(southEast, MAP_LIGHT)[12] ?? 0
    expect(toward).toBeGreaterThan(200)
    expect(away).toBeLessThan(150)
    expect(hillshade(southEast, MAP_LIGHT, 2)[12]).toBeLessThan(away)
  })

  it('level has no aspect, and a light below it leaves it dark', () => {
    const grid = groundOf(4, 10, () => 12)
    const { slopes, aspects } = slopesAndAspects(grid)
    expect(slopes.every((slope) => slope === 0)).toBe(true)
    expect(aspects.every((aspect) => Number.isNaN(aspect))).toBe(true)
    expect(hillshade(grid, { azimuth: 90, altitude: -5 }).every((shade) => shade === 1)).toBe(true)
    expect(hillshade(grid, { azimuth: 90, altitude: 90 }).every((shade) => shade === 255)).toBe(true)
  })
})

describe('unknown ground', () => {
  it('stays unknown and leaves its neighbours on a plane as they are', () => {
    const holes = new Set([0, 20, 21, 58, 59, 60, 80])
    let cell = 0
    const grid = groundOf(9, 10, (east, north) => (holes.has(cell++) ? Number.NaN : 0.4 * east + 0.1 * north))
    const { slopes, aspects } = slopesAndAspects(grid)
    const shade = hillshade(grid, MAP_LIGHT)
    const whole = hillshade(
      groundOf(9, 10, (east, north) => 0.4 * east + 0.1 * north),
      MAP_LIGHT,
    )
    for (let index = 0; index < 81; index++) {
      expect(Number.isNaN(slopes[index] ?? 0)).toBe(holes.has(index))
      expect(Number.isNaN(aspects[index] ?? 0)).toBe(holes.has(index))
      expect(shade[index]).toBe(holes.has(index) ? UNKNOWN_SHADE : whole[index])
    }
  })

  it('all around a cell leaves it level', () => {
    const grid = groundOf(3, 10, (east, north) => (east === 0 && north === 0 ? 7 : Number.NaN))
    expect(slopesAndAspects(grid).slopes[4]).toBe(0)
  })

  it('of a single row or column still has its slope along it', () => {
    const row = { ...groundOf(1, 10, () => 0), columns: 5, heights: Float32Array.from([0, 10, 20, 30, 40]) }
    for (const slope of slopesAndAspects(row).slopes) expect(slope).toBeCloseTo(45, 4)
    const column = { ...row, columns: 1, rows: 5 }
    for (const slope of slopesAndAspects(column).slopes) expect(slope).toBeCloseTo(45, 4)
    for (const aspect of slopesAndAspects(column).aspects) expect(aspect % 360).toBeCloseTo(0, 4)
  })
})
