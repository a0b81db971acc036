/** The best few of what was found, each distinct from the better ones. */
import { areDistinct } from './apart.ts'
import type { Candidate, PlaceFound } from './scan-found.ts'

/** Metres between places nearer than which two arrangements must differ in bearing or time. */
const APART_METRES = 25

/** So many results a scan shows. */
export const MOST_BEST = 10

/** Better first: by score, then by place, then in the order in which they stand at their place. */
function ranked(found: readonly PlaceFound[]): Candidate[] {
  const all = found.flatMap(({ best }) => best.map((candidate, rank) => ({ candidate, rank })))
  all.sort(
    (one, other) =>
      other.candidate.score - one.candidate.score ||
      one.candidate.place - other.candidate.place ||
      one.rank - other.rank,
  )
  return all.map(({ candidate }) => candidate)
}

function distinct(better: readonly Candidate[], count: number, metres: number): readonly Candidate[] {
  const kept: Candidate[] = []
  for (const candidate of better) {
    if (kept.length >= count) break
    if (kept.every((one) => areDistinct(candidate, one, metres))) kept.push(candidate)
  }
  return kept
}

/** So many at most, each more than so many metres from every better one or apart from it in bearing or time; whatever the order found. */
export function bestOf(found: readonly PlaceFound[], count = MOST_BEST, metres = APART_METRES): readonly Candidate[] {
  return distinct(ranked(found), count, metres)
}

/** The same of polished ones: each may have come half a step of the scan's places nearer to the other, which makes them no fewer. */
export function polishedBest(polished: readonly Candidate[], step: number): readonly Candidate[] {
  const better = polished.toSorted((one, other) => other.score - one.score || one.place - other.place)
  return distinct(better, better.length, Math.max(0, APART_METRES - step))
}
