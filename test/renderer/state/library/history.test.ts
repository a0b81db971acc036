/** Edits: shown at once, saved in order, undone, redone, refused; another window's changes are not written over. */
import { eventually } from '#test/help/eventually.ts'
import { put } from '#test/help/put.ts'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { newShoot, newSpot } from '#core/record/new-records.ts'
import type { Spot } from '#core/record/spot.ts'
import type { Input, Output } from '#app/contract/index.ts'

type Sent = Input<'library.save'>['edits']
type Applied = Sent[number]['changes']

interface FakeAnswer {
  readonly ok: boolean
  readonly value?: unknown
  readonly fault?: unknown
}

/** A library that keeps records, numbers revisions and refuses what does not start from the stored one. */
class FakeLibrary {
  records = new Map<string, { revision: number; kind: string; record: unknown }>()
  version = 1
  applied: Applied[] = []
  /** Ids of the edits of each call. */
  calls: string[][] = []
  done = new Map<string, FakeAnswer>()
  refuseNext: string | null = null
  gone = false
  hold: Promise<void> = Promise.resolve()

  async answer(name: string, input: unknown): Promise<unknown> {
    await this.hold
    if (this.gone) return { ok: false, fault: { reason: 'no-host', message: 'nobody answers' } }
    if (name === 'library.save') return this.save((input as { edits: Sent }).edits)
    if (name === 'library.open') return this.open((input as { shootId: string }).shootId)
    if (name === 'library.state') return { ok: true, value: { state: 'open', version: this.version, message: '' } }
    return { ok: true, value: { shoots: this.brief() } }
  }

  private brief(): unknown[] {
    return [...this.records].filter(([, kept]) => kept.kind === 'shoot').map(([id]) => ({ id, name: id, spots: 0 }))
  }

  private save(edits: Sent): unknown {
    this.calls.push(edits.map(({ id }) => id))
    const refused = new Set<string>()
    const answers = edits.map(({ id, changes }) => {
      const known = this.done.get(id)
      if (known !== undefined) return known
      const rests = changes.some((change) => refused.has(change.id))
      const answer: FakeAnswer = rests
        ? { ok: false, fault: { reason: 'rests', message: 'rests' } }
        : this.apply(changes)
      if (answer.ok) this.done.set(id, answer)
      else for (const change of changes) refused.add(change.id)
      return answer
    })
    return { ok: true, value: { answers } }
  }

  private apply(changes: Applied): FakeAnswer {
    this.applied.push(changes)
    const refusal = this.refuseNext ?? (changes.some((change) => this.differs(change)) ? 'changed-elsewhere' : null)
    this.refuseNext = null
    if (refusal !== null) return { ok: false, fault: { reason: refusal, message: `refused: ${refusal}` } }
    const revisions = changes.map((change) => this.put(change))
    this.version += 1
    return { ok: true, value: { version: this.version, revisions } }
  }

  private differs(change: Applied[number]): boolean {
    return (this.records.get(change.id)?.revision ?? null) !== change.before
  }

  put(change: Applied[number]): number {
    const revision = (change.before ?? 0) + 1
    if (change.record === null) this.records.delete(change.id)
    else this.records.set(change.id, { revision, kind: change.kind, record: { ...change.record, revision } })
    return revision
  }

  private open(shootId: string): unknown {
    const shoot = this.records.get(shootId)
    if (shoot === undefined) return { ok: false, fault: { reason: 'gone', message: 'gone' } }
    const all = [...this.records.values()].filter((kept) => kept.kind === 'spot').map((kept) => kept.record as Spot)
    const spots = all.filter((spot) => spot.shootId === shootId).toSorted((one, other) => one.rank - other.rank)
    return { ok: true, value: { shoot: shoot.record, spots, version: this.version } as Output<'library.open'> }
  }
}

let library = new FakeLibrary()
vi.mock('#renderer/host/host.ts', () => ({
  MOST_OUTLIVING: 65_536,
  roomToOutlive: () => 65_536,
  ask: (name: string, input: unknown) => library.answer(name, input),
}))

/** Fresh modules for every test: their signals are the session. */
async function session() {
  vi.resetModules()
  const edits = await import('#renderer/state/library/history.ts')
  const state = await import('#renderer/state/library/library.ts')
  const saving = await import('#renderer/state/library/saving.ts')
  const { refusals, keepMine, letRefusalGo } = await import('#renderer/state/library/refusals.ts')
  const { refreshIfChanged } = await import('#renderer/state/library/other-windows.ts')
  const { notices } = await import('#renderer/state/library/notices.ts')
  await state.openShoot('shoot')
  return { ...edits, ...state, ...saving, refusals, keepMine, letRefusalGo, refreshIfChanged, notices }
}

const SHOOT = newShoot('shoot', 'lens', 0)
function spotAt(id: string, rank: number): Spot {
  return { ...newSpot(id, SHOOT, { lat: 46.4, lon: -33.6 }, rank, 0), name: id }
}

beforeEach(() => {
  library = new FakeLibrary()
  library.put({ kind: 'shoot', id: 'shoot', before: null, record: SHOOT as never })
  library.put({ kind: 'spot', id: 'one', before: null, record: spotAt('one', 1) as never })
  library.put({ kind: 'spot', id: 'two', before: null, record: spotAt('two', 2) as never })
})

function storedName(id: string): unknown {
  return (library.records.get(id)?.record as Spot | undefined)?.name
}

describe('a change', () => {
  test('is on the screen before the library answers, and counts as unsaved until then', async () => {
    const page = await session()
    let release = (): void => {}
    library.hold = new Promise((resolve) => {
      release = resolve
    })
    const saved = page.changeSpot('Rename', { ...spotAt('one', 1), name: 'new' })
    expect(page.savedSpot.value?.name).toBe('new')
    expect(page.unsaved.value).toBe(1)
    release()
    await saved
    expect(page.unsaved.value).toBe(0)
    expect(storedName('one')).toBe('new')
  })

  test('queued behind another names the revision that will be there when its turn comes', async () => {
    const page = await session()
    const first = page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    const second = page.changeSpot('b', { ...spotAt('one', 1), name: 'b' })
    await Promise.all([first, second])
    expect(library.applied.map((changes) => changes[0]?.before)).toEqual([1, 2])
    expect(page.notices.value).toEqual([])
  })
})

describe('undo and redo', () => {
  test('walk through the edits and save each step', async () => {
    const page = await session()
    await page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    await page.changeSpot('b', { ...(page.savedSpot.value as Spot), name: 'b' })
    expect(page.canUndo.value).toBe('b')
    await page.undo()
    expect(storedName('one')).toBe('a')
    expect([page.canUndo.value, page.canRedo.value]).toEqual(['a', 'b'])
    await page.redo()
    expect(storedName('one')).toBe('b')
    await page.undo()
    await page.undo()
    expect(storedName('one')).toBe('one')
    expect(page.canUndo.value).toBeNull()
  })

  test('bring a deleted spot back, on the board and in the library', async () => {
    const page = await session()
    const gone = page.spots.value[0] as Spot
    await page.commit({ label: 'Delete', records: [{ kind: 'spot', before: gone, after: null }] })
    expect(library.records.has('one')).toBe(false)
    await page.undo()
    expect(library.records.has('one')).toBe(true)
    expect(page.spotId.value).toBe('one')
    expect(page.spots.value.map((spot) => spot.id)).toEqual(['one', 'two'])
  })

  test('bring a deleted shoot back with all its spots', async () => {
    const page = await session()
    const records = [
      ...page.spots.value.map((spot) => ({ kind: 'spot' as const, before: spot, after: null })),
      { kind: 'shoot' as const, before: page.shoot.value, after: null },
    ]
    await page.commit({ label: 'Delete the shoot', records })
    expect(library.records.size).toBe(0)
    expect(page.shoot.value).toBeNull()
    await page.undo()
    expect(library.records.size).toBe(3)
    expect(page.spots.value.map((spot) => spot.id)).toEqual(['one', 'two'])
    expect(page.notices.value).toEqual([])
  })

  test('a new shoot does not show the spots of the one before', async () => {
    const page = await session()
    const fresh = { ...newShoot('other', 'lens', 1), name: 'other' }
    await page.commit({ label: 'New', records: [{ kind: 'shoot', before: null, after: fresh }] })
    expect(page.shoot.value?.id).toBe('other')
    expect(page.spots.value).toEqual([])
  })

  test('the one offered beside a message is for its own edit, never for a later one', async () => {
    const page = await session()
    await page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    const offer = page.undoOffer()
    expect(offer.offered?.()).toBe(true)
    await page.changeSpot('b', { ...(page.savedSpot.value as Spot), name: 'b' })
    expect(offer.offered?.()).toBe(false)
    offer.run()
    expect(page.savedSpot.value?.name).toBe('b')
    await page.undo()
    expect(offer.offered?.()).toBe(true)
    offer.run()
    await expect.poll(() => page.savedSpot.value?.name).toBe('one')
    expect(offer.offered?.()).toBe(false)
  })

  test('an edit of another spot puts that spot on the board', async () => {
    const page = await session()
    await page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    put(page.spotId, 'two')
    await page.undo()
    expect(page.spotId.value).toBe('one')
  })
})

describe('a refusal', () => {
  test('shows what the library holds again, says so, and cannot be undone', async () => {
    const page = await session()
    library.refuseNext = 'disk-full'
    await page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    expect(page.savedSpot.value?.name).toBe('one')
    expect(page.refusals.value.map(({ what, fault }) => [what, fault.message])).toEqual([['a', 'refused: disk-full']])
    expect(page.canUndo.value).toBeNull()
    expect(page.unsaved.value).toBe(0)
  })

  test('takes the edits waiting behind it along: they rest on what was refused', async () => {
    const page = await session()
    library.refuseNext = 'disk-full'
    const first = page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    const second = page.changeSpot('b', { ...spotAt('one', 1), name: 'a, then b' })
    await Promise.all([first, second])
    expect(library.applied).toHaveLength(1)
    expect(storedName('one')).toBe('one')
    expect(page.savedSpot.value?.name).toBe('one')
    expect([page.unsaved.value, page.canUndo.value]).toEqual([0, null])
  })

  test('shows the last kept state also when the library is out of reach', async () => {
    const page = await session()
    library.gone = true
    const first = page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    const second = page.changeSpot('b', { ...(page.savedSpot.value as Spot), name: 'b' })
    await Promise.all([first, second])
    expect(page.savedSpot.value?.name).toBe('one')
    expect(page.unsaved.value).toBe(0)
  })

  test('leaves the next edit free to be saved', async () => {
    const page = await session()
    library.refuseNext = 'disk-full'
    await page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    await page.changeSpot('c', { ...(page.savedSpot.value as Spot), name: 'c' })
    expect(storedName('one')).toBe('c')
  })
})

describe('a refused change, kept at hand', () => {
  function otherWindow(id: string, part: Partial<Spot>): void {
    const kept = library.records.get(id)
    library.put({
      kind: 'spot',
      id,
      before: kept?.revision ?? 0,
      record: { ...(kept?.record as Spot), ...part } as never,
    })
    library.version += 1
  }
  const stored = (id: string) => library.records.get(id)?.record as Spot | undefined

  test('is done again on what another window made of the record: mine and theirs are both there', async () => {
    const page = await session()
    otherWindow('one', { notes: 'theirs', stars: 4 })
    await page.changeSpot('Move', { ...spotAt('one', 1), notes: 'mine', rank: 7 })
    const [refusal] = page.refusals.value
    expect([refusal?.what, refusal?.fault.reason, page.refusals.value.length]).toEqual(['Move', 'changed-elsewhere', 1])
    expect(stored('one')).toMatchObject({ notes: 'theirs', stars: 4, rank: 1 })
    page.keepMine(refusal as never)
    await expect.poll(() => stored('one')).toMatchObject({ notes: 'mine', stars: 4, rank: 7 })
    expect([page.refusals.value, page.canUndo.value]).toEqual([[], 'Move'])
    await page.undo()
    expect(stored('one')).toMatchObject({ notes: 'theirs', stars: 4, rank: 1 })
  })

  test('given up leaves theirs', async () => {
    const page = await session()
    otherWindow('one', { notes: 'theirs' })
    await page.changeSpot('Note', { ...spotAt('one', 1), notes: 'mine' })
    page.letRefusalGo(page.refusals.value[0] as never)
    expect([page.savedSpot.value?.notes, stored('one')?.notes, page.refusals.value]).toEqual(['theirs', 'theirs', []])
  })

  test('of a spot that another window deleted makes it again; of one it changed deletes it all the same', async () => {
    const page = await session()
    library.records.delete('one')
    otherWindow('two', { notes: 'theirs' })
    const two = page.spots.value[1] as Spot
    const note = page.changeSpot('Note', { ...spotAt('one', 1), notes: 'mine' })
    const gone = page.commit({ label: 'Delete', records: [{ kind: 'spot', before: two, after: null }] })
    await Promise.all([note, gone])
    expect(page.refusals.value.map(({ what }) => what)).toEqual(['Note', 'Delete'])
    for (const refusal of page.refusals.value) {
      page.keepMine(refusal)
      // oxlint-disable-next-line no-await-in-loop
      await eventually(() => expect(page.unsaved.value).toBe(0))
    }
    await expect.poll(() => [stored('one')?.notes, library.records.has('two')]).toEqual(['mine', false])
  })

  test('while the disk is full is tried again once there is room, all of it as one', async () => {
    const page = await session()
    library.refuseNext = 'disk-full'
    const first = page.changeSpot('Move', { ...spotAt('one', 1), rank: 5 })
    const second = page.changeSpot('Turn', { ...(page.savedSpot.value as Spot), stars: 2 })
    await Promise.all([first, second])
    expect(page.refusals.value.map(({ what, fault }) => [what, fault.reason])).toEqual([['Move, Turn', 'disk-full']])
    page.keepMine(page.refusals.value[0] as never)
    await expect.poll(() => stored('one')).toMatchObject({ rank: 5, stars: 2 })
  })

  test('by a host that is gone takes nothing along that can be tried again', async () => {
    const page = await session()
    library.gone = true
    await page.changeSpot('Move', { ...spotAt('one', 1), rank: 5 })
    await page.changeSpot('Note', { ...(page.savedSpot.value as Spot), notes: 'typed' })
    expect(page.refusals.value.map(({ what, fault }) => [what, fault.reason])).toEqual([
      ['Move', 'no-host'],
      ['Note', 'no-host'],
    ])
    library.gone = false
    for (const refusal of page.refusals.value) page.keepMine(refusal)
    await expect.poll(() => stored('one')).toMatchObject({ rank: 5, notes: 'typed' })
  })

  test('an undo that was refused says that it is one', async () => {
    const page = await session()
    await page.changeSpot('Note', { ...spotAt('one', 1), notes: 'mine' })
    library.refuseNext = 'disk-full'
    await page.undo()
    expect(page.refusals.value.map(({ what }) => what)).toEqual(['Undo: Note'])
    expect(page.savedSpot.value?.notes).toBe('mine')
  })

  test('leaves the changes of other records alone', async () => {
    const page = await session()
    otherWindow('one', { notes: 'theirs' })
    const mine = page.changeSpot('Note', { ...spotAt('one', 1), notes: 'mine' })
    const other = page.changeSpot('Stars', { ...spotAt('two', 2), stars: 5 })
    await Promise.all([mine, other])
    expect([stored('two')?.stars, page.canUndo.value, page.refusals.value.length]).toEqual([5, 'Stars', 1])
  })
})

describe('steps one after the other', () => {
  test('two undos at once, the first opening another shoot, take back two edits', async () => {
    const page = await session()
    const elsewhere = { ...newShoot('other', 'lens', 1), name: 'other' }
    library.put({ kind: 'shoot', id: 'other', before: null, record: elsewhere as never })
    await page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    await page.changeSpot('b', { ...(page.savedSpot.value as Spot), name: 'b' })
    await page.openShoot('other')
    await Promise.all([page.undo(), page.undo()])
    expect([page.canUndo.value, page.canRedo.value, storedName('one')]).toEqual([null, 'a', 'one'])
  })

  test('an undo is on the screen and on its way before anything else can happen', async () => {
    const page = await session()
    await page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    void page.undo()
    expect([page.savedSpot.value?.name, page.unsaved.value]).toEqual(['one', 1])
  })

  test('undo of a change of a shoot that is not on the board opens it', async () => {
    const page = await session()
    library.put({ kind: 'shoot', id: 'other', before: null, record: newShoot('other', 'lens', 1) as never })
    await page.changeShoot('Rename', { ...SHOOT, name: 'new' })
    await page.openShoot('other')
    await page.undo()
    expect([page.shoot.value?.id, page.shoot.value?.name]).toEqual(['shoot', SHOOT.name])
  })

  test('a shoot is opened with what was changed just before, however slow the library', async () => {
    const page = await session()
    let release = (): void => {}
    library.hold = new Promise((resolve) => {
      release = resolve
    })
    void page.changeSpot('a', { ...spotAt('one', 1), name: 'a' })
    void page.changeSpot('b', { ...(page.savedSpot.value as Spot), name: 'b' })
    const opened = page.openShoot('shoot')
    release()
    await opened
    expect(page.savedSpot.value?.name).toBe('b')
  })
})

describe('another window', () => {
  function otherWindowRenames(id: string, name: string): void {
    const kept = library.records.get(id)
    library.put({ kind: 'spot', id, before: kept?.revision ?? 0, record: { ...(kept?.record as Spot), name } as never })
    library.version += 1
  }

  test('is noticed and shown', async () => {
    const page = await session()
    otherWindowRenames('one', 'theirs')
    await page.refreshIfChanged()
    expect(page.savedSpot.value?.name).toBe('theirs')
  })

  test('undo does not write over what it changed since', async () => {
    const page = await session()
    await page.changeSpot('mine', { ...spotAt('one', 1), name: 'mine' })
    await page.changeSpot('mine too', { ...spotAt('two', 2), name: 'mine too' })
    otherWindowRenames('one', 'theirs')
    await page.refreshIfChanged()
    expect(page.canUndo.value).toBe('mine too')
    await page.undo()
    await page.undo()
    expect(storedName('one')).toBe('theirs')
  })

  test('a change of its own does not hide theirs: both are read', async () => {
    const page = await session()
    otherWindowRenames('one', 'theirs')
    await page.changeSpot('mine', { ...spotAt('two', 2), name: 'mine' })
    await page.refreshIfChanged()
    expect(page.spots.value.map((spot) => spot.name)).toEqual(['theirs', 'mine'])
  })

  test('nothing is read over a drag', async () => {
    const page = await session()
    otherWindowRenames('one', 'theirs')
    put(page.liveSpot, { ...spotAt('one', 1), name: 'dragged' })
    await page.refreshIfChanged()
    expect(page.boardSpot.value?.name).toBe('dragged')
  })
})

describe('what is tried out', () => {
  async function trying() {
    const held = await session()
    const acts = await import('#renderer/state/act/try-out.ts')
    const { pickedOnShelf } = await import('#renderer/state/session/picked.ts')
    const spot = { ...spotAt('best', 0), name: 'Best 1' }
    put(held.spotId, 'two')
    await acts.openTryOut(spot)
    return { ...held, ...acts, pickedOnShelf, spot }
  }

  test('lies on the board; the spot of the shelf stays as it is, and nothing is saved', async () => {
    const { boardSpot, homeSpot, spots, spot } = await trying()
    expect(boardSpot.value).toBe(spot)
    expect(homeSpot.value?.id).toBe('two')
    expect(spots.value.map(({ id }) => id)).toEqual(['one', 'two'])
    expect(library.applied).toEqual([])
  })

  test('is left, undone and redone like any edit', async () => {
    const { boardSpot, leaveTryOut, undo, redo, spot } = await trying()
    await leaveTryOut()
    expect(boardSpot.value?.id).toBe('two')
    await undo()
    expect(boardSpot.value).toBe(spot)
    await undo()
    expect(boardSpot.value?.id).toBe('two')
    await redo()
    expect(boardSpot.value).toBe(spot)
  })

  test('kept, it is the last spot of the shelf, on the board, picked; undo brings back the try-out and takes it off', async () => {
    const { boardSpot, keepArrangement, spot, spots, tryOut, undo, redo, pickedOnShelf } = await trying()
    await keepArrangement(spot)
    expect(spots.value.map(({ id }) => id)).toEqual(['one', 'two', 'best'])
    expect(tryOut.value).toBeNull()
    expect(boardSpot.value?.id).toBe('best')
    expect(storedName('best')).toBe('Best 1')
    expect(pickedOnShelf.value).toEqual(['best'])
    await undo()
    expect(pickedOnShelf.value).toEqual([])
    expect(spots.value.map(({ id }) => id)).toEqual(['one', 'two'])
    expect(boardSpot.value).toBe(spot)
    expect(library.records.has('best')).toBe(false)
    await undo()
    expect(boardSpot.value?.id).toBe('two')
    await redo()
    await redo()
    expect(storedName('best')).toBe('Best 1')
    expect(pickedOnShelf.value).toEqual(['best'])
  })

  test('another one kept leaves the board as it is', async () => {
    const { boardSpot, homeSpot, keepArrangement, leaveTryOut, spots, spot } = await trying()
    await keepArrangement({ ...spotAt('other', 0), name: 'Best 2' })
    expect(spots.value.map(({ id }) => id)).toEqual(['one', 'two', 'other'])
    expect(boardSpot.value).toBe(spot)
    expect(homeSpot.value?.id).toBe('two')
    await leaveTryOut()
    await keepArrangement({ ...spotAt('third', 0), name: 'Best 3' })
    expect(boardSpot.value?.id).toBe('two')
  })

  test('changed by hand it goes last on the shelf as changed, and the spot before is untouched', async () => {
    const { boardSpot, changeSpot, notices, spot, spots, tryOut, undo } = await trying()
    await changeSpot('Move the standpoint', { ...spot, notes: 'a step to the left' })
    expect(notices.value.at(-1)?.text).toContain('Best 1')
    expect(tryOut.value).toBeNull()
    expect(boardSpot.value?.notes).toBe('a step to the left')
    expect(spots.value.map(({ id }) => id)).toEqual(['one', 'two', 'best'])
    expect(storedName('best')).toBe('Best 1')
    expect(storedName('one')).toBe('one')
    await undo()
    expect(boardSpot.value).toBe(spot)
    expect(library.records.has('best')).toBe(false)
  })

  test('dragged, it is kept as where it was let go, whatever the hand took it for', async () => {
    const { boardSpot, commit, spot, undo } = await trying()
    await commit({ label: 'Move', records: [{ kind: 'spot', before: spot, after: { ...spot, notes: 'moved' } }] })
    expect(library.applied.at(-1)).toMatchObject([{ id: 'best', before: null, record: { notes: 'moved' } }])
    await undo()
    expect(boardSpot.value).toBe(spot)
    expect(library.records.has('best')).toBe(false)
  })

  test('gives way to another spot of the shelf, and to a new one', async () => {
    const { boardSpot, putOnBoard, tryOut, commit, undo, openTryOut, spot } = await trying()
    putOnBoard('one')
    expect(tryOut.value).toBeNull()
    expect(boardSpot.value?.id).toBe('one')
    await openTryOut(spot)
    await commit({ label: 'Add', records: [{ kind: 'spot', before: null, after: spotAt('new', 3) }] })
    expect(tryOut.value).toBeNull()
    expect(boardSpot.value?.id).toBe('new')
    await undo()
    expect(boardSpot.value).toBe(spot)
  })

  test('once kept it is opened as the spot of the shelf, never as a second one under its id', async () => {
    const { boardSpot, changeSpot, keepArrangement, openTryOut, putOnBoard, spot, spots, tryOut } = await trying()
    await keepArrangement(spot)
    putOnBoard('one')
    await openTryOut({ ...spot, notes: 'polished since' })
    expect(tryOut.value).toBeNull()
    expect(boardSpot.value?.id).toBe('best')
    await changeSpot('Note', { ...boardSpot.value!, notes: 'mine' })
    expect(spots.value.filter(({ id }) => id === 'best').map(({ notes }) => notes)).toEqual(['mine'])
  })

  test('survives that the library is read again, and goes with its shoot', async () => {
    const { boardSpot, openShoot, showNothing, spot, tryOut } = await trying()
    await openShoot('shoot', 'two')
    expect(boardSpot.value).toBe(spot)
    showNothing()
    expect(tryOut.value).toBeNull()
  })
})
