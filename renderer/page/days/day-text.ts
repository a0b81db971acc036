/** Days and their windows as words: "Sat 14 June: 98 min, 15:28–17:36". */
import type { Span } from '#core/light/crossing.ts'
import { totalOf } from '#core/light/light-window.ts'
import { type Zone, formatDay } from '#core/time/civil.ts'
import { spanText } from '#renderer/text/light-text.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import { MINUTE } from '#core/time/duration.ts'

const { year: say } = daysWords

/** "Sat 14 June". */
export function shortDay(date: string): string {
  return formatDay(date).replace(/ \d{4}$/u, '')
}

/** Whole minutes held, in hours from two hours on. */
export function lengthText(total: number): string {
  const minutes = Math.floor(total / MINUTE)
  if (minutes < 1) return say.underOne
  return minutes < 120
    ? say.minutes(String(minutes))
    : say.hours(String(Math.floor(minutes / 60)), String(minutes % 60))
}

export function spansText(spans: readonly Span[], zone: Zone): string {
  return say.and(spans.map((span) => spanText(span, zone)))
}

/** Null spans: not known yet. */
export function dayText(day: string, spans: readonly Span[] | null, zone: Zone): string {
  if (spans === null) return say.dayUnknown(day)
  return spans.length === 0 ? say.dayNone(day) : say.dayText(day, lengthText(totalOf(spans)), spansText(spans, zone))
}
