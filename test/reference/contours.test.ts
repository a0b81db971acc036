/** Contours against gdal_contour on the same grid: level by level the same length of line. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type ContourLine, contours } from '#core/ground/contours.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { fromUtm, run, versionOf, writeGrid } from '#test/help/gdal.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'
import { mountains } from '#test/help/terrain.ts'

const gdal = versionOf('gdal_contour', 'gdal-bin')

type Point = readonly [east: number, north: number]

interface Feature {
  readonly properties: { readonly elev: number }
  readonly geometry: { readonly coordinates: readonly Point[] }
}

/** Metres of the line within the rectangle of the outermost cell centres: the program goes on for half a cell beyond them. */
function lengthWithin(grid: ElevationGrid, points: readonly Point[]): number {
  const reach = grid.north
  let length = 0
  for (const [index, [east, north]] of points.entries()) {
    const [toEast, toNorth] = points[index + 1] ?? [east, north]
    // The line's share inside each pair of sides, by the way it goes.
    let [from, to] = [0, 1]
    for (const [start, way] of [
      [east, toEast - east],
      [north, toNorth - north],
    ] as const) {
      const [one, other] = [(-reach - start) / way, (reach - start) / way]
      if (way === 0) to = Math.abs(start) > reach ? 0 : to
      else [from, to] = [Math.max(from, Math.min(one, other)), Math.min(to, Math.max(one, other))]
    }
    length += Math.max(0, to - from) * Math.hypot(toEast - east, toNorth - north)
  }
  return length
}

function pointsOf(line: ContourLine): Point[] {
  const points: Point[] = []
  for (let at = 0; at < line.points.length; at += 2) points.push([line.points[at] ?? 0, line.points[at + 1] ?? 0])
  const [first] = points
  return line.closed && first !== undefined ? [...points, first] : points
}

function byLevel(pairs: Iterable<readonly [level: number, length: number]>): Map<number, number> {
  const lengths = new Map<number, number>()
  for (const [level, length] of pairs) lengths.set(level, (lengths.get(level) ?? 0) + length)
  return lengths
}

describe.skipIf(gdal === null)('gdal_contour on the same grid', () => {
  // 420 m is the level of a lake: ground exactly at a level.
  it.each([20, 50, 7.5])('every %d m', (step) => {
    const grid = mountains(300)
    const folder = temporaryFolder()
    const result = join(folder, 'lines.json')
    run('gdal_contour', ['-q', '-f', 'GeoJSON', '-i', String(step), '-a', 'elev', writeGrid(grid, folder), result])
    const { features } = JSON.parse(readFileSync(result, 'utf8')) as { features: Feature[] }
    const theirs = byLevel(
      features.map(({ properties, geometry }) => [
        properties.elev,
        lengthWithin(
          grid,
          geometry.coordinates.map(([east, north]) => {
            const at = fromUtm(east, north)
            return [at.east, at.north]
          }),
        ),
      ]),
    )
    const ours = byLevel(contours(grid, step).map((line) => [line.level, lengthWithin(grid, pointsOf(line))]))
    const whole = (lengths: Map<number, number>): number => [...lengths.values()].reduce((sum, one) => sum + one, 0)
    expect(whole(theirs)).toBeGreaterThan(100_000)
    expect(Math.abs(whole(ours) / whole(theirs) - 1)).toBeLessThan(0.005)
    for (const [level, length] of theirs) {
      expect(Math.abs((ours.get(level) ?? 0) - length), `${level} m`).toBeLessThan(0.02 * length + 20)
    }
  })
})
