/** The skyline against GRASS's r.horizon, both held against a fine march over the bilinear ground. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type ElevationGrid, elevationAt } from '#core/ground/elevation-grid.ts'
import type { Raised } from '#core/ground/sight.ts'
import { eyeAbove, skyline, skylineAt } from '#core/ground/skyline.ts'
import { alongBearing, trueAxesAt } from '#core/ground/true-north.ts'
import { type Grass, grassBase, grassWith } from '#test/help/grass.ts'
import { LAKE, mountains } from '#test/help/terrain.ts'

const base = grassBase()
if (base === null) {
  process.stderr.write(
    'Skipped: the skyline is not compared with r.horizon, since GRASS is not installed (Debian: grass-core).\n',
  )
}

const STEP = 15
const AZIMUTHS = Array.from({ length: 360 / STEP }, (_, index) => index * STEP)
/** r.horizon takes the earth's curve off but knows no refraction, and its eye lies on the ground. */
const REFRACTION = 0
const DEGREES = 180 / Math.PI

/** The plainest skyline, samples a fiftieth of a cell apart. */
function marched(grid: ElevationGrid, eye: Raised, azimuth: number): number {
  const way = alongBearing(trueAxesAt(grid, eye), azimuth)
  const length = Math.hypot(way.east, way.north)
  let steepest = -Infinity
  for (let step = 1; ; step++) {
    const distance = step * grid.cell * 0.02
    const ground = elevationAt(
      grid,
      eye.east + (way.east / length) * distance,
      eye.north + (way.north / length) * distance,
    )
    if (ground === null) return Math.atan(steepest) * DEGREES
    steepest = Math.max(steepest, (ground - eye.elevation) / distance - distance / (2 * 6_371_008.8))
  }
}

/**
 * Cell centres on the lake whose skyline is far: r.horizon reads the nearest cell, so near ground puts it out by degrees.
 * Its point mode errs in version 8.2 (GRASS pull 3288), its raster mode over a region of one cell does not.
 */
function farSeeing(grid: ElevationGrid, count: number): Raised[] {
  const found: { eye: Raised; near: number }[] = []
  for (let row = 20; row < grid.rows - 20; row += 7) {
    for (let column = 20; column < grid.columns - 20; column += 7) {
      if (grid.heights[row * grid.columns + column] !== LAKE) continue
      const eye = eyeAbove(grid, grid.west + column * grid.cell, grid.north - row * grid.cell, 0)
      if (eye === null) continue
      const { distances } = skyline(grid, eye, REFRACTION, 3)
      found.push({ eye, near: Math.min(...distances) })
    }
  }
  return found
    .toSorted((one, other) => other.near - one.near)
    .slice(0, count)
    .map(({ eye }) => eye)
}

/** Degrees by azimuth, from a region of the eye's one cell. */
function told(grass: Grass, grid: ElevationGrid, eye: Raised): number[] {
  const half = grid.cell / 2
  const sides = { n: eye.north + half, s: eye.north - half, w: eye.east - half, e: eye.east + half }
  grass.run('g.region', ...Object.entries(sides).map(([side, metres]) => `${side}=${metres}`), `res=${grid.cell}`)
  grass.run(
    'r.horizon',
    '-d',
    '--overwrite',
    '--quiet',
    'elevation=ground',
    `step=${STEP}`,
    'bufferzone=20000',
    'maxdistance=20000',
    'output=rim',
  )
  // Its directions run anticlockwise from the east.
  const names = AZIMUTHS.map((azimuth) => `rim_${String((450 - azimuth) % 360).padStart(3, '0')}`)
  const line = grass.run('r.what', `map=${names.join(',')}`, `coordinates=${eye.east},${eye.north}`)
  return line.trim().split('|').slice(3).map(Number)
}

describe.skipIf(base === null)('the skyline and r.horizon', () => {
  let grass: Grass
  const land = mountains(701)
  const eyes = farSeeing(land, 3)

  beforeAll(() => {
    grass = grassWith(base ?? '', land)
  }, 60_000)

  afterAll(() => grass.remove())

  it('finds places on the lake that see further than 150 m all around', () => {
    expect(eyes.length).toBe(3)
    for (const eye of eyes) expect(Math.min(...skyline(land, eye, REFRACTION, 3).distances)).toBeGreaterThan(150)
  })

  it('agree to what the nearest cell may be off, and ours is 25 times nearer to the truth', () => {
    let [ours, theirs] = [0, 0]
    for (const eye of eyes) {
      const line = skyline(land, eye, REFRACTION)
      const other = told(grass, land, eye)
      expect(other.length).toBe(AZIMUTHS.length)
      for (const [index, azimuth] of AZIMUTHS.entries()) {
        const truth = marched(land, eye, azimuth)
        const mine = skylineAt(line, azimuth) ?? 90
        expect(Math.abs(mine - (other[index] ?? -90)), `azimuth ${azimuth}`).toBeLessThan(1)
        ours += Math.abs(mine - truth)
        theirs += Math.abs((other[index] ?? -90) - truth)
      }
    }
    const mean = (sum: number): number => sum / (eyes.length * AZIMUTHS.length)
    expect(mean(theirs)).toBeLessThan(0.2)
    expect(mean(ours)).toBeLessThan(mean(theirs) / 25)
  })
})
