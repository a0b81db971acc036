/** Numbers and lengths as people type them; expectations are plain arithmetic, the foot and inch are exact by definition. */
import { describe, expect, test } from 'vitest'
import { parseFigure } from '#core/units/figure.ts'
import { parseLength } from '#core/units/length.ts'

function value(text: string): number | string {
  const read = parseFigure(text)
  return read.ok ? read.value : read.fault.reason
}

describe('a number', () => {
  test.each([
    ['2.5', 2.5],
    ['2,5', 2.5],
    [' 2,5 ', 2.5],
    ['0,125', 0.125],
    ['１２．５', 12.5],
    ['1 234,5', 1234.5],
    ['1\u{202f}234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['1,234,567', 1_234_567],
    ['1.234.567', 1_234_567],
    ['−3', -3],
    ['–3,5', -3.5],
    ['+7', 7],
    ['.5', 0.5],
    ['5.', 5],
    ['-0', 0],
    ['1234,567', 1234.567],
  ])('%s is %d', (text, number) => {
    expect(value(text)).toBe(number)
  })

  test.each(['abc', '1e9', '1.2.3', '1,23,4', '--1', '1-2', 'NaN', 'Infinity', '0x10', ',', '9'.repeat(50), '12 m'])(
    '%s is none',
    (text) => {
      expect(value(text)).toBe('unreadable')
    },
  )

  test('1,200 is refused with both readings rather than guessed', () => {
    const read = parseFigure('1,200')
    expect(read.ok ? '' : read.fault.message).toBe('"1,200" can be read as 1200 or as 1.2. Write 1200 or 1.2.')
  })

  test('nothing typed is told apart', () => expect(value(' \u{200b}')).toBe('empty'))
  test('minus nothing is nothing', () => expect(Object.is(value('−0'), 0)).toBe(true))
})

describe('a length', () => {
  test.each([
    ['2.5', 2.5],
    ['2,5 m', 2.5],
    ['120 cm', 1.2],
    ['350mm', 0.35],
    ['1,5 km', 1500],
    ['10 ft', 3.048],
    ['10 in', 0.254],
    ['5 ft 3 in', 5 * 0.3048 + 3 * 0.0254],
    ['5′3″', 5 * 0.3048 + 3 * 0.0254],
    ["5' 3''", 5 * 0.3048 + 3 * 0.0254],
    ['6 feet 2', 6 * 0.3048 + 2 * 0.0254],
    ["5'", 5 * 0.3048],
    ['2 miles', 2 * 1609.344],
    ['-2 ft 6 in', -2.5 * 0.3048],
  ])('%s', (text, metres) => {
    const read = parseLength(text, 'metric')
    expect(read.ok ? read.value : read.fault.message).toBeCloseTo(metres, 12)
  })

  test('a bare number is in feet where feet are the unit', () => {
    const read = parseLength('10', 'imperial')
    expect(read.ok && read.value).toBeCloseTo(3.048, 12)
  })

  test.each(['5 ft 13 in', '5 ft x', 'm', '5 furlongs', '5 ft -3 in'])('%s is refused', (text) => {
    expect(parseLength(text, 'metric').ok).toBe(false)
  })
})
