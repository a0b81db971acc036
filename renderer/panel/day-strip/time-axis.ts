/** The strip's axis: real time from a day's first to its last moment, so that a day with a clock change keeps its true length. */
import { type CivilDay, type Zone, civilTime, offsetChanges } from '#core/time/civil.ts'
import { MINUTE } from '#core/time/duration.ts'

const HOUR = 60

/** Where an instant lies between the day's start, 0, and its end, 1. */
export function shareOf(day: CivilDay, instant: number): number {
  return (instant - day.start) / (day.end - day.start)
}

/** Whole minutes of the day. */
export function dayMinutes(day: CivilDay): number {
  return Math.floor((day.end - day.start) / MINUTE)
}

/** To the nearest minute of the day's clock. */
export function snapped(day: CivilDay, instant: number): number {
  return day.start + Math.round((instant - day.start) / MINUTE) * MINUTE
}

/** The whole minute at a place on the axis; a place beyond its ends is the day's first or last minute. */
export function instantAt(day: CivilDay, share: number): number {
  const minute = Math.round((share * (day.end - day.start)) / MINUTE)
  return day.start + Math.max(0, Math.min(dayMinutes(day) - 1, minute)) * MINUTE
}

export interface HourTick {
  readonly instant: number
  /** What the clock shows, 0..24. */
  readonly hour: number
  /** Written where there is no room for all: every second hour, and the one a clock change leads to. */
  readonly main: boolean
}

/** Full hours as the clock shows them: those it skips are not there, those it repeats are there twice. */
export function hourTicks(day: CivilDay, zone: Zone): HourTick[] {
  const changes = offsetChanges(day, zone).filter(({ instant }) => instant > day.start)
  const starts = [day.start, ...changes.map(({ instant }) => instant)]
  const ticks = starts.flatMap((from, index) => {
    const until = starts[index + 1] ?? day.end
    const { offset } = civilTime(from, zone)
    const found: HourTick[] = []
    const first = Math.ceil((from / MINUTE + offset) / HOUR - 1e-9) * HOUR
    for (let clock = first; (clock - offset) * MINUTE < until - 1; clock += HOUR) {
      const instant = (clock - offset) * MINUTE
      const hour = (((clock / HOUR) % 24) + 24) % 24
      found.push({ instant, hour, main: hour % 2 === 0 || (index > 0 && Math.abs(instant - from) < MINUTE) })
    }
    return found
  })
  return [...ticks, { instant: day.end, hour: 24, main: true }]
}

export interface ClockMark {
  readonly instant: number
  /** Minutes by which the clock is put on; negative when it is put back. */
  readonly minutes: number
}

export function clockMarks(day: CivilDay, zone: Zone): ClockMark[] {
  return offsetChanges(day, zone).map(({ instant, before, after }) => ({ instant, minutes: after - before }))
}
