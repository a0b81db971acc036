/** What is done with spots on the shelf: each is one edit, lands where it belongs, and comes back whole by one undo. */
import { eventually } from '#test/help/eventually.ts'
import { put } from '#test/help/put.ts'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { newLandmark, newShoot, newSpot } from '#core/record/new-records.ts'
import type { Spot } from '#core/record/spot.ts'
import { words } from '#renderer/words/en.ts'
import { PageLibrary } from '#test/help/page-library.ts'

let library = new PageLibrary()
vi.mock('#renderer/host/host.ts', () => ({
  ask: (name: string, input: unknown) => library.answer(name, input),
  inShell: false,
}))

vi.stubGlobal('matchMedia', () => Object.assign(new EventTarget(), { matches: false }))

const SHOOT = newShoot('shoot', 'lens', 0)
const AT = { lat: 46.4, lon: -33.6 }
const WHEN = Date.UTC(2026, 5, 14, 15)
function spotAt(id: string, rank: number): Spot {
  return { ...newSpot(id, SHOOT, AT, rank, WHEN), name: id }
}

/** Fresh modules for every test: their signals are the session. */
async function session() {
  vi.resetModules()
  const acts = await import('#renderer/state/act/spot-acts.ts')
  const { layFirstSpot } = await import('#renderer/state/act/first-spot-acts.ts')
  const state = await import('#renderer/state/library/library.ts')
  const { undo, redo } = await import('#renderer/state/library/history.ts')
  const { notices } = await import('#renderer/state/library/notices.ts')
  const page = await import('#renderer/state/session/navigation.ts')
  const chosen = await import('#renderer/state/session/picked.ts')
  const map = await import('#renderer/state/session/map-window.ts')
  await state.openShoot('shoot')
  return { ...acts, layFirstSpot, ...state, ...page, ...chosen, ...map, undo, redo, notices }
}

beforeEach(() => {
  library = new PageLibrary()
  library.put('shoot', SHOOT)
  for (const [index, id] of ['one', 'two', 'three'].entries()) library.put('spot', spotAt(id, index + 1))
})

const shelf = (): string[] => library.spots().map(({ name, id }) => name || id)

describe('a new spot', () => {
  test('comes last, on the board, at the middle of the map, at the hour that is at work', async () => {
    const page = await session()
    put(page.mapBounds, { south: 10, north: 12, west: 20, east: 24 })
    await page.addSpot()
    const added = library.spots().at(-1)
    expect(library.spots()).toHaveLength(4)
    expect(added?.stop.at.lat).toBeCloseTo(11, 1)
    expect(added?.stop.at.lon).toBeCloseTo(22, 9)
    expect(added?.when).toBe(WHEN)
    expect(page.spotId.value).toBe(added?.id)
  })

  test('begins where the map is flying to, not where it still is', async () => {
    const page = await session()
    put(page.mapBounds, { south: 10, north: 12, west: 20, east: 24 })
    put(page.headedFor, { lat: -5, lon: 7 })
    await page.addSpot()
    expect(library.spots().at(-1)?.stop.at).toEqual({ lat: -5, lon: 7 })
  })

  test('across 180 degrees begins in the middle of what is seen', async () => {
    const page = await session()
    put(page.mapBounds, { south: -1, north: 1, west: 179, east: -179 })
    await page.addSpot()
    expect(Math.abs(library.spots().at(-1)?.stop.at.lon ?? 0)).toBeCloseTo(180, 6)
  })

  test('begins beside the spot at work while there is no map', async () => {
    const page = await session()
    await page.addSpot()
    expect(library.spots().at(-1)?.stop.at).toEqual(AT)
  })

  describe('of an empty shoot', () => {
    const NOON = Date.UTC(2026, 5, 14, 12)
    const MIDNIGHT = Date.UTC(2026, 5, 14, 0)
    const ZONE = { ok: true, value: { zones: ['UTC'] } } as const
    const TOWER = newLandmark('tower', 'upright', { lat: 47, lon: 9 })
    const empty = (now: number, shoot: Shoot = SHOOT) => {
      vi.useFakeTimers({ now, toFake: ['Date'] })
      library.records.clear()
      library.put('shoot', shoot)
      library.others.set('places.zones', () => ZONE)
      return session()
    }
    afterEach(() => vi.useRealTimers())

    test('is planned for now by day, to the minute', async () => {
      const page = await empty(NOON + 12_345)
      await page.addSpot()
      expect(library.spots().map(({ when }) => when)).toEqual([NOON])
    })

    test('is never planned for now at night', async () => {
      const page = await empty(MIDNIGHT)
      await page.addSpot()
      const [added] = library.spots()
      // The middle of the equator's twelve hours, at the meridian.
      expect(Math.abs((added?.when ?? 0) - NOON)).toBeLessThan(20 * 60_000)
    })

    test('is laid to suit its landmark, with its light, as one edit', async () => {
      const page = await empty(MIDNIGHT, { ...SHOOT, landmarks: [TOWER] })
      put(page.mapBounds, { south: 46.9, north: 47.1, west: 8.9, east: 9.1 })
      await page.addSpot()
      const [added] = library.spots()
      expect(geodesicDistance(added?.stop.at ?? AT, { lat: 47, lon: 9 })).toBeLessThan(500)
      expect(added?.landmarkId).toBe('tower')
      expect(library.shoots()[0]?.light.landmark).toBe('lit')
      expect(library.batches).toHaveLength(1)
      await page.undo()
      expect(library.spots()).toEqual([])
      expect(library.shoots()[0]?.light.landmark).toBeNull()
    })

    test('comes to the middle of a map that looks at another country than the landmark’s', async () => {
      const page = await empty(NOON, { ...SHOOT, landmarks: [TOWER] })
      put(page.headedFor, { lat: -5, lon: 7 })
      await page.addSpot()
      expect(library.spots()[0]?.stop.at).toEqual({ lat: -5, lon: 7 })
    })

    test('is laid by its landmark from the steps, wherever the map looks', async () => {
      const page = await empty(NOON, { ...SHOOT, landmarks: [TOWER] })
      put(page.headedFor, { lat: -5, lon: 7 })
      await page.layFirstSpot()
      expect(geodesicDistance(library.spots()[0]?.stop.at ?? AT, { lat: 47, lon: 9 })).toBeLessThan(500)
    })
  })

  test('after the first goes by the map and the hour at work, landmark or not', async () => {
    library.put('shoot', { ...SHOOT, landmarks: [newLandmark('tower', 'upright', { lat: 11, lon: 22.5 })] })
    const page = await session()
    put(page.mapBounds, { south: 10, north: 12, west: 20, east: 24 })
    await page.addSpot()
    const added = library.spots().at(-1)
    expect(added?.stop.at.lon).toBeCloseTo(22, 9)
    expect(added?.when).toBe(WHEN)
  })

  test('is not made where no shoot is open', async () => {
    library.records.clear()
    const page = await session()
    await page.addSpot()
    expect(library.batches).toEqual([])
  })

  test('is gone by undo and back by redo, the same', async () => {
    const page = await session()
    await page.addSpot()
    const added = library.spots().at(-1)
    await page.undo()
    expect(shelf()).toEqual(['one', 'two', 'three'])
    await page.redo()
    expect(library.spots().at(-1)?.id).toBe(added?.id)
  })
})

describe('a copy', () => {
  test('lies right below its spot, under a name that says so, as an idea, on the board', async () => {
    library.put('spot', { ...spotAt('one', 1), status: 'chosen', notes: 'Key at the office.' })
    const page = await session()
    const [one] = page.spots.value
    await page.copySpot(one as Spot)
    expect(shelf()).toEqual(['one', words.board.shelf.copyName('one'), 'two', 'three'])
    const copy = library.spots()[1]
    expect(copy).toMatchObject({ status: 'idea', notes: 'Key at the office.', revision: 1 })
    expect(copy?.id).not.toBe('one')
    expect(page.spotId.value).toBe(copy?.id)
  })

  test('of the last spot comes last', async () => {
    const page = await session()
    await page.copySpot(page.spots.value[2] as Spot)
    expect(shelf().at(-1)).toBe(words.board.shelf.copyName('three'))
  })

  test('has a name no longer than may be stored', async () => {
    library.put('spot', { ...spotAt('one', 1), name: 'x'.repeat(9_999) })
    const page = await session()
    await page.copySpot(page.spots.value[0] as Spot)
    expect(library.spots()[1]?.name).toHaveLength(10_000)
  })

  test('that is kept leaves the board with the spot itself, and undo takes away the copy alone', async () => {
    const page = await session()
    await page.keepSpot(page.spots.value[1] as Spot)
    expect(page.spotId.value).toBe('two')
    const kept = words.board.shelf.keptName('two')
    expect(shelf()).toEqual(['one', 'two', kept, 'three'])
    const [notice] = page.notices.value
    expect(notice?.text).toBe(words.board.shelf.kept(kept))
    notice?.action?.run()
    await eventually(() => expect(shelf()).toEqual(['one', 'two', 'three']))
  })
})

describe('a spot that is deleted', () => {
  test.each([
    ['one', 'two'],
    ['two', 'three'],
    ['three', 'two'],
  ])('%s: the board goes on with %s', async (gone, next) => {
    const page = await session()
    put(page.spotId, gone)
    await page.deleteSpot(page.spots.value.find(({ id }) => id === gone) as Spot)
    expect(page.spotId.value).toBe(next)
    expect(shelf()).not.toContain(gone)
  })

  test('while another is at work leaves that one on the board', async () => {
    const page = await session()
    put(page.spotId, 'three')
    await page.deleteSpot(page.spots.value[0] as Spot)
    expect(page.spotId.value).toBe('three')
  })

  test('is told with a way back, which puts it where it lay', async () => {
    const page = await session()
    await page.deleteSpot(page.spots.value[1] as Spot)
    const [notice] = page.notices.value
    expect(notice?.text).toBe(words.board.shelf.deleted('two'))
    notice?.action?.run()
    await eventually(() => expect(shelf()).toEqual(['one', 'two', 'three']))
  })

  test('is picked no more; the last one leaves an empty board', async () => {
    const page = await session()
    put(page.pickedIds, ['one', 'two'])
    for (const spot of page.spots.value) await page.deleteSpot(spot)
    expect(page.pickedIds.value).toEqual([])
    expect(page.spotId.value).toBeNull()
  })
})

describe('the order', () => {
  test.each([
    ['one', 1, ['two', 'one', 'three']],
    ['one', 2, ['two', 'three', 'one']],
    ['three', -1, ['one', 'three', 'two']],
    ['three', 5, ['one', 'two', 'three']],
    ['one', -1, ['one', 'two', 'three']],
  ])('%s moved by %d', async (id, step, order) => {
    const page = await session()
    await page.moveBy(id, step)
    expect(shelf()).toEqual(order)
    expect(page.spots.value.map(({ name }) => name)).toEqual(order)
  })

  test('of a spot dropped on another changes one record', async () => {
    const page = await session()
    await page.placeSpot('three', 0)
    expect(shelf()).toEqual(['three', 'one', 'two'])
    expect(library.batches.map((batch) => batch.map(({ id }) => id))).toEqual([['three']])
  })

  test('that stays as it is saves nothing', async () => {
    const page = await session()
    await page.placeSpot('two', 1)
    await page.placeSpot('nobody', 0)
    expect(library.batches).toEqual([])
  })
})

describe('spots picked for side by side', () => {
  test('are four at most, the fifth is told, and a pick is taken back by a second press', async () => {
    for (const [index, id] of ['four', 'five'].entries()) library.put('spot', spotAt(id, index + 4))
    const page = await session()
    for (const id of ['one', 'two', 'three', 'four', 'five']) page.togglePick(id)
    expect(page.pickedIds.value).toEqual(['one', 'two', 'three', 'four'])
    expect(page.notices.value.map(({ text }) => text)).toEqual([words.board.shelf.pickFull])
    page.togglePick('two')
    page.togglePick('five')
    expect(page.pickedIds.value).toEqual(['one', 'three', 'four', 'five'])
  })

  test('that an undo took off the shelf do not count', async () => {
    const page = await session()
    put(page.pickedIds, ['gone', 'lost', 'away', 'off'])
    page.togglePick('one')
    expect(page.pickedIds.value).toEqual(['one'])
  })
})
