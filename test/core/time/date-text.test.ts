/** Dates as people type them: every form of every day reads back, and what is none is refused with a sentence. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FIRST_DATE, LAST_DATE, MONTHS, WEEKDAY_NAMES, addDays, formatDay, weekday } from '#core/time/civil.ts'
import { dateText, parseDate } from '#core/time/date-text.ts'

function reading(text: string, near = '2027-06-14'): string {
  const read = parseDate(text, near)
  return read.ok ? read.value : read.fault.reason
}

const daysFrom = (one: string, other: string): number => Math.round((Date.parse(other) - Date.parse(one)) / 86_400_000)
const DAYS = daysFrom(FIRST_DATE, LAST_DATE)
/** Days and months as figures, with and without a nought before. */
const short = (part: string): string => String(Number(part))

function partsOf(date: string) {
  const [year = '', month = '', day = ''] = date.split('-')
  const name = MONTHS[Number(month) - 1] ?? ''
  return { year, month, day, name, cut: name.slice(0, 3), weekday: WEEKDAY_NAMES[weekday(date) - 1] ?? '' }
}

const WITH_YEAR: readonly ((parts: ReturnType<typeof partsOf>) => string)[] = [
  ({ year, month, day }) => `${year}-${month}-${day}`,
  ({ year, month, day }) => `${year}/${short(month)}/${short(day)}`,
  ({ year, month, day }) => `${year} ${short(month)} ${short(day)}`,
  ({ year, month, day }) => `${day}/${month}/${year}`,
  ({ year, month, day }) => `${short(day)} ${short(month)} ${year}`,
  ({ year, month, day }) => `${short(day)}.${short(month)}.${year}`,
  ({ year, month, day }) => `${day}-${month}-${year}`,
  ({ year, cut, day }) => `${short(day)} ${cut} ${year}`,
  ({ year, cut, day }) => `${day}${cut.toUpperCase()}${year}`,
  ({ year, name, day }) => `${short(day)}. ${name} ${year}`,
  ({ year, name, day }) => `${name} ${short(day)}, ${year}`,
  ({ year, cut, day }) => `${year} ${cut} ${day}`,
  ({ year, name, day, weekday }) => `${weekday}, ${short(day)}th of ${name.toLowerCase()} ${year}`,
  ({ year, cut, day, weekday }) => `${weekday.slice(0, 3)} ${cut}. ${short(day)} ${year}`,
]
const SHORT_YEAR: readonly ((parts: ReturnType<typeof partsOf>) => string)[] = [
  ({ year, month, day }) => `${short(day)}.${short(month)}.${year.slice(2)}`,
  ({ year, month, day }) => `${day} ${month} ${year.slice(2)}`,
  ({ year, cut, day }) => `${short(day)} ${cut} ’${year.slice(2)}`,
  ({ year, name, day }) => `${name} ${day}, ${year.slice(2)}`,
]
const NO_YEAR: readonly ((parts: ReturnType<typeof partsOf>) => string)[] = [
  ({ month, day }) => `${short(day)} ${short(month)}`,
  ({ month, day }) => `${day}/${month}`,
  ({ month, day }) => `${short(day)}.${short(month)}.`,
  ({ name, day }) => `${short(day)} ${name}`,
  ({ cut, day }) => `${short(day)} ${cut.toLowerCase()}`,
  ({ name, day }) => `${name} ${short(day)}`,
]
const anyDay = fc.integer({ min: 0, max: DAYS }).map((days) => addDays(FIRST_DATE, days))
const nearBy = (date: string, days: number): string => {
  const near = addDays(date, days)
  return near < FIRST_DATE || near > LAST_DATE ? date : near
}

describe('a date', () => {
  it.each([
    ['14 6 2027', '2027-06-14'],
    ['14.6.27', '2027-06-14'],
    ['14/06/2027', '2027-06-14'],
    ['2027-06-14', '2027-06-14'],
    ['14 June', '2027-06-14'],
    ['June 14, 2027', '2027-06-14'],
    ['14 jun', '2027-06-14'],
    ['  Mon 14 June 2027 ', '2027-06-14'],
    ['Sun 14 June 2027', '2027-06-14'],
    ['１４．６．２０２７', '2027-06-14'],
    ['14–6–2027', '2027-06-14'],
    ['3 4 2027', '2027-04-03'],
    ['2027-04-03', '2027-04-03'],
    ['1 sept', '2027-09-01'],
    ['21st March 28', '2028-03-21'],
  ])('reads %j', (text, date) => expect(reading(text)).toBe(date))

  it.each([
    ['2 Jan', '2026-12-30', '2027-01-02'],
    ['30 Dec', '2027-01-02', '2026-12-30'],
    ['29 Feb', '2027-06-14', '2028-02-29'],
    ['29 Feb', '2026-02-27', '2024-02-29'],
    ['29 Feb', '2026-03-01', '2028-02-29'],
    ['29 Feb', '1901-03-01', '1904-02-29'],
    ['2 Jan', '2100-12-30', '2100-01-02'],
    ['1 1 00', '2027-06-14', '2000-01-01'],
    ['29 2 00', '2100-01-01', '2000-02-29'],
    ['1 6 99', '2027-06-14', '1999-06-01'],
    ['1 6 99', '2099-06-14', '2099-06-01'],
  ])('%j near %s is %s', (text, near, date) => expect(reading(text, near)).toBe(date))

  it('of any of the years reads back from every form with its year', () => {
    fc.assert(
      fc.property(anyDay, anyDay, (date, near) => {
        for (const form of WITH_YEAR) expect(reading(form(partsOf(date)), near)).toBe(date)
      }),
    )
  })

  it('reads back with half its year within forty-nine years, and without it within five months', () => {
    const close = fc.integer({ min: -150, max: 150 })
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -49 * 365, max: 49 * 365 }), close, (date, far, days) => {
        for (const form of SHORT_YEAR) expect(reading(form(partsOf(date)), nearBy(date, far))).toBe(date)
        for (const form of NO_YEAR) expect(reading(form(partsOf(date)), nearBy(date, days))).toBe(date)
      }),
    )
  })

  it('of every single day reads back as it is written and as it is headed', () => {
    const wrong: string[] = []
    for (let days = 0, date = FIRST_DATE; days <= DAYS; days++, date = addDays(date, 1)) {
      if (reading(dateText(date), FIRST_DATE) !== date || reading(formatDay(date), LAST_DATE) !== date) wrong.push(date)
    }
    expect(wrong).toEqual([])
  })

  it('is written one way in fields', () => {
    expect(dateText('2027-06-14')).toBe('14 Jun 2027')
    expect(dateText('1900-01-01')).toBe('1 Jan 1900')
    expect(dateText('2099-09-30')).toBe('30 Sep 2099')
  })
})

describe('is refused with a sentence', () => {
  it.each([
    ['', 'empty', 'such as 14 Jun 2027'],
    ['   ', 'empty', 'such as 14 Jun 2027'],
    ['31 June 2027', 'no-such-day', '31 June 2027 is not in the calendar: June 2027 has 30 days.'],
    ['31.6.', 'no-such-day', '31 June is not in the calendar: June has 30 days.'],
    ['29 Feb 2027', 'no-such-day', 'February 2027 has 28 days'],
    ['30 Feb', 'no-such-day', 'February has 29 days'],
    ['0 6 2027', 'no-such-day', '0 June 2027 is not in the calendar'],
    ['29 2 1900', 'no-such-day', 'February 1900 has 28 days'],
    ['06/14/2027', 'no-such-day', 'gives 14 as the month. In figures the day comes first: 14/6/2027'],
    ['14/0/2027', 'no-such-day', 'gives 0 as the month'],
    ['2027-14-06', 'no-such-day', 'After the year comes the month: 2027-06-14'],
    ['14 June 1850', 'out-of-range', '14 June 1850 is outside the years 1900 to 2100'],
    ['2101-01-01', 'out-of-range', '1 January 2101 is outside'],
    ['0027-06-14', 'out-of-range', '14 June 0027 is outside'],
    ...[
      'soon',
      '14',
      '2027',
      'June',
      'June 2027',
      '14 Ju 2027',
      '14 June 7',
      '14 6 207',
      '14 6 20270',
      '6 2027',
      '14 6 2027 1',
      '14 2027 6',
      '14 June July',
      '141 6 2027',
      '-14 6 2027',
      '/14/6/2027',
      '14 & 6',
      '14+6',
      'th 14 June',
      'Mo 14 June',
      '2027-06-14T12:00',
      '14 juin 2027',
      '14 June 2027'.repeat(9),
    ].map((text): [string, string, string] => [text, 'unreadable', 'such as 14 Jun 2027 or 14/6/2027']),
  ])('%j: %s', (text, reason, says) => {
    const read = parseDate(text, '2027-06-14')
    expect(read).toMatchObject({ ok: false, fault: { reason } })
    if (!read.ok) expect(read.fault.message).toContain(says)
  })

  it('whatever is typed, it neither throws nor names a day outside the years', () => {
    const typed = fc.oneof(fc.string(), fc.stringMatching(/^[\d a-zA-Z./,-]{0,16}$/u))
    fc.assert(
      fc.property(typed, anyDay, (text, near) => {
        const read = parseDate(text, near)
        if (read.ok) expect(read.value >= FIRST_DATE && read.value <= LAST_DATE).toBe(true)
        else expect(read.fault.message).toMatch(/\.$/u)
      }),
    )
  })
})
