/** Places as other programs hand them over: links to maps, well-known text, a datum beside the figures, a zoom behind a geo URI. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseCoordinates } from '#core/geo/coordinate-text.ts'

function place(text: string): string {
  const read = parseCoordinates(text)
  return read.ok ? `${read.value.at.lat} ${read.value.at.lon}` : read.fault.reason
}

describe('a link to a map', () => {
  it.each([
    'https://maps.example/place/Some+Hill/@46.403,-33.5945,15z',
    'https://maps.example/#map=15/46.403/-33.5945',
    'https://maps.example/?mlat=46.403&mlon=-33.5945#map=3/10/10',
    'https://maps.example/search?q=46.403,-33.5945',
    'https://maps.example/dir/?api=1&destination=46.403%2C-33.5945&center=1,1',
    'https://maps.example/?ll=46.403,-33.5945&z=12',
    'https://maps.example/x/@1,2,3z/data=!3m1!4b1!4m2!3d46.403!4d-33.5945',
    'http://maps.example/v?lat=46.403&lon=-33.5945',
    '  https://maps.example/#15/46.403/-33.5945 ',
  ])('%s', (link) => expect(place(link)).toBe('46.403 -33.5945'))

  it.each([
    'https://maps.example/',
    'https://maps.example/search?q=lighthouse',
    'https://maps.example/@146.4,-33.6,15z',
    'https://maps.example/#map=15/46.4/-233.6',
    `https://maps.example/${'x'.repeat(5_000)}`,
  ])('without a place is refused: %s', (link) => expect(place(link)).toBe('unreadable'))

  it('is never taken for another place, whatever stands in it', () => {
    fc.assert(
      fc.property(fc.webUrl({ withQueryParameters: true, withFragments: true }), (link) => {
        const read = parseCoordinates(link)
        if (read.ok) expect(Math.abs(read.value.at.lat)).toBeLessThanOrEqual(90)
        else expect(read.fault.message).not.toBe('')
      }),
    )
  })
})

describe('well-known text', () => {
  it.each([
    'POINT(-33.5945 46.403)',
    'point ( -33.5945  46.403 )',
    'SRID=4326;POINT(-33.5945 46.403)',
    'POINT Z (-33.5945 46.403 55)',
  ])('%s', (text) => expect(place(text)).toBe('46.403 -33.5945'))
  it('beyond the poles is refused', () => expect(place('POINT(10 91)')).toBe('unreadable'))
})

it.each([
  '46.403, -33.5945 (WGS84)',
  'WGS 84: 46.403, -33.5945',
  '46.403 -33.5945 WGS-84',
  '[WGS84] 46.403,-33.5945',
  '46.403, -33.5945, WGS 1984',
])('the datum beside it is passed over: %s', (text) => expect(place(text)).toBe('46.403 -33.5945'))

it('a geo URI may have a zoom behind it', () => expect(place('geo:46.403,-33.5945?z=15')).toBe('46.403 -33.5945'))
