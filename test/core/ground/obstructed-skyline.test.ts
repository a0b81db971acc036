/** Trees and walls against the sky, held against marching along each direction in small steps. */
import { describe, expect, it } from 'vitest'
import { type GridPoint, elevationAt, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import type { Obstruction } from '#core/ground/obstruction.ts'
import { obstructionEdgeTowards, obstructedSkyline } from '#core/ground/obstructed-skyline.ts'
import { eyeAbove, skyline, skylineAt, skylineDistanceAt } from '#core/ground/skyline.ts'
import { alongBearing, trueAxesAt } from '#core/ground/true-north.ts'
import { generator } from '#test/help/generator.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const DEGREES = 180 / Math.PI
const RADIUS = 6_371_008.8

describe('a wall on level ground', () => {
  const grid = groundOf(201, 10, () => 100)
  const eye = { east: 0, north: 0, elevation: 101.6 }
  const wall: Obstruction = { line: [placeOnGrid(grid, -30, 50), placeOnGrid(grid, 30, 50)], height: 6.6 }
  const line = obstructedSkyline(skyline(grid, eye, 1), grid, eye, 1, [wall])

  it('stands up by its height at its distance, between its ends and nowhere else', () => {
    expect(skylineAt(line, 0)).toBeCloseTo(Math.atan(5 / 50) * DEGREES, 4)
    expect(skylineDistanceAt(line, 0)).toBeCloseTo(50, 3)
    const ends = Math.atan(30 / 50) * DEGREES
    expect(skylineAt(line, ends - 0.5)).toBeCloseTo(
      Math.atan(5 / Math.hypot(50, 50 * Math.tan((ends - 0.5) / DEGREES))) * DEGREES,
      3,
    )
    // Elsewhere the level earth goes on beyond the grid.
    for (const azimuth of [ends + 0.5, 90, 180, 270, -ends - 0.5]) expect(skylineAt(line, azimuth)).toBe(0)
  })

  it('lower than the ground behind it changes nothing; without any the skyline is the same object', () => {
    const low = obstructedSkyline(line, grid, eye, 1, [{ ...wall, height: 2 }])
    expect(low.altitudes).toEqual(line.altitudes)
    expect(obstructedSkyline(line, grid, eye, 1, [])).toBe(line)
    expect(obstructionEdgeTowards(grid, eye, 1, [], 0)).toBeNull()
  })

  it('across north stays in one piece, behind the eye is behind it, of one corner or on unknown ground is none', () => {
    for (const azimuth of [359.75, 0, 0.25]) expect(skylineAt(line, azimuth)).toBeGreaterThan(5)
    expect(obstructionEdgeTowards(grid, eye, 1, [wall], 180)).toBeNull()
    expect(obstructionEdgeTowards(grid, eye, 1, [{ ...wall, line: wall.line.slice(1) }], 0)).toBeNull()
    const holed = {
      ...grid,
      heights: grid.heights.map((height, at) => (Math.floor(at / 201) < 98 ? Number.NaN : height)),
    }
    expect(obstructionEdgeTowards(holed, eye, 1, [wall], 0)).toBeNull()
  })
})

it('among mountains is what a march along each direction finds', () => {
  const grid = mountains(161, 25)
  const random = generator(7)
  const around = (reach: number): GridPoint => ({ east: (random() - 0.5) * reach, north: (random() - 0.5) * reach })
  let met = 0
  for (let round = 0; round < 6; round++) {
    const stand = around(600)
    const eye = eyeAbove(grid, stand.east, stand.north, 1.6)
    if (eye === null) throw new Error('the mountains are known')
    const obstructions: Obstruction[] = Array.from({ length: 4 }, () => {
      const start = { east: stand.east + around(240).east, north: stand.north + around(240).north }
      const corners = [
        start,
        ...Array.from({ length: 2 }, () => ({
          east: start.east + around(200).east,
          north: start.north + around(200).north,
        })),
      ]
      return { line: corners.map(({ east, north }) => placeOnGrid(grid, east, north)), height: 10 + 60 * random() }
    })
    const bare = skyline(grid, eye, 0.13)
    const line = obstructedSkyline(bare, grid, eye, 0.13, obstructions)
    const axes = trueAxesAt(grid, eye)
    for (let index = 0; index < line.altitudes.length; index += 7) {
      const way = alongBearing(axes, index * line.step)
      let [steepest, grazes] = [-Infinity, false]
      for (const { line: foot, height } of obstructions) {
        const corners = foot.map((place) => gridPoint(grid, place))
        corners.slice(1).forEach((other, at) => {
          const one = corners[at] ?? other
          const aside = (far: number): number =>
            (eye.east + way.east * far - one.east) * (other.north - one.north) -
            (eye.north + way.north * far - one.north) * (other.east - one.east)
          for (let far = 0.001; far < 1_500; far += 2) {
            if (aside(far) > 0 === aside(far + 2) > 0) continue
            const there = far + (2 * aside(far)) / (aside(far) - aside(far + 2))
            const place = { east: eye.east + way.east * there, north: eye.north + way.north * there }
            const [length, along] = [
              Math.hypot(other.east - one.east, other.north - one.north),
              Math.hypot(place.east - one.east, place.north - one.north),
            ]
            const beyond = Math.hypot(place.east - other.east, place.north - other.north)
            if (along + beyond > length + 1e-6) continue
            if (Math.min(along, beyond) < 0.01) grazes = true
            const ground = elevationAt(grid, place.east, place.north)
            if (ground === null) continue
            const away = Math.hypot(way.east, way.north) * there
            const rise = ground + height - eye.elevation - (0.87 * away * away) / (2 * RADIUS)
            steepest = Math.max(steepest, rise / away)
          }
        })
      }
      if (grazes) continue
      const expected = Math.max(bare.altitudes[index] ?? 0, Math.atan(steepest) * DEGREES)
      expect(line.altitudes[index]).toBeCloseTo(expected, 3)
      const single = obstructionEdgeTowards(grid, eye, 0.13, obstructions, index * line.step)
      if (steepest > -Infinity) {
        expect(single?.altitude).toBeCloseTo(Math.atan(steepest) * DEGREES, 3)
        if (Math.atan(steepest) * DEGREES > (bare.altitudes[index] ?? 0)) met++
      } else expect(single).toBeNull()
    }
  }
  expect(met).toBeGreaterThan(100)
})
