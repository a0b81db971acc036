/** A tolerance: how far off one thing may be, what fails beyond, and which tolerances are the tightest. */
import type { Failing } from './condition.ts'
import { type Move, MOVES } from './moves.ts'

/** In metres, degrees or seconds by its move. */
export interface Tolerance {
  /** The most that is known to hold, 0 or more; null when nothing fails within the limit. */
  readonly offset: number | null
  /** How far was looked. */
  readonly limit: number
  /** What fails just beyond; null with the offset. */
  readonly fails: Failing | null
}

export type Tolerances = Readonly<Record<Move, Tolerance>>

/** A move whose failure was found. */
export interface Tight {
  readonly move: Move
  readonly offset: number
  readonly limit: number
  readonly fails: Failing
}

/** How far one is easily off on the day: a step, a hand's breadth of a tripod, a turn by eye, ten minutes (common practice, no source). */
export const EASILY_OFF = { place: 1, lens: 0.2, turn: 5, clock: 600 } as const

function easilyOff(move: Move): number {
  if (move === 'earlier' || move === 'later') return EASILY_OFF.clock
  if (move === 'lens-lower' || move === 'lens-higher') return EASILY_OFF.lens
  return move === 'subject-clockwise' || move === 'subject-counter-clockwise' ? EASILY_OFF.turn : EASILY_OFF.place
}

/** How tight a tolerance is, whatever its unit: 1 at what one is easily off, less is tighter. */
export function tightness({ move, offset }: Tight): number {
  return offset / easilyOff(move)
}

/** Those that fail within their limits, the tightest first. */
export function tightFirst(tolerances: Tolerances): Tight[] {
  return MOVES.flatMap((move): Tight[] => {
    const { offset, limit, fails } = tolerances[move]
    return offset === null || fails === null ? [] : [{ move, offset, limit, fails }]
  }).toSorted((one, other) => tightness(one) - tightness(other))
}

/** The tightest few, each of another condition: a step of the camera and one of the subject, to the left and to the right, often fail alike. */
export function tightest(tolerances: Tolerances, count: number): Tight[] {
  const said = new Set<string>()
  return tightFirst(tolerances)
    .filter(({ fails: { kind } }) => (said.has(kind) ? false : said.add(kind)))
    .slice(0, count)
}
