/** Of requests that come faster than they can be worked on, the newest is, one at a time, and a fault ends only its own. */
import { expect, test, vi } from 'vitest'
import { newestOnly } from '#renderer/job/newest-only.ts'

/** `later` in the test's hand: what was put off runs when told. */
function putOff() {
  const turns: (() => void)[] = []
  return {
    later: (turn: () => void): void => void turns.push(turn),
    run: async (): Promise<void> => {
      for (const turn of turns.splice(0)) turn()
      await Promise.resolve()
      await Promise.resolve()
    },
  }
}

test('of those that came before their turn only the newest is worked on', async () => {
  const { later, run } = putOff()
  const work = vi.fn()
  const hear = newestOnly<{ turn: number }>({ work, failed: vi.fn(), later })
  for (const turn of [1, 2, 3]) hear({ turn })
  expect(work).not.toHaveBeenCalled()
  await run()
  expect(work.mock.calls).toEqual([[{ turn: 3 }]])
  await run()
  hear({ turn: 4 })
  await run()
  expect(work.mock.calls).toEqual([[{ turn: 3 }], [{ turn: 4 }]])
})

test('while one is at work the newest of those that come waits for its end', async () => {
  const { later, run } = putOff()
  const ends: (() => void)[] = []
  const begun: number[] = []
  const work = ({ turn }: { readonly turn: number }): Promise<void> => {
    begun.push(turn)
    return new Promise((end) => ends.push(end))
  }
  const hear = newestOnly({ work, failed: vi.fn(), later })
  hear({ turn: 1 })
  await run()
  hear({ turn: 2 })
  hear({ turn: 3 })
  await run()
  expect(begun).toEqual([1])
  ends[0]?.()
  await run()
  await run()
  expect(begun).toEqual([1, 3])
})

test('what fails says why, and the next is worked on', async () => {
  const { later, run } = putOff()
  const failed = vi.fn()
  const done: number[] = []
  const hear = newestOnly<{ turn: number }>({
    work: ({ turn }) => {
      if (turn === 1) throw new Error('no canvas')
      done.push(turn)
    },
    failed,
    later,
  })
  hear({ turn: 1 })
  await run()
  expect(failed.mock.calls).toEqual([[{ say: 'failed', turn: 1, message: 'no canvas' }]])
  hear({ turn: 2 })
  await run()
  expect(done).toEqual([2])
})
