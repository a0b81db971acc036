/** The calendar's keys and its place in the window. */
import { describe, expect, it } from 'vitest'
import { besideButton } from '#renderer/part/beside-button.ts'
import { dayByCalendarKey } from '#renderer/part/calendar-keys.ts'

describe('a key', () => {
  it.each([
    ['ArrowLeft', false, '2027-06-14', '2027-06-13'],
    ['ArrowRight', false, '2027-06-30', '2027-07-01'],
    ['ArrowUp', false, '2027-06-03', '2027-05-27'],
    ['ArrowDown', false, '2027-06-14', '2027-06-21'],
    ['PageUp', false, '2027-03-31', '2027-02-28'],
    ['PageDown', false, '2027-06-14', '2027-07-14'],
    ['PageUp', true, '2028-02-29', '2027-02-28'],
    ['PageDown', true, '2027-06-14', '2028-06-14'],
    ['Home', false, '2027-06-20', '2027-06-14'],
    ['End', false, '2027-06-14', '2027-06-20'],
    ['ArrowLeft', false, '1900-01-01', '1900-01-01'],
    ['PageDown', true, '2100-06-14', '2100-12-31'],
    ['a', false, '2027-06-14', null],
    ['Enter', false, '2027-06-14', null],
  ])('%s with shift %s leads from %s to %s', (key, shift, from, to) => {
    expect(dayByCalendarKey(key, shift, from)).toBe(to)
  })
})

describe('stands', () => {
  const size = { width: 232, height: 240 }
  const view = { width: 733, height: 467 }
  it('above its button where there is room', () => {
    expect(besideButton({ left: 150, top: 380, bottom: 402 }, size, view)).toEqual({ left: 150, top: 135 })
  })
  it('below where there is none above', () => {
    expect(besideButton({ left: 150, top: 100, bottom: 122 }, size, view)).toEqual({ left: 150, top: 127 })
  })
  it.each([
    { left: 720, top: 200, bottom: 222 },
    { left: -30, top: 230, bottom: 252 },
    { left: 720, top: 460, bottom: 482 },
    { left: 10, top: -60, bottom: -38 },
  ])('within the window wherever the button is: %o', (button) => {
    const { left, top } = besideButton(button, size, view)
    expect(left).toBeGreaterThanOrEqual(4)
    expect(left + size.width).toBeLessThanOrEqual(view.width - 4)
    expect(top).toBeGreaterThanOrEqual(4)
    expect(top + size.height).toBeLessThanOrEqual(view.height - 4)
  })
})
