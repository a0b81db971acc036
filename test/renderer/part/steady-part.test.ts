/** A steady part is drawn again when something that it is given is another, and not otherwise. */
import { expect, test } from 'vitest'
import { steadyPart } from '#renderer/part/steady-part.tsx'

interface Given {
  readonly place: object
  readonly name: string
  readonly note?: string
}

const Part = steadyPart(({ name }: Given) => name)
const place = {}

test.each([
  ['the same things', { place, name: 'a' }, false],
  ['an equal thing that is another', { place: {}, name: 'a' }, true],
  ['another word', { place, name: 'b' }, true],
  ['one thing more', { place, name: 'a', note: 'n' }, true],
])('%s', (_what, next: Given, again) => {
  const part = new Part({ place, name: 'a' })
  expect(part.shouldComponentUpdate(next)).toBe(again)
})

test('one thing less', () => {
  expect(new Part({ place, name: 'a', note: 'n' }).shouldComponentUpdate({ place, name: 'a' })).toBe(true)
})
