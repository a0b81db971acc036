/** How long a tile is used unasked: the rules of RFC 9111 (sections 4.2, 5.2, 5.3), and seven days where nothing is said. */
import { describe, expect, test } from 'vitest'
import { freshnessOf } from '#main/tiles/freshness.ts'

const NOW = Date.UTC(2031, 4, 5, 12)
const SECOND = 1000
const DAY = 86_400 * SECOND

function left(headers: Record<string, string>): number {
  return freshnessOf(new Headers(headers), NOW).freshUntil - NOW
}

describe('lifetime', () => {
  test.each([
    ['nothing said: seven days (tile usage policy of OpenStreetMap)', {}, 7 * DAY],
    ['only a validator: seven days', { ETag: '"a"', 'Last-Modified': 'Sun, 04 May 2031 12:00:00 GMT' }, 7 * DAY],
    ['max-age', { 'Cache-Control': 'max-age=60' }, 60 * SECOND],
    ['max-age among others, any case', { 'cache-control': 'Public, MAX-AGE = 60, immutable' }, 60 * SECOND],
    ['max-age quoted', { 'Cache-Control': 'max-age="60"' }, 60 * SECOND],
    ['max-age less the age at arrival', { 'Cache-Control': 'max-age=60', Age: '20' }, 40 * SECOND],
    ['max-age used up on the way', { 'Cache-Control': 'max-age=60', Age: '90' }, 0],
    [
      'max-age before Expires',
      { 'Cache-Control': 'max-age=60', Expires: 'Tue, 06 May 2031 12:00:00 GMT' },
      60 * SECOND,
    ],
    ['max-age=0', { 'Cache-Control': 'max-age=0' }, 0],
    ['max-age that is no number', { 'Cache-Control': 'max-age=soon' }, 0],
    ['s-maxage speaks to shared caches alone', { 'Cache-Control': 's-maxage=5, max-age=60' }, 60 * SECOND],
    ['Expires', { Expires: 'Tue, 06 May 2031 12:00:00 GMT' }, DAY],
    [
      "Expires by the server's own clock, which runs an hour ahead",
      { Expires: 'Mon, 05 May 2031 14:00:00 GMT', Date: 'Mon, 05 May 2031 13:00:00 GMT' },
      3600 * SECOND,
    ],
    ['Expires in the past', { Expires: 'Sun, 04 May 2031 12:00:00 GMT' }, 0],
    ['Expires that is no date', { Expires: '0' }, 0],
    ['no-cache outweighs max-age', { 'Cache-Control': 'no-cache, max-age=60' }, 0],
    [
      'no-cache for one header is not for the tile',
      { 'Cache-Control': 'no-cache="set-cookie", max-age=60' },
      60 * SECOND,
    ],
    ['more than a year', { 'Cache-Control': 'max-age=99999999999' }, 365 * DAY],
  ])('%s', (_, headers, expected) => {
    expect(left(headers as Record<string, string>)).toBe(expected)
  })
})

describe('keeping', () => {
  test.each([
    ['max-age=60', true, true],
    ['no-store', false, true],
    ['max-age=60, must-revalidate', true, false],
    ['no-cache', true, false],
    ['private', true, true],
  ])('%s', (control, keep, staleAllowed) => {
    expect(freshnessOf(new Headers({ 'Cache-Control': control }), NOW)).toMatchObject({ keep, staleAllowed })
  })
})
