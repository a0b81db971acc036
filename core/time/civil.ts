/** Civil time: days, clock times and zones of the place itself, never the computer's own; with `zone-offset.ts` the one file that names Temporal. */
import { Temporal } from 'temporal-polyfill'
import { type Result, done, failed } from '#core/result.ts'
import { DAY, HOUR, MINUTE } from './duration.ts'
import { remembered } from './remembered.ts'
import { offsetOf, zoned } from './zone-offset.ts'

/** An IANA zone such as 'Europe/Berlin', 'UTC', or at sea 'Etc/GMT+2' (whose sign is POSIX's: two hours BEHIND UTC). */
export type Zone = string

/** A calendar day of a zone, [start, end): not every one starts at 00:00 or lasts 24 hours. */
export interface CivilDay {
  /** YYYY-MM-DD. */
  readonly date: string
  readonly start: number
  /** The start of the next day that exists. */
  readonly end: number
}

export interface CivilTime {
  /** YYYY-MM-DD. */
  readonly date: string
  readonly hour: number
  readonly minute: number
  readonly second: number
  /** Minutes east of UTC; a fraction where an old local mean time is meant. */
  readonly offset: number
}

export type DayReason = 'no-such-day' | 'out-of-range' | 'unreadable'

/** Beyond these the zone data are guesses and the sun's series are not checked. Calendar days, YYYY-MM-DD. */
export const FIRST_DATE = '1900-01-01'
export const LAST_DATE = '2100-12-31'
export const EARLIEST_INSTANT = Temporal.Instant.from(`${FIRST_DATE}T00:00:00Z`).epochMilliseconds
export const LATEST_INSTANT = Temporal.Instant.from(`${LAST_DATE}T23:59:59.999Z`).epochMilliseconds

/** True for a zone this program can compute with; bare offsets such as '+02:00' are none. */
export function isZone(text: string): boolean {
  if (!/^[A-Za-z][A-Za-z0-9_+/-]*$/u.test(text)) return false
  try {
    // Some engines read the zone out of a whole time as well ('T00Z'), and then tell another name.
    return zoned(0, text).timeZoneId.toLowerCase() === text.toLowerCase()
  } catch {
    return false
  }
}

export function clampInstant(instant: number): number {
  return Math.min(LATEST_INSTANT, Math.max(EARLIEST_INSTANT, instant))
}

/** The instant itself, or a sentence when it lies outside the years that are computed. */
export function checkInstant(instant: number): Result<number, 'out-of-range'> {
  if (instant >= EARLIEST_INSTANT && instant <= LATEST_INSTANT) return done(instant)
  return failed('out-of-range', 'Times are computed from 1900 to 2100: choose a moment in those years.')
}

/** The day that holds an instant: the days follow each other without gap or overlap. */
export function civilDayOf(instant: number, zone: Zone): CivilDay {
  const day = dayOn(zoned(instant, zone).toPlainDate(), zone)
  // Clocks put back just after midnight read yesterday's date once more, after today has begun (St John's until 2011).
  return instant < day.end ? day : dayOn(zoned(day.end, zone).toPlainDate(), zone)
}

/** The day of a date as it is stored. */
export function civilDay(date: string, zone: Zone): Result<CivilDay, DayReason> {
  if (!/^\d{4}-\d{2}-\d{2}$/u.test(date)) {
    return failed('unreadable', `“${date}” is not a date: write day, month and year, such as 21 Jun 2026.`)
  }
  const plain = plainDate(date)
  if (plain === null) return failed('no-such-day', `${date} does not exist in the calendar: choose another day.`)
  if (date < FIRST_DATE || date > LAST_DATE) {
    return failed('out-of-range', `${formatDay(date)} is outside the years 1900 to 2100: choose a day within them.`)
  }
  const day = dayOn(plain, zone)
  if (day.start === day.end) {
    return failed('no-such-day', `${formatDay(date)} was skipped in ${zoneName(zone)}: choose another day.`)
  }
  return done(day)
}

/** True for a date of the calendar, written as it is stored. */
export function isDate(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/u.test(text) && plainDate(text) !== null
}

function plainDate(date: string): Temporal.PlainDate | null {
  try {
    return Temporal.PlainDate.from(date)
  } catch {
    return null
  }
}

/** A day left out by the zone comes back empty: its start is its end. */
function dayOn(date: Temporal.PlainDate, zone: Zone): CivilDay {
  const start = date.toZonedDateTime(zone).epochMilliseconds
  const end = date.add({ days: 1 }).toZonedDateTime(zone).epochMilliseconds
  return { date: date.toString(), start, end }
}

/** Minutes east of UTC. */
function offsetAt(instant: number, zone: Zone): number {
  return offsetOf(instant, zone) / MINUTE
}

/** The date some days later, by the calendar alone. */
export function addDays(date: string, days: number): string {
  return Temporal.PlainDate.from(date).add({ days }).toString()
}

export function civilTime(instant: number, zone: Zone): CivilTime {
  const time = zoned(instant, zone)
  return {
    date: time.toPlainDate().toString(),
    hour: time.hour,
    minute: time.minute,
    second: time.second,
    offset: time.offsetNanoseconds / 60e9,
  }
}

export interface ClockReading {
  readonly instant: number
  /** 'gap': the clock skips this time, it was moved on by the gap. 'repeated': the clock shows it twice, this is the first. */
  readonly note: 'gap' | 'repeated' | null
  /** The second of two. */
  readonly other: number | null
}

/** The instant at which the zone's clock shows so many minutes after midnight, 0..1440 (RFC 5545 3.3.5 for the odd ones). */
export function instantOf(date: string, minutes: number, zone: Zone): ClockReading {
  const wall = Temporal.PlainDate.from(date)
    .toPlainDateTime()
    .add({ seconds: Math.round(minutes * 60) })
  const first = wall.toZonedDateTime(zone, { disambiguation: 'earlier' })
  const second = wall.toZonedDateTime(zone, { disambiguation: 'later' })
  if (first.epochMilliseconds === second.epochMilliseconds) {
    return { instant: first.epochMilliseconds, note: null, other: null }
  }
  return first.toPlainDateTime().equals(wall)
    ? { instant: first.epochMilliseconds, note: 'repeated', other: second.epochMilliseconds }
    : { instant: second.epochMilliseconds, note: 'gap', other: null }
}

export interface OffsetChange {
  readonly instant: number
  /** Minutes east of UTC. */
  readonly before: number
  readonly after: number
}

/** The clock changes of a day, one at its very start included; nearly always none. */
export function offsetChanges(day: CivilDay, zone: Zone): readonly OffsetChange[] {
  if (offsetAt(day.start - 1, zone) === offsetAt(day.end - 1, zone)) return []
  const changes: OffsetChange[] = []
  let at = zoned(day.start - 1, zone).getTimeZoneTransition('next')
  while (at !== null && at.epochMilliseconds < day.end) {
    const instant = at.epochMilliseconds
    changes.push({ instant, before: offsetAt(instant - 1, zone), after: offsetAt(instant, zone) })
    at = at.getTimeZoneTransition('next')
  }
  return changes
}

/** What a clock on the wall shows, counted on through all days (ms). */
function wallTime(instant: number, zone: Zone): number {
  return Math.floor(instant) + offsetOf(instant, zone)
}

/** "19:04" of a wall time. */
function hoursAndMinutes(wall: number): string {
  const ofDay = wall - Math.floor(wall / DAY) * DAY
  return `${two(Math.floor(ofDay / HOUR))}:${two(Math.floor(ofDay / MINUTE) % 60)}`
}

/** "19:04", to the nearest minute as almanacs print it, but never on into the next day. */
export function formatClock(instant: number, zone: Zone): string {
  const time = wallTime(instant, zone)
  const nearest = wallTime(instant + MINUTE / 2, zone)
  return hoursAndMinutes(Math.floor(nearest / DAY) === Math.floor(time / DAY) ? nearest : time)
}

/** "19:04:30". */
export function formatClockSeconds(instant: number, zone: Zone): string {
  const wall = wallTime(instant, zone)
  return `${hoursAndMinutes(wall)}:${two(Math.floor((wall - Math.floor(wall / MINUTE) * MINUTE) / 1000))}`
}

function two(value: number): string {
  return String(value).padStart(2, '0')
}

/** "UTC+1", "UTC+5:45", "UTC−2", "UTC". */
export function formatOffset(instant: number, zone: Zone): string {
  return zoneOffsetText(offsetAt(instant, zone))
}

/** Minutes east of UTC as text; seconds only where an old local mean time has them. */
export function zoneOffsetText(offset: number): string {
  const seconds = Math.round(Math.abs(offset) * 60)
  if (seconds === 0) return 'UTC'
  const minute = Math.floor(seconds / 60) % 60
  const tail = seconds % 60 === 0 ? (minute === 0 ? '' : `:${two(minute)}`) : `:${two(minute)}:${two(seconds % 60)}`
  return `UTC${offset < 0 ? '−' : '+'}${Math.floor(seconds / 3600)}${tail}`
}

/** More than a year's. */
const DAYS_REMEMBERED = 400

export const WEEKDAY_NAMES = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday']
export const WEEKDAYS = WEEKDAY_NAMES.map((name) => name.slice(0, 3))
export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

/** 1 Monday .. 7 Sunday (ISO 8601). */
export function weekday(date: string): number {
  return Temporal.PlainDate.from(date).dayOfWeek
}

/** "Sun 14 June 2026", in the program's own words whatever the machine speaks. */
export const formatDay = remembered(DAYS_REMEMBERED, (date: string): string => {
  const { dayOfWeek, day, month, year } = Temporal.PlainDate.from(date)
  return `${WEEKDAYS[dayOfWeek - 1]} ${day} ${MONTHS[month - 1]} ${year}`
})

/** A zone as the screen shows it: a zone of the open sea by its offset, others by their place. */
export function zoneName(zone: Zone): string {
  if (/^Etc\/GMT(?:[+-]\d+)?$/u.test(zone)) return `${formatOffset(0, zone)}, open sea`
  return zone.replaceAll('_', ' ')
}
