/** Another day with the clock time kept: what the clock skips, shows twice or leaves out is said. */
import { Temporal } from 'temporal-polyfill'
import { describe, expect, test } from 'vitest'
import { addDays, civilDay, civilDayOf, civilTime, formatClock, formatOffset, instantOf } from '#core/time/civil.ts'
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
    expect(there.value.notice).toMatch(/on Sun 29 March 2026 and 02:30 does not exist; 03:30 is used/)
  })

  test('takes the first of a repeated time and says so', () => {
    const there = daysOn(Date.UTC(2026, 9, 24, 0, 30), 1, BERLIN)
    if (!there.ok) throw new Error(there.fault.message)
    expect(there.value.instant).toBe(Date.UTC(2026, 9, 25, 0, 30))
    expect(formatOffset(there.value.instant, BERLIN)).toBe('UTC+2')
    expect(there.value.notice).toMatch(/02:30 comes twice on Sun 25 October 2026 .* the first \(UTC\+2\)/)
  })

  test('steps over a day that the zone left out, both ways (Samoa, 30 December 2011)', () => {
    const on = daysOn(Date.UTC(2011, 11, 29, 22), 1, 'Pacific/Apia')
    if (!on.ok) throw new Error(on.fault.message)
    expect(civilTime(on.value.instant, 'Pacific/Apia').date).toBe('2011-12-31')
    expect(on.value.notice).toMatch(/Fri 30 December 2011 was skipped/)
    const back = daysOn(on.value.instant, -1, 'Pacific/Apia')
    expect(back.ok && civilTime(back.value.instant, 'Pacific/Apia').date).toBe('2011-12-29')
  })
})

describe('a day that ends early', () => {
  // tzdata: Greenland goes by the EU's rule, 01:00 UTC on the last Sunday of March, which is 23:00 on the Saturday in Nuuk.
  const NUUK = 'America/Nuuk'

  test.each([
    ['on', daysOn(Date.UTC(2026, 2, 28, 1, 30), 1, NUUK)],
    ['back', daysOn(Date.UTC(2026, 2, 30, 0, 30), -1, NUUK)],
    ['a week on', daysOn(Date.UTC(2026, 2, 22, 1, 30), 7, NUUK)],
    ['as typed', onDate(Date.UTC(2026, 2, 28, 1, 30), '2026-03-28', NUUK)],
  ])('is reached at its last minute, and that is said: %s', (_way, there) => {
    if (!there.ok) throw new Error(there.fault.message)
    expect(there.value.instant).toBe(Date.UTC(2026, 2, 29, 0, 59))
    expect(civilDayOf(there.value.instant, NUUK).date).toBe('2026-03-28')
    expect(there.value.notice).toBe(
      'Sat 28 March 2026 ends at 23:00 there, when the clocks go forward, and 23:30 does not exist; 22:59 is used.',
    )
  })

  test('is left again both ways', () => {
    const last = Date.UTC(2026, 2, 29, 0, 59)
    const on = daysOn(last, 1, NUUK)
    expect(on.ok && civilTime(on.value.instant, NUUK)).toMatchObject({ date: '2026-03-29', hour: 22, minute: 59 })
    const back = daysOn(last, -1, NUUK)
    expect(back.ok && civilTime(back.value.instant, NUUK)).toMatchObject({ date: '2026-03-27', hour: 22, minute: 59 })
  })
})

test('a day on is the day after the one on the board, though the clock reads yesterday once more', () => {
  // America/St_Johns until 2011: 00:01 on Sunday went back to 23:01 on Saturday; the Sunday had begun.
  const again = Date.UTC(2010, 10, 7, 2, 45)
  const on = daysOn(again, 1, 'America/St_Johns')
  expect(on.ok && civilDayOf(on.value.instant, 'America/St_Johns').date).toBe('2010-11-08')
  const back = daysOn(again, -1, 'America/St_Johns')
  expect(back.ok && civilDayOf(back.value.instant, 'America/St_Johns').date).toBe('2010-11-06')
})

describe('every zone', () => {
  const HOUR = 3_600_000

  /** The instants at which a zone's clocks are moved, from 1990 to 2030. */
  function changes(zone: string): number[] {
    const found: number[] = []
    let at = Temporal.Instant.from('1990-01-01T00:00Z').toZonedDateTimeISO(zone).getTimeZoneTransition('next')
    while (at !== null && at.epochMilliseconds < Date.UTC(2030, 0, 1)) {
      found.push(at.epochMilliseconds)
      at = at.getTimeZoneTransition('next')
    }
    return found
  }

  /** The dates left out, and those that a change across midnight makes shorter; of the other short days the latest. */
  function shortDates(zone: string): string[] {
    const found = new Set<string>()
    const all = changes(zone)
    const last = all.findLast((change) => civilTime(change, zone).offset > civilTime(change - 1, zone).offset)
    for (const change of all) {
      const [from, to] = [civilTime(change - 1, zone).date, civilTime(change, zone).date]
      if (from === to && change !== last) continue
      for (let date = from; date <= to; date = addDays(date, 1)) found.add(date)
    }
    return [...found].filter((date) => {
      const day = civilDay(date, zone)
      return day.ok ? day.value.end - day.value.start < 24 * HOUR : day.fault.reason === 'no-such-day'
    })
  }

  // From far enough off that the clock there is as it is told.
  const AWAY = 4
  const CLOCKS = [0, 150, 22 * 60 + 59, 23 * 60 + 30]

  test(
    'reaches each of its short days, on, back and typed, and steps over those left out',
    { timeout: 120_000 },
    () => {
      const left: string[] = []
      let short = 0
      const seen = new Set<string>()
      for (const zone of Intl.supportedValuesOf('timeZone')) {
        for (const date of shortDates(zone)) {
          // Many zones share a day.
          const shared = JSON.stringify(civilDay(date, zone))
          if (seen.has(shared)) continue
          seen.add(shared)
          short += 1
          const isLeft = !civilDay(date, zone).ok
          if (isLeft) left.push(`${zone} ${date}`)
          for (const minutes of CLOCKS) {
            const before = instantOf(addDays(date, -AWAY), minutes, zone).instant
            const after = instantOf(addDays(date, AWAY), minutes, zone).instant
            const on = daysOn(before, AWAY, zone)
            const back = daysOn(after, -AWAY, zone)
            const typed = onDate(before, date, zone)
            if (!on.ok || !back.ok || typed.ok === isLeft) throw new Error(`${zone} ${date} ${minutes}`)
            const got = [on.value, back.value].map(({ instant }) => civilDayOf(instant, zone).date)
            expect(got, `${zone} ${minutes}`).toEqual(isLeft ? [addDays(date, 1), addDays(date, -1)] : [date, date])
            if (typed.ok) expect(civilDayOf(typed.value.instant, zone).date, `${zone} ${minutes}`).toBe(date)
            for (const { instant, notice } of typed.ok ? [typed.value] : [on.value, back.value]) {
              const clock = civilTime(instant, zone)
              const same = clock.hour * 60 + clock.minute === minutes
              // A clock time that is not the one asked for is said to be another, and why.
              if (!same || isLeft) expect(notice, `${zone} ${date} ${minutes}`).not.toBeNull()
            }
          }
        }
      }
      // tzdata: the date line was moved past Samoa and Tokelau (2011), Kiribati's Line and Phoenix Islands (1994/95) and Kwajalein (1993).
      expect(left).toContain('Pacific/Apia 2011-12-30')
      expect(left).toContain('Pacific/Fakaofo 2011-12-30')
      expect(left).toContain('Pacific/Kiritimati 1994-12-31')
      expect(left).toContain('Pacific/Kwajalein 1993-08-21')
      expect(short).toBeGreaterThan(200)
    },
  )
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
    expect(there.ok ? null : there.fault.message).toMatch(/Fri 30 December 2011 was skipped/)
  })
})
