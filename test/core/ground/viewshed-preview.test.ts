/** The single pass against the exact viewshed, by the seen cells: their share in common of those seen by either. */
import { describe, expect, it } from 'vitest'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { viewshed } from '#core/ground/viewshed.ts'
import { HIDDEN, SEEN, UNKNOWN, type ViewshedRequest } from '#core/ground/viewshed-request.ts'
import { viewshedPreview } from '#core/ground/viewshed-preview.ts'
import { generator } from '#test/help/generator.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

function askAt(grid: ElevationGrid, column: number, row: number, eye: number, targetHeight = 0): ViewshedRequest {
  const height = (grid.heights[row * grid.columns + column] ?? Number.NaN) + eye
  const east = grid.west + column * grid.cell
  return { east, north: grid.north - row * grid.cell, height, targetHeight, refraction: 0.13, radius: null }
}

function inCommon(one: Uint8Array, other: Uint8Array): number {
  let [both, either] = [0, 0]
  for (const [cell, told] of one.entries()) {
    if (told === SEEN && other[cell] === SEEN) both++
    if (told === SEEN || other[cell] === SEEN) either++
  }
  return both / either
}

describe('near enough to the exact one to show while something moves', () => {
  const grid = mountains(400)
  const next = generator(9)
  const eyes = Array.from({ length: 12 }, () => [Math.floor(next() * 400), Math.floor(next() * 400)] as const)

  it.each(eyes)('from column %d, row %d', (column, row) => {
    const asked = askAt(grid, column, row, 1.6)
    expect(inCommon(viewshedPreview(grid, asked), viewshed(grid, asked))).toBeGreaterThanOrEqual(0.94)
  })

  it('the worst place we know: a little less', () => {
    const asked = askAt(grid, 300, 130, 1.6)
    expect(inCommon(viewshedPreview(grid, asked), viewshed(grid, asked))).toBeGreaterThanOrEqual(0.93)
  })

  it('and for a tall target', () => {
    const asked = askAt(grid, 200, 200, 20, 12)
    expect(inCommon(viewshedPreview(grid, asked), viewshed(grid, asked))).toBeGreaterThanOrEqual(0.94)
  })
})

it('sees down a steep slope from on it: the cells beside the eye keep their own height', () => {
  const grid = groundOf(61, 10, (east, north) => 500 + 0.8 * north + 0.3 * east)
  const seen = viewshedPreview(grid, askAt(grid, 30, 30, 1.6))
  expect(seen.every((told) => told === SEEN)).toBe(true)
})

it('keeps the line over what a tall target shows above', () => {
  // A dip: the ground at 50 m shows only by its target, and must not lower the line for what is behind it.
  const grid = groundOf(61, 10, (east) => (east === 40 ? 8 : east > 40 ? -12 : 0))
  const asked = { ...askAt(grid, 30, 30, 2, 40), refraction: 1 }
  expect([...viewshedPreview(grid, asked)]).toEqual([...viewshed(grid, asked)])
  const low = { ...asked, targetHeight: 15 }
  const row = 30 * 61 + 30
  expect(viewshedPreview(grid, low).subarray(row, row + 31)).toEqual(viewshed(grid, low).subarray(row, row + 31))
})

it('moves the eye to the nearest cell, as far above its ground', () => {
  const grid = groundOf(61, 10, (_, north) => 500 + north)
  const between = { ...askAt(grid, 30, 30, 1.6), north: 3.9, height: 503.9 + 1.6 }
  expect([...viewshedPreview(grid, between)]).toEqual([...viewshedPreview(grid, askAt(grid, 30, 30, 1.6))])
})

it('marks unknown ground, sees on behind it, and tells nothing from outside or from unknown ground', () => {
  const grid = groundOf(41, 10, (east) => (east === 50 ? Number.NaN : 0))
  const seen = viewshedPreview(grid, askAt(grid, 20, 20, 2))
  const row = 20 * 41 + 20
  expect([seen[row + 4], seen[row + 5], seen[row + 6]]).toEqual([SEEN, UNKNOWN, SEEN])
  expect(viewshedPreview(grid, { ...askAt(grid, 20, 20, 2), east: 900 }).every((told) => told === UNKNOWN)).toBe(true)
  expect(viewshedPreview(grid, askAt(grid, 25, 20, 2)).every((told) => told === UNKNOWN)).toBe(true)
})

it('fills the same array again, whatever it held', () => {
  const grid = mountains(60)
  const held = new Uint8Array(3600).fill(SEEN)
  expect(viewshedPreview(grid, askAt(grid, 20, 20, 2), held)).toBe(held)
  expect([...held]).toEqual([...viewshedPreview(grid, askAt(grid, 20, 20, 2))])
})

it('tells nothing beyond the radius', () => {
  const grid = groundOf(41, 10, () => 0)
  const seen = viewshedPreview(grid, { ...askAt(grid, 20, 20, 2), radius: 105 })
  const row = 20 * 41 + 20
  expect([seen[row + 10], seen[row + 11], seen[row - 11]]).toEqual([SEEN, UNKNOWN, UNKNOWN])
  expect(seen.includes(HIDDEN)).toBe(false)
})
