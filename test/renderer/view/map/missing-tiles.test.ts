/** Missing tiles are counted, asked for again with growing pauses, and at once when the network is back. */
import { afterEach, describe, expect, it } from 'vitest'
import { type Clock, missingTiles, pauseBefore, retryMissing } from '#renderer/view/map/missing-tiles.ts'

/** A clock that a test winds on by itself. */
function handClock(): Clock & { readonly waits: number[]; ring: () => void } {
  let due: (() => void) | null = null
  const waits: number[] = []
  return {
    waits,
    set(run, milliseconds) {
      due = run
      waits.push(milliseconds)
      return waits.length
    },
    clear() {
      due = null
    },
    ring() {
      const run = due
      due = null
      run?.()
    },
  }
}

const begun: Pick<ReturnType<typeof retryMissing>, 'stop'>[] = []

afterEach(() => {
  for (const retry of begun.splice(0)) retry.stop()
})

describe('retryMissing', () => {
  it('counts what is missing and asks for all of it after a pause, the next pause twice as long', () => {
    const clock = handClock()
    const asked: string[] = []
    const retry = retryMissing<string>((tile) => {
      asked.push(tile)
      retry.failed(tile)
    }, clock)
    begun.push(retry)
    retry.failed('a')
    retry.failed('b')
    expect(missingTiles.value).toBe(2)
    expect(asked).toEqual([])
    clock.ring()
    clock.ring()
    expect(asked).toEqual(['a', 'b', 'a', 'b'])
    expect(clock.waits).toEqual([4000, 8000, 16_000])
  })

  it('asks at once when the network is back, and begins again with short pauses', () => {
    const clock = handClock()
    const asked: string[] = []
    const retry = retryMissing<string>((tile) => asked.push(tile), clock)
    begun.push(retry)
    retry.failed('a')
    clock.ring()
    retry.failed('a')
    retry.now()
    expect(asked).toEqual(['a', 'a'])
    retry.settled('a')
    expect(missingTiles.value).toBe(0)
    retry.failed('b')
    expect(clock.waits.at(-1)).toBe(4000)
  })

  it('forgets what is out of sight', () => {
    const clock = handClock()
    const asked: string[] = []
    const retry = retryMissing<string>((tile) => asked.push(tile), clock)
    begun.push(retry)
    retry.failed('a')
    retry.settled('a')
    clock.ring()
    expect(asked).toEqual([])
  })

  it('never waits longer than two minutes', () => {
    expect(pauseBefore(20)).toBe(120)
  })
})
