/** Lines over the ground against the plain way: a march of one cell a step for the skyline, every crossing in turn for a line of sight. */
import { type ElevationGrid, elevationAt } from '#core/ground/elevation-grid.ts'
import { ridges } from '#core/ground/ridges.ts'
import { type Raised, sees } from '#core/ground/sight.ts'
import { sightline } from '#core/ground/sightline.ts'
import { eyeAbove, skyline } from '#core/ground/skyline.ts'
import { plainSill } from '#test/help/brute-sight.ts'
import { generator } from '#test/help/generator.ts'
import { mountains } from '#test/help/terrain.ts'
import { type BenchRow, against } from './measure.ts'

const REFRACTION = 0.13
const RAYS = 720
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
  const eye = eyeAbove(grid, 1234, -777, 1.6)
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
  const eye = eyeAbove(grid, 1234, -777, 1.6)
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
  return [skylineRow(grid), ...sightRows(grid), ridgeRow(grid)]
}
