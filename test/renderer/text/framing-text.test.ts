/** Framing in words: fills and cuts by side. */
import { expect, test } from 'vitest'
import { framingOf } from '#core/frame/framing.ts'
import { cutText, framingText } from '#renderer/text/framing-text.ts'

const depths = { near: 10, far: 12, partlyBehind: false }
const plain = (text: string): string => text.replaceAll('\u{a0}', ' ')

test('whole', () => {
  const framing = framingOf({ left: -9, right: 9, bottom: -6, top: 6, ...depths }, 36, 24)
  expect(plain(framingText(framing, 'width'))).toBe('50 % of the width, whole')
})

test('cut on two sides, each by its share of the thing', () => {
  // 40 mm wide, 2 mm beyond the left edge at -18: 5 %. 20 mm high, 4 mm beyond the top edge at 12: 20 %.
  const framing = framingOf({ left: -20, right: 20, bottom: -4, top: 16, ...depths }, 40, 24)
  expect(cutText(framing)).toBe('cut by 20 % at the top'.replace(' %', '\u{a0}%'))
  const both = framingOf({ left: -22, right: 18, bottom: -4, top: 16, ...depths }, 40, 24)
  expect(plain(cutText(both))).toBe('cut by 5 % on the left and 20 % at the top')
})

test('outside', () => {
  const framing = framingOf({ left: 30, right: 40, bottom: -4, top: 4, ...depths }, 36, 24)
  expect(framingText(framing, 'height')).toBe('outside the frame')
})
