/** Turns: so many at once and no more, in the order asked, and nobody waits for a turn that was given up. */
import { describe, expect, test } from 'vitest'
import { makeTurns } from '#renderer/job/turns.ts'

const forEver = new AbortController().signal

function work() {
  const begun: string[] = []
  const ends = new Map<string, () => void>()
  return {
    begun,
    end: (name: string) => ends.get(name)?.(),
    named: (name: string) => async () => {
      begun.push(name)
      await new Promise<void>((resolve) => {
        ends.set(name, resolve)
      })
      return name
    },
  }
}

/** Lets everything that is ready go on. */
const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))

describe('turns', () => {
  test('are so many at once, first come first served', async () => {
    const turns = makeTurns(2)
    const { begun, end, named } = work()
    const all = ['a', 'b', 'c', 'd'].map((name) => turns.run(named(name), forEver))
    await settle()
    expect(begun).toEqual(['a', 'b'])
    end('b')
    await settle()
    expect(begun).toEqual(['a', 'b', 'c'])
    end('a')
    end('c')
    await settle()
    end('d')
    expect(await Promise.all(all)).toEqual(['a', 'b', 'c', 'd'])
  })

  test('that fail make room as well, and are told', async () => {
    const turns = makeTurns(1)
    const failing = turns.run(() => Promise.reject(new Error('no')), forEver)
    const next = turns.run(async () => 'next', forEver)
    await expect(failing).rejects.toThrow('no')
    expect(await next).toBe('next')
  })

  test('given up in line never begin', async () => {
    const turns = makeTurns(1)
    const { begun, end, named } = work()
    const left = new AbortController()
    const first = turns.run(named('a'), forEver)
    const second = turns.run(named('b'), left.signal)
    const third = turns.run(named('c'), forEver)
    left.abort()
    await expect(second).rejects.toThrow('abort')
    end('a')
    await first
    await settle()
    expect(begun).toEqual(['a', 'c'])
    end('c')
    await third
  })

  test('given up before they are asked for neither', async () => {
    await expect(makeTurns(1).run(async () => 1, AbortSignal.abort())).rejects.toThrow('abort')
  })
})
