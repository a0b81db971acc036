/** What the page asks of the scan's workers, and the answers that come bit by bit. */
import type { Span } from '#core/light/crossing.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import type { Candidate, PlaceFound } from '#core/scan/scan-found.ts'
import type { WhyNonePart } from '#core/scan/why-tally.ts'
import type { SentRing } from '#renderer/job/sent-rings.ts'

/** The elevations lie with the worker already: they are sent once and serve every job after. */
type AskWithoutGround = Omit<ScanRequest, 'terrain'>

export interface LookJob {
  readonly kind: 'look'
  readonly request: AskWithoutGround
  /** Which part of how many. */
  readonly part: number
  readonly of: number
}

export interface PolishJob {
  readonly kind: 'polish'
  readonly request: AskWithoutGround
  readonly candidate: Candidate
}

export interface WhyJob {
  readonly kind: 'why'
  readonly request: AskWithoutGround
  readonly part: number
  readonly of: number
}

export type ScanJob = LookJob | PolishJob | WhyJob

export interface LookUpdate {
  readonly kind: 'look'
  readonly found: readonly PlaceFound[]
}

export interface PolishUpdate {
  readonly kind: 'polish'
  readonly candidate: Candidate
  readonly window: Span | null
}

export interface WhyUpdate {
  readonly kind: 'why'
  /** Null until the part is worked out. */
  readonly part: WhyNonePart | null
}

export type ScanUpdate = LookUpdate | PolishUpdate | WhyUpdate

/** The elevations for all jobs that follow, handed over rather than copied. */
export interface GroundMessage {
  readonly say: 'ground'
  readonly rings: readonly SentRing[]
}
