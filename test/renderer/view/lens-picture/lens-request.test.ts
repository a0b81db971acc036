/** The ground crosses to the picture's worker ring by ring: what stays is not sent again, and the same ground comes out. */
import { describe, expect, test } from 'vitest'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { type SentRing, ringKeeper, ringSender } from '#renderer/view/lens-picture/lens-request.ts'

function ring(height: number): ElevationGrid {
  return {
    centre: { lat: 46.4, lon: -33.6 },
    cell: 10 * height,
    columns: 2,
    rows: 2,
    west: -10 * height,
    north: 10 * height,
    heights: new Float32Array(4).fill(height),
    step: null,
    sea: false,
  }
}

const [fine, otherFine, near, wide] = [1, 2, 3, 4].map(ring) as [
  ElevationGrid,
  ElevationGrid,
  ElevationGrid,
  ElevationGrid,
]

function laid(...rings: readonly ElevationGrid[]): ElevationGrid | null {
  return rings.reduceRight<ElevationGrid | null>((beyond, one) => (beyond === null ? one : { ...one, beyond }), null)
}

/** As a worker gets it: a copy. */
function crossed(rings: readonly SentRing[]): readonly SentRing[] {
  return structuredClone(rings)
}

describe('ground sent ring by ring', () => {
  test('comes out as it was, with what changed sent alone', () => {
    const [send, keep] = [ringSender(), ringKeeper()]
    const steps: [ElevationGrid | null, number][] = [
      [null, 0],
      [laid(fine, near), 2],
      [laid(fine, near, wide), 1],
      [laid(otherFine, near, wide), 1],
      [laid(near), 0],
      [laid(fine, near, wide), 2],
      [null, 0],
    ]
    for (const [ground, newRings] of steps) {
      const rings = crossed(send(ground))
      expect(rings.filter((one) => one.ring !== null)).toHaveLength(newRings)
      expect(keep(rings)).toEqual(ground)
    }
  })

  test('that was never sent is a fault, not an empty ground', () => {
    expect(() => ringKeeper()([{ number: 7, ring: null }])).toThrow('7')
  })
})
