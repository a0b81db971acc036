/** Months of the calendar, of no zone: their days, the weeks they are shown in, and the same day of another month. */
import { FIRST_DATE, LAST_DATE, addDays, weekday } from './civil.ts'

/** Weeks that any month has room in, whichever day it begins with. */
const WEEKS = 6

/** Months are counted from 1. */
export function daysInMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate()
}

/** A date as it is stored, YYYY-MM-DD. */
export function storedDate(year: number, month: number, day: number): string {
  return [String(year).padStart(4, '0'), String(month).padStart(2, '0'), String(day).padStart(2, '0')].join('-')
}

/** A date within the years that are computed: itself, or the nearest. */
export function clampDate(date: string): string {
  return date < FIRST_DATE ? FIRST_DATE : date > LAST_DATE ? LAST_DATE : date
}

/** The same day some months on, or the month's last where it has fewer days. */
export function addMonths(date: string, months: number): string {
  const counted = Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7)) - 1 + months
  const [year, month] = [Math.floor(counted / 12), (counted % 12) + 1]
  return storedDate(year, month, Math.min(Number(date.slice(8)), daysInMonth(year, month)))
}

/** The Monday of a date's week. */
export function mondayOf(date: string): string {
  return addDays(date, 1 - weekday(date))
}

/** The weeks of a date's month, Monday first; always as many, with days of the months beside it before and after. */
export function monthWeeks(date: string): readonly (readonly string[])[] {
  const monday = mondayOf(`${date.slice(0, 8)}01`)
  return Array.from({ length: WEEKS }, (_, week) =>
    Array.from({ length: 7 }, (_, day) => addDays(monday, week * 7 + day)),
  )
}
