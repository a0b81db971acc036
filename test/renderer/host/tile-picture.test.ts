/** Pictures of tiles: three asked for at once, an unready one asked for again until it is there, one given up never again. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { tilePicture } from '#renderer/host/tile-picture.ts'

let asked: string[]
let answers: ((path: string) => Response | Promise<Response>)[]

beforeEach(() => {
  asked = []
  answers = []
  vi.useFakeTimers()
  vi.stubGlobal('fetch', async (path: string, { signal }: { signal: AbortSignal }) => {
    signal.throwIfAborted()
    asked.push(path)
    return (answers.shift() ?? (() => new Response('picture')))(path)
  })
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

const underWay = (): Response => new Response('{}', { status: 202, headers: { 'Retry-After': '1' } })
const forEver = (): AbortSignal => new AbortController().signal

test('no more than three are under way at once', async () => {
  let go: () => void = () => undefined
  const held = new Promise<void>((resolve) => {
    go = resolve
  })
  answers = Array.from({ length: 8 }, () => async () => {
    await held
    return new Response('picture')
  })
  const all = Array.from({ length: 8 }, (_, n) => tilePicture(`/${n}`, forEver()))
  await vi.advanceTimersByTimeAsync(0)
  expect(asked).toEqual(['/0', '/1', '/2'])
  go()
  expect((await Promise.all(all)).every((picture) => picture !== null)).toBe(true)
  expect(asked).toHaveLength(8)
})

describe('an unready one', () => {
  test('is asked for again with growing pauses until it is there', async () => {
    answers = [underWay, underWay, underWay, underWay, underWay]
    const began = Date.now()
    const at: number[] = []
    const real = fetch
    vi.stubGlobal('fetch', (...words: Parameters<typeof fetch>) => {
      at.push((Date.now() - began) / 1000)
      return real(...words)
    })
    const slow = tilePicture('/slow', forEver())
    await vi.advanceTimersByTimeAsync(60_000)
    expect(await (await slow)?.text()).toBe('picture')
    expect(at).toEqual([0, 1, 3, 7, 12, 17])
  })

  test('keeps no other from its turn while it waits', async () => {
    answers = [underWay, underWay, underWay]
    const left = new AbortController()
    const slow = [0, 1, 2].map((n) => tilePicture(`/slow${n}`, left.signal))
    await vi.advanceTimersByTimeAsync(0)
    expect(await (await tilePicture('/quick', forEver()))?.text()).toBe('picture')
    left.abort()
    await Promise.allSettled(slow)
  })

  test('given up is not asked for again', async () => {
    answers = [underWay]
    const left = new AbortController()
    const wish = tilePicture('/slow', left.signal)
    await vi.advanceTimersByTimeAsync(0)
    left.abort()
    await expect(wish).rejects.toThrow('abort')
    await vi.advanceTimersByTimeAsync(60_000)
    expect(asked).toEqual(['/slow'])
  })
})

test.each([404, 502, 504])('status %i is no picture', async (status) => {
  answers = [() => new Response('{}', { status })]
  expect(await tilePicture('/x', forEver())).toBeNull()
  expect(asked).toHaveLength(1)
})

test('no program behind the page is no picture', async () => {
  answers = [() => Promise.reject(new TypeError('fetch failed'))]
  expect(await tilePicture('/x', forEver())).toBeNull()
})
