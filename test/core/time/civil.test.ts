/** Civil days and clock times against the IANA time zone database's own accounts of odd days, and laws over many zones. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as civil from '#core/time/civil.ts'

const HOUR = 3_600_000
const at = (text: string): number => Date.parse(text)
const hours = ({ start, end }: civil.CivilDay): number => (end - start) / HOUR

function dayOf(date: string, zone: string): civil.CivilDay {
  const day = civil.civilDay(date, zone)
  if (!day.ok) throw new Error(day.fault.message)
  return day.value
}

// tzdata: rules Egypt (clocks on at 00:00), LH (by half an hour), Troll (by two hours), EU; America/St_Johns until 2011
// put its clocks back at 00:01; Kwajalein had 30 September 1969 for 47 hours as it crossed the date line.
const LENGTHS: readonly (readonly [zone: string, date: string, clock: string, length: number])[] = [
  ['Europe/Berlin', '2026-06-21', '00:00', 24],
  ['Europe/Berlin', '2026-03-29', '00:00', 23],
  ['Europe/Berlin', '2026-10-25', '00:00', 25],
  ['Africa/Cairo', '2026-04-24', '01:00', 23],
  ['Australia/Lord_Howe', '2026-04-05', '00:00', 24.5],
  ['Australia/Lord_Howe', '2026-10-04', '00:00', 23.5],
  ['Antarctica/Troll', '2026-03-29', '00:00', 22],
  ['Antarctica/Troll', '2026-10-25', '00:00', 26],
  ['America/St_Johns', '2010-11-07', '00:00', 25],
  ['Pacific/Kwajalein', '1969-09-30', '00:00', 47],
  ['Pacific/Apia', '2011-12-29', '00:00', 24],
  ['Pacific/Apia', '2011-12-31', '00:00', 24],
  ['UTC', '2026-12-31', '00:00', 24],
  ['Etc/GMT+2', '2026-03-29', '00:00', 24],
]

describe('a civil day', () => {
  it.each(LENGTHS)('%s %s starts at %s and lasts %d hours', (zone, date, clock, length) => {
    const day = dayOf(date, zone)
    expect([day.date, civil.formatClock(day.start, zone), hours(day)]).toEqual([date, clock, length])
  })

  it('left out by a zone does not exist there, and its neighbours touch', () => {
    const left = civil.civilDay('2011-12-30', 'Pacific/Apia')
    expect(left).toMatchObject({ ok: false, fault: { reason: 'no-such-day' } })
    if (!left.ok) expect(left.fault.message).toContain('Fri 30 December 2011 was skipped in Pacific/Apia')
    expect(dayOf('2011-12-29', 'Pacific/Apia').end).toBe(dayOf('2011-12-31', 'Pacific/Apia').start)
    expect(dayOf('2011-12-30', 'Pacific/Pago_Pago').date).toBe('2011-12-30')
  })

  it.each([
    ['2026-02-30', 'no-such-day'],
    ['2026-13-01', 'no-such-day'],
    ['1899-12-31', 'out-of-range', 'Sun 31 December 1899'],
    ['2101-01-01', 'out-of-range', 'Sat 1 January 2101'],
    ['21 June', 'unreadable'],
    ['2026-6-21', 'unreadable'],
    ['2026-06-21T00:00', 'unreadable'],
    ['', 'unreadable'],
  ])('%s is refused: %s', (date, reason, says = date) => {
    const refused = civil.civilDay(date, 'Europe/Berlin')
    expect(refused).toMatchObject({ ok: false, fault: { reason } })
    if (!refused.ok && date !== '') expect(refused.fault.message).toContain(says)
  })

  it('takes the first and the last day of the years it knows', () => {
    expect(dayOf('1900-01-01', 'UTC').start).toBe(civil.EARLIEST_INSTANT)
    expect(dayOf('2100-12-31', 'UTC').end).toBe(civil.LATEST_INSTANT + 1)
    expect(civil.checkInstant(civil.EARLIEST_INSTANT).ok && civil.checkInstant(civil.LATEST_INSTANT).ok).toBe(true)
    for (const beyond of [civil.EARLIEST_INSTANT - 1, civil.LATEST_INSTANT + 1, Number.NaN]) {
      expect(civil.checkInstant(beyond)).toMatchObject({ ok: false, fault: { reason: 'out-of-range' } })
    }
    expect(civil.clampInstant(-Infinity)).toBe(civil.EARLIEST_INSTANT)
    expect(civil.clampInstant(Infinity)).toBe(civil.LATEST_INSTANT)
    expect(civil.clampInstant(5)).toBe(5)
  })

  // The label is the place's date, whatever the date is at Greenwich.
  it.each([
    ['Pacific/Kiritimati', '2026-03-19T22:37Z', '2026-03-20', '12:37', 'UTC+14'],
    ['Pacific/Chatham', '2026-01-31T11:00Z', '2026-02-01', '00:45', 'UTC+13:45'],
    ['Pacific/Chatham', '2026-06-20T12:00Z', '2026-06-21', '00:45', 'UTC+12:45'],
    ['Australia/Eucla', '2026-06-20T15:15Z', '2026-06-21', '00:00', 'UTC+8:45'],
    ['Asia/Kathmandu', '2026-06-20T18:15Z', '2026-06-21', '00:00', 'UTC+5:45'],
    ['Pacific/Apia', '2026-06-20T11:00Z', '2026-06-21', '00:00', 'UTC+13'],
    ['America/St_Johns', '2026-06-21T02:29Z', '2026-06-20', '23:59', 'UTC−2:30'],
    ['Etc/GMT+2', '2026-06-21T01:59Z', '2026-06-20', '23:59', 'UTC−2'],
    ['Europe/Lisbon', '2026-01-01T00:00Z', '2026-01-01', '00:00', 'UTC'],
  ])('in %s holds %s as %s %s, %s', (zone, text, date, clock, offset) => {
    expect(civil.civilDayOf(at(text), zone).date).toBe(date)
    expect(civil.civilTime(at(text), zone).date).toBe(date)
    expect([civil.formatClock(at(text), zone), civil.formatOffset(at(text), zone)]).toEqual([clock, offset])
  })

  it('goes on though the clock reads yesterday once more', () => {
    const zone = 'America/St_Johns'
    const again = at('2010-11-07T02:45Z')
    expect(civil.civilTime(again, zone)).toEqual({ date: '2010-11-06', hour: 23, minute: 15, second: 0, offset: -210 })
    expect(civil.civilDayOf(again, zone)).toEqual(dayOf('2010-11-07', zone))
  })
})

describe('a clock time', () => {
  // RFC 5545 3.3.5: one that does not exist takes the offset before the gap; one that comes twice means the first.
  it('skipped by the clock is moved on by the gap', () => {
    const read = civil.instantOf('2026-03-29', 150, 'Europe/Berlin')
    expect(read).toEqual({ instant: at('2026-03-29T03:30+02:00'), note: 'gap', other: null })
  })

  it('shown twice is the first, and the second is told', () => {
    expect(civil.instantOf('2026-10-25', 150, 'Europe/Berlin')).toEqual({
      instant: at('2026-10-25T00:30Z'),
      note: 'repeated',
      other: at('2026-10-25T01:30Z'),
    })
    const zone = 'Europe/Berlin'
    expect(civil.formatOffset(at('2026-10-25T00:30Z'), zone)).toBe('UTC+2')
    expect(civil.formatOffset(at('2026-10-25T01:30Z'), zone)).toBe('UTC+1')
  })

  it('of most days is itself; 24:00 is the next midnight', () => {
    const noon = { instant: at('2026-06-21T10:00Z'), note: null, other: null }
    expect(civil.instantOf('2026-06-21', 720, 'Europe/Berlin')).toEqual(noon)
    expect(civil.instantOf('2026-06-21', 1440, 'Europe/Berlin').instant).toBe(at('2026-06-22T00:00+02:00'))
    expect(civil.instantOf('2026-06-21', 0.5, 'UTC').instant).toBe(at('2026-06-21T00:00:30Z'))
  })

  it('of a day left out is a whole day on', () => {
    expect(civil.instantOf('2011-12-30', 720, 'Pacific/Apia')).toMatchObject({
      instant: at('2011-12-31T12:00+14:00'),
      note: 'gap',
    })
  })

  it('reads as 24-hour time and never 24:04 (ISO 8601)', () => {
    expect(civil.formatClock(at('2026-06-21T00:04Z'), 'UTC')).toBe('00:04')
    expect(civil.formatClockSeconds(at('2026-06-21T00:04:09.9Z'), 'UTC')).toBe('00:04:09')
  })

  it('is the nearest minute as almanacs print it, but stays in its day', () => {
    expect(civil.formatClock(at('2026-06-21T19:03:31Z'), 'UTC')).toBe('19:04')
    expect(civil.formatClock(at('2026-06-21T19:03:29Z'), 'UTC')).toBe('19:03')
    expect(civil.formatClock(at('2026-06-21T23:59:40Z'), 'UTC')).toBe('23:59')
  })

  it('may carry seconds of an old time: tzdata has Liberia 44 min 30 s behind until 1972', () => {
    expect(civil.formatOffset(at('1960-01-01T00:00Z'), 'Africa/Monrovia')).toBe('UTC−0:44:30')
  })
})

describe('the clock changes of a day', () => {
  it.each([
    ['Europe/Berlin', '2026-03-29', '2026-03-29T01:00Z', 60, 120],
    ['Europe/Berlin', '2026-10-25', '2026-10-25T01:00Z', 120, 60],
    ['Africa/Cairo', '2026-04-24', '2026-04-23T22:00Z', 120, 180],
    ['Australia/Lord_Howe', '2026-04-05', '2026-04-04T15:00Z', 660, 630],
    ['Pacific/Apia', '2011-12-31', '2011-12-30T10:00Z', -600, 840],
    ['America/St_Johns', '2010-11-07', '2010-11-07T02:31Z', -150, -210],
  ])('%s %s', (zone, date, instant, before, after) => {
    expect(civil.offsetChanges(dayOf(date, zone), zone)).toEqual([{ instant: at(instant), before, after }])
  })

  it('are none on most days', () => {
    expect(civil.offsetChanges(dayOf('2026-03-28', 'Europe/Berlin'), 'Europe/Berlin')).toEqual([])
    expect(civil.offsetChanges(dayOf('2026-03-30', 'Europe/Berlin'), 'Europe/Berlin')).toEqual([])
    expect(civil.offsetChanges(dayOf('2026-03-29', 'UTC'), 'UTC')).toEqual([])
  })
})

describe('dates', () => {
  it('are counted by the calendar', () => {
    expect(civil.addDays('2024-02-28', 1)).toBe('2024-02-29')
    expect(civil.addDays('2100-02-28', 1)).toBe('2100-03-01')
    expect(civil.addDays('2026-03-01', -1)).toBe('2026-02-28')
  })

  it('have their day of the week and read in plain English', () => {
    // 20 July 1969, the first landing on the moon, was a Sunday; 1 January 1900 a Monday.
    expect([civil.weekday('1969-07-20'), civil.weekday('1900-01-01')]).toEqual([7, 1])
    expect(civil.formatDay('1969-07-20')).toBe('Sun 20 July 1969')
    expect(civil.formatDay('2026-06-13')).toBe('Sat 13 June 2026')
  })
})

describe('a zone', () => {
  it.each([
    'UTC',
    'Europe/Berlin',
    'America/Argentina/Buenos_Aires',
    'America/Port-au-Prince',
    'Etc/GMT+2',
    'Etc/GMT-14',
    'Etc/UTC',
    'GMT',
    'Asia/Calcutta',
    'Asia/Kolkata',
  ])('%s is one', (text) => expect(civil.isZone(text)).toBe(true))

  it.each([
    '',
    'Mars/Tharsis',
    '+02:00',
    '2026-06-21',
    'T00:00Z',
    'T00Z',
    'local',
    'toString',
    '../Berlin',
    'Europe/Berlin\n',
  ])('%j is none', (text) => expect(civil.isZone(text)).toBe(false))

  it('is shown by its place, or at sea by its offset', () => {
    expect(civil.zoneName('Europe/Berlin')).toBe('Europe/Berlin')
    expect(civil.zoneName('America/New_York')).toBe('America/New York')
    expect(civil.zoneName('Etc/GMT+2')).toBe('UTC−2, open sea')
    expect(civil.zoneName('Etc/GMT-12')).toBe('UTC+12, open sea')
    expect(civil.zoneName('Etc/GMT')).toBe('UTC, open sea')
    expect(civil.zoneName('UTC')).toBe('UTC')
  })
})

describe('in any zone', () => {
  const zones = fc.constantFrom(...new Set(LENGTHS.map(([zone]) => zone)), 'Asia/Kathmandu', 'America/Sao_Paulo')
  const instants = fc.integer({ min: civil.EARLIEST_INSTANT, max: civil.LATEST_INSTANT })

  it('the days hold every instant once and follow each other', () => {
    const law = fc.property(zones, instants, (zone, instant) => {
      const day = civil.civilDayOf(instant, zone)
      expect(day.start <= instant && instant < day.end).toBe(true)
      expect(civil.civilDayOf(day.start, zone)).toEqual(day)
      expect(civil.civilDayOf(day.end, zone).start).toBe(day.end)
      expect(civil.civilDayOf(day.start - 1, zone).end).toBe(day.start)
    })
    fc.assert(law, { numRuns: 500 })
  })

  it('a clock time leads back to its instant, as the first or the second', () => {
    const law = fc.property(zones, instants, (zone, some) => {
      const instant = Math.floor(some / 1000) * 1000
      const { date, hour, minute, second, offset } = civil.civilTime(instant, zone)
      const read = civil.instantOf(date, hour * 60 + minute + second / 60, zone)
      expect([read.instant, read.other]).toContain(instant)
      expect(at(`${date}T00:00Z`) + (hour * 60 + minute) * 60_000 + second * 1000 - offset * 60_000).toBeCloseTo(
        instant,
        3,
      )
    })
    fc.assert(law, { numRuns: 500 })
  })
})
