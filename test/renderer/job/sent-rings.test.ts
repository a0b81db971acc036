/** The ground crosses to a worker ring by ring: what stays is not sent again, the page keeps its own, and the same ground comes out. */
import { describe, expect, test } from 'vitest'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { laidTogether } from '#core/ground/rings.ts'
import { type RingsToSend, type SentRing, ringKeeper, ringSender } from '#renderer/job/sent-rings.ts'

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
  return laidTogether(rings)
}

/** As a worker gets it: copied, but for what is handed over. */
function crossed({ rings, transfer }: RingsToSend): readonly SentRing[] {
  return structuredClone(rings, { transfer })
}

function anew(rings: readonly SentRing[]): number {
  return rings.filter((one) => one.ring !== null).length
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
      expect(anew(rings)).toBe(newRings)
      expect(keep(rings)).toEqual(ground)
    }
  })

  test('is handed over in copies, each without what lies beyond it', () => {
    const { rings, transfer } = ringSender()(laid(fine, wide))
    structuredClone(rings, { transfer })
    expect(transfer.map(({ byteLength }) => byteLength)).toEqual([0, 0])
    expect(fine.heights).toEqual(new Float32Array(4).fill(1))
    expect(rings.map((one) => one.ring?.beyond)).toEqual([undefined, undefined])
  })

  test('is kept for as many grounds as both ends keep, so that two can be asked of in turn', () => {
    const [send, keep] = [ringSender(2), ringKeeper(2)]
    const [one, other] = [laid(fine, near), laid(otherFine, wide)]
    for (const [sent, newRings] of [
      [one, 2],
      [other, 2],
      [one, 0],
      [other, 0],
      [laid(near), 0],
      [one, 1],
    ] as const) {
      const rings = crossed(send(sent))
      expect(anew(rings)).toBe(newRings)
      expect(keep(rings)).toEqual(sent)
    }
  })

  test('that was never sent is a fault, not an empty ground', () => {
    expect(() => ringKeeper()([{ number: 7, ring: null }])).toThrow('7')
  })
})
