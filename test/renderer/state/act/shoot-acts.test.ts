/** What is done with shoots and landmarks: one edit each, with its spots, and undo brings all of it back. */
import { eventually } from '#test/help/eventually.ts'
import { put } from '#test/help/put.ts'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { newLandmark, newShoot, newSpot } from '#core/record/new-records.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { firstStepsWords } from '#renderer/words/en-first-steps.ts'
import { words } from '#renderer/words/en.ts'
import { PageLibrary } from '#test/help/page-library.ts'

let library = new PageLibrary()
vi.mock('#renderer/host/host.ts', () => ({
  ask: (name: string, input: unknown) => library.answer(name, input),
  inShell: false,
}))

const AT = { lat: 46.4, lon: -33.6 }
const TOWER = { ...newLandmark('tower', 'upright', AT), name: 'Tower' }
const BRIDGE = { ...newLandmark('bridge', 'span', AT), name: 'Bridge' }
const BARE = { ...newShoot('shoot', 'lens', 0), name: 'Autumn' }
const spotAt = (id: string, rank: number, landmarkId: string | null): Spot => ({
  ...newSpot(id, BARE, AT, rank, 0),
  name: id,
  landmarkId,
})

async function session() {
  vi.resetModules()
  const acts = await import('#renderer/state/act/shoot-acts.ts')
  const landmarks = await import('#renderer/state/act/landmark-acts.ts')
  const { placeAlone } = await import('#renderer/state/act/place-alone.ts')
  const state = await import('#renderer/state/library/library.ts')
  const { undo } = await import('#renderer/state/library/history.ts')
  const { notices } = await import('#renderer/state/library/notices.ts')
  const page = await import('#renderer/state/session/navigation.ts')
  const chosen = await import('#renderer/state/session/picked.ts')
  await state.openShoot('shoot')
  const open = (): Shoot => state.shoot.value as Shoot
  return { ...acts, ...landmarks, ...state, ...page, ...chosen, placeAlone, undo, notices, open }
}

function keep(landmarks: readonly Landmark[], ...looks: (string | null)[]): void {
  library.put('shoot', { ...BARE, landmarks })
  looks.forEach((landmarkId, index) => library.put('spot', spotAt(`spot ${index}`, index, landmarkId)))
}

beforeEach(() => {
  library = new PageLibrary()
})

const looked = (): (string | null)[] => library.spots().map(({ landmarkId }) => landmarkId)
const kept = (): Shoot | undefined => library.shoots().find(({ id }) => id === 'shoot')

describe('a landmark that is added', () => {
  test('comes last, and is looked at by spots that look at none or at one that is gone', async () => {
    keep([TOWER], 'tower', null, 'vanished')
    const page = await session()
    await page.addLandmark(page.open(), 'summit')
    const added = kept()?.landmarks[1]
    expect(added?.kind).toBe('summit')
    expect(looked()).toEqual(['tower', added?.id, added?.id])
  })

  test('is one edit with the spots: one undo takes it from all', async () => {
    keep([], null, null)
    const page = await session()
    await page.addLandmark(page.open(), 'building')
    expect(library.batches).toHaveLength(1)
    await page.undo()
    expect(kept()?.landmarks).toEqual([])
    expect(looked()).toEqual([null, null])
  })
})

test('a landmark that is changed keeps its place among the others', async () => {
  keep([TOWER, BRIDGE], 'tower')
  const page = await session()
  page.changeLandmark(page.open(), { ...TOWER, height: 77 })
  await eventually(() =>
    expect(kept()?.landmarks.map(({ id, height }) => [id, height])).toEqual([
      ['tower', 77],
      ['bridge', BRIDGE.height],
    ]),
  )
})

describe('a landmark that is made by its place', () => {
  const END = { lat: 46.41, lon: -33.59 }

  test('is not there before the place is known', async () => {
    keep([])
    const page = await session()
    page.placeNewLandmark('upright')
    expect(library.batches).toEqual([])
    expect(page.placing.value).toEqual({ what: 'new-landmark', kind: 'upright', from: null })
    page.placeAlone(page.placing.value as never, AT)
    await eventually(() => expect(kept()?.landmarks).toMatchObject([{ kind: 'upright', at: AT }]))
    expect(page.placing.value).toBeNull()
  })

  test('as a span takes two ends apart from each other', async () => {
    keep([])
    const page = await session()
    page.placeNewLandmark('span')
    page.placeAlone(page.placing.value as never, AT)
    page.placeAlone(page.placing.value as never, AT)
    expect(library.batches).toEqual([])
    expect(page.notices.value[0]?.text).toBe(firstStepsWords.endsTogether)
    page.placeAlone(page.placing.value as never, END)
    await eventually(() => expect(kept()?.landmarks).toMatchObject([{ kind: 'span', line: [AT, END] }]))
    expect(page.placing.value).toBeNull()
  })
})

describe('a landmark that is removed', () => {
  test('is no longer looked at: the first of those left is', async () => {
    keep([TOWER, BRIDGE], 'tower', 'bridge')
    const page = await session()
    await page.removeLandmark(page.open(), TOWER)
    expect(kept()?.landmarks.map(({ id }) => id)).toEqual(['bridge'])
    expect(looked()).toEqual(['bridge', 'bridge'])
  })

  test('and was the last leaves the spots looking at none', async () => {
    keep([TOWER], 'tower')
    const page = await session()
    await page.removeLandmark(page.open(), TOWER)
    expect(looked()).toEqual([null])
  })

  test('is told by name with a way back, to the same place and spots', async () => {
    keep([TOWER, BRIDGE], 'tower', 'bridge')
    const page = await session()
    await page.removeLandmark(page.open(), TOWER)
    const [notice] = page.notices.value
    expect(notice?.text).toBe(words.shoot.removedLandmark('Tower'))
    notice?.action?.run()
    await eventually(() => expect(looked()).toEqual(['tower', 'bridge']))
    expect(kept()?.landmarks.map(({ id }) => id)).toEqual(['tower', 'bridge'])
  })
})

describe('a shoot', () => {
  test('that is made has a name, is open on the board, and nothing is picked in it', async () => {
    keep([TOWER], 'tower')
    const page = await session()
    put(page.pickedIds, ['spot 0'])
    await page.makeShoot()
    expect(page.open().name).toBe(words.shoot.newShootName)
    expect(page.page.value).toBe('board')
    expect(page.pickedIds.value).toEqual([])
    expect(page.spots.value).toEqual([])
    expect(library.shoots()).toHaveLength(2)
  })

  test('that is made on the page of shoots stays there, from any other page the board leads on', async () => {
    keep([TOWER], 'tower')
    const page = await session()
    page.openPage('shoot')
    await page.makeShoot()
    expect(page.page.value).toBe('shoot')
    page.openPage('settings')
    await page.makeShoot()
    expect(page.page.value).toBe('board')
  })

  test('that is deleted goes with its spots, is told with their number, and the other one opens', async () => {
    keep([TOWER], 'tower', 'tower')
    library.put('shoot', { ...newShoot('other', 'lens', 0), name: 'Spring' })
    const page = await session()
    await page.deleteShoot(page.open())
    expect(library.shoots().map(({ id }) => id)).toEqual(['other'])
    expect(library.spots()).toEqual([])
    expect(page.notices.value[0]?.text).toBe(words.shoot.deleted('Autumn', 2))
    expect(page.open().id).toBe('other')
  })

  test('comes back by undo with every spot of it', async () => {
    keep([TOWER], 'tower', 'tower')
    const page = await session()
    await page.deleteShoot(page.open())
    expect(page.shoot.value).toBeNull()
    await page.undo()
    expect(kept()?.name).toBe('Autumn')
    expect(library.spots().map(({ name }) => name)).toEqual(['spot 0', 'spot 1'])
    expect(page.open().id).toBe('shoot')
    expect(page.spots.value).toHaveLength(2)
  })

  test('of a file is opened on the board and told with its spots', async () => {
    keep([], null)
    library.others.set('shoot.import', () => {
      library.put('shoot', { ...newShoot('read', 'lens', 0), name: 'Harbour' })
      return { ok: true, value: { shootId: 'read', name: 'Harbour', spots: 3 } }
    })
    const page = await session()
    put(page.page, 'settings')
    await page.addShootFile('{}')
    expect(page.open().id).toBe('read')
    expect(page.page.value).toBe('board')
    expect(page.notices.value.at(-1)?.text).toBe(words.board.files.opened('Harbour', 3))
  })

  test('of a file that is refused says why and leaves everything as it was', async () => {
    keep([], null)
    library.others.set('shoot.import', () => ({ ok: false, fault: { reason: 'bad', message: 'This is no shoot.' } }))
    const page = await session()
    put(page.page, 'settings')
    await page.addShootFile('nonsense')
    expect(page.notices.value.map(({ kind, text }) => [kind, text])).toEqual([['fault', 'This is no shoot.']])
    expect([page.open().id, page.page.value]).toEqual(['shoot', 'settings'])
  })

  test('cannot be saved as a file when none is open', async () => {
    const page = await session()
    put(page.notices, [])
    await page.saveShootFile()
    expect(page.notices.value.map(({ text }) => text)).toEqual([words.board.files.noShoot])
  })
})
