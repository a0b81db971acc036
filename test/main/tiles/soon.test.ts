/** A page's wish for a tile holds its connection for a moment only; what it wished for is fetched on meanwhile. */
import { describe, expect, test } from 'vitest'
import type { TileAnswer } from '#main/tiles/answer.ts'
import { answerSoon } from '#main/tiles/soon.ts'

const PICTURE: TileAnswer = {
  status: 200,
  type: 'image/png',
  body: new Uint8Array([1]),
  maxAgeSeconds: 60,
  retryAfterSeconds: null,
}

function slowWork() {
  const { promise, resolve } = Promise.withResolvers<TileAnswer>()
  const signals: AbortSignal[] = []
  return {
    signals,
    come: () => resolve(PICTURE),
    begin: (left: AbortSignal): Promise<TileAnswer> => {
      signals.push(left)
      return promise
    },
  }
}

function aborted(signal: AbortSignal | undefined): Promise<boolean> {
  return new Promise((resolve) => {
    if (signal?.aborted) resolve(true)
    signal?.addEventListener('abort', () => resolve(true))
  })
}

test('what is ready is answered as it is', async () => {
  expect(await answerSoon()('a', async () => PICTURE)).toBe(PICTURE)
})

test('what comes in time is waited for', async () => {
  const work = slowWork()
  const wish = answerSoon({ patienceMs: 60_000 })('a', work.begin)
  work.come()
  expect(await wish).toBe(PICTURE)
})

describe('what does not come in time', () => {
  test('is answered in time as under way, fetched on, and there when asked again', async () => {
    const work = slowWork()
    const soon = answerSoon({ patienceMs: 1, lingerMs: 60_000 })
    const first = await soon('a', work.begin)
    expect([first.status, first.retryAfterSeconds, first.maxAgeSeconds]).toEqual([202, 1, 0])
    expect(JSON.parse(Buffer.from(first.body).toString())).toMatchObject({ reason: 'under-way' })
    expect(work.signals[0]?.aborted).toBe(false)
    work.come()
    expect(await soon('a', work.begin)).toBe(PICTURE)
  })

  test('is answered at once when it is asked for again', async () => {
    const work = slowWork()
    // Patience beyond the test's own time, but for the first wish.
    const quick = { patienceMs: 1, lingerMs: 60_000 }
    const soon = answerSoon(quick)
    await soon('a', work.begin)
    quick.patienceMs = 600_000
    for (let time = 0; time < 5; time += 1) expect((await soon('a', work.begin)).status).toBe(202)
    // Each asking stands in for the one before: the newest alone is left waiting.
    expect(work.signals.map((signal) => signal.aborted)).toEqual([true, true, true, true, true, false])
  })

  test('is given up when nobody asks for it again', async () => {
    const work = slowWork()
    await answerSoon({ patienceMs: 1, lingerMs: 1 })('a', work.begin)
    expect(await aborted(work.signals[0])).toBe(true)
  })

  test('is given up at once when its page leaves while it waits', async () => {
    const work = slowWork()
    const left = new AbortController()
    const wish = answerSoon({ patienceMs: 600_000 })('a', work.begin, left.signal)
    left.abort()
    expect(await aborted(work.signals[0])).toBe(true)
    work.come()
    await wish
  })

  test('stays wished for when its page has gone on after the answer', async () => {
    const work = slowWork()
    const left = new AbortController()
    await answerSoon({ patienceMs: 1, lingerMs: 60_000 })('a', work.begin, left.signal)
    left.abort()
    expect(work.signals[0]?.aborted).toBe(false)
  })
})
