/** The skyline: shapes known exactly, the earth's own curve, true north away from the centre, and a fine march on mountains. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import { type ElevationGrid, elevationAt, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { lookFrom } from '#core/ground/horizon-look.ts'
import { lookTowards } from '#core/ground/horizon-ray.ts'
import type { Raised } from '#core/ground/sight.ts'
import { eyeAbove, groundBefore, skyline, skylineAt, skylineDistanceAt } from '#core/ground/skyline.ts'
import { alongBearing, trueAxesAt } from '#core/ground/true-north.ts'
import { turnBetween } from '#core/units/angle.ts'
import { generator } from '#test/help/generator.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const REFRACTION = 0.13
/** No curve at all. */
const STRAIGHT = 1
const DEGREES = 180 / Math.PI

function eyeOn(grid: ElevationGrid, east: number, north: number, height = 1.6): Raised {
  const eye = eyeAbove(grid, east, north, height)
  if (eye === null) throw new Error('no ground under the eye')
  return eye
}

describe('shapes known exactly', () => {
  it('a wall to the north', () => {
    const wall = groundOf(201, 10, (_east, north) => (north === 500 ? 60 : 0))
    const line = skyline(wall, { east: 0, north: 0, elevation: 10 }, STRAIGHT)
    expect(line.step).toBe(0.25)
    for (const azimuth of [0, 13.25, 330, 45]) {
      const cosine = Math.cos(azimuth / DEGREES)
      expect(skylineAt(line, azimuth)).toBeCloseTo(Math.atan((50 * cosine) / 500) * DEGREES, 4)
      expect(skylineDistanceAt(line, azimuth)).toBeCloseTo(500 / cosine, 2)
    }
    // To the south the grid ends, the earth does not: without a curve its horizon is level, and what lies beyond the edge is unknown.
    expect(skylineAt(line, 180)).toBeCloseTo(0, 9)
    expect(skylineDistanceAt(line, 180)).toBeNull()
    expect(line.unknown[720]).toBeCloseTo(1000, 2)
    // The ground itself rises to the grid's edge and no further.
    expect(groundBefore(wall, { east: 0, north: 0, elevation: 10 }, STRAIGHT, [180], 1500)[0]).toBeCloseTo(
      -Math.atan(10 / 1000) * DEGREES,
      4,
    )
  })

  it('a cone stands up between its two tangents', () => {
    const [tip, grade, far] = [200, 0.5, 1200]
    const cone = groundOf(401, 5, (east, north) => Math.max(0, tip - grade * Math.hypot(east, north - 400)))
    const eye = { east: 0, north: 400 - far, elevation: 3 }
    const line = skyline(cone, eye, STRAIGHT)
    expect(Math.abs((skylineAt(line, 0) ?? 0) - Math.atan((tip - 3) / far) * DEGREES)).toBeLessThan(0.01)
    // The outline is the straight ray along which a plane through eye and tip touches: cos t = (tip - eye) / (grade far).
    const touch = Math.acos((tip - 3) / (grade * far))
    for (const down of [50, 150, 250, 350]) {
      const [aside, ahead] = [down * Math.sin(touch), far - down * Math.cos(touch)]
      const azimuth = Math.atan2(aside, ahead) * DEGREES
      const altitude = Math.atan((tip - grade * down - 3) / Math.hypot(aside, ahead)) * DEGREES
      expect(Math.abs((skylineAt(line, azimuth) ?? 0) - altitude)).toBeLessThan(0.02)
      expect(Math.abs((skylineAt(line, -azimuth) ?? 0) - altitude)).toBeLessThan(0.02)
    }
  })

  it('a peak inside the eye’s own cell and its neighbours: the parabola of the bilinear ground', () => {
    // Along the diagonal of a cell with corners 0, 16, 0, 16 the bilinear ground is 32 u (1 - u).
    const saddle = groundOf(9, 10, (east, north) => ((east / 10 + north / 10) % 2 === 0 ? 0 : 16))
    const eye = { east: 5, north: 5, elevation: 8 + 1 }
    // From the middle of one cell (8 m) across a corner of 0 m into the next cell, whose diagonal peaks at 8 m again, 10 sqrt(2) m off.
    // The eye stands above all of it, and the skyline is the level: so this is of the ground alone.
    const [found] = groundBefore(saddle, eye, STRAIGHT, [45], 1000)
    const best = Math.max(
      ...Array.from({ length: 34_000 }, (_, at) => {
        const s = 0.5 + (at + 1) / 10_000
        const u = s % 1
        return (32 * u * (1 - u) - 9) / (Math.SQRT2 * 10 * (s - 0.5))
      }),
    )
    expect(Math.abs((found ?? 90) - Math.atan(best) * DEGREES)).toBeLessThan(1e-3)
    expect(skyline(saddle, eye, STRAIGHT, 45).altitudes[1]).toBeCloseTo(0, 9)
  })
})

describe('a sea the size of the earth', () => {
  it('has its horizon at the dip and the distance of the formulas, with and without air', () => {
    const sea = groundOf(401, 100, () => 0)
    for (const [height, refraction] of [
      [2, 0],
      [10, 0],
      [10, REFRACTION],
      [20, 1 / 7],
    ] as const) {
      const line = skyline(sea, { east: 30, north: 20, elevation: height }, refraction)
      const curve = (1 - refraction) / (2 * 6_371_008.8)
      for (const azimuth of [0, 77, 200.25]) {
        expect(skylineAt(line, azimuth)).toBeCloseTo(-Math.atan(2 * Math.sqrt(height * curve)) * DEGREES, 4)
        expect(Math.abs((skylineDistanceAt(line, azimuth) ?? 0) - Math.sqrt(height / curve))).toBeLessThan(150)
      }
    }
  })
})

describe('true north', () => {
  it('leads a bearing along the geodesic, also 190 km from the centre', () => {
    const grid = groundOf(3, 10, () => 0, { lat: 47, lon: 9 })
    fc.assert(
      fc.property(
        fc.constantFrom(
          { lat: 47, lon: 11.5 },
          { lat: 47, lon: 6.5 },
          { lat: 48, lon: 9.1 },
          { lat: 46.95, lon: 9.05 },
        ),
        fc.double({ min: 0, max: 359.99, noNaN: true }),
        (place, bearing) => {
          const from = gridPoint(grid, place)
          const to = gridPoint(grid, destination(place, bearing, 200))
          const along = alongBearing(trueAxesAt(grid, from), bearing)
          const [one, other] = [
            Math.atan2(to.east - from.east, to.north - from.north),
            Math.atan2(along.east, along.north),
          ]
          expect(Math.abs(turnBetween(one * DEGREES, other * DEGREES))).toBeLessThan(0.001)
        },
      ),
    )
    const { north } = trueAxesAt(grid, gridPoint(grid, { lat: 47, lon: 11.5 }))
    // The convergence of meridians itself, 2.5 degrees of longitude by the sine of the latitude: it is not to be left out.
    expect(Math.abs(Math.atan2(north.east, north.north) * DEGREES + 2.5 * Math.sin(47 / DEGREES))).toBeLessThan(0.01)
  })

  it('sets a mast where the geodesic says', () => {
    const grid = groundOf(1001, 100, (east, north) => (Math.abs(east - 45_000) < 60 && Math.abs(north) < 60 ? 3000 : 0))
    const eye = { east: 40_000, north: -9000, elevation: 2 }
    const { bearing } = geodesicLine(placeOnGrid(grid, eye.east, eye.north), placeOnGrid(grid, 45_000, 0))
    const look = lookFrom(grid, eye, REFRACTION)
    let [best, at] = [-90, 0]
    for (let step = -100; step <= 100; step++) {
      lookTowards(look, (bearing ?? 0) + step / 1000)
      if (look.altitude > best) [best, at] = [look.altitude, step / 1000]
    }
    expect(Math.abs(at)).toBeLessThan(0.02)
  })
})

describe('on mountains', () => {
  const land = mountains(701)
  const eyes = [
    [0, 0],
    [1234.5, 2345.6],
    [-3111, 777],
    [2503, -1999],
  ].map(([east = 0, north = 0]) => eyeOn(land, east, north))

  const RADIUS = 6_371_008.8
  const lowest = land.heights.reduce((least, height) => Math.min(least, height), 0)

  /** The dip of a round sea as deep as the lowest ground, by its own triangle: cos dip = r / (r + h), r the radius that refraction leaves. */
  function dip(eye: Raised): number {
    const bent = RADIUS / (1 - REFRACTION)
    return -Math.acos(bent / (bent + eye.elevation - lowest)) * DEGREES
  }

  /** The plainest skyline: samples a fiftieth of a cell apart, closer near the eye. Where the grid ends the sea goes on. */
  function marched(eye: Raised, azimuth: number): number {
    const way = alongBearing(trueAxesAt(land, eye), azimuth)
    const length = Math.hypot(way.east, way.north)
    const curve = (1 - REFRACTION) / (2 * RADIUS)
    let steepest = -Infinity
    for (let distance = 0.02; ; distance += Math.min(0.02 * land.cell, distance / 4000)) {
      const ground = elevationAt(
        land,
        eye.east + (way.east / length) * distance,
        eye.north + (way.north / length) * distance,
      )
      if (ground === null) return Math.max(Math.atan(steepest) * DEGREES, dip(eye))
      steepest = Math.max(steepest, (ground - eye.elevation) / distance - curve * distance)
    }
  }

  it('is within 0.01 degrees of a fine march for 19 of 20 azimuths, and 0.001 on average', () => {
    for (const eye of eyes) {
      const line = skyline(land, eye, REFRACTION)
      const errors = Array.from({ length: 40 }, (_, index) =>
        Math.abs((line.altitudes[index * 36] ?? 90) - marched(eye, index * 9)),
      ).toSorted((one, other) => one - other)
      expect(errors[37]).toBeLessThan(0.01)
      expect(errors.reduce((one, other) => one + other) / errors.length).toBeLessThan(0.001)
    }
  })

  it('is the same for an azimuth alone as in the round', () => {
    for (const eye of eyes) {
      const line = skyline(land, eye, REFRACTION)
      for (let index = 0; index < 1440; index += 7) {
        const look = lookFrom(land, eye, REFRACTION)
        lookTowards(look, index * 0.25)
        expect(Math.abs(look.altitude - (line.altitudes[index] ?? 90))).toBeLessThan(1e-5)
      }
    }
  })

  it('of ground nearer than a distance never stands higher, and reaches the whole at its own distance', () => {
    const [eye] = eyes
    if (eye === undefined) return
    const line = skyline(land, eye, REFRACTION)
    const next = generator(8)
    let reached = 0
    for (let round = 0; round < 200; round++) {
      const index = Math.floor(next() * 1440)
      const [whole, distance] = [line.altitudes[index] ?? 0, line.distances[index] ?? 0]
      const [before, at] = [distance * 0.9, distance + 1.5 * land.cell].map(
        (reach) => groundBefore(land, eye, REFRACTION, [index * 0.25], reach)[0],
      )
      expect(before ?? -90).toBeLessThanOrEqual(whole + 1e-5)
      if (Math.abs(whole - dip(eye)) < 1e-3) {
        expect(at ?? -90).toBeLessThanOrEqual(whole + 1e-5)
        continue
      }
      reached++
      expect(Math.abs((at ?? -90) - whole)).toBeLessThan(1e-5)
    }
    expect(reached).toBeGreaterThan(100)
  })
})

describe('reading a skyline', () => {
  const line = {
    step: 90,
    altitudes: Float32Array.from([1, 3, Number.NaN, 5]),
    distances: Float32Array.from([10, 30, Number.NaN, 50]),
    unknown: new Float32Array(4).fill(Number.NaN),
  }

  it('goes straight between its azimuths, across north as well', () => {
    expect(skylineAt(line, 45)).toBe(2)
    expect(skylineAt(line, 0)).toBe(1)
    expect(skylineAt(line, 315)).toBe(3)
    expect(skylineAt(line, -45)).toBe(3)
    expect(skylineAt(line, 720 + 90 - 45)).toBe(2)
    expect(skylineDistanceAt(line, 350)).toBe(10)
    expect(skylineDistanceAt(line, 280)).toBe(50)
  })

  it('is null where nothing is known', () => {
    expect(skylineAt(line, 180)).toBeNull()
    expect(skylineAt(line, 91)).toBe(3)
    expect(skylineAt(line, 179)).toBeNull()
    expect(skylineDistanceAt(line, 180)).toBeNull()
  })
})

describe('unknown ground', () => {
  it('is told by how far off it begins, and hides nothing', () => {
    const holed = groundOf(201, 10, (east, north) =>
      Math.hypot(east - 600, north) < 100 ? Number.NaN : north === 500 ? 60 : 0,
    )
    const line = skyline(holed, { east: 0, north: 0, elevation: 2 }, STRAIGHT)
    // The grid ends at 1000 m all round: only what begins before that is the hole.
    const told = Array.from(line.unknown, (metres, index) => (metres < 990 ? index * 0.25 : -1)).filter((at) => at >= 0)
    const half = Math.asin(110 / 600) * DEGREES
    expect(Math.min(...told)).toBeGreaterThan(90 - half - 0.3)
    expect(Math.max(...told)).toBeLessThan(90 + half + 0.3)
    expect(told.length).toBeGreaterThan((2 * Math.asin(90 / 600) * DEGREES) / 0.25)
    // A cell with an unknown corner is unknown: the hole begins at the cell before its first post.
    expect(line.unknown[360]).toBeGreaterThanOrEqual(490)
    expect(line.unknown[360]).toBeLessThanOrEqual(510)
    expect(line.unknown.every((metres) => metres <= 1000 * Math.SQRT2 + 1e-3)).toBe(true)
    expect(skylineAt(line, 90)).toBe(0)
  })

  it('everywhere leaves the sea’s horizon, all of it in doubt from where the eye stands', () => {
    const nothing = groundOf(21, 10, () => Number.NaN)
    expect(eyeAbove(nothing, 0, 0, 2)).toBeNull()
    for (const east of [0, 9000]) {
      const line = skyline(nothing, { east, north: 0, elevation: 2 }, 0)
      expect(skylineAt(line, 12)).toBeCloseTo(-Math.acos(6_371_008.8 / 6_371_010.8) * DEGREES, 5)
      expect(line.unknown.every((metres) => metres <= 10 * Math.SQRT2)).toBe(true)
    }
  })
})
