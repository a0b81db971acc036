/** The relief: heights and slopes between the grid's posts, smooth and exact at the posts. */
import { describe, expect, it } from 'vitest'
import { readRelief, splineShares, splineSlopes } from '#renderer/view/sketch/relief.ts'

const header = { columns: 2, rows: 2, west: 0, north: 0, degreesEast: 1, degreesSouth: 1, metresPerUnit: 0.1 }

describe('the elevation grid', () => {
  it('reads little-endian heights and refuses a file of the wrong length', () => {
    const bytes = new Uint8Array([1, 0, 0, 1, 255, 255, 10, 0]).buffer
    expect([...readRelief(header, bytes).heights]).toEqual([1, 256, -1, 10])
    expect(() => readRelief(header, new ArrayBuffer(6))).toThrow('2 x 2')
  })

  it.each([0, 0.25, 0.5, 1])(
    'weighs posts so that level ground is level and a plane keeps its slope, at %d',
    (share) => {
      const sum = (shares: readonly number[], heights: readonly number[]): number =>
        shares.reduce((total, part, place) => total + part * (heights[place] ?? 0), 0)
      expect(sum(splineShares(share), [7, 7, 7, 7])).toBeCloseTo(7, 12)
      expect(sum(splineShares(share), [-1, 0, 1, 2])).toBeCloseTo(share, 12)
      expect(sum(splineSlopes(share), [7, 7, 7, 7])).toBeCloseTo(0, 12)
      expect(sum(splineSlopes(share), [-1, 0, 1, 2])).toBeCloseTo(1, 12)
    },
  )
})
