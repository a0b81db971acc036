/** Another day with the clock time kept: what the clock skips, shows twice or leaves out is said. */
import { describe, expect, test } from 'vitest'
import { civilTime, formatClock, formatOffset } from '#core/time/civil.ts'
import { daysOn, onDate } from '#renderer/state/act/other-day.ts'

const BERLIN = 'Europe/Berlin'

describe('a day on', () => {
  test('keeps the clock time over a clock change, not the 24 hours', () => {
    const there = daysOn(Date.UTC(2026, 2, 28, 17), 1, BERLIN)
    expect(there.ok && there.value).toEqual({ instant: Date.UTC(2026, 2, 29, 16), notice: null })
  })

  test('keeps the seconds', () => {
    const there = daysOn(Date.UTC(2026, 5, 14, 17, 3, 21), 7, BERLIN)
    expect(there.ok && there.value.instant).toBe(Date.UTC(2026, 5, 21, 17, 3, 21))
  })

  test('says that a skipped time is moved on by the gap (RFC 5545 3.3.5)', () => {
    const there = daysOn(Date.UTC(2026, 2, 28, 1, 30), 1, BERLIN)
    if (!there.ok) throw new Error(there.fault.message)
    expect(formatClock(there.value.instant, BERLIN)).toBe('03:30')
    expect(there.value.notice).toMatch(/skips 02:30 on Sun 29 March 2026: 03:30/)
  })

  test('takes the first of a repeated time and says so', () => {
    const there = daysOn(Date.UTC(2026, 9, 24, 0, 30), 1, BERLIN)
    if (!there.ok) throw new Error(there.fault.message)
    expect(there.value.instant).toBe(Date.UTC(2026, 9, 25, 0, 30))
    expect(formatOffset(there.value.instant, BERLIN)).toBe('UTC+2')
    expect(there.value.notice).toMatch(/02:30 twice on Sun 25 October 2026: the first, at UTC\+2/)
  })

  test('steps over a day that the zone left out, both ways (Samoa, 30 December 2011)', () => {
    const on = daysOn(Date.UTC(2011, 11, 29, 22), 1, 'Pacific/Apia')
    if (!on.ok) throw new Error(on.fault.message)
    expect(civilTime(on.value.instant, 'Pacific/Apia').date).toBe('2011-12-31')
    expect(on.value.notice).toMatch(/left out Fri 30 December 2011/)
    const back = daysOn(on.value.instant, -1, 'Pacific/Apia')
    expect(back.ok && civilTime(back.value.instant, 'Pacific/Apia').date).toBe('2011-12-29')
  })
})

describe('a date', () => {
  test.each([
    ['1899-12-31', 'out-of-range'],
    ['2101-01-01', 'out-of-range'],
    ['2026-02-30', 'no-such-day'],
    ['26-2-3', 'unreadable'],
  ])('%s is refused: %s', (date, reason) => {
    const there = onDate(Date.UTC(2026, 5, 14, 12), date, BERLIN)
    expect(there.ok ? null : there.fault.reason).toBe(reason)
  })

  test('that was left out is refused, not replaced', () => {
    const there = onDate(Date.UTC(2011, 11, 29, 22), '2011-12-30', 'Pacific/Apia')
    expect(there.ok ? null : there.fault.message).toMatch(/left out Fri 30 December 2011/)
  })
})
