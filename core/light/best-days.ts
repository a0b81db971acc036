/** Best days: of many days with their minutes of light the few to choose from, no two of them neighbours; and the next ones. */
import { MINUTE } from '#core/time/duration.ts'

export interface DayTotal {
  /** YYYY-MM-DD. */
  readonly date: string
  /** Milliseconds in which all wishes hold. */
  readonly total: number
}

/** Days that lie nearer than this to a better one are not told beside it. */
const DAYS_APART = 14

/**
 * The best days, in the order of the calendar: the day with most minutes, then the day with most of those that lie a
 * fortnight away from it, and so on. Of equal ones the earliest. Days must be in order.
 */
export function bestDays<Day extends DayTotal>(days: readonly Day[], most: number): Day[] {
  // Seconds more or less make no better day.
  const ranked = days
    .map((day, place) => ({ day, place, minutes: Math.floor(day.total / MINUTE) }))
    .filter(({ minutes }) => minutes > 0)
    .toSorted((one, other) => other.minutes - one.minutes || one.place - other.place)
  const chosen: { readonly day: Day; readonly place: number }[] = []
  for (const candidate of ranked) {
    if (chosen.length === most) break
    if (chosen.every(({ place }) => Math.abs(place - candidate.place) >= DAYS_APART)) chosen.push(candidate)
  }
  return chosen.toSorted((one, other) => one.place - other.place).map(({ day }) => day)
}

/** The first days from a date on, that date included, on which there is any light as wished. */
export function nextDays<Day extends DayTotal>(days: readonly Day[], from: string, most: number): Day[] {
  return days.filter(({ date, total }) => date >= from && total >= MINUTE).slice(0, most)
}
