/** Saving: edits sent in order and answered one by one, a refused one alone taken back, the rest sent by a page that is left. */
import { beforeEach, describe, expect, test, vi } from 'vitest'
import type { Input } from '#app/contract/index.ts'
import { newShoot, newSpot } from '#core/record/new-records.ts'
import type { Spot } from '#core/record/spot.ts'
import type { Edit } from '#renderer/state/library/edit.ts'
import type { OnRefused } from '#renderer/state/library/saving.ts'

type Sent = Input<'library.save'>['edits']

/** Calls as they were sent; each is answered when the test says so. */
const calls: {
  readonly edits: Sent
  readonly signal: AbortSignal | undefined
  readonly answer: (value: unknown) => void
}[] = []
let room = 65_536
vi.mock('#renderer/host/host.ts', () => ({
  MOST_OUTLIVING: 65_536,
  roomToOutlive: () => room,
  ask: async (name: string, input: { edits: Sent }, signal?: AbortSignal) => {
    if (name !== 'library.save') return { ok: true, value: { shoots: [] } }
    const { promise, resolve } = Promise.withResolvers<unknown>()
    calls.push({ edits: input.edits, signal, answer: resolve })
    return promise
  },
}))

const SHOOT = newShoot('shoot', 'lens', 0)
const spot = (id: string, notes: string): Spot => ({
  ...newSpot(id, SHOOT, { lat: 46.4, lon: -33.6 }, 1, 0),
  revision: 1,
  notes,
})
const edit = (id: string, notes: string): Edit => ({
  label: notes,
  records: [{ kind: 'spot', before: spot(id, ''), after: spot(id, notes) }],
})
const saved = (count: number) => ({
  ok: true,
  value: { answers: Array.from({ length: count }, () => ({ ok: true, value: { version: 2, revisions: [2] } })) },
})
const refusal = (reason: string) => ({ ok: false, fault: { reason, message: reason } })
const named = (edits: Sent | undefined): unknown[] | undefined =>
  edits?.map(({ changes }) => changes.map(({ id, before, record }) => [id, before, (record as Spot | null)?.notes]))
const turn = () => new Promise(setImmediate)

async function session() {
  vi.resetModules()
  calls.length = 0
  const { revisions } = await import('#renderer/state/library/library.ts')
  const saving = await import('#renderer/state/library/saving.ts')
  const refused: string[] = []
  const onRefused: OnRefused = async (list) => {
    refused.push(...list.map((one) => `${one.edit.label}: ${one.fault.reason}`))
  }
  return { ...saving, save: (one: Edit) => saving.save(one, onRefused), revisions, refused }
}

beforeEach(() => {
  room = 65_536
})

describe('edits', () => {
  test('go at once, and what is made meanwhile goes in one call, on the revisions that will be there', async () => {
    const { save, unsaved } = await session()
    void save(edit('a', '1'))
    // In the very task of the edit: a page that is left right after it has sent it.
    expect(calls).toHaveLength(1)
    void save(edit('a', '2'))
    void save(edit('b', '3'))
    void save(edit('a', '4'))
    expect([calls.length, unsaved.value]).toEqual([1, 4])
    calls[0]?.answer(saved(1))
    await turn()
    expect(named(calls[1]?.edits)).toEqual([[['a', 2, '2']], [['b', 1, '3']], [['a', 3, '4']]])
    calls[1]?.answer(saved(3))
    await turn()
    expect(unsaved.value).toBe(0)
    const ids = calls.flatMap(({ edits }) => edits.map(({ id }) => id))
    expect(new Set(ids).size).toBe(4)
  })

  test('a refused one takes back what rests on it, sent or waiting; the others are saved', async () => {
    const { save, refused, revisions, unsaved } = await session()
    void save(edit('a', '1'))
    void save(edit('a', '2'))
    void save(edit('b', '3'))
    calls[0]?.answer(refusal('disk-full'))
    await turn()
    expect(refused).toEqual(['1: disk-full', '2: rests'])
    expect(revisions.get('a')).toBe(1)
    expect(named(calls[1]?.edits)).toEqual([[['b', 1, '3']]])
    calls[1]?.answer(saved(1))
    await turn()
    expect(unsaved.value).toBe(0)
    void save(edit('a', '5'))
    expect(named(calls[2]?.edits)).toEqual([[['a', 1, '5']]])
  })

  test('and what rests on that in turn, by way of an edit of several records', async () => {
    const { save, refused, revisions, unsaved } = await session()
    void save(edit('a', '1'))
    const [ofA] = edit('a', '2').records
    const [ofB] = edit('b', '2').records
    void save({ label: '2', records: [ofA, ofB].filter((record) => record !== undefined) })
    void save(edit('b', '3'))
    void save(edit('c', '4'))
    const before = revisions.get('b')
    calls[0]?.answer(refusal('disk-full'))
    await turn()
    expect(refused).toEqual(['1: disk-full', '2: rests', '3: rests'])
    expect(named(calls[1]?.edits)).toEqual([[['c', 1, '4']]])
    expect([revisions.get('a'), revisions.get('b')]).toEqual([1, (before ?? 0) - 2])
    calls[1]?.answer(saved(1))
    await turn()
    expect(unsaved.value).toBe(0)
  })

  test('one that is ill-formed does not take the others of its call along', async () => {
    const { save, refused, unsaved } = await session()
    void save(edit('a', '1'))
    void save(edit('b', 'ill'))
    void save(edit('c', '3'))
    calls[0]?.answer(saved(1))
    await turn()
    calls[1]?.answer(refusal('bad-input'))
    await turn()
    expect(named(calls[2]?.edits)).toEqual([[['b', 1, 'ill']]])
    calls[2]?.answer(refusal('bad-input'))
    await turn()
    calls[3]?.answer(saved(1))
    await turn()
    expect([refused, unsaved.value]).toEqual([['ill: bad-input'], 0])
  })

  test('a call holds no more than outlives the page, and one edit at least', async () => {
    const { save } = await session()
    void save(edit('a', 'first'))
    for (const id of ['b', 'c', 'd']) void save(edit(id, 'x'.repeat(id === 'd' ? 90_000 : 30_000)))
    for (const at of [0, 1, 2]) {
      calls[at]?.answer(saved(calls[at].edits.length))
      // oxlint-disable-next-line no-await-in-loop
      await turn()
    }
    expect(calls.map(({ edits }) => edits.flatMap(({ changes }) => changes.map(({ id }) => id)))).toEqual([
      ['a'],
      ['b', 'c'],
      ['d'],
    ])
  })
})

describe('leaving', () => {
  test('sends what waits behind the call under way, and that once more before it, under the same ids', async () => {
    const { save, sendAtLeaving } = await session()
    void save(edit('a', '1'))
    void save(edit('a', '2'))
    sendAtLeaving()
    expect(named(calls[1]?.edits)).toEqual([[['a', 1, '1']], [['a', 2, '2']]])
    expect(calls[1]?.edits[0]?.id).toBe(calls[0]?.edits[0]?.id)
    expect(calls[0]?.signal?.aborted).toBe(false)
  })

  test('sends nothing again when nothing waits', async () => {
    const { save, sendAtLeaving } = await session()
    void save(edit('a', '1'))
    sendAtLeaving()
    expect(calls).toHaveLength(1)
  })

  test('gives up the call under way where both are too large together, and takes no answer for it', async () => {
    const { save, sendAtLeaving, refused } = await session()
    void save(edit('a', 'x'.repeat(30_000)))
    void save(edit('a', 'y'.repeat(20_000)))
    room = 65_536 - 31_000
    sendAtLeaving()
    expect(calls[0]?.signal?.aborted).toBe(true)
    calls[0]?.answer(refusal('left'))
    await turn()
    expect(refused).toEqual([])
  })

  test('over the room of a call: small records first and together, the largest last, alone', async () => {
    const { save, sendAtLeaving, outlivesLeaving } = await session()
    void save(edit('large', 'x'.repeat(70_000)))
    expect(outlivesLeaving()).toBe(false)
    void save(edit('a', '1'))
    void save(edit('large', 'y'.repeat(80_000)))
    void save(edit('b', '2'))
    sendAtLeaving()
    const left = calls.slice(1).map(({ edits }) => edits.flatMap(({ changes }) => changes.map(({ id }) => id)))
    expect(left).toEqual([
      ['a', 'b'],
      ['large', 'large'],
    ])
  })

  test('over the room of a call: many states of one record go as its last', async () => {
    const { save, sendAtLeaving } = await session()
    void save(edit('first', 'sent'))
    for (let number = 0; number < 9; number++) void save(edit('a', `${number}`.repeat(9_000)))
    sendAtLeaving()
    expect(calls).toHaveLength(2)
    expect(named(calls[1]?.edits)).toEqual([[['first', 1, 'sent']], [['a', 1, '8'.repeat(9_000)]]])
  })
})
