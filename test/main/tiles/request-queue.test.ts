/** Turns at one server: two at a time, the newest look at the map first, an end to the line. */
import { expect, test } from 'vitest'
import { makeRequestQueue, type QueueTurn } from '#main/tiles/request-queue.ts'

interface Bench {
  readonly order: string[]
  readonly running: () => number
  readonly most: () => number
  readonly wish: (name: string, signal?: AbortSignal) => Promise<QueueTurn<string>>
  readonly finishOne: () => Promise<void>
  readonly later: () => void
}

function bench(longestLine?: number): Bench {
  let time = 0
  let most = 0
  const order: string[] = []
  const open: (() => void)[] = []
  const queue = makeRequestQueue(() => time, longestLine)
  return {
    order,
    running: () => open.length,
    most: () => most,
    wish: (name, signal = new AbortController().signal) =>
      queue.run(async () => {
        order.push(name)
        await new Promise<void>((resolve) => {
          open.push(resolve)
          most = Math.max(most, open.length)
        })
        return name
      }, signal),
    finishOne: async () => {
      open.shift()?.()
      await new Promise((resolve) => {
        setImmediate(resolve)
      })
    },
    later: () => {
      time += 1000
    },
  }
}

test('runs two at a time', async () => {
  const { wish, finishOne, running, most, order } = bench()
  for (const name of ['a', 'b', 'c', 'd', 'e']) void wish(name)
  expect(running()).toBe(2)
  for (let count = 0; count < 5; count += 1) await finishOne()
  expect([order.length, most()]).toEqual([5, 2])
})

test('serves the newest look first, and each look in the order it was asked for', async () => {
  const { wish, finishOne, later, order } = bench()
  for (const name of ['old 1', 'old 2', 'old 3', 'old 4']) void wish(name)
  later()
  for (const name of ['new 1', 'new 2']) void wish(name)
  for (let count = 0; count < 6; count += 1) await finishOne()
  expect(order).toEqual(['old 1', 'old 2', 'new 1', 'new 2', 'old 3', 'old 4'])
})

test('drops the oldest wish when the line is full', async () => {
  const { wish, later } = bench(2)
  void wish('running')
  void wish('running too')
  const oldest = wish('oldest')
  later()
  void wish('newer')
  void wish('newest')
  expect(await oldest).toEqual({ taken: false, why: 'crowded' })
})

test('lets a wish go that nobody has any longer', async () => {
  const { wish, finishOne, order } = bench()
  const left = new AbortController()
  void wish('a')
  void wish('b')
  const gone = wish('c', left.signal)
  left.abort()
  expect(await gone).toEqual({ taken: false, why: 'left' })
  await finishOne()
  expect(order).toEqual(['a', 'b'])
  expect(await wish('d', left.signal)).toEqual({ taken: false, why: 'left' })
})

test('goes on after work that throws', async () => {
  const queue = makeRequestQueue(() => 0)
  const never = new AbortController().signal
  const broken = async (): Promise<string> => {
    throw new Error('a bug')
  }
  await Promise.all([1, 2, 3].map(() => expect(queue.run(broken, never)).rejects.toThrow('a bug')))
  expect(await queue.run(async () => 'fine', never)).toEqual({ taken: true, value: 'fine' })
})
