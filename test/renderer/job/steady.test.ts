/** A computed value that comes out as it was is the same object, so that nothing after it is worked out again. */
import { computed, signal } from '@preact/signals'
import { expect, test } from 'vitest'
import { steady } from '#renderer/job/steady.ts'

test('the object stays while its figures do, and goes with them', () => {
  const from = signal({ left: 0, right: 100 })
  const size = steady(() => ({ width: from.value.right - from.value.left }))
  let drawn = 0
  const picture = computed(() => {
    drawn += 1
    return `${size.value.width} wide`
  })
  expect(picture.value).toBe('100 wide')
  const before = size.value
  from.value = { left: 10, right: 110 }
  expect(picture.value).toBe('100 wide')
  expect(size.value).toBe(before)
  expect(drawn).toBe(1)
  from.value = { left: 10, right: 120 }
  expect(picture.value).toBe('110 wide')
  expect(drawn).toBe(2)
})

test('lists are told apart by length and order, null from an object', () => {
  const list = signal<readonly number[] | null>([1, 2])
  const kept = steady(() => (list.value === null ? null : [...list.value]))
  const first = kept.value
  list.value = [1, 2]
  expect(kept.value).toBe(first)
  list.value = [2, 1]
  expect(kept.value).toEqual([2, 1])
  list.value = null
  expect(kept.value).toBeNull()
  list.value = []
  expect(kept.value).toEqual([])
})
