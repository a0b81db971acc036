/** The marks of cuts in the frame: there where the words tell of a cut, and only there. */
import { expect, test } from 'vitest'
import { type Framing, LEAST_CUT, framingOf } from '#core/frame/framing.ts'
import { cutText } from '#renderer/text/framing-text.ts'
import { cutsOf } from '#renderer/view/lens-view/guides.tsx'
import { words } from '#renderer/words/en.ts'

const INSIDE = framingOf({ left: -9, right: 9, bottom: -6, top: 6, near: 10, far: 12, partlyBehind: false }, 36, 24)
const CUTS = ['cutLeft', 'cutRight', 'cutTop', 'cutBottom'] as const

test.each(CUTS)('a mark for %s from the very share on at which the words tell of it', (cut) => {
  const told = [0, LEAST_CUT / 2, LEAST_CUT, LEAST_CUT * 2].map((amount): readonly [boolean, boolean] => {
    const framing: Framing = { ...INSIDE, [cut]: amount }
    return [cutText(framing) !== words.answers.whole, cutsOf(framing).length === 1]
  })
  expect(told).toEqual([
    [false, false],
    [false, false],
    [true, true],
    [true, true],
  ])
})
