/** What a field refuses, and the sentence it says. */
import { expect, test } from 'vitest'
import { parseFigure } from '#core/units/figure.ts'
import { withinLimits } from '#renderer/part/limits.ts'

const SIZE = { least: 0, most: 1000, moreThanLeast: true }

function refusal(text: string): string {
  const read = withinLimits(parseFigure(text), 'Length', SIZE, (value) => `${value} m`)
  return read.ok ? 'taken' : read.fault.message
}

test('sizes of nothing, below nothing, beyond all and no number are refused by name', () => {
  expect(refusal('0')).toBe('Length must be more than 0 m.')
  expect(refusal('-2')).toBe('Length must be more than 0 m.')
  expect(refusal('1000.1')).toBe('Length must be 1000 m or less.')
  expect(refusal('')).toBe('Length cannot be left empty. Write a number, such as 2.5.')
  expect(refusal('long')).toMatch(/^"long" is not a number/u)
})

test('the ends themselves', () => {
  expect(refusal('1000')).toBe('taken')
  expect(refusal('0,001')).toBe('taken')
  const read = withinLimits(parseFigure('0'), 'Height', { least: 0, most: 1 }, String)
  expect(read.ok).toBe(true)
})
