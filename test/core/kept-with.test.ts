/** What was made of a thing is kept until it is asked for with something else, and for each thing by itself. */
import { expect, it } from 'vitest'
import { keptWith } from '#core/kept-with.ts'

it('makes again only for another thing or with another value, and keeps what is null too', () => {
  const asked: string[] = []
  const made = keptWith(({ name }: { readonly name: string }, by: number) => {
    asked.push(`${name} ${by}`)
    return by === 0 ? null : { name, by }
  })
  const [one, other] = [{ name: 'one' }, { name: 'other' }]
  const first = made(one, 1)
  expect(made(one, 1)).toBe(first)
  expect(made(other, 1)).toEqual({ name: 'other', by: 1 })
  expect(made(one, 1)).toBe(first)
  expect(made(one, 0)).toBeNull()
  expect(made(one, 0)).toBeNull()
  expect(made(one, 1)).toEqual(first)
  expect(asked).toEqual(['one 1', 'other 1', 'one 0', 'one 1'])
})
