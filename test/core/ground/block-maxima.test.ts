/** Every block knows its highest post, both edges included. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type MaximaLevel, blockMaxima, maximaOf } from '#core/ground/block-maxima.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { generator } from '#test/help/generator.ts'

function scattered(columns: number, rows: number, seed: number, voids: number): ElevationGrid {
  const next = generator(seed)
  const heights = Float32Array.from({ length: columns * rows }, () =>
    next() < voids ? Number.NaN : Math.round(next() * 5000) - 400,
  )
  return { centre: { lat: 0, lon: 0 }, cell: 10, columns, rows, west: 0, north: 0, heights }
}

/** What a block must hold, post by post. */
function plainBlock(
  grid: ElevationGrid,
  span: number,
  column: number,
  row: number,
): { height: number; unknown: boolean } {
  const posts: number[] = []
  for (let down = row * span; down <= Math.min((row + 1) * span, grid.rows - 1); down++) {
    for (let right = column * span; right <= Math.min((column + 1) * span, grid.columns - 1); right++) {
      posts.push(grid.heights[down * grid.columns + right] ?? Number.NaN)
    }
  }
  return {
    height: Math.max(-Infinity, ...posts.filter((post) => !Number.isNaN(post))),
    unknown: posts.some((post) => Number.isNaN(post)),
  }
}

function holds(grid: ElevationGrid, level: MaximaLevel): void {
  expect(level.columns).toBe(Math.max(1, Math.ceil((grid.columns - 1) / level.span)))
  expect(level.rows).toBe(Math.max(1, Math.ceil((grid.rows - 1) / level.span)))
  for (let row = 0; row < level.rows; row++) {
    for (let column = 0; column < level.columns; column++) {
      const plain = plainBlock(grid, level.span, column, row)
      const block = row * level.columns + column
      expect(level.heights[block]).toBe(plain.height)
      expect(level.unknown?.[block] === 1).toBe(plain.unknown)
    }
  }
}

describe('block maxima', () => {
  it.each([
    [1, 1],
    [2, 3],
    [8, 9],
    [9, 65],
    [66, 64],
    [130, 71],
  ])('of %d by %d cells are those of every post, edges included', (columns, rows) => {
    const grid = scattered(columns, rows, columns * 7 + rows, 0)
    const { fine, coarse } = blockMaxima(grid)
    expect(fine.unknown).toBeNull()
    expect([fine.span, coarse.span]).toEqual([1 << fine.shift, 1 << coarse.shift])
    holds(grid, fine)
    holds(grid, coarse)
  })

  it('hold with voids: unknown hides nothing, and is remembered', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 80 }),
        fc.integer({ min: 2, max: 80 }),
        fc.nat(999),
        (columns, rows, seed) => {
          const grid = scattered(columns, rows, seed, 0.02)
          const { fine, coarse } = blockMaxima(grid)
          holds(grid, fine)
          holds(grid, coarse)
        },
      ),
      { numRuns: 30 },
    )
    const nothing = blockMaxima(scattered(20, 20, 1, 1))
    expect(nothing.coarse.heights[0]).toBe(-Infinity)
    expect(nothing.coarse.unknown?.[0]).toBe(1)
  })

  it('a peak on the seam of four blocks belongs to all four', () => {
    const grid = { ...scattered(17, 17, 1, 0), heights: new Float32Array(17 * 17) }
    grid.heights[8 * 17 + 8] = 100
    expect([...blockMaxima(grid).fine.heights]).toEqual([100, 100, 100, 100])
  })

  it('are made once for a grid', () => {
    const grid = scattered(20, 20, 1, 0)
    expect(maximaOf(grid)).toBe(maximaOf(grid))
  })
})
