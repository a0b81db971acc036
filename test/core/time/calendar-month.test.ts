/** Months of the calendar: weeks of any month, the same day of another, the edges of the years. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addMonths, clampDate, daysInMonth, mondayOf, monthWeeks } from '#core/time/calendar-month.ts'
import { FIRST_DATE, addDays, weekday } from '#core/time/civil.ts'

const anyDay = fc.integer({ min: 0, max: 73_413 }).map((days) => addDays(FIRST_DATE, days))

describe('a month', () => {
  it('is shown in six weeks from Monday to Sunday, day after day, all of its own among them', () => {
    fc.assert(
      fc.property(anyDay, (date) => {
        const weeks = monthWeeks(date)
        expect(weeks.map((week) => week.length)).toEqual([7, 7, 7, 7, 7, 7])
        const days = weeks.flat()
        days.forEach((day, index) => {
          expect(weekday(day)).toBe((index % 7) + 1)
          if (index > 0) expect(day).toBe(addDays(days[index - 1] ?? '', 1))
        })
        const [year, month] = [Number(date.slice(0, 4)), Number(date.slice(5, 7))]
        expect(days.filter((day) => day.slice(0, 7) === date.slice(0, 7))).toHaveLength(daysInMonth(year, month))
        expect(days.indexOf(date)).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('has the days of the calendar', () => {
    expect([1900, 2000, 2027, 2028, 2100].map((year) => daysInMonth(year, 2))).toEqual([28, 29, 28, 29, 28])
  })
})

describe('the same day of another month', () => {
  it.each([
    ['2027-06-14', 1, '2027-07-14'],
    ['2027-06-14', -6, '2026-12-14'],
    ['2027-12-31', 2, '2028-02-29'],
    ['2027-01-31', 1, '2027-02-28'],
    ['2028-02-29', 12, '2029-02-28'],
    ['2027-01-05', -1, '2026-12-05'],
  ])('%s by %i months is %s', (date, months, other) => expect(addMonths(date, months)).toBe(other))
})

it('the week’s Monday is the day itself or one of the six before', () => {
  expect(['2027-06-14', '2027-06-20', '2027-06-13'].map(mondayOf)).toEqual(['2027-06-14', '2027-06-14', '2027-06-07'])
})

it('a day beyond the years is taken to their edge', () => {
  expect(['1899-12-31', '2027-06-14', '2101-01-01'].map(clampDate)).toEqual(['1900-01-01', '2027-06-14', '2100-12-31'])
})
