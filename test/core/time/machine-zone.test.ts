/** Civil time is the place's: the same on machines of other zones and languages, each a process of its own. */
import { execFile } from 'node:child_process'
import { resolve } from 'node:path'
import { promisify } from 'node:util'
import { describe, expect, test } from 'vitest'

const SCRIPT = resolve(import.meta.dirname, '../../help/tell-civil.ts')

/** What the zone's own rules give, worked out by hand from tzdata and RFC 5545 3.3.5. */
const EXPECTED = {
  day: { date: '2026-03-29', start: Date.parse('2026-03-28T23:00Z'), end: Date.parse('2026-03-29T22:00Z') },
  changes: [{ instant: Date.parse('2026-03-29T01:00Z'), before: 60, after: 120 }],
  cairo: { date: '2026-04-24', start: Date.parse('2026-04-23T22:00Z'), end: Date.parse('2026-04-24T21:00Z') },
  apia: false,
  gap: { instant: Date.parse('2026-03-29T01:30Z'), note: 'gap', other: null },
  repeated: {
    instant: Date.parse('2026-10-25T00:30Z'),
    note: 'repeated',
    other: Date.parse('2026-10-25T01:30Z'),
  },
  next: '2026-03-29',
  weekday: 7,
  label: 'Sun 29 March 2026',
  clock: '00:04',
  seconds: '00:04:00',
  kiritimati: { date: '2026-03-20', hour: 12, minute: 37, second: 0, offset: 840 },
  kiritimatiDay: '2026-03-20',
  offset: 'UTC+14',
  sea: 'UTC−2, open sea',
}

// Minutes the machine's own zone is behind UTC in June: proof that the process really runs in it.
describe.each([
  ['UTC', 'en_US.UTF-8', 0],
  ['Asia/Tokyo', 'ja_JP.UTF-8', -540],
  ['America/New_York', 'en_US.UTF-8', 240],
  ['Pacific/Auckland', 'de_DE.UTF-8', -720],
])('on a machine in %s speaking %s', (zone, language, behind) => {
  test('days, clocks and labels are those of the place', async () => {
    const env = { ...process.env, TZ: zone, LANG: language, LC_ALL: language }
    const { stdout } = await promisify(execFile)(process.execPath, [SCRIPT], { env })
    expect(JSON.parse(stdout)).toEqual({ machine: { zone, behind }, told: EXPECTED })
  })
})
