/** Ground on its way to a worker: ring by ring, each copied and handed over once, then named by its number for as long as both ends keep it. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { laidTogether, ringsOf } from '#core/ground/rings.ts'

/** One ring of a ground, the finest first. */
export interface SentRing {
  readonly number: number
  /** Without what lies beyond it; null where the worker has it already. */
  readonly ring: ElevationGrid | null
}

export interface RingsToSend {
  readonly rings: readonly SentRing[]
  /** What is handed over with them. */
  readonly transfer: ArrayBuffer[]
}

/** A ring by itself with cells of its own: the page goes on reading the heights that it has. */
function copied(ring: ElevationGrid, transfer: ArrayBuffer[]): ElevationGrid {
  const heights = ring.heights.slice()
  transfer.push(heights.buffer)
  const copy: { -readonly [Key in keyof ElevationGrid]: ElevationGrid[Key] } = { ...ring, heights }
  delete copy.beyond
  return copy
}

/** The page's end for one worker: wide rings stay while fine ones change, and copying them takes longer than a frame. `grounds` are kept, those sent last. */
export function ringSender(grounds = 1): (ground: ElevationGrid | null) => RingsToSend {
  let kept: readonly ReadonlyMap<Float32Array, number>[] = []
  let newest = 0
  return (ground) => {
    const transfer: ArrayBuffer[] = []
    const sent = new Map<Float32Array, number>()
    const rings = (ground === null ? [] : ringsOf(ground)).map((ring): SentRing => {
      const before = kept.find((one) => one.has(ring.heights))?.get(ring.heights)
      const number = before ?? (newest += 1)
      sent.set(ring.heights, number)
      return { number, ring: before === undefined ? copied(ring, transfer) : null }
    })
    kept = [sent, ...kept].slice(0, grounds)
    return { rings, transfer }
  }
}

/** The worker's end: the ground laid together of what came now and what is kept from before. Both ends keep alike. */
export function ringKeeper(grounds = 1): (rings: readonly SentRing[]) => ElevationGrid | null {
  let kept: readonly ReadonlyMap<number, ElevationGrid>[] = []
  return (rings) => {
    const now = new Map(
      rings.map(({ number, ring }) => {
        const grid = ring ?? kept.find((one) => one.has(number))?.get(number)
        if (grid === undefined) throw new Error(`Ring ${number} of the ground was never sent.`)
        return [number, grid]
      }),
    )
    kept = [now, ...kept].slice(0, grounds)
    return laidTogether([...now.values()])
  }
}
