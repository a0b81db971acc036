/** Ridges behind each other: walls known exactly, and mountains where every point told must be seen. */
import { describe, expect, it } from 'vitest'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { ridges } from '#core/ground/ridges.ts'
import { sees } from '#core/ground/sight.ts'
import { eyeAbove, skyline, skylineAt } from '#core/ground/skyline.ts'
import { alongBearing, trueAxesAt } from '#core/ground/true-north.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const STRAIGHT = 1
const DEGREES = 180 / Math.PI
const eye = { east: 0, north: 0, elevation: 5 }

/** Walls across the way north, by metres from the eye. */
function walls(heights: Readonly<Record<number, number>>): ElevationGrid {
  return groundOf(601, 10, (_east, north) => heights[north] ?? 0)
}

describe('ridges', () => {
  it('tell the walls that rise above each other, the farthest first, and not the hidden one', () => {
    const found = ridges(walls({ 500: 20, 1000: 25, 2000: 120 }), eye, STRAIGHT, 350, 370, 1)
    expect(found.map((ridge) => Math.round(ridge.distances[10] ?? 0))).toEqual([2000, 500])
    for (const [ridge, height, distance] of [
      [found[0], 120, 2000],
      [found[1], 20, 500],
    ] as const) {
      expect(ridge).toMatchObject({ azimuth: 350, step: 1 })
      expect(ridge?.altitudes.length).toBe(21)
      for (const [index, altitude] of (ridge?.altitudes ?? []).entries()) {
        const cosine = Math.cos((350 + index) / DEGREES)
        expect(altitude).toBeCloseTo(Math.atan(((height - 5) * cosine) / distance) * DEGREES, 6)
        expect(ridge?.distances[index]).toBeCloseTo(distance / cosine, 4)
      }
    }
  })

  it('begin and end where the ground does', () => {
    const butte = groundOf(601, 10, (east, north) => (north === 1000 && Math.abs(east) <= 100 ? 50 : 0))
    const found = ridges(butte, eye, STRAIGHT, -20, 20, 0.5)
    const [ridge] = found.filter(({ altitudes }) => Math.max(...altitudes) > 0)
    // It falls to the plain between 100 m and 110 m aside at 1000 m: 5.7 to 6.3 degrees.
    expect(ridge?.azimuth).toBe(-6)
    expect(ridge?.altitudes.length).toBe(25)
    // Ground drops out of view at the wall too, so the plain's own edge goes on at both sides of it.
    expect(found.length).toBeGreaterThan(1)
  })

  it('leave out bumps: ground out of view for less than a tenth of the way', () => {
    expect(
      ridges(walls({ 2000: 40, 2100: 44, 2990: 200 }), eye, STRAIGHT, 0, 0, 1).map(({ distances }) => distances),
    ).toEqual([[2990], [2100]])
  })

  it('are nothing where nothing is known', () => {
    expect(
      ridges(
        groundOf(21, 10, () => Number.NaN),
        eye,
        STRAIGHT,
        0,
        10,
        1,
      ),
    ).toEqual([])
    expect(
      ridges(
        groundOf(21, 10, () => 0),
        { ...eye, east: 5000 },
        STRAIGHT,
        80,
        100,
        1,
      ),
    ).toEqual([])
  })

  it('on mountains are seen in every point, rise with distance, and end in the skyline', () => {
    const land = mountains(501)
    const lens = eyeAbove(land, -2000, -2000, 1.6)
    if (lens === null) throw new Error('no ground under the eye')
    const [from, to, step] = [0, 40, 0.25]
    const found = ridges(land, lens, 0.13, from, to, step)
    const axes = trueAxesAt(land, lens)
    const around = skyline(land, lens, 0.13)
    const byAzimuth = new Map<number, { altitude: number; distance: number }[]>()
    for (const ridge of found) {
      for (const [index, altitude] of ridge.altitudes.entries()) {
        const azimuth = ridge.azimuth + index * step
        const distance = ridge.distances[index] ?? 0
        byAzimuth.set(azimuth, [...(byAzimuth.get(azimuth) ?? []), { altitude, distance }])
        const way = alongBearing(axes, azimuth)
        const length = Math.hypot(way.east, way.north)
        const drop = (0.87 * distance * distance) / (2 * 6_371_008.8)
        const point = {
          east: lens.east + (way.east / length) * distance,
          north: lens.north + (way.north / length) * distance,
          elevation: lens.elevation + distance * Math.tan(altitude / DEGREES) + drop + 1e-3,
        }
        expect(sees(land, lens, point, 0.13)).toBe(true)
      }
    }
    expect(byAzimuth.size).toBe(161)
    for (const [azimuth, edges] of byAzimuth) {
      const rising = edges.toSorted((one, other) => one.distance - other.distance)
      expect(rising).toEqual(edges.toSorted((one, other) => one.altitude - other.altitude))
      // The parabolas of near cells lift the skyline a little above the edges.
      const top = skylineAt(around, azimuth) ?? 90
      expect(top - (rising.at(-1)?.altitude ?? -90)).toBeGreaterThan(-1e-4)
      expect(top - (rising.at(-1)?.altitude ?? -90)).toBeLessThan(0.3)
    }
    expect(found.length).toBeGreaterThan(3)
    expect(found.length).toBeLessThan(600)
  })
})
