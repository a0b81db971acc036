/** What is counted while one looks why nothing was found: what leaves combinations out, and the least change at each place. */
import type { ScanWishKind } from '#core/record/scan-wishes.ts'
import { type Excluded, SCAN_LIMITS, type ScanLimit } from './scan-found.ts'
import type { Beyond } from './why-tries.ts'

/** The least change of one thing that a place needs. */
export interface NearPlace extends Beyond {
  readonly place: number
}

/** What one part has found out; plain data. */
export interface WhyNonePart {
  readonly looked: number
  readonly excluded: readonly Excluded[]
  readonly near: readonly NearPlace[]
}

/** Counts while the work goes on. */
export class Tally {
  looked = 0
  readonly #counts = new Map<ScanWishKind | ScanLimit, { count: number; alone: number }>()
  readonly #near = new Map<string, NearPlace>()

  /** So many combinations left out by all of these. */
  exclude(by: readonly (ScanWishKind | ScanLimit)[], count: number): void {
    for (const one of by) {
      const counts = this.#counts.get(one) ?? { count: 0, alone: 0 }
      counts.count += count
      if (by.length === 1) counts.alone += count
      this.#counts.set(one, counts)
    }
  }

  /** Keeps the least at each place. */
  miss(place: number, beyond: Beyond): void {
    const key = `${beyond.of} ${beyond.end} ${place}`
    const known = this.#near.get(key)
    if (known === undefined || closer(beyond, known)) this.#near.set(key, { ...beyond, place })
  }

  result(kinds: readonly ScanWishKind[]): WhyNonePart {
    const excluded = [...kinds, ...SCAN_LIMITS].map((by): Excluded => ({
      by,
      ...(this.#counts.get(by) ?? { count: 0, alone: 0 }),
    }))
    return { looked: this.looked, excluded, near: [...this.#near.values()] }
  }
}

/** The smaller change; of the same change the smaller pain. */
export function closer(one: Beyond, other: Beyond): boolean {
  const [first, second] = [Math.abs(one.to - one.now), Math.abs(other.to - other.now)]
  return first < second || (first === second && one.pain < other.pain)
}
