/** The keys of the month calendar: which day each leads to. */
import { addMonths, clampDate, mondayOf } from '#core/time/calendar-month.ts'
import { addDays } from '#core/time/civil.ts'

const STEPS: Readonly<Record<string, (date: string, shift: boolean) => string>> = {
  ArrowLeft: (date) => addDays(date, -1),
  ArrowRight: (date) => addDays(date, 1),
  ArrowUp: (date) => addDays(date, -7),
  ArrowDown: (date) => addDays(date, 7),
  PageUp: (date, shift) => addMonths(date, shift ? -12 : -1),
  PageDown: (date, shift) => addMonths(date, shift ? 12 : 1),
  Home: (date) => mondayOf(date),
  End: (date) => addDays(mondayOf(date), 6),
}

/** Never out of the years that are computed; null for a key that moves nothing. */
export function dayByCalendarKey(key: string, shift: boolean, date: string): string | null {
  const step = STEPS[key]
  return step === undefined ? null : clampDate(step(date, shift))
}
