/** Results are given again for the same things, by identity, and no more than a few are held. */
import { expect, test, vi } from 'vitest'
import { recalled } from '#renderer/job/recalled.ts'

test('the same things give the same object, others another', () => {
  const work = vi.fn((one: object, other: number) => ({ one, other }))
  const ask = recalled(2, work)
  const thing = {}
  const first = ask(thing, 1)
  expect(ask(thing, 1)).toBe(first)
  expect(ask({}, 1)).not.toBe(first)
  expect(work).toHaveBeenCalledTimes(2)
})

test('what was asked too long ago is worked out again', () => {
  const work = vi.fn((number: number) => [number])
  const ask = recalled(2, work)
  const first = ask(1)
  ask(2)
  ask(3)
  expect(ask(1)).toEqual(first)
  expect(ask(1)).not.toBe(first)
  expect(work).toHaveBeenCalledTimes(4)
})
