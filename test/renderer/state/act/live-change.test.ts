/** A change by hand: shown at once, saved once as one edit, put back, and settled before undo, another page or leaving. */
import { put } from '#test/help/put.ts'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { newShoot, newSpot } from '#core/record/new-records.ts'
import type { Spot } from '#core/record/spot.ts'

const sent: { id: string; record: unknown }[] = []
vi.mock('#renderer/host/host.ts', () => ({
  MOST_OUTLIVING: 65_536,
  roomToOutlive: () => 65_536,
  ask: async (name: string, input: { edits: { changes: typeof sent }[] }) => {
    if (name !== 'library.save') return { ok: true, value: { shoots: [] } }
    sent.push(...input.edits.flatMap(({ changes }) => changes))
    const answers = input.edits.map(({ changes }) => ({
      ok: true,
      value: { version: 9, revisions: changes.map(() => 2) },
    }))
    return { ok: true, value: { answers } }
  },
}))

const SHOOT = newShoot('shoot', 'lens', 0)
const SPOT: Spot = newSpot('one', SHOOT, { lat: 46.4, lon: -33.6 }, 1, 0)
const OTHER: Spot = newSpot('two', SHOOT, { lat: 46.5, lon: -33.6 }, 2, 0)

async function board() {
  vi.resetModules()
  sent.length = 0
  const live = await import('#renderer/state/act/live-change.ts')
  const library = await import('#renderer/state/library/library.ts')
  const edits = await import('#renderer/state/library/history.ts')
  const { settleUnfinished } = await import('#renderer/state/library/unfinished.ts')
  const { notices } = await import('#renderer/state/library/notices.ts')
  put(library.shoot, SHOOT)
  put(library.spots, [SPOT, OTHER])
  put(library.spotId, 'one')
  const turned = (heading: number) => ({ shoot: SHOOT, spot: { ...SPOT, stop: { ...SPOT.stop, heading } } })
  const heading = (): number | undefined => library.boardSpot.value?.stop.heading
  return { ...live, ...library, ...edits, settleUnfinished, notices, turned, heading }
}

const headings = (): number[] => sent.map(({ record }) => (record as Spot).stop.heading)

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

describe('a change', () => {
  test('is on the board while it lasts, in the library once it is kept, as one edit', async () => {
    const { begin, turned, heading, canUndo } = await board()
    const change = begin('Turn')
    change?.show(turned(10))
    change?.show(turned(20))
    expect([heading(), sent.length, change?.lasts()]).toEqual([20, 0, true])
    await change?.keep()
    expect([headings(), canUndo.value, change?.lasts()]).toEqual([[20], 'Turn', false])
    await change?.keep()
    expect(sent).toHaveLength(1)
  })

  test('given up, or without a difference, leaves all as it was and nothing to undo', async () => {
    const { begin, turned, heading, liveSpot, canUndo } = await board()
    const change = begin('Turn')
    change?.show(turned(10))
    change?.giveUp()
    const again = begin('Turn')
    again?.show({ shoot: SHOOT, spot: SPOT })
    await again?.keep()
    expect([heading(), liveSpot.value, sent, canUndo.value]).toEqual([SPOT.stop.heading, null, [], null])
  })

  test('that can’t be kept is put back, and told', async () => {
    const { begin, turned, liveSpot, notices } = await board()
    const change = begin('Turn', {
      refuse: (before, after) => (before.spot === after.spot ? null : 'It can’t stand there.'),
    })
    change?.show(turned(10))
    await change?.keep()
    expect([liveSpot.value, sent, notices.value.map(({ text }) => text)]).toEqual([null, [], ['It can’t stand there.']])
  })

  test('is over when another state of its record comes on the board', async () => {
    const { begin, turned, spots, liveSpot } = await board()
    const onEnd = vi.fn()
    const change = begin('Turn', { onEnd })
    change?.show(turned(10))
    put(liveSpot, null)
    put(spots, [{ ...SPOT, notes: 'theirs' }, OTHER])
    expect(change?.lasts()).toBe(false)
    change?.show(turned(20))
    expect(liveSpot.value).toBeNull()
    change?.giveUp()
    expect(onEnd.mock.calls).toEqual([[false]])
  })

  test('is kept though another spot comes on the board', async () => {
    const { begin, turned, spotId } = await board()
    const change = begin('Turn')
    change?.show(turned(10))
    put(spotId, 'two')
    await change?.keep()
    expect([sent[0]?.id, headings()]).toEqual(['one', [10]])
  })

  test('begun ends the one before, which is kept', async () => {
    const { begin, turned, savedSpot, shoot } = await board()
    const onEnd = vi.fn()
    begin('Turn', { onEnd })?.show(turned(10))
    const next = begin('Move')
    expect(onEnd.mock.calls).toEqual([[true]])
    expect(next?.start).toEqual({ shoot: shoot.value, spot: savedSpot.value })
    expect(savedSpot.value?.stop.heading).toBe(10)
  })
})

describe('steps by keys', () => {
  test('of the same name are one edit, kept when no further one comes', async () => {
    const { beginSteps, turned, canUndo, undo } = await board()
    beginSteps('Turn')?.show(turned(10))
    await vi.advanceTimersByTimeAsync(500)
    beginSteps('Turn')?.show(turned(20))
    await vi.advanceTimersByTimeAsync(500)
    expect(sent).toEqual([])
    await vi.advanceTimersByTimeAsync(200)
    expect([headings(), canUndo.value]).toEqual([[20], 'Turn'])
    await undo()
    expect(canUndo.value).toBeNull()
  })

  test('of another name are another edit', async () => {
    const { beginSteps, turned } = await board()
    beginSteps('Turn')?.show(turned(10))
    beginSteps('Move')?.show(turned(20))
    await vi.advanceTimersByTimeAsync(700)
    expect(headings()).toEqual([10, 20])
  })

  test('are settled by a press elsewhere; what a pointer holds is not', async () => {
    const { begin, beginSteps, settleSteps, turned } = await board()
    beginSteps('Turn')?.show(turned(10))
    settleSteps()
    const drag = begin('Move')
    drag?.show(turned(20))
    settleSteps()
    expect([headings(), drag?.lasts()]).toEqual([[10], true])
  })
})

describe('before it is kept', () => {
  test('undo, called by whatever way, takes back the steps and not the edit before them', async () => {
    const { beginSteps, changeSpot, turned, undo, redo, heading, savedSpot, canUndo } = await board()
    await changeSpot('Note', { ...SPOT, notes: 'before' })
    const noted = savedSpot.value as Spot
    const steps = beginSteps('Turn')
    steps?.show({ ...turned(0), spot: { ...noted, stop: { ...noted.stop, heading: 33 } } })
    await undo()
    expect([heading(), savedSpot.value?.notes, canUndo.value]).toEqual([SPOT.stop.heading, 'before', 'Note'])
    await redo()
    expect([heading(), savedSpot.value?.notes]).toEqual([33, 'before'])
  })

  test('undo during a drag takes back what the drag has done so far, and the hand has let go', async () => {
    const { begin, turned, undo, heading } = await board()
    const onEnd = vi.fn()
    const drag = begin('Turn', { onEnd })
    drag?.show(turned(10))
    await undo()
    drag?.show(turned(20))
    expect([heading(), onEnd.mock.calls]).toEqual([SPOT.stop.heading, [[true]]])
  })

  test('redo keeps the steps, after which there is nothing to redo', async () => {
    const { beginSteps, changeSpot, savedSpot, undo, redo, heading } = await board()
    await changeSpot('Note', { ...SPOT, notes: 'before' })
    await undo()
    const steps = beginSteps('Turn')
    const start = savedSpot.value as Spot
    steps?.show({ shoot: SHOOT, spot: { ...start, stop: { ...start.stop, heading: 7 } } })
    await redo()
    expect([heading(), savedSpot.value?.notes]).toEqual([7, ''])
  })

  test('leaving, a command or another page keeps it, once', async () => {
    const { beginSteps, settleUnfinished, turned } = await board()
    beginSteps('Turn')?.show(turned(10))
    settleUnfinished()
    settleUnfinished()
    await vi.advanceTimersByTimeAsync(700)
    expect(headings()).toEqual([10])
  })
})

test('begins at what a field under way holds: its text is saved first, and both stay', async () => {
  const { begin, boardSpot, ...page } = await board()
  const { beginUnfinished } = await import('#renderer/state/library/unfinished.ts')
  const forget = beginUnfinished(() => {
    forget()
    void page.commit({
      label: 'Notes',
      records: [{ kind: 'spot', before: SPOT, after: { ...SPOT, notes: 'by the gate' } }],
    })
  })
  const change = begin('Turn')
  expect(change?.start.spot.notes).toBe('by the gate')
  change?.show({ shoot: SHOOT, spot: { ...change.start.spot, stop: { ...SPOT.stop, heading: 30 } } })
  await change?.keep()
  expect([boardSpot.value?.notes, boardSpot.value?.stop.heading]).toEqual(['by the gate', 30])
})
