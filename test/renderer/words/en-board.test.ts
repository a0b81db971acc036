/** The sentence on figures that were beyond what can be: each by its name, as a person says it. */
import { expect, test } from 'vitest'
import { boardWords } from '#renderer/words/en-board.ts'

const { mended } = boardWords.files

test('one figure', () => {
  expect(mended([{ field: 'shoot.subject.length', now: 0.01 }])).toBe(
    '1 figure was out of range and set to the nearest possible: subject, length 0.01. Check what was meant.',
  )
})

test('more than three figures', () => {
  const figures = ['landmarks.0.baseElevation', 'shot.focalLength', 'spots.12.stop.elevation', 'refraction'].map(
    (field) => ({ field, now: 9_000 }),
  )
  expect(mended(figures)).toBe(
    '4 figures were out of range and set to the nearest possible: landmarks 1, base elevation 9000; shot, focal length 9000; stop, elevation 9000; and more. Check what was meant.',
  )
})
