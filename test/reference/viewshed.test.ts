/** The viewshed against gdal_viewshed, whose fault of those versions we put in on purpose, and against GRASS r.viewshed. */
import { join } from 'node:path'
import { describe, expect, it, onTestFinished } from 'vitest'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { viewshed } from '#core/ground/viewshed.ts'
import { SEEN, type ViewshedRequest } from '#core/ground/viewshed-request.ts'
import { viewshedPreview } from '#core/ground/viewshed-preview.ts'
import { curvatureCoefficient, readBytes, run, utmOf, versionOf, writeGrid } from '#test/help/gdal.ts'
import { grassBase, grassWith } from '#test/help/grass.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'
import { mountains } from '#test/help/terrain.ts'

const SIZE = 300
const EYE = 1.6
const REFRACTION = 1 / 7
const OBSERVERS = [
  { column: 150, row: 150 },
  { column: 40, row: 60 },
  { column: 220, row: 100 },
  { column: 270, row: 280 },
  { column: 10, row: 12 },
] as const

const gdal = versionOf('gdal_viewshed', 'gdal-bin')
const ground = mountains(SIZE)

function askFrom(column: number, row: number): ViewshedRequest {
  return {
    east: ground.west + column * ground.cell,
    north: ground.north - row * ground.cell,
    height: (ground.heights[row * SIZE + column] ?? Number.NaN) + EYE,
    targetHeight: 0,
    refraction: REFRACTION,
    radius: null,
  }
}

/**
 * Before the repair of OSGeo/gdal issue 10205 (June 2024) the program took the cells north, south and diagonal of the observer as no lower
 * than the observer's own ground, and hid those that are.
 */
function withFault(column: number, row: number): { readonly grid: ElevationGrid; readonly hidden: readonly number[] } {
  const heights = Float64Array.from(ground.heights)
  const own = heights[row * SIZE + column] ?? Number.NaN
  const hidden: number[] = []
  for (const [right, down] of [
    [0, -1],
    [0, 1],
    [-1, -1],
    [1, -1],
    [-1, 1],
    [1, 1],
  ] as const) {
    const cell = (row + down) * SIZE + column + right
    const drop = ((1 - REFRACTION) * (right * right + down * down) * ground.cell ** 2) / (2 * 6_371_008.8)
    if ((heights[cell] ?? Number.NaN) - drop >= own) continue
    heights[cell] = own + drop
    hidden.push(cell)
  }
  // Doubles where the program has floats: the fault then has no rounding of ours in it.
  return { grid: { ...ground, heights: heights as unknown as Float32Array }, hidden }
}

function seenByGdal(column: number, row: number): Uint8Array {
  const folder = temporaryFolder()
  // Off the middle of the cell, since versions differ in how they round it.
  const at = utmOf(ground, column - 0.25, row + 0.25)
  const result = join(folder, 'seen')
  const eye = ['-ox', String(at.east), '-oy', String(at.north), '-oz', String(EYE), '-tz', '0', '-md', '0']
  const curve = ['-cc', String(curvatureCoefficient(REFRACTION))]
  run('gdal_viewshed', ['-q', '-of', 'ENVI', ...eye, ...curve, writeGrid(ground, folder), result])
  return readBytes(result)
}

function differing(one: Uint8Array, other: (cell: number) => boolean, first: number): number {
  return one.reduce((count, value, cell) => count + ((value === first) === other(cell) ? 0 : 1), 0)
}

describe.skipIf(gdal === null)('the single pass against gdal_viewshed', () => {
  const [major = 0, minor = 0] = (gdal ?? '0.0').split('.').map(Number)
  const faulty = major < 3 || (major === 3 && minor < 10)

  it.each(OBSERVERS)('agrees in every cell from column $column, row $row', ({ column, row }) => {
    const theirs = seenByGdal(column, row)
    const { grid, hidden } = faulty ? withFault(column, row) : { grid: ground, hidden: [] }
    const ours = viewshedPreview(grid, askFrom(column, row))
    for (const cell of hidden) ours[cell] = 0
    expect(theirs.length).toBe(SIZE * SIZE)
    expect(theirs.includes(255) && theirs.includes(0)).toBe(true)
    expect(differing(theirs, (cell) => ours[cell] === SEEN, 255)).toBeLessThanOrEqual(faulty ? 0 : 5)
  })
})

const grass = grassBase()
if (grass === null)
  process.stdout.write('skipped: GRASS is not installed, so we could not compare with it (Debian: grass-core)\n')

describe.skipIf(grass === null)('the exact viewshed against GRASS r.viewshed', () => {
  it('agrees in at least 99.6 % of all cells and 95 % of the seen ones', () => {
    const { run: module, remove } = grassWith(grass ?? '', ground)
    onTestFinished(remove)
    const result = join(temporaryFolder(), 'seen')
    for (const { column, row } of OBSERVERS.slice(0, 3)) {
      const asked = askFrom(column, row)
      const files = ['input=ground', 'output=seen', '--overwrite', '--quiet', 'memory=500']
      const eye = [`coordinates=${asked.east},${asked.north}`, `observer_elevation=${EYE}`, 'target_elevation=0']
      // Curvature and refraction, a seventh of it by default.
      module('r.viewshed', '-b', '-c', '-r', ...files, ...eye)
      module('r.out.bin', '--overwrite', '--quiet', '-i', 'bytes=1', 'input=seen', `output=${result}`)
      const theirs = readBytes(result)
      const ours = viewshed(ground, asked)
      expect(theirs.includes(1)).toBe(true)
      const apart = differing(theirs, (cell) => ours[cell] === SEEN, 1)
      expect(apart / (SIZE * SIZE)).toBeLessThanOrEqual(0.004)
      // Most cells are hidden, which flatters every method: the seen ones by themselves.
      const inEither = theirs.reduce((count, value, cell) => count + (value === 1 || ours[cell] === SEEN ? 1 : 0), 0)
      expect(1 - apart / inEither).toBeGreaterThanOrEqual(0.95)
    }
  })
})
