/** Framing in words: how much a thing fills, and what of it is cut on which side. */
import type { FrameAxis } from '#core/frame/fill.ts'
import { type Framing, LEAST_CUT } from '#core/frame/framing.ts'
import { share } from './figure.ts'
import { words } from '#renderer/words/en.ts'

/** "62 % of the width". */
export function fillText(framing: Framing, axis: FrameAxis): string {
  const { answers } = words
  return axis === 'width'
    ? answers.ofTheWidth(share(framing.widthFill))
    : answers.ofTheHeight(share(framing.heightFill))
}

/** "whole", "cut by 3 % on the right and 8 % at the top", "outside the frame". */
export function cutText(framing: Framing): string {
  const { answers } = words
  if (!framing.inFrame) return answers.notInFrame
  const sides: string[] = []
  if (framing.cutLeft >= LEAST_CUT) sides.push(answers.cutLeft(share(framing.cutLeft)))
  if (framing.cutRight >= LEAST_CUT) sides.push(answers.cutRight(share(framing.cutRight)))
  if (framing.cutTop >= LEAST_CUT) sides.push(answers.cutTop(share(framing.cutTop)))
  if (framing.cutBottom >= LEAST_CUT) sides.push(answers.cutBottom(share(framing.cutBottom)))
  if (sides.length === 0) return answers.whole
  const last = sides.at(-1) ?? ''
  const before = sides.slice(0, -1).join(', ')
  return answers.cut(before === '' ? last : `${before}${answers.and}${last}`)
}

export function framingText(framing: Framing, axis: FrameAxis): string {
  return framing.inFrame ? `${fillText(framing, axis)}, ${cutText(framing)}` : words.answers.notInFrame
}
