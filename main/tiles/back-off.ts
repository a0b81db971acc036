/** Owns how long a tile server is left in peace after it failed or asked for it. */
import { MINUTE } from '#core/time/duration.ts'
import type { FailReason, TileOutcome } from './fetch.ts'

export interface BackOff {
  /** Milliseconds still to wait, 0 when it may be asked. */
  remaining(): number
  /** Marks the start of a request; hand it back with what came of it. */
  begin(): number
  end(began: number, outcome: TileOutcome): void
  /** The user mended something: ask again at once. */
  forgive(): void
}

const SECOND = 1000

interface Wait {
  readonly first: number
  readonly longest: number
  /** The first failure costs only its own tile: one may be broken on a server that is well, two speak of the server. */
  readonly grace: boolean
}

const UNREACHED: Wait = { first: SECOND, longest: MINUTE, grace: false }
const BROKEN: Wait = { first: SECOND, longest: 5 * MINUTE, grace: true }

/** Each failure in a row doubles the wait. */
const WAITS: Readonly<Record<FailReason, Wait>> = {
  unreached: UNREACHED,
  timeout: UNREACHED,
  busy: { first: 30 * SECOND, longest: 10 * MINUTE, grace: false },
  refused: { first: MINUTE, longest: 60 * MINUTE, grace: false },
  server: BROKEN,
  redirect: BROKEN,
  untrusted: BROKEN,
  'not-image': BROKEN,
  'too-large': BROKEN,
  packed: BROKEN,
}

type Failure = Extract<TileOutcome, { kind: 'failed' }>

export function makeBackOff(now: () => number): BackOff {
  let inARow = 0
  /** Requests under way together fail together; they count as one failure. */
  let round = 0
  let until = Number.NEGATIVE_INFINITY

  function fail(began: number, { reason, retryAfter }: Failure): void {
    if (began === round) {
      inARow += 1
      round += 1
    }
    const { first, longest, grace } = WAITS[reason]
    const doublings = inARow - 1
    const wait = grace && doublings === 0 ? 0 : Math.min(first * 2 ** doublings, longest)
    until = Math.max(until, now() + (retryAfter ?? wait))
  }

  return {
    remaining: () => Math.max(0, until - now()),
    begin: () => round,
    end: (began, outcome) => {
      if (outcome.kind === 'failed') fail(began, outcome)
      else if (began === round) inARow = 0
    },
    forgive: () => {
      inARow = 0
      until = Number.NEGATIVE_INFINITY
    },
  }
}
