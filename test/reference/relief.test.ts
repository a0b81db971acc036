/** Slope, aspect and hillshade against worked examples and, cell by cell, against gdaldem. */
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type ElevationGrid, slopeAndAspectAt } from '#core/ground/elevation-grid.ts'
import { MAP_LIGHT, type ReliefLight, UNKNOWN_SHADE, hillshade, slopesAndAspects } from '#core/ground/relief.ts'
import { readBytes, readFloats, run, versionOf, writeGrid } from '#test/help/gdal.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'
import { mountains } from '#test/help/terrain.ts'

/** Nine cells; the middle one is what the example is of. */
function nine(heights: readonly number[], cell = 5): ElevationGrid {
  const centre = { lat: 46.9, lon: 10.3 }
  return { centre, cell, columns: 3, rows: 3, west: -cell, north: cell, heights: Float32Array.from(heights) }
}

describe('worked examples', () => {
  // A manual of map software, "How Slope works": dz/dx 0.05, dz/dy -3.8, slope 75.25762 degrees.
  it('slope', () => {
    const { slopes } = slopesAndAspects(nine([50, 45, 50, 30, 30, 30, 8, 10, 10]))
    expect(Math.abs((slopes[4] ?? Number.NaN) - 75.25762)).toBeLessThan(1e-4)
  })

  // A manual of map software, "How Aspect works": 92.64 degrees.
  it('aspect', () => {
    const { aspects } = slopesAndAspects(nine([101, 92, 85, 101, 92, 85, 101, 91, 84]))
    expect(Math.abs((aspects[4] ?? Number.NaN) - 92.64)).toBeLessThan(0.01)
  })

  // A manual of map software, "How Hillshade works": slope 1.26511 rad, aspect 3.30804 rad counted from the east; lit 153.82 of 255 by its rounded steps,
  // 154.03 of 255 in full, which in 1..255 is 154 too.
  it('hillshade', () => {
    const window = nine([2450, 2461, 2483, 2452, 2461, 2483, 2447, 2455, 2477])
    const { slopes, aspects } = slopesAndAspects(window)
    expect(Math.abs(((slopes[4] ?? Number.NaN) * Math.PI) / 180 - 1.26511)).toBeLessThan(1e-5)
    expect(Math.abs((aspects[4] ?? Number.NaN) - 260.463)).toBeLessThan(1e-3)
    expect(hillshade(window, MAP_LIGHT)[4]).toBe(154)
  })
})

const gdal = versionOf('gdaldem', 'gdal-bin')

/** Mountains with unknown patches. */
function ground(): ElevationGrid {
  const grid = mountains(300)
  for (let row = 100; row < 110; row++) grid.heights.fill(Number.NaN, row * 300 + 40, row * 300 + 55)
  grid.heights[200 * 300 + 200] = Number.NaN
  return grid
}

describe.skipIf(gdal === null)('gdaldem on the same grid', () => {
  const LIGHTS: readonly ReliefLight[] = [MAP_LIGHT, { azimuth: 100, altitude: 12 }, { azimuth: 231.5, altitude: 61.2 }]

  it.each(LIGHTS)('hillshade from $azimuth at $altitude', (light) => {
    const folder = temporaryFolder()
    const result = join(folder, 'shade')
    const grid = ground()
    const lamp = ['-az', String(light.azimuth), '-alt', String(light.altitude)]
    run('gdaldem', ['hillshade', '-q', '-of', 'ENVI', ...lamp, writeGrid(grid, folder), result])
    const theirs = readBytes(result)
    const ours = hillshade(grid, light)
    // It leaves out the rim and what touches unknown ground; we don't.
    const told = theirs.filter((value) => value !== 0).length
    expect(told).toBeGreaterThan(88_000)
    let [apart, most] = [0, 0]
    for (const [cell, value] of theirs.entries()) {
      if (value === 0) continue
      const off = Math.abs(value - (ours[cell] ?? 0))
      if (off > 0) apart++
      most = Math.max(most, off)
    }
    // Where the value lies on the half, the last digit of a float decides.
    expect(most).toBeLessThanOrEqual(1)
    expect(apart).toBeLessThanOrEqual(told / 1000)
    expect(ours.filter((value) => value === UNKNOWN_SHADE).length).toBe(151)
  })

  it('slope and aspect', () => {
    const folder = temporaryFolder()
    const grid = ground()
    const path = writeGrid(grid, folder)
    run('gdaldem', ['slope', '-q', '-of', 'ENVI', path, join(folder, 'slope')])
    run('gdaldem', ['aspect', '-q', '-of', 'ENVI', path, join(folder, 'aspect')])
    const slope = readFloats(join(folder, 'slope'))
    const aspect = readFloats(join(folder, 'aspect'))
    const { slopes, aspects } = slopesAndAspects(grid)
    let [most, mostAspect, told, level] = [0, 0, 0, 0]
    for (const [cell, value] of slope.entries()) {
      if (value === -9999) continue
      told++
      most = Math.max(most, Math.abs(value - (slopes[cell] ?? Number.NaN)))
      if (aspect[cell] === -9999) {
        expect(aspects[cell]).toBeNaN()
        level++
      } else {
        const off = Math.abs((aspect[cell] ?? Number.NaN) - (aspects[cell] ?? Number.NaN))
        mostAspect = Math.max(mostAspect, Math.min(off, 360 - off))
      }
    }
    expect(told).toBeGreaterThan(88_000)
    expect(level).toBeGreaterThan(100)
    expect(most).toBeLessThan(1e-4)
    expect(mostAspect).toBeLessThan(1e-3)
  })
})

it('the pin reads the slope and aspect that the map is shaded by', () => {
  const grid = mountains(40)
  const { slopes, aspects } = slopesAndAspects(grid)
  for (let row = 1; row < 39; row++) {
    for (let column = 1; column < 39; column++) {
      const told = slopeAndAspectAt(grid, grid.west + column * grid.cell, grid.north - row * grid.cell)
      expect(told?.slope).toBeCloseTo(slopes[row * 40 + column] ?? Number.NaN, 4)
      if (told?.aspect !== null) expect(told?.aspect).toBeCloseTo(aspects[row * 40 + column] ?? Number.NaN, 3)
    }
  }
})
