/** The year as weeks: every day once, in its column and row, whatever the year begins with; keys; sizes of squares. */
import { describe, expect, test } from 'vitest'
import { civilDay } from '#core/time/civil.ts'
import { dayByKey, fullSquare, squareSide, weekGrid } from '#renderer/page/days/week-grid.ts'

/** Monday 0 .. Sunday 6, by the engine's own calendar. */
const rowOf = (date: string): number => (new Date(`${date}T12:00:00Z`).getUTCDay() + 6) % 7

describe('the grid of weeks', () => {
  test('has each day of every year from 1900 to 2100 once, in order, each under its weekday', () => {
    for (let year = 1900; year <= 2100; year++) {
      const { days, weeks, months } = weekGrid(year)
      const expected = (Date.UTC(year + 1, 0, 1) - Date.UTC(year, 0, 1)) / 86_400_000
      expect(days).toHaveLength(expected)
      days.forEach(({ date, week, row }, index) => {
        expect(date).toBe(new Date(Date.UTC(year, 0, 1 + index)).toISOString().slice(0, 10))
        const before = days[index - 1]
        if (before === undefined) expect(week).toBe(0)
        else expect(week - before.week).toBe(row === 0 ? 1 : 0)
      })
      expect(days.filter(({ date, row }) => row !== rowOf(date))).toEqual([])
      expect(weeks).toBe((days.at(-1)?.week ?? 0) + 1)
      expect(months).toHaveLength(12)
    }
  })

  // 1900 was no leap year and 2000 was; ISO 8601 weeks begin on Monday.
  test.each([
    [1900, 365, 0, 53],
    [2000, 366, 5, 53],
    [2012, 366, 6, 54],
    [2018, 365, 0, 53],
    [2023, 365, 6, 53],
    [2024, 366, 0, 53],
  ])('%i: %i days, begins in row %i, takes %i weeks', (year, count, row, weeks) => {
    const grid = weekGrid(year)
    expect([grid.days.length, grid.days[0]?.row, grid.weeks]).toEqual([count, row, weeks])
  })

  test('keeps the place of a day that a zone left out', () => {
    // Samoa went over the date line: its 2011 has no 30 December.
    const { days } = weekGrid(2011)
    const gone = days.filter(({ date }) => !civilDay(date, 'Pacific/Apia').ok).map(({ date }) => date)
    expect(gone).toEqual(['2011-12-30'])
    expect(days.find(({ date }) => date === '2011-12-30')?.row).toBe(4)
    expect(days.find(({ date }) => date === '2011-12-31')?.row).toBe(5)
  })
})

describe('keys', () => {
  test.each([
    ['ArrowDown', 100, 101],
    ['ArrowUp', 100, 99],
    ['ArrowRight', 100, 107],
    ['ArrowLeft', 100, 93],
    ['PageDown', 100, 128],
    ['PageUp', 100, 72],
    ['Home', 100, 0],
    ['End', 100, 364],
    ['ArrowLeft', 3, 0],
    ['ArrowRight', 362, 364],
    ['x', 100, null],
  ])('%s from %i leads to %s', (key, from, to) => {
    expect(dayByKey(key, from, 365)).toBe(to)
  })
})

describe('squares', () => {
  test('hold in their area what they stand for', () => {
    expect(squareSide(60, 240) ** 2).toBeCloseTo(0.25)
    expect(squareSide(120, 240) ** 2).toBeCloseTo(0.5)
    expect(squareSide(240, 240)).toBe(1)
    expect(squareSide(0, 240)).toBe(0)
  })

  test('can be seen however short the light', () => {
    expect(squareSide(1, 1440)).toBeGreaterThanOrEqual(0.2)
  })

  test('of the best day fill the cell at most', () => {
    for (const most of [1, 15, 16, 98, 500, 1440, 1500, 1560])
      expect(squareSide(most, fullSquare(most))).toBeLessThanOrEqual(1)
    expect(fullSquare(98)).toBe(120)
  })
})
