/** Candidates as the page has them: numbered, named after their ground, each the spot that it would be on the shelf. */
import type { Span } from '#core/light/crossing.ts'
import { newSpot } from '#core/record/new-records.ts'
import type { Spot } from '#core/record/spot.ts'
import { polishedBest } from '#core/scan/best-of.ts'
import { spotOfCandidate } from '#core/scan/candidate-spot.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import type { Candidate } from '#core/scan/scan-found.ts'
import type { ScanResult } from '#renderer/state/session/scan-shown.ts'
import { scanFoundWords } from '#renderer/words/en-scan-found.ts'

interface Polished {
  readonly id: string
  readonly candidate: Candidate
  readonly window: Span | null
}

type Partly = Omit<Polished, 'id'> & { readonly id: string | null }

/** The arrangement as a spot of its own: what is noted of access, permission and hazards belongs to the place the scan set out from. */
function arrangementOnly(request: ScanRequest, candidate: Candidate, id: string): Spot {
  const { stop, standpoint, landmarkId, hold, shot, when } = spotOfCandidate(request, candidate)
  const blank = newSpot(id, request.shoot, candidate.at, 0, when)
  return { ...blank, stop, standpoint, landmarkId, hold, shot }
}

export interface Numbering {
  readonly best: (candidates: readonly Candidate[]) => ScanResult[]
  /** Those brought to their best, in their new order, each under the id it had. */
  readonly polished: (all: readonly Polished[]) => ScanResult[]
}

export function numberResults(request: ScanRequest, newId: () => string): Numbering {
  // By identity: while a candidate stays among the best, its frame is drawn once.
  const frames = new WeakMap<Candidate, Spot>()
  const frameOf = (candidate: Candidate, id: string | null): Spot => {
    const known = frames.get(candidate)
    if (known !== undefined) return known
    const frame = arrangementOnly(request, candidate, id ?? newId())
    frames.set(candidate, frame)
    return frame
  }
  const number = (all: readonly Partly[], polished: boolean): ScanResult[] =>
    all.map(({ id, candidate, window }, index) => {
      const frame = frameOf(candidate, id)
      const ground = request.shoot.stoppingGround.find(({ id: one }) => one === candidate.ground)
      const name = scanFoundWords.name(index + 1, ground?.name.trim() ?? '')
      return { id: frame.id, number: index + 1, candidate, frame, spot: { ...frame, name }, window, polished }
    })
  return {
    best: (candidates) =>
      number(
        candidates.map((candidate) => ({ id: null, candidate, window: null })),
        false,
      ),
    polished(all) {
      // Two that set out apart may have met on the way to their best.
      const apart = polishedBest(
        all.map(({ candidate }) => candidate),
        request.steps.place,
      )
      return number(
        apart.flatMap((candidate) => all.filter((one) => one.candidate === candidate)),
        true,
      )
    },
  }
}
