/** Lines over the ground against the plain way: a march of one cell a step for the skyline, every crossing in turn for a line of sight. */
import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import { type ElevationGrid, elevationAt } from '#core/ground/elevation-grid.ts'
import { ridges } from '#core/ground/ridges.ts'
import { type Raised, sees } from '#core/ground/sight.ts'
import { sightline } from '#core/ground/sightline.ts'
import { eyeAbove, skyline } from '#core/ground/skyline.ts'
import { plainSill } from '#test/help/brute-sight.ts'
import { grassBase, grassWith } from '#test/help/grass.ts'
import { generator } from '#test/help/generator.ts'
import { mountains } from '#test/help/terrain.ts'
import { type BenchRow, against, cpu, median } from './measure.ts'

const REFRACTION = 0.13
const RAYS = 720
/** Where the eye stands. */
const EAST = 1234
const NORTH = -777
const CURVE = (1 - REFRACTION) / (2 * 6_371_008.8)

/** The skyline by bilinear samples one cell apart along every ray. */
function marched({ heights, columns, rows, cell, west, north }: ElevationGrid, eye: Raised): number {
  const [column, row] = [(eye.east - west) / cell, (north - eye.north) / cell]
  let sum = 0
  for (let ray = 0; ray < RAYS; ray++) {
    const angle = (ray / RAYS) * 2 * Math.PI
    const [right, down] = [Math.sin(angle), -Math.cos(angle)]
    let steepest = -Infinity
    for (let step = 1; ; step++) {
      const [x, y] = [column + step * right, row + step * down]
      if (!(x >= 0 && y >= 0 && x < columns - 1 && y < rows - 1)) break
      const [i, j] = [Math.floor(x), Math.floor(y)]
      const [u, v] = [x - i, y - j]
      const post = j * columns + i
      const upper = heights[post]! + u * (heights[post + 1]! - heights[post]!)
      const lower = heights[post + columns]! + u * (heights[post + columns + 1]! - heights[post + columns]!)
      const distance = step * cell
      const slope = (upper + v * (lower - upper) - eye.elevation) / distance - CURVE * distance
      if (slope > steepest) steepest = slope
    }
    sum += steepest
  }
  return sum
}

function skylineRow(grid: ElevationGrid): BenchRow {
  const eye = eyeAbove(grid, EAST, NORTH, 1.6)
  if (eye === null) throw new Error('no ground under the eye')
  let sink = 0
  const measured = against(
    () => (sink += skyline(grid, eye, REFRACTION, 360 / RAYS).altitudes.length),
    () => (sink += marched(grid, eye)),
    8,
  )
  if (Number.isNaN(sink)) throw new Error('no skyline was found')
  return {
    name: 'skyline of 720 rays over 2001 x 2001 cells, against a plain march',
    ours: `${measured.ours.toFixed(2)} ms`,
    anchor: `${measured.anchor.toFixed(1)} ms`,
    ratio: measured.ratio,
    aim: 'ratio 0.05, gate 0.10',
  }
}

/** Cells along the side of the square of eyes that r.horizon looks from: one eye, and 90,000 of them, leave what a ray costs. */
const EYES = 300
const WAYS = [10, 100, 190, 280]
const ROUNDS = 5

/** Milliseconds of CPU that a program takes, by the shell's own count: its second line is of what it started, as 0m1.230s. */
function spentOn(program: string, words: readonly string[], env: NodeJS.ProcessEnv): number {
  const told = execFileSync('/bin/sh', ['-c', '"$@" >/dev/null && times', 'sh', program, ...words], {
    env,
    encoding: 'utf8',
  })
  const parts = [...(told.trim().split('\n').at(-1) ?? '').matchAll(/(\d+)m([\d.]+)s/g)]
  return parts.reduce((sum, [, minutes, seconds]) => sum + Number(minutes) * 60_000 + Number(seconds) * 1000, 0)
}

/** The same against r.horizon in raster mode, its start and file handling taken off. */
function toolRows(grid: ElevationGrid): BenchRow[] {
  const base = grassBase()
  const eye = eyeAbove(grid, EAST, NORTH, 1.6)
  if (base === null || eye === null) {
    process.stderr.write(
      'The skyline is not measured against r.horizon, since GRASS is not installed (Debian: grass-core).\n',
    )
    return []
  }
  const grass = grassWith(base, grid)
  const [column, row] = [Math.round(EAST / grid.cell) * grid.cell, Math.round(NORTH / grid.cell) * grid.cell]
  const around = (cells: number, direction: number): number => {
    const half = (cells * grid.cell) / 2
    const sides = { n: row + half, s: row - half, w: column - half, e: column + half }
    grass.run('g.region', ...Object.entries(sides).map(([side, metres]) => `${side}=${metres}`), `res=${grid.cell}`)
    const words = ['elevation=ground', `direction=${direction}`, 'bufferzone=20000', 'maxdistance=20000', 'output=rim']
    return spentOn(join(base, 'bin', 'r.horizon'), ['-d', '--overwrite', '--quiet', ...words], grass.env)
  }
  // A look around goes all ways, and ground is not alike in all of them: the anchor's rays go four ways in equal parts.
  const rounds = Array.from({ length: ROUNDS }, () => {
    const spent = WAYS.map((way) => (around(EYES, way) - around(1, way)) / EYES ** 2)
    const anchor = (spent.reduce((sum, one) => sum + one, 0) / WAYS.length) * RAYS
    const ours = cpu(() => {
      for (let call = 0; call < 40; call++) skyline(grid, eye, REFRACTION, 360 / RAYS)
    })
    return { anchor, ours: ours / 40 }
  })
  grass.remove()
  return [
    {
      name: 'the same, against 720 rays of r.horizon',
      ours: `${median(rounds.map(({ ours }) => ours)).toFixed(2)} ms`,
      anchor: `${median(rounds.map(({ anchor }) => anchor)).toFixed(2)} ms`,
      ratio: median(rounds.map(({ ours, anchor }) => ours / anchor)),
      aim: 'ratio 0.20, gate 0.40',
    },
  ]
}

const PAIRS = 2000
const THING = 20

function pairsOver(grid: ElevationGrid): (readonly [Raised, Raised])[] {
  const next = generator(3)
  const reach = ((grid.columns - 1) * grid.cell) / 2
  const point = (height: number): Raised => {
    const [east, north] = [(next() * 2 - 1) * reach, (next() * 2 - 1) * reach]
    return { east, north, elevation: (elevationAt(grid, east, north) ?? Number.NaN) + height }
  }
  return Array.from({ length: PAIRS }, () => [point(1.6), point(THING)] as const)
}

function sightRows(grid: ElevationGrid): BenchRow[] {
  const pairs = pairsOver(grid)
  let sink = 0
  const plain = (): void => {
    for (const [eye, point] of pairs) sink += plainSill(grid, eye, point, REFRACTION) > point.elevation ? 1 : 0
  }
  const seen = against(
    () => {
      for (const [eye, point] of pairs) sink += sees(grid, eye, point, REFRACTION) ? 1 : 0
    },
    plain,
    1,
  )
  const told = against(
    () => {
      for (const [eye, { east, north, elevation }] of pairs) {
        const target = { east, north, low: elevation - THING, high: elevation }
        sink += sightline(grid, eye, target, REFRACTION).visibleShare ?? 0
      }
    },
    plain,
    1,
  )
  if (Number.isNaN(sink)) throw new Error('nothing was looked at')
  const row = (name: string, { ours, anchor, ratio }: typeof seen, aim: string): BenchRow => ({
    name,
    ours: `${((ours / PAIRS) * 1000).toFixed(2)} µs`,
    anchor: `${((anchor / PAIRS) * 1000).toFixed(1)} µs`,
    ratio,
    aim,
  })
  return [
    row('one point sees another, random pairs up to 28 km, against every crossing', seen, '2 µs; ratio 0.05'),
    row('line of sight to an upright thing with its tightest points, against the same', told, '1000 µs'),
  ]
}

function ridgeRow(grid: ElevationGrid): BenchRow {
  const eye = eyeAbove(grid, EAST, NORTH, 1.6)
  if (eye === null) throw new Error('no ground under the eye')
  let sink = 0
  const measured = against(
    () => (sink += ridges(grid, eye, REFRACTION, 100, 140, 0.1).length),
    () => (sink += skyline(grid, eye, REFRACTION, 0.1).altitudes.length / 9),
    4,
  )
  if (sink === 0) throw new Error('no ridge was found')
  return {
    name: 'ridges behind each other, 400 azimuths, against the skyline of 3600',
    ours: `${measured.ours.toFixed(2)} ms`,
    anchor: `${measured.anchor.toFixed(2)} ms`,
    ratio: measured.ratio,
    aim: '5 ms',
  }
}

export function benchGround(): BenchRow[] {
  const grid = mountains(2001)
  return [skylineRow(grid), ...toolRows(grid), ...sightRows(grid), ridgeRow(grid)]
}
