/** A date as people type it, and as it is written in a field: 14 Jun 2027, 14.6.27, 14/06/2027, 2027-06-14, June 14. */
import { cutShort } from '#core/cut-short.ts'
import { type Result, done, failed } from '#core/result.ts'
import { plainFigure } from '#core/units/figure.ts'
import { daysInMonth, storedDate } from './calendar-month.ts'
import { type DayReason, FIRST_DATE, LAST_DATE, MONTHS, WEEKDAY_NAMES } from './civil.ts'

export type DateReason = 'empty' | DayReason

/** Nothing longer than this is a date that somebody meant. */
const LONGEST = 40
const [FIRST_YEAR, LAST_YEAR] = [Number(FIRST_DATE.slice(0, 4)), Number(LAST_DATE.slice(0, 4))]
/** Years between two that have a 29 February, at the most: across 1900 and 2100. */
const LEAP_APART = 8

/** The parts of a date as they were typed. */
interface TypedDate {
  readonly day: number
  readonly month: number
  /** As many figures as were typed; null where the year was left out. */
  readonly year: string | null
  readonly yearFirst: boolean
}

/** "14 Jun 2027". */
export function dateText(date: string): string {
  const month = MONTHS[Number(date.slice(5, 7)) - 1] ?? ''
  return `${Number(date.slice(8))} ${month.slice(0, 3)} ${date.slice(0, 4)}`
}

/**
 * The date of a text, YYYY-MM-DD. In figures the day comes first, unless the year does. Where the year or its century is left out,
 * it is the one that brings the date nearest to `near`.
 */
export function parseDate(text: string, near: string): Result<string, DateReason> {
  const plain = plainFigure(text)
  if (plain === '') return failed('empty', 'There is no date. Write day, month and year, such as 14 Jun 2027.')
  const typed = typedDate(plain)
  if (typed === null) return unreadable(plain)
  const { day, month, yearFirst } = typed
  if (month < 1 || month > 12) {
    const order = yearFirst ? 'After the year comes the month: 2027-06-14' : 'In figures the day comes first: 14/6/2027'
    return failed('no-such-day', `“${plain}” gives ${month} as the month. ${order}, or write 14 Jun 2027.`)
  }
  const years = yearsMeant(typed.year, Number(near.slice(0, 4)))
  const dates = years.filter((year) => day >= 1 && day <= daysInMonth(year, month))
  const [first, ...others] = dates.map((year) => storedDate(year, month, day))
  if (first === undefined) return noSuchDay(typed, years)
  const date = others.reduce((best, one) => (apart(one, near) <= apart(best, near) ? one : best), first)
  if (date >= FIRST_DATE && date <= LAST_DATE) return done(date)
  const written = `${day} ${MONTHS[month - 1]} ${date.slice(0, 4)}`
  return failed('out-of-range', `${written} is outside the years 1900 to 2100: choose a day within them.`)
}

function unreadable(plain: string): Result<never, DateReason> {
  return failed(
    'unreadable',
    `“${cutShort(plain)}” is not a date. Write day, month and year, such as 14 Jun 2027 or 14/6/2027, or the year first: 2027-06-14.`,
  )
}

function noSuchDay({ day, month }: TypedDate, years: readonly number[]): Result<never, DateReason> {
  const [only] = years
  const name = years.length === 1 ? `${MONTHS[month - 1]} ${only}` : MONTHS[month - 1]
  const most = Math.max(...years.map((year) => daysInMonth(year, month)))
  return failed('no-such-day', `${day} ${name} is not in the calendar: ${name} has ${most} days.`)
}

/** Milliseconds. */
function apart(one: string, other: string): number {
  return Math.abs(Date.parse(one) - Date.parse(other))
}

/** The years that a typed one may be, the earliest first. */
function yearsMeant(typed: string | null, near: number): readonly number[] {
  if (typed === null) {
    const around = Array.from({ length: 2 * LEAP_APART + 1 }, (_, index) => near - LEAP_APART + index)
    return around.filter((year) => year >= FIRST_YEAR && year <= LAST_YEAR)
  }
  if (typed.length === 4) return [Number(typed)]
  return [1900, 2000, 2100].map((century) => century + Number(typed)).filter((year) => year <= LAST_YEAR)
}

/** Null for what is no date at all; a month or day that the calendar lacks is one. */
function typedDate(plain: string): TypedDate | null {
  // A mark before everything else would be a sign.
  if (plain.length > LONGEST || !/^[a-z\d][a-z\d\s.,/'’-]*$/iu.test(plain)) return null
  const tokens = (plain.toLowerCase().match(/\d+|[a-z]+/gu) ?? []).filter(
    (token, index, all) => !isIdle(token, all, index),
  )
  const named = tokens.map(monthNamed)
  const figures = tokens.filter((token) => /^\d/u.test(token))
  const months = named.filter((month) => month !== null)
  if (figures.length + months.length < tokens.length) return null
  const [month, ...more] = months
  if (more.length > 0) return null
  return month === undefined ? inFigures(figures) : withName(figures, month)
}

/** Weekdays, the "th" of 14th, and "of". */
function isIdle(token: string, all: readonly string[], index: number): boolean {
  if (token === 'of') return true
  if (/^(?:st|nd|rd|th)$/u.test(token)) return /^\d/u.test(all[index - 1] ?? '')
  return token.length >= 3 && WEEKDAY_NAMES.some((name) => name.toLowerCase().startsWith(token))
}

/** Counted from 1; three letters of its name are enough. */
function monthNamed(token: string): number | null {
  const index = token.length < 3 ? -1 : MONTHS.findIndex((name) => name.toLowerCase().startsWith(token))
  return index < 0 ? null : index + 1
}

function withName(figures: readonly string[], month: number): TypedDate | null {
  const [one = '', other = null, ...more] = figures
  const [day, year] = one.length === 4 ? [other ?? '', one] : [one, other]
  return more.length === 0 ? typedOf(day, month, year, false) : null
}

function inFigures([one = '', two = '', three, ...more]: readonly string[]): TypedDate | null {
  if (more.length > 0 || !/^\d{1,2}$/u.test(two)) return null
  return one.length === 4
    ? typedOf(three ?? '', Number(two), one, true)
    : typedOf(one, Number(two), three ?? null, false)
}

function typedOf(day: string, month: number, year: string | null, yearFirst: boolean): TypedDate | null {
  const isYear = year === null || /^(?:\d{2}|\d{4})$/u.test(year)
  return isYear && /^\d{1,2}$/u.test(day) ? { day: Number(day), month, year, yearFirst } : null
}
