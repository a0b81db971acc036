/** Going to another day with the clock time kept: what its clock skips, cuts off or shows twice is said, a day left out is stepped over. */
import { type Result, done } from '#core/result.ts'
import {
  type CivilDay,
  type DayReason,
  type Zone,
  addDays,
  civilDay,
  civilDayOf,
  civilTime,
  formatClock,
  formatDay,
  formatOffset,
  instantOf,
} from '#core/time/civil.ts'
import { clockText } from '#core/time/clock-text.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { MINUTE } from '#core/time/duration.ts'

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
  const minutes = minutesOf(instant, zone)
  const reading = instantOf(day.date, minutes, zone)
  const clock = clockText(Math.floor(minutes))
  const name = formatDay(day.date)
  // A gap that runs on to midnight ends the day early (Nuuk in March, at 23:00): the day asked for counts more than the clock time.
  if (reading.instant >= day.end) {
    const last = Math.max(day.start, day.end - MINUTE)
    const ends = clockText(minutesOf(last, zone) + 1)
    return { instant: last, notice: stripWords.endsEarly(clock, name, ends, formatClock(last, zone)) }
  }
  if (reading.note === 'gap') {
    return { instant: reading.instant, notice: stripWords.skipped(clock, name, formatClock(reading.instant, zone)) }
  }
  const twice = reading.note === 'repeated' ? stripWords.twice(clock, name, formatOffset(reading.instant, zone)) : null
  return { instant: reading.instant, notice: twice }
}

function minutesOf(instant: number, zone: Zone): number {
  const { hour, minute, second } = civilTime(instant, zone)
  return hour * 60 + minute + second / 60
}

/** The same clock time some days on; a date that the zone left out is stepped over, and said. */
export function daysOn(instant: number, days: number, zone: Zone): Result<OtherDay, DayReason> {
  // From the day on the board: just after a midnight that is taken back the clock reads the date before it once more.
  const date = addDays(civilDayOf(instant, zone).date, days)
  const there = onDate(instant, date, zone)
  if (there.ok || there.fault.reason !== 'no-such-day') return there
  const beyond = onDate(instant, addDays(date, Math.sign(days)), zone)
  if (!beyond.ok) return beyond
  const notices = [stripWords.leftOut(formatDay(date)), beyond.value.notice]
  return done({ ...beyond.value, notice: notices.filter((notice) => notice !== null).join(' ') })
}
