/** Choosing a day: the board's instant goes to the middle of that day's longest window, or keeps its clock time where there is none. */
import type { Span } from '#core/light/crossing.ts'
import { goToDate } from '#renderer/state/act/go-day.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { goToInstant } from '#renderer/state/act/planned-instant.ts'
import { longestOf, middleOfSpan } from './year-found.ts'

export function chooseDay(date: string, spans: readonly Span[]): void {
  const longest = longestOf(spans)
  if (longest !== null) {
    goToInstant(middleOfSpan(longest))
    return
  }
  const refusal = goToDate(date)
  if (refusal !== null) tell('fault', refusal)
}
