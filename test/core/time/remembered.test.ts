/** Answers that are remembered are given again, no more than so many, and a fault is no answer. */
import { expect, test, vi } from 'vitest'
import { remembered } from '#core/time/remembered.ts'

test('each question is worked out once while there is room', () => {
  const work = vi.fn((number: number) => number * 2)
  const ask = remembered(3, work)
  expect([1, 2, 3, 1, 2, 3].map(ask)).toEqual([2, 4, 6, 2, 4, 6])
  expect(work).toHaveBeenCalledTimes(3)
})

test('beyond it begins afresh and still answers rightly', () => {
  const work = vi.fn((number: number) => -number)
  const ask = remembered(2, work)
  expect([1, 2, 3, 1, 3].map(ask)).toEqual([-1, -2, -3, -1, -3])
  expect(work).toHaveBeenCalledTimes(4)
})

test('an answer that is nothing is remembered, one that failed is not', () => {
  const work = vi.fn((key: string) => {
    if (key === 'bad') throw new Error('no answer')
    return undefined
  })
  const ask = remembered(5, work)
  for (const key of ['good', 'good']) expect(ask(key)).toBeUndefined()
  for (let time = 0; time < 2; time++) expect(() => ask('bad')).toThrow('no answer')
  expect(work).toHaveBeenCalledTimes(3)
})
