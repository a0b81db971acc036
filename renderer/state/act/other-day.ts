/** Going to another day with the clock time kept: what its clock skips or shows twice is said, a day that was left out is stepped over. */
import { type Result, done } from '#core/result.ts'
import {
  type CivilDay,
  type DayReason,
  type Zone,
  addDays,
  civilDay,
  civilTime,
  formatClock,
  formatDay,
  formatOffset,
  instantOf,
} from '#core/time/civil.ts'
import { clockText } from '#core/time/clock-text.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'

export interface OtherDay {
  readonly instant: number
  /** What the clock does there that the user may not expect; null when nothing. */
  readonly notice: string | null
}

/** The same clock time on a date. */
export function onDate(instant: number, date: string, zone: Zone): Result<OtherDay, DayReason> {
  const day = civilDay(date, zone)
  return day.ok ? done(sameClock(instant, day.value, zone)) : day
}

function sameClock(instant: number, day: CivilDay, zone: Zone): OtherDay {
  const { hour, minute, second } = civilTime(instant, zone)
  const minutes = hour * 60 + minute + second / 60
  const reading = instantOf(day.date, minutes, zone)
  const clock = clockText(Math.floor(minutes))
  const name = formatDay(day.date)
  if (reading.note === 'gap') {
    return { instant: reading.instant, notice: stripWords.skipped(clock, name, formatClock(reading.instant, zone)) }
  }
  const twice = reading.note === 'repeated' ? stripWords.twice(clock, name, formatOffset(reading.instant, zone)) : null
  return { instant: reading.instant, notice: twice }
}

/** The same clock time some days on; a date that the zone left out is stepped over, and said. */
export function daysOn(instant: number, days: number, zone: Zone): Result<OtherDay, DayReason> {
  const date = addDays(civilTime(instant, zone).date, days)
  const there = onDate(instant, date, zone)
  if (there.ok || there.fault.reason !== 'no-such-day') return there
  const beyond = onDate(instant, addDays(date, Math.sign(days)), zone)
  return beyond.ok ? done({ ...beyond.value, notice: stripWords.leftOut(formatDay(date)) }) : beyond
}
