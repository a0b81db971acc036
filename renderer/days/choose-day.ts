/** Choosing a day: the board's instant goes to the middle of that day's longest window, or keeps its clock time where there is none. */
import type { Span } from '#core/light/crossing.ts'
import { goToDate } from '#renderer/day-strip/go-day.ts'
import { tell } from '#renderer/state/notices.ts'
import { goToInstant } from '#renderer/state/when.ts'
import { longestOf } from './year-found.ts'

const MINUTE = 60_000

/** The middle of a window, at a whole minute if one lies within it. */
export function middleOf({ from, until }: Span): number {
  const middle = (from + until) / 2
  const whole = Math.round(middle / MINUTE) * MINUTE
  return whole >= from && whole <= until ? whole : Math.round(middle)
}

export function chooseDay(date: string, spans: readonly Span[]): void {
  const longest = longestOf(spans)
  if (longest !== null) {
    goToInstant(middleOf(longest))
    return
  }
  const refusal = goToDate(date)
  if (refusal !== null) tell('fault', refusal)
}
