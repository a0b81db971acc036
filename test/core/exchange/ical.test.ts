/** Calendar files by RFC 5545, octet by octet, and read back by a parser that is not ours. */
import fc from 'fast-check'
import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { type CalendarEvent, icalendar, windowUid } from '#core/exchange/ical.ts'

const at = (text: string): number => Date.parse(text)
const STAMP = at('2026-03-01T12:00:00Z')
const TIMED = {
  uid: 'one@standpoint',
  start: at('2026-06-21T05:10:00+02:00'),
  end: at('2026-06-21T06:40:00+02:00'),
  summary: 'First light',
  description: '',
}

function written(...events: readonly CalendarEvent[]): string {
  const file = icalendar(events, STAMP)
  if (!file.ok) throw new Error(file.fault.message)
  return file.value
}

/** Lines as in the file, breaks taken off; every break must be CR LF. */
function physicalLines(text: string): readonly string[] {
  expect(text.endsWith('\r\n')).toBe(true)
  const lines = text.split('\r\n').slice(0, -1)
  expect(lines.filter((line) => /[\r\n]/u.test(line))).toEqual([])
  return lines
}

/** 3.1: a break and ONE white space are taken out; a second space is text. */
const unfolded = (text: string): readonly string[] => text.replaceAll(/\r\n[ \t]/gu, '').split('\r\n')
const octets = (text: string): number => new TextEncoder().encode(text).length

function readBack(text: string): readonly ICAL.Component[] {
  return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent')
}

function propertyOf(event: ICAL.Component | undefined, name: string): string | null {
  const value = event?.getFirstPropertyValue(name) ?? null
  return value === null ? null : value.toString()
}

describe('a file', () => {
  it('has what RFC 5545 3.6 and 3.6.1 ask for, and times in UTC', () => {
    expect(physicalLines(written(TIMED))).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Standpoint//Standpoint//EN',
      'CALSCALE:GREGORIAN',
      'BEGIN:VEVENT',
      'UID:one@standpoint',
      'DTSTAMP:20260301T120000Z',
      'DTSTART:20260621T031000Z',
      'DTEND:20260621T044000Z',
      'SUMMARY:First light',
      'END:VEVENT',
      'END:VCALENDAR',
    ])
  })

  // The times and text of the example in RFC 5545 section 4.
  it('tells the example of section 4, its folded text unfolded', () => {
    const description = 'Networld+Interop Conference and Exhibit\nAtlanta World Congress Center\nAtlanta, Georgia'
    const start = at('1996-09-18T14:30:00Z')
    const event = { uid: 'uid1@example.com', start, end: at('1996-09-20T22:00:00Z'), summary: 'Networld', description }
    const file = icalendar([event], at('1996-07-04T12:00:00Z'))
    if (!file.ok) throw new Error(file.fault.message)
    expect(unfolded(file.value)).toEqual(
      expect.arrayContaining([
        'UID:uid1@example.com',
        'DTSTAMP:19960704T120000Z',
        'DTSTART:19960918T143000Z',
        'DTEND:19960920T220000Z',
        String.raw`DESCRIPTION:Networld+Interop Conference and Exhibit\nAtlanta World Congress Center\nAtlanta\, Georgia`,
      ]),
    )
    expect(propertyOf(readBack(file.value)[0], 'description')).toBe(description)
  })

  it('keeps a space that falls on a fold: one is the fold, one is text', () => {
    // "SUMMARY:" and 67 letters fill the line's 75 octets; the space begins the next.
    const summary = `${'a'.repeat(67)} and on`
    const file = written({ ...TIMED, summary })
    expect(physicalLines(file)).toContain('  and on')
    expect(propertyOf(readBack(file)[0], 'summary')).toBe(summary)
  })

  it('holds a whole day by its date and the next', () => {
    const { start: _start, end: _end, ...text } = TIMED
    const lines = physicalLines(written({ ...text, date: '2026-06-21' }))
    expect(lines).toEqual(expect.arrayContaining(['DTSTART;VALUE=DATE:20260621', 'DTEND;VALUE=DATE:20260622']))
    expect(lines.filter((line) => line.startsWith('DURATION'))).toEqual([])
    const last = physicalLines(written({ ...text, date: '2026-12-31' }))
    expect(last).toContain('DTEND;VALUE=DATE:20270101')
  })

  it('gives a moment no end, since an end must be later (3.6.1)', () => {
    const lines = physicalLines(written({ ...TIMED, end: TIMED.start + 400 }))
    expect(lines.filter((line) => /^DT(START|END)/u.test(line))).toEqual(['DTSTART:20260621T031000Z'])
  })

  it('tells the place and the address in full', () => {
    const geo = { lat: -0.00000001, lon: -122.082932 }
    const url = 'https://example.org/a?b=c;d,e'
    const lines = physicalLines(written({ ...TIMED, geo, url, location: 'Quay; north end, steps' }))
    expect(lines).toEqual(
      expect.arrayContaining(['GEO:0.000000;-122.082932', `URL:${url}`, String.raw`LOCATION:Quay\; north end\, steps`]),
    )
  })
})

describe('text', () => {
  it.each([
    ['backslash, semicolon, comma', String.raw`a\b;c,d`, String.raw`a\\b\;c\,d`],
    ['line breaks of every system', 'a\nb\r\nc\rd', String.raw`a\nb\nc\nd`],
    ['colon and quotes, which stay', 'at: "noon"', 'at: "noon"'],
    ['control characters, which go', 'be\u0007ll\u0000 \u007fring\u0085', 'bell ring'],
    ['tab, which stays', 'a\tb', 'a\tb'],
    ['half a character', 'a\ud83cb', 'a\ufffdb'],
    ['a backslash before an n', String.raw`a\nb`, String.raw`a\\nb`],
    ['what would begin a line of its own', 'x\r\nEND:VEVENT', String.raw`x\nEND:VEVENT`],
  ])('%s', (_name, summary, value) => {
    expect(unfolded(written({ ...TIMED, summary }))).toContain(`SUMMARY:${value}`)
  })

  it.each([
    ['75 characters with 山 and –', `${'山 – '.repeat(18)}山 –`],
    ['an emoji at the fold', `${'a'.repeat(66)}🌅${'b'.repeat(80)}`],
    ['emoji alone', '🌅'.repeat(60)],
    ['one long word', 'w'.repeat(400)],
  ])('is folded by octets, never inside a character: %s', (_name, summary) => {
    const file = written({ ...TIMED, summary })
    const lines = physicalLines(file)
    expect(Math.max(...lines.map(octets))).toBeLessThanOrEqual(75)
    expect(lines.filter((line) => !line.isWellFormed())).toEqual([])
    expect(unfolded(file)).toContain(`SUMMARY:${summary}`)
  })

  it('fills a line to 75 octets and no more', () => {
    expect(physicalLines(written({ ...TIMED, summary: 'a'.repeat(67) }))).toContain(`SUMMARY:${'a'.repeat(67)}`)
    expect(physicalLines(written({ ...TIMED, summary: 'a'.repeat(68) }))).toContain(' a')
    expect(physicalLines(written({ ...TIMED, summary: 'a'.repeat(67 + 75) })).at(-3)).toBe(' a')
  })

  it('of any kind comes back from another reader as it was, less its control characters', () => {
    const unicode = fc.string({ unit: 'binary', maxLength: 200 })
    const awkward = fc.string({
      unit: fc.constantFrom('\\', ';', ',', ':', '"', '\n', ' ', '\t', 'n', 'N', '山', '🌅', 'é'),
    })
    const texts = fc.oneof(unicode, awkward)
    const expected = (text: string): string | null => {
      const kept = text.replaceAll(/\r\n|\r/gu, '\n').replaceAll(/[^\P{Cc}\t\n]/gu, '')
      return kept === '' ? null : kept
    }
    const law = fc.property(texts, texts, texts, (summary, description, location) => {
      const file = written({ ...TIMED, summary, description, location })
      expect(Math.max(...physicalLines(file).map(octets))).toBeLessThanOrEqual(75)
      const [event] = readBack(file)
      expect(propertyOf(event, 'summary')).toBe(expected(summary))
      expect(propertyOf(event, 'description')).toBe(expected(description))
      expect(propertyOf(event, 'location')).toBe(expected(location))
      expect(propertyOf(event, 'dtstart')).toBe('2026-06-21T03:10:00Z')
    })
    fc.assert(law, { numRuns: 300 })
  })
})

describe('an export', () => {
  it('gives the same thing the same uid at another time', () => {
    const start = at('2026-06-21T03:10:42Z')
    expect(windowUid('spot-7', start)).toBe('spot-7-20260621T031000Z@standpoint')
    expect(windowUid('spot-7', start + 5_000)).toBe(windowUid('spot-7', start))
    expect(windowUid('spot-8', start)).not.toBe(windowUid('spot-7', start))
    expect(windowUid('spot-7', start + 60_000)).not.toBe(windowUid('spot-7', start))
    const again = icalendar([TIMED], STAMP + 86_400_000)
    expect(again.ok && again.value.replace('20260302T120000Z', '20260301T120000Z')).toBe(written(TIMED))
  })

  it('holds as many events as it was given', () => {
    const events = Array.from({ length: 40 }, (_, index) => ({ ...TIMED, uid: `u${index}` }))
    expect(readBack(written(...events)).map((event) => propertyOf(event, 'uid'))).toEqual(events.map(({ uid }) => uid))
  })

  const { start: _start, end: _end, ...text } = TIMED
  it.each<readonly [string, readonly CalendarEvent[], string, string]>([
    ['nothing', [], 'no-events', 'choose at least one'],
    ['an end before the start', [{ ...TIMED, end: TIMED.start - 1 }], 'end-before-start', '“First light” ends before'],
    ['a day the calendar lacks', [{ ...text, date: '2026-02-30' }], 'no-such-day', '2026-02-30'],
    ['a day that is no date', [{ ...text, date: '1 May' }], 'unreadable', '1 May'],
    ['a time beyond the years', [{ ...TIMED, end: at('2101-06-01T00:00Z') }], 'out-of-range', '1900 to 2100'],
    ['no time at all', [{ ...TIMED, start: Number.NaN }], 'out-of-range', '1900 to 2100'],
    [
      'an address that breaks the line',
      [{ ...TIMED, url: 'https://a\r\nEND:VEVENT' }],
      'not-a-url',
      'is not a web address',
    ],
    ['an address without its beginning', [{ ...TIMED, url: 'example.org' }], 'not-a-url', 'https://'],
  ])('refuses %s', (_name, events, reason, words) => {
    const refused = icalendar(events, STAMP)
    expect(refused).toMatchObject({ ok: false, fault: { reason } })
    if (!refused.ok) expect(refused.fault.message).toContain(words)
  })

  it('takes events that share a uid, or have none, for a bug', () => {
    expect(() => icalendar([TIMED, TIMED], STAMP)).toThrow(RangeError)
    expect(() => icalendar([{ ...TIMED, uid: '' }], STAMP)).toThrow(RangeError)
  })
})
