/** Order on the shelf: ranks between neighbours, so that moving one spot changes one record. */
import type { Spot } from './spot.ts'

/** Ranks nearer than this are spread out again, long before doubles run out of room between them. */
const CLOSEST = 1e-6

/** A rank between two neighbours; null stands for the end of the shelf. */
export function rankBetween(before: number | null, after: number | null): number {
  if (before === null && after === null) return 1
  if (before === null) return (after ?? 0) - 1
  if (after === null) return before + 1
  return (before + after) / 2
}

/**
 * The spots whose rank changes when `id` is put at a place in the list (0 first): usually that one alone, all of them when
 * its neighbours have come too close. Empty when nothing moves.
 */
export function movedTo(spots: readonly Spot[], id: string, place: number): Spot[] {
  const from = spots.findIndex((spot) => spot.id === id)
  const moving = spots[from]
  const to = Math.min(spots.length - 1, Math.max(0, place))
  if (moving === undefined || to === from) return []
  const others = spots.filter((spot) => spot.id !== id)
  const before = others[to - 1]?.rank ?? null
  const after = others[to]?.rank ?? null
  if (before !== null && after !== null && !(after - before > CLOSEST)) {
    const order = [...others.slice(0, to), moving, ...others.slice(to)]
    return order
      .map((spot, index) => ({ ...spot, rank: index + 1 }))
      .filter((spot, index) => spot.rank !== order[index]?.rank)
  }
  return [{ ...moving, rank: rankBetween(before, after) }]
}
