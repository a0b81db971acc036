/** Writes calendar files after RFC 5545: events in UTC or of whole days, folded and escaped as any calendar reads them. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { plainDecimal } from '#core/geo/plain-decimal.ts'
import { type Result, done, failed } from '#core/result.ts'
import { type DayReason, addDays, checkInstant, civilDay } from '#core/time/civil.ts'

interface EventText {
  /** The same at each export of the same thing, so that a calendar replaces its entry instead of adding one. */
  readonly uid: string
  readonly summary: string
  readonly description: string
  readonly location?: string
  readonly geo?: LatLon
  /** An absolute URI of any scheme. */
  readonly url?: string
}

export interface TimedEvent extends EventText {
  readonly start: number
  readonly end: number
}

export interface AllDayEvent extends EventText {
  /** YYYY-MM-DD. */
  readonly date: string
}

export type CalendarEvent = TimedEvent | AllDayEvent
export type CalendarReason = 'no-events' | 'end-before-start' | 'not-a-url' | DayReason

const PRODUCT = '-//Standpoint//Standpoint//EN'
/** RFC 5545 3.1: octets, the line break not counted. */
const LINE_OCTETS = 75

/** The text of an .ics file. `stamp` is the instant of the export. Throws when two events share a uid: a caller's bug. */
export function icalendar(events: readonly CalendarEvent[], stamp: number): Result<string, CalendarReason> {
  if (events.length === 0) return failed('no-events', 'There is no event to write: choose at least one.')
  refuseSharedUids(events)
  const stamped = checkInstant(stamp)
  if (!stamped.ok) return stamped
  const lines = ['BEGIN:VCALENDAR', 'VERSION:2.0', `PRODID:${PRODUCT}`, 'CALSCALE:GREGORIAN']
  for (const event of events) {
    const written = eventLines(event, stamp)
    if (!written.ok) return written
    lines.push(...written.value)
  }
  lines.push('END:VCALENDAR')
  return done(lines.map((line) => `${fold(line)}\r\n`).join(''))
}

/** The uid of a time at a spot, to the minute: the seconds of a computed time change with the least refinement. */
export function windowUid(spotId: string, start: number): string {
  return `${spotId}-${utc(Math.floor(start / 60_000) * 60_000)}@standpoint`
}

function refuseSharedUids(events: readonly CalendarEvent[]): void {
  const uids = new Set(events.map(({ uid }) => uid))
  if (uids.size < events.length || uids.has('')) throw new RangeError('every event needs a uid of its own')
}

function eventLines(event: CalendarEvent, stamp: number): Result<readonly string[], CalendarReason> {
  const when = 'date' in event ? dayLines(event) : timeLines(event)
  if (!when.ok) return when
  const { url } = event
  if (url !== undefined && !/^[a-z][a-z0-9+.-]*:[\u0021-\u007e]+$/iu.test(url)) {
    return failed(
      'not-a-url',
      `“${url}” of ${quoted(event)} is not a web address: write it whole, with https:// before it.`,
    )
  }
  return done([
    'BEGIN:VEVENT',
    `UID:${escaped(event.uid)}`,
    `DTSTAMP:${utc(stamp)}`,
    ...when.value,
    ...textLine('SUMMARY', event.summary),
    ...textLine('DESCRIPTION', event.description),
    ...textLine('LOCATION', event.location),
    ...(event.geo === undefined ? [] : [`GEO:${plainDecimal(event.geo.lat, 6)};${plainDecimal(event.geo.lon, 6)}`]),
    ...(url === undefined ? [] : [`URL:${url}`]),
    'END:VEVENT',
  ])
}

function timeLines(event: TimedEvent): Result<readonly string[], CalendarReason> {
  for (const instant of [event.start, event.end]) {
    const checked = checkInstant(instant)
    if (!checked.ok) return checked
  }
  if (event.end < event.start) {
    return failed('end-before-start', `${quoted(event)} ends before it starts: change one of its times.`)
  }
  const [start, end] = [utc(event.start), utc(event.end)]
  // DTEND must be later than DTSTART; an event without one ends as it starts (3.6.1).
  return done(start === end ? [`DTSTART:${start}`] : [`DTSTART:${start}`, `DTEND:${end}`])
}

/** DTEND is the first day after (3.6.1). */
function dayLines({ date }: AllDayEvent): Result<readonly string[], CalendarReason> {
  const day = civilDay(date, 'UTC')
  if (!day.ok) return day
  return done([`DTSTART;VALUE=DATE:${digits(date)}`, `DTEND;VALUE=DATE:${digits(addDays(date, 1))}`])
}

function digits(date: string): string {
  return date.replaceAll('-', '')
}

/** 20260621T031000Z. */
function utc(instant: number): string {
  return `${digits(new Date(instant).toISOString()).replaceAll(':', '').slice(0, 15)}Z`
}

function quoted({ summary }: CalendarEvent): string {
  return `“${summary}”`
}

function textLine(name: string, text: string | undefined): readonly string[] {
  const value = text === undefined ? '' : escaped(text)
  return value === '' ? [] : [`${name}:${value}`]
}

/** A TEXT value (3.3.11). Control characters but tab and line break have no place in one; half characters become U+FFFD. */
function escaped(text: string): string {
  return text
    .toWellFormed()
    .replaceAll(/\r\n?/gu, '\n')
    .replaceAll(/[^\P{Cc}\t\n]/gu, '')
    .replaceAll(/[\\;,]/gu, String.raw`\$&`)
    .replaceAll('\n', String.raw`\n`)
}

/** A line broken so that no part has more than 75 octets in UTF-8, the space each further part begins with included. */
function fold(line: string): string {
  let folded = ''
  let octets = 0
  for (const character of line) {
    const size = octetsOf(character)
    if (octets + size > LINE_OCTETS) {
      folded += '\r\n '
      octets = 1
    }
    folded += character
    octets += size
  }
  return folded
}

/** Of one whole character in UTF-8. */
function octetsOf(character: string): number {
  const point = character.codePointAt(0) ?? 0
  if (point < 0x80) return 1
  if (point < 0x800) return 2
  return point < 0x10000 ? 3 : 4
}
