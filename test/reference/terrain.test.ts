/** The ground against published figures: slopes, the sea's curve met on a grid, what the curve hides. */
import { describe, expect, it } from 'vitest'
import { type ElevationGrid, slopeAndAspectAt } from '#core/ground/elevation-grid.ts'
import { lookFrom } from '#core/ground/horizon-look.ts'
import { lookTowards } from '#core/ground/horizon-ray.ts'
import { sightline } from '#core/ground/sightline.ts'
import { skyline, skylineAt, skylineDistanceAt } from '#core/ground/skyline.ts'
import { FOOT, NAUTICAL_MILE, NAVIGATORS_REFRACTION, SEA_HORIZON } from '#test/help/sea-horizon.ts'
import { groundOf } from '#test/help/terrain.ts'

const SEVENTH = 1 / 7
const RADIANS = Math.PI / 180

/** Nine heights from the north-west, 5 m apart, around 0, 0. */
function nine(...heights: readonly number[]): ElevationGrid {
  return {
    centre: { lat: 40, lon: -100 },
    cell: 5,
    columns: 3,
    rows: 3,
    west: -5,
    north: 5,
    heights: Float32Array.from(heights),
  }
}

describe('slope and aspect', () => {
  // A manual of map software, "How Slope works": 75.25762 degrees (gdaldem: 75.25766).
  it('of the slope example', () => {
    const found = slopeAndAspectAt(nine(50, 45, 50, 30, 30, 30, 8, 10, 10), 0, 0)
    expect(Math.abs((found?.slope ?? 0) - 75.257_62)).toBeLessThan(1e-4)
  })

  // A manual of map software, "How Aspect works": 92.64 degrees.
  it('of the aspect example', () => {
    const found = slopeAndAspectAt(nine(101, 92, 85, 101, 92, 85, 101, 91, 84), 0, 0)
    expect(Math.abs((found?.aspect ?? 0) - 92.64)).toBeLessThan(0.01)
  })

  // A manual of map software, "How Hillshade works": slope 1.26511 radians; aspect 3.30804 radians counted from the east, anticlockwise.
  it('of the hillshade example', () => {
    const found = slopeAndAspectAt(nine(2450, 2461, 2483, 2452, 2461, 2483, 2447, 2455, 2477), 0, 0)
    expect(Math.abs((found?.slope ?? 0) * RADIANS - 1.265_11)).toBeLessThan(1e-5)
    expect(Math.abs((found?.aspect ?? 0) - (450 - 3.308_04 / RADIANS))).toBeLessThan(1e-3)
  })
})

describe('the horizon of a flat sea on a grid', () => {
  const sea = groundOf(601, 100, () => 0)

  it.each(SEA_HORIZON)('from %d feet lies %d nautical miles away', (feet, miles) => {
    const line = skyline(sea, { east: 0, north: 0, elevation: feet * FOOT }, NAVIGATORS_REFRACTION, 15)
    // To a cell of the grid, 100 m.
    for (const azimuth of [0, 105]) {
      expect(Math.abs((skylineDistanceAt(line, azimuth) ?? 0) / NAUTICAL_MILE - miles)).toBeLessThan(
        0.05 + 100 / NAUTICAL_MILE,
      )
    }
  })

  // Nautical Almanac, dip 1.76 sqrt(metres) minutes of arc (from memory), a refraction of 0.168; and the geometric dip.
  it.each([
    [2, 2.49, 2.72],
    [3, 3.05, 3.34],
    [10, 5.57, 6.09],
    [20, 7.87, 8.61],
  ])('from %d m dips by %d minutes of arc, %d without air', (height, almanac, geometric) => {
    const eye = { east: 0, north: 0, elevation: height }
    for (const [refraction, minutes] of [
      [0.168, almanac],
      [0, geometric],
    ] as const) {
      for (const azimuth of [0, 45, 255]) {
        const altitude = skylineAt(skyline(sea, eye, refraction, 15), azimuth)
        expect(Math.abs(-60 * (altitude ?? 0) - minutes)).toBeLessThan(0.05)
      }
    }
  })
})

describe('what the curve of the sea hides', () => {
  const sea = groundOf(701, 50, () => 0)
  const eye = { east: -15_000, north: 0, elevation: 2 }

  // (d - d_h)^2 (1 - k) / 2R with R 6371 km (computed).
  it.each([
    [10_000, 0, 1.924],
    [30_000, 0, 48.86],
    [10_000, 0.13, 1.437],
    [30_000, 0.13, 41.28],
  ])('at %d m with refraction %d: the lowest %d m', (distance, refraction, metres) => {
    const seen = sightline(sea, eye, { east: distance - 15_000, north: 0, low: 0, high: 100 }, refraction)
    expect(Math.abs((seen.hidden ?? 0) / metres - 1)).toBeLessThan(0.001)
  })

  // Ghilani and Wolf, Elementary Surveying, 13th edition, exercise (inputs source seen): 24.54 m by 0.0675 K^2.
  it('a lighthouse of 24.54 m is just seen over 24.140 km from 1.738 m', () => {
    const refraction = 1 - (0.0675 * 2 * 6371.0088) / 1000
    const from = { ...eye, elevation: 1.738 }
    const light = (height: number) =>
      sightline(sea, from, { east: 24_140 - 15_000, north: 0, low: height, high: height }, refraction).visibleShare
    expect(light(24.54 - 0.1)).toBe(0)
    expect(light(24.54 + 0.1)).toBe(1)
  })
})

describe('a mast on a flat sea, 50 km off', () => {
  // OSGeo/GDAL issues 4415 and 8915: from 2 m it stands lower by 196.2 m, by 168.2 m with 6/7, by 170.7 m with k = 0.13.
  const mast = groundOf(1001, 100, (east) => (east === 50_000 ? 1000 : 0))
  const short = groundOf(401, 100, (east) => (east === 20_000 ? 1000 : 0))

  it.each([
    [mast, 50_000, 0, 196.2],
    [mast, 50_000, SEVENTH, 168.2],
    [mast, 50_000, 0.13, 170.7],
    [short, 20_000, 0, 31.4],
    [short, 20_000, SEVENTH, 26.9],
    [short, 20_000, 0.13, 27.3],
  ])('%#: sinks by the drop', (grid, distance, refraction, drop) => {
    const look = lookFrom(grid, { east: 0, north: 0, elevation: 2 }, refraction)
    lookTowards(look, 90)
    expect(look.distance).toBeCloseTo(distance, 3)
    expect(Math.abs(1000 - 2 - distance * Math.tan(look.altitude * RADIANS) - drop)).toBeLessThan(0.06)
  })
})
