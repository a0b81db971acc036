/** Times of day as people type them. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clockText, parseClock } from '#core/time/clock-text.ts'

function minutes(text: string): number | string {
  const read = parseClock(text)
  return read.ok ? read.value : read.fault.reason
}

describe('a time of day', () => {
  it.each([
    ['18:30', 1110],
    ['18.30', 1110],
    ['1830', 1110],
    ['6 pm', 1080],
    ['6:30pm', 1110],
    ['12 am', 0],
    ['12:15 p.m.', 735],
    ['0:05', 5],
    ['9', 540],
    ['18h30', 1110],
    ['24:00', 1440],
    ['１８：３０', 1110],
  ])('reads %s', (text, expected) => {
    expect(minutes(text)).toBe(expected)
  })

  it.each(['25:00', '24:01', '18:60', '13 pm', '0 am', 'noon', '', '-3:00', '18:3', '18:300', '1:2:3'])(
    'refuses %j with a sentence',
    (text) => {
      const read = parseClock(text)
      expect(read.ok).toBe(false)
      if (!read.ok) expect(read.fault.message).toContain('such as 18:30')
    },
  )

  it('comes back from what it is written as', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1440 }), (value) => {
        expect(minutes(clockText(value))).toBe(value)
      }),
    )
  })
})
