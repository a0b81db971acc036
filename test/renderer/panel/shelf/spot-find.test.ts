/** The shelf's search: asked after a rest, the last question's answer is the one that is shown, and only other shoots are near. */
import { put } from '#test/help/put.ts'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { newShoot } from '#core/record/new-records.ts'
import { PageLibrary } from '#test/help/page-library.ts'

let library = new PageLibrary()
vi.mock('#renderer/host/host.ts', () => ({
  ask: (name: string, input: unknown) => library.answer(name, input),
  inShell: false,
}))

const SHOOT = newShoot('shoot', 'lens', 0)
const brief = (id: string, shootId = 'other') => ({ id, shootId, name: id })
const answerOf = (...spots: ReturnType<typeof brief>[]) => ({
  ok: true as const,
  value: { spots, total: spots.length },
})

let stop = (): void => {}

async function session() {
  vi.resetModules()
  const find = await import('#renderer/panel/shelf/spot-find.ts')
  const state = await import('#renderer/state/library/library.ts')
  const { mapBounds } = await import('#renderer/state/session/map-window.ts')
  const { notices } = await import('#renderer/state/library/notices.ts')
  await state.openShoot('shoot')
  stop = find.followSearch()
  return { ...find, ...state, mapBounds, notices }
}

beforeEach(() => {
  vi.useFakeTimers()
  library = new PageLibrary()
  library.put('shoot', SHOOT)
  library.others.set('library.find', () => answerOf())
})

afterEach(() => {
  stop()
  vi.useRealTimers()
})

const questions = (): unknown[] => library.asked.filter(({ name }) => name === 'library.find').map(({ input }) => input)

describe('words', () => {
  test('typed one after another are asked for once, when the keys rest', async () => {
    const page = await session()
    for (const text of ['w', 'wa', 'wall ']) {
      put(page.findText, text)
      await vi.advanceTimersByTimeAsync(50)
    }
    await vi.advanceTimersByTimeAsync(1_000)
    expect(questions()).toEqual([{ words: 'wall', within: null, limit: 100 }])
  })

  test('are shown as found, and nothing once they are taken away', async () => {
    library.others.set('library.find', () => answerOf(brief('a')))
    const page = await session()
    put(page.findText, 'a')
    await vi.advanceTimersByTimeAsync(1_000)
    expect(page.spotsFound.value?.spots.map(({ id }) => id)).toEqual(['a'])
    put(page.findText, '  ')
    await vi.advanceTimersByTimeAsync(1_000)
    expect(page.spotsFound.value).toBeNull()
    expect(questions()).toHaveLength(1)
  })

  test('of an earlier question answered late do not write over the later one’s', async () => {
    const late: { resolve: (answer: ReturnType<typeof answerOf>) => void }[] = []
    library.others.set('library.find', () => new Promise((resolve) => late.push({ resolve })))
    const page = await session()
    put(page.findText, 'first')
    await vi.advanceTimersByTimeAsync(1_000)
    put(page.findText, 'second')
    await vi.advanceTimersByTimeAsync(1_000)
    late[1]?.resolve(answerOf(brief('second')))
    await vi.advanceTimersByTimeAsync(1)
    late[0]?.resolve(answerOf(brief('first')))
    await vi.advanceTimersByTimeAsync(1)
    expect(page.spotsFound.value?.spots.map(({ id }) => id)).toEqual(['second'])
  })

  test('are asked for again when the library has changed', async () => {
    const page = await session()
    put(page.findText, 'wall')
    await vi.advanceTimersByTimeAsync(1_000)
    put(page.seenVersion, page.seenVersion.value + 1)
    await vi.advanceTimersByTimeAsync(1_000)
    expect(questions()).toHaveLength(2)
  })

  test('without end are cut to what the library takes', async () => {
    const page = await session()
    put(page.findText, 'x'.repeat(5_000))
    await vi.advanceTimersByTimeAsync(1_000)
    expect(questions()).toMatchObject([{ words: 'x'.repeat(1_000) }])
  })

  test('that cannot be looked for are told, and what was found before stays', async () => {
    library.others.set('library.find', () => answerOf(brief('a')))
    const page = await session()
    put(page.findText, 'a')
    await vi.advanceTimersByTimeAsync(1_000)
    library.others.set('library.find', () => ({ ok: false, fault: { reason: 'no-host', message: 'nobody answers' } }))
    put(page.findText, 'ab')
    await vi.advanceTimersByTimeAsync(1_000)
    expect(page.notices.value.map(({ text }) => text)).toEqual(['nobody answers'])
    expect(page.spotsFound.value?.spots).toHaveLength(1)
  })
})

describe('what else lies on the map', () => {
  const LOOK = { south: 46, north: 47, west: -34, east: -33 }

  test('is looked for once the map rests, and is of other shoots alone', async () => {
    library.others.set('library.find', () => answerOf(brief('mine', 'shoot'), brief('theirs')))
    const page = await session()
    for (const north of [47, 48, 49]) {
      put(page.mapBounds, { ...LOOK, north })
      await vi.advanceTimersByTimeAsync(100)
    }
    await vi.advanceTimersByTimeAsync(1_000)
    expect(questions()).toEqual([{ words: '', within: { ...LOOK, north: 49 }, limit: 500 }])
    expect(page.alsoNear.value.map(({ id }) => id)).toEqual(['theirs'])
  })

  test('is asked for within the world, however far the map shows beyond it', async () => {
    const page = await session()
    put(page.mapBounds, { ...LOOK, south: -112, north: 95 })
    await vi.advanceTimersByTimeAsync(1_000)
    expect(questions()).toMatchObject([{ within: { south: -90, north: 90 } }])
  })

  test('keeps quiet when it cannot be had: nobody asked', async () => {
    library.others.set('library.find', () => ({ ok: false, fault: { reason: 'no-host', message: 'nobody answers' } }))
    const page = await session()
    put(page.mapBounds, LOOK)
    await vi.advanceTimersByTimeAsync(1_000)
    expect(page.notices.value).toEqual([])
    expect(page.alsoNear.value).toEqual([])
  })

  test('is followed no longer once it was told to stop', async () => {
    const page = await session()
    put(page.mapBounds, LOOK)
    stop()
    await vi.advanceTimersByTimeAsync(1_000)
    expect(questions()).toEqual([])
  })
})
