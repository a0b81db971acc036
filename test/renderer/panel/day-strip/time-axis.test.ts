/** The strip's axis on ordinary days and on those whose clock is moved. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type CivilDay, civilDay, civilTime, formatClock } from '#core/time/civil.ts'
import { clockMarks, dayMinutes, hourTicks, instantAt, shareOf, snapped } from '#renderer/panel/day-strip/time-axis.ts'

function dayOf(date: string, zone: string): CivilDay {
  const day = civilDay(date, zone)
  if (!day.ok) throw new Error(day.fault.message)
  return day.value
}

/** Lengths by the zone database (IANA tzdata: Europe/Berlin, Australia/Lord_Howe, Antarctica/Troll, Africa/Cairo). */
const DAYS = [
  ['2026-06-14', 'Europe/Berlin', 24],
  ['2026-03-29', 'Europe/Berlin', 23],
  ['2026-10-25', 'Europe/Berlin', 25],
  ['2026-04-05', 'Australia/Lord_Howe', 24.5],
  ['2026-10-04', 'Australia/Lord_Howe', 23.5],
  ['2026-03-29', 'Antarctica/Troll', 22],
  ['2026-10-25', 'Antarctica/Troll', 26],
  ['2026-04-24', 'Africa/Cairo', 23],
  ['2026-01-15', 'Pacific/Auckland', 24],
  ['2026-06-14', 'Asia/Kathmandu', 24],
] as const

describe.each(DAYS)('%s in %s', (date, zone, hours) => {
  const day = dayOf(date, zone)
  const ticks = hourTicks(day, zone)

  test(`is ${hours} hours long on the axis`, () => {
    expect(dayMinutes(day)).toBe(hours * 60)
    expect(shareOf(day, day.start)).toBe(0)
    expect(shareOf(day, day.end)).toBe(1)
  })

  test('a place on the axis and its minute lead to each other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: hours * 60 - 1 }), (minute) => {
        const instant = day.start + minute * 60_000
        expect(instantAt(day, shareOf(day, instant))).toBe(instant)
        expect(snapped(day, instant + 29_000)).toBe(instant)
      }),
    )
  })

  test('a press beyond an end takes the first or last minute', () => {
    expect(instantAt(day, -0.2)).toBe(day.start)
    expect(instantAt(day, 1.2)).toBe(day.end - 60_000)
  })

  test('each figure stands where the clock shows that hour', () => {
    for (const { instant, hour } of ticks.slice(0, -1)) {
      expect({ hour, minute: 0 }).toEqual({
        hour: civilTime(instant, zone).hour,
        minute: civilTime(instant, zone).minute,
      })
    }
    expect(ticks.at(-1)).toEqual({ instant: day.end, hour: 24, main: true })
    const instants = ticks.map(({ instant }) => instant)
    expect(instants).toEqual(instants.toSorted((one, other) => one - other))
  })

  test('every full hour that the clock shows has its figure', () => {
    const full = Array.from({ length: hours * 60 }, (_, minute) => day.start + minute * 60_000).filter((instant) =>
      formatClock(instant, zone).endsWith(':00'),
    )
    expect(ticks.slice(0, -1).map(({ instant }) => instant)).toEqual(full)
  })
})

describe('a clock change', () => {
  const hoursOn = (date: string): number[] =>
    hourTicks(dayOf(date, 'Europe/Berlin'), 'Europe/Berlin').map(({ hour }) => hour)

  test('leaves out the hour that is skipped and marks the place', () => {
    expect(hoursOn('2026-03-29').slice(0, 5)).toEqual([0, 1, 3, 4, 5])
    // EU directive 2000/84/EC: at 01:00 UTC on the last Sunday of March.
    expect(clockMarks(dayOf('2026-03-29', 'Europe/Berlin'), 'Europe/Berlin')).toEqual([
      { instant: Date.UTC(2026, 2, 29, 1), minutes: 60 },
    ])
  })

  test('shows the repeated hour twice', () => {
    expect(hoursOn('2026-10-25').slice(0, 5)).toEqual([0, 1, 2, 2, 3])
    expect(clockMarks(dayOf('2026-10-25', 'Europe/Berlin'), 'Europe/Berlin')).toEqual([
      { instant: Date.UTC(2026, 9, 25, 1), minutes: -60 },
    ])
  })

  test('of half an hour is told as such', () => {
    const marks = clockMarks(dayOf('2026-04-05', 'Australia/Lord_Howe'), 'Australia/Lord_Howe')
    expect(marks.map(({ minutes }) => minutes)).toEqual([-30])
  })

  test('at the very start of a day is marked there', () => {
    const day = dayOf('2026-04-24', 'Africa/Cairo')
    expect(clockMarks(day, 'Africa/Cairo')).toEqual([{ instant: day.start, minutes: 60 }])
    expect(hourTicks(day, 'Africa/Cairo')[0]?.hour).toBe(1)
  })

  test('is on no ordinary day', () => {
    expect(clockMarks(dayOf('2026-06-14', 'Europe/Berlin'), 'Europe/Berlin')).toEqual([])
  })
})
