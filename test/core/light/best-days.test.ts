/** The best days: no neighbours, none better left out beside them; the next days from a date. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bestDays, nextDays } from '#core/light/best-days.ts'
import { addDays } from '#core/time/civil.ts'

const MINUTE = 60_000
const daysOf = (minutes: readonly number[]) =>
  minutes.map((count, index) => ({ date: addDays('2026-01-01', index), total: count * MINUTE, place: index }))

describe('best days', () => {
  test('are a fortnight apart, in order, and every other good day lies beside one that is no worse', () => {
    const years = fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 60, maxLength: 366, size: 'max' })
    const law = fc.property(years, (minutes) => {
      const days = daysOf(minutes)
      const best = bestDays(days, 1000)
      best.slice(1).forEach((day, index) => {
        expect(day.place - (best[index]?.place ?? 0)).toBeGreaterThanOrEqual(14)
      })
      for (const day of days.filter(({ total }) => total > 0))
        expect(best.some(({ place, total }) => Math.abs(place - day.place) < 14 && total >= day.total)).toBe(true)
      expect(best.filter(({ total }) => total === 0)).toEqual([])
    })
    fc.assert(law)
  })

  test('are the best when only few are wanted', () => {
    const minutes = Array.from({ length: 100 }, () => 10)
    minutes[10] = 30
    minutes[20] = 40
    minutes[60] = 20
    expect(bestDays(daysOf(minutes), 2).map(({ place }) => place)).toEqual([20, 60])
  })

  test('make nothing of seconds, and take the earliest of equals', () => {
    const days = daysOf([60, 60, 60]).map((day, index) => ({ ...day, total: day.total + index * 1000 }))
    expect(bestDays(days, 5).map(({ place }) => place)).toEqual([0])
    expect(bestDays([{ date: '2026-01-01', total: 59_999 }], 5)).toEqual([])
  })
})

test('the next days begin with the date itself and leave out days without light', () => {
  const days = daysOf([5, 0, 7, 0, 9, 3])
  expect(nextDays(days, '2026-01-02', 2).map(({ place }) => place)).toEqual([2, 4])
  expect(nextDays(days, '2026-01-03', 9).map(({ place }) => place)).toEqual([2, 4, 5])
  expect(nextDays(days, '2026-02-01', 9)).toEqual([])
})
