/** Figures as people read them: sensible digits, both systems, never a minus before nothing. */
import { describe, expect, test } from 'vitest'
import { parseLength } from '#core/units/length.ts'
import * as figure from '#renderer/text/figure.ts'

/** Plain spaces for the unbroken ones, so that the expectations can be read. */
function plain(text: string): string {
  return text.replaceAll('\u{a0}', ' ')
}

test.each([
  [0, '0 m'],
  [-0, '0 m'],
  [-0.000001, 'under 0.01 mm'],
  [0.0042, '4.2 mm'],
  [0.042, '4.2 cm'],
  [0.83, '0.83 m'],
  [1.2, '1.2 m'],
  [7.346, '7.35 m'],
  [9.996, '10 m'],
  [12.34, '12.3 m'],
  [268.4, '268 m'],
  [999.6, '1 km'],
  [1234, '1.23 km'],
  [123_456, '123 km'],
])('%d m reads %s', (metres, text) => expect(plain(figure.metres(metres, 'metric'))).toBe(text))

test.each([
  [0.3048 * 5.25, '5.25 ft'],
  [0.0254 * 3, '3 in'],
  [0.3048 * 500, '500 ft'],
  [1609.344 * 2.5, '2.5 mi'],
  [0, '0 ft'],
])('%d m reads %s in feet', (metres, text) => expect(plain(figure.metres(metres, 'imperial'))).toBe(text))

test('an elevation stays in metres or feet', () => {
  expect(plain(figure.elevation(2503.7, 'metric'))).toBe('2504 m')
  expect(plain(figure.elevation(-0.04, 'metric'))).toBe('0 m')
  expect(plain(figure.elevation(-12.25, 'metric'))).toBe('−12.3 m')
})

test('bearings have three figures before the point, and 360 is 0', () => {
  expect([64.86, 0, 359.96, 7.04].map((angle) => figure.bearing(angle))).toEqual([
    '064.9°',
    '000.0°',
    '000.0°',
    '007.0°',
  ])
})

test('shares, f-numbers, focal lengths, angles', () => {
  expect([0.624, 0.0432, 0.0001, 0, 1.2].map((share) => plain(figure.share(share)))).toEqual([
    '62 %',
    '4.3 %',
    'under 0.1 %',
    '0 %',
    '120 %',
  ])
  expect([2.8, 4, 10.1, 2.76].map((mark) => figure.aperture(mark))).toEqual(['f/2.8', 'f/4', 'f/10', 'f/2.8'])
  expect([70, 73.14, 134.6, 0.0288].map((size) => plain(figure.millimetres(size)))).toEqual([
    '70 mm',
    '73.1 mm',
    '135 mm',
    '0.029 mm',
  ])
  expect([-0.01, 3.25].map((angle) => figure.degreesText(angle))).toEqual(['0.0°', '3.3°'])
})

describe('what stands in a field', () => {
  test.each(['metric', 'imperial'] as const)('is read back to the same within its last digit (%s)', (units) => {
    for (const metres of [0.3, 1.6, 2.5, 12.345, 518.4]) {
      const read = parseLength(figure.lengthInField(metres, units), units)
      expect(read.ok && Math.abs(read.value - metres)).toBeLessThanOrEqual(0.0005)
    }
  })
  test('has the minus of the keyboard', () => expect(figure.plainNumber(-3.5, 1)).toBe('-3.5'))
})

// An acre is 4 840 square yards of 0.9144 m, so 4 046.856 422 4 m²; a square mile is 640 acres.
test.each([
  [0, 'metric', '0 m²'],
  [12.34, 'metric', '12.3 m²'],
  [9_940, 'metric', '9940 m²'],
  [10_000, 'metric', '1 ha'],
  [39_000, 'metric', '3.9 ha'],
  [2_500_000, 'metric', '2.5 km²'],
  [0.3048 ** 2 * 500, 'imperial', '500 sq ft'],
  [4_046.856_422_4 * 2.5, 'imperial', '2.5 acres'],
  [4_046.856_422_4 * 640 * 3, 'imperial', '3 sq mi'],
] as const)('%d m² in %s reads %s', (value, units, text) => expect(plain(figure.area(value, units))).toBe(text))
