/** Candidates as the page has them: numbered, named after their ground, each the spot that it would be on the shelf. */
import type { Span } from '#core/light/crossing.ts'
import { newSpot } from '#core/plan/new-records.ts'
import type { Spot } from '#core/plan/spot.ts'
import { spotOfCandidate } from '#core/scan/candidate-spot.ts'
import type { ScanAsk } from '#core/scan/scan-ask.ts'
import type { Candidate, PlaceFound } from '#core/scan/scan-found.ts'
import type { ScanResult } from '#renderer/state/scan-shown.ts'
import { scanFoundWords } from '#renderer/words/en-scan-found.ts'

interface Polished {
  readonly id: string
  readonly candidate: Candidate
  readonly window: Span | null
}

/** The arrangement as a spot of its own: what is noted of access, permission and hazards belongs to the place the scan set out from. */
function arrangementOnly(ask: ScanAsk, candidate: Candidate, id: string): Spot {
  const { stop, standpoint, landmarkId, hold, shot, when } = spotOfCandidate(ask, candidate)
  const blank = newSpot(id, ask.shoot, candidate.at, 0, when)
  return { ...blank, stop, standpoint, landmarkId, hold, shot }
}

export interface Numbering {
  readonly best: (candidates: readonly Candidate[], places: readonly PlaceFound[]) => ScanResult[]
  /** Those brought to their best, in their new order, each under the id it had. */
  readonly polished: (all: readonly Polished[], places: readonly PlaceFound[]) => ScanResult[]
}

export function numberResults(ask: ScanAsk, newId: () => string): Numbering {
  const ids = new WeakMap<Candidate, string>()
  const idOf = (candidate: Candidate): string => {
    const id = ids.get(candidate) ?? newId()
    ids.set(candidate, id)
    return id
  }
  const number = (all: readonly Polished[], places: readonly PlaceFound[], polished: boolean): ScanResult[] =>
    all.map(({ id, candidate, window }, index) => {
      const groundId = places.find(({ place }) => place === candidate.place)?.ground
      const ground = ask.shoot.stoppingGround.find((one) => one.id === groundId)
      const name = scanFoundWords.name(index + 1, ground?.name.trim() ?? '')
      const spot = { ...arrangementOnly(ask, candidate, id), name }
      return { id, number: index + 1, candidate, spot, window, polished }
    })
  return {
    best: (candidates, places) =>
      number(
        candidates.map((candidate) => ({ id: idOf(candidate), candidate, window: null })),
        places,
        false,
      ),
    polished: (all, places) =>
      number(
        all.toSorted((one, other) => other.candidate.score - one.candidate.score),
        places,
        true,
      ),
  }
}
