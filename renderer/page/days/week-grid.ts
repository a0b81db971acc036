/** The year as a grid of weeks: each day's column and row, Monday first, and where the months' names stand. */
import { daysInMonth, storedDate } from '#core/time/calendar-month.ts'
import { weekday } from '#core/time/civil.ts'

export interface GridDay {
  /** YYYY-MM-DD. */
  readonly date: string
  readonly week: number
  /** 0 Monday .. 6 Sunday. */
  readonly row: number
}

export interface WeekGrid {
  readonly year: number
  /** Every day of the calendar's year, in order; one that the zone left out is among them. */
  readonly days: readonly GridDay[]
  readonly weeks: number
  /** Week in which each of the twelve months begins. */
  readonly months: readonly number[]
}

export function weekGrid(year: number): WeekGrid {
  const first = weekday(storedDate(year, 1, 1)) - 1
  const days: GridDay[] = []
  const months: number[] = []
  for (let month = 1; month <= 12; month++) {
    const length = daysInMonth(year, month)
    for (let day = 1; day <= length; day++) {
      const place = first + days.length
      const week = Math.floor(place / 7)
      if (day === 1) months.push(week)
      days.push({ date: storedDate(year, month, day), week, row: place % 7 })
    }
  }
  return { year, days, weeks: (days.at(-1)?.week ?? 0) + 1, months }
}

/** Days by which a key goes on: along the calendar up and down, by weeks to the sides, by four weeks a page. */
const STEPS: Readonly<Record<string, number>> = {
  ArrowUp: -1,
  ArrowDown: 1,
  ArrowLeft: -7,
  ArrowRight: 7,
  PageUp: -28,
  PageDown: 28,
}

/** Index of the day that a key leads to, held within the year; null for a key that means nothing here. */
export function dayByKey(key: string, index: number, count: number): number | null {
  if (key === 'Home') return 0
  if (key === 'End') return count - 1
  const step = STEPS[key]
  return step === undefined ? null : Math.max(0, Math.min(count - 1, index + step))
}

const STEPS_OF_SIZE = [15, 30, 60, 120, 240, 360, 480, 720, 1440, 1560] as const

/** Minutes that the largest square stands for: the first round figure that the year's best day does not pass. */
export function fullSquare(mostMinutes: number): number {
  return STEPS_OF_SIZE.find((minutes) => minutes >= mostMinutes) ?? 1560
}

/** Side of a day's square as a share of the cell, 0..1: its area goes with the minutes, so that twice as many look twice as much. */
export function squareSide(minutes: number, full: number): number {
  return minutes < 1 ? 0 : Math.max(0.2, Math.sqrt(Math.min(1, minutes / full)))
}
