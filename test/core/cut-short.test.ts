/** Texts within a sentence: whole as long as they are short. */
import { expect, test } from 'vitest'
import { cutShort } from '#core/cut-short.ts'

test('what is short stays, what is long shows its beginning and that it goes on', () => {
  expect(cutShort('14 Jun')).toBe('14 Jun')
  expect(cutShort('x'.repeat(40))).toBe('x'.repeat(40))
  expect(cutShort(`${'x'.repeat(40)}y`)).toBe(`${'x'.repeat(40)}…`)
})
