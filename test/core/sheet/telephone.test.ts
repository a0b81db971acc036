/** Telephone numbers are found in what people write of a contact, and nothing else is taken for one. */
import { describe, expect, test } from 'vitest'
import { telephonePieces } from '#core/sheet/telephone.ts'

function found(text: string): (string | null)[] {
  return telephonePieces(text).flatMap(({ dialled }) => (dialled === null ? [] : [dialled]))
}

describe('a number', () => {
  test.each([
    ['Harbour office, +44 20 7946 0958', '+442079460958'],
    ['+44 (0)20 7946 0958', '+442079460958'],
    ['call 020 7946 0958 before nine', '02079460958'],
    ['(020) 7946-0958', '02079460958'],
    ['farm: 089/123456', '089123456'],
    ['201-555-0142 ask for the warden', '2015550142'],
    ['0612345678.', '0612345678'],
    ['+49.89.1234567', '+49891234567'],
  ])('in %j is dialled as %s', (text, number) => {
    expect(found(text)).toEqual([number])
  })

  test('keeps all that is written around it', () => {
    const text = 'The farm, 020 7946 0958 or +44 7700 900123, evenings.'
    const pieces = telephonePieces(text)
    expect(pieces.map((piece) => piece.text).join('')).toBe(text)
    expect(pieces.filter(({ dialled }) => dialled !== null).map((piece) => piece.text)).toEqual([
      '020 7946 0958',
      '+44 7700 900123',
    ])
  })
})

test.each([
  '',
  'The farm at Tolvay',
  'asked on 2026-06-14, valid until 14.06.2026 or 01/07/2026',
  'seasons 2026-2027',
  'open 0800-1700, gate 12',
  'at 46.402969, -33.594539',
  'permit 12345678',
  'form AB-020 7946 0958X',
  'house 12 345',
  '1 '.repeat(30),
])('nothing is dialled in %j', (text) => {
  expect(found(text)).toEqual([])
  expect(
    telephonePieces(text)
      .map((piece) => piece.text)
      .join(''),
  ).toBe(text)
})
