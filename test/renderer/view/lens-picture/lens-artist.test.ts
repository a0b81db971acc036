/** The page's end of the picture's worker: what is sent again and what not, and when the worker counts as lost. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { Plan } from '#core/plan/plan.ts'
import { type LensArtist, startArtist } from '#renderer/view/lens-picture/lens-artist.ts'
import { type FromLensWorker, type ToLensWorker, withChanged } from '#renderer/view/lens-picture/lens-request.ts'
import { examplePlan } from '#test/help/plans.ts'

/** The worker's side in the test's hand. */
class HeldWorker extends EventTarget {
  static last: HeldWorker
  readonly heard: ToLensWorker[] = []
  ended = false
  constructor() {
    super()
    HeldWorker.last = this
  }
  postMessage(message: ToLensWorker, transfer: Transferable[]): void {
    this.heard.push(message.say === 'canvas' ? message : structuredClone(message, { transfer }))
  }
  answer(message: FromLensWorker): void {
    this.dispatchEvent(new MessageEvent('message', { data: message }))
  }
  terminate(): void {
    this.ended = true
  }
  /** Fields of the shoot in each message of it. */
  get fields(): string[][] {
    return this.heard.flatMap((one) => (one.say === 'shoot' ? [Object.keys(one.changed)] : []))
  }
}

const canvas = { transferControlToOffscreen: () => ({}) } as unknown as HTMLCanvasElement
const look = { width: 300, pixelRatio: 1, moving: true }
const plan = examplePlan()
const drawn = vi.fn()
const lost = vi.fn()
let artist: LensArtist

function withShoot(change: Partial<Plan['shoot']>): Plan {
  return { ...plan, shoot: { ...plan.shoot, ...change } }
}

beforeEach(() => {
  vi.useFakeTimers()
  vi.stubGlobal('Worker', HeldWorker)
  artist = startArtist(canvas, { drawn, lost })
})

afterEach(() => {
  artist.stop()
  vi.clearAllMocks()
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

test('of a shoot that changes only what changed is sent, and nothing for what no picture shows', () => {
  const { last } = HeldWorker
  artist.draw(plan, look)
  expect(last.fields).toHaveLength(1)
  expect(last.fields[0]).toEqual(expect.arrayContaining(['subject', 'landmarks', 'obstructions', 'bag']))
  const [landmark] = plan.shoot.landmarks
  if (landmark === undefined) throw new Error('a plan with a landmark')
  const moved = withShoot({ landmarks: [{ ...landmark, name: 'moved' }] })
  artist.draw(moved, look)
  expect(last.fields.slice(1)).toEqual([['landmarks']])
  artist.draw({ ...moved, shoot: { ...moved.shoot, stoppingGround: [], keepOuts: [] } }, look)
  expect(last.fields).toHaveLength(2)
  expect(last.heard.filter(({ say }) => say === 'draw')).toHaveLength(3)
})

test('the worker lays what came together, and what did not change stays the same object', () => {
  const before = withChanged(null, plan.shoot)
  const after = withChanged(before, { iso: 1600 })
  expect(after).toEqual({ ...plan.shoot, stoppingGround: [], keepOuts: [], iso: 1600 })
  expect(after.subject).toBe(before.subject)
})

test('a worker that answers is not lost, however long newer pictures are asked for meanwhile', () => {
  const { last } = HeldWorker
  artist.draw(plan, look)
  for (let turn = 1; turn <= 10; turn++) {
    artist.draw(plan, look)
    vi.advanceTimersByTime(10_000)
    last.answer({ say: 'drawn', turn, parts: [] })
  }
  expect(lost).not.toHaveBeenCalled()
  last.answer({ say: 'drawn', turn: 11, parts: [] })
  expect(drawn).toHaveBeenCalledTimes(1)
  vi.advanceTimersByTime(600_000)
  expect(lost).not.toHaveBeenCalled()
})

test('one that answers an older picture and then no more is lost', () => {
  const { last } = HeldWorker
  artist.draw(plan, look)
  artist.draw(plan, look)
  last.answer({ say: 'drawn', turn: 1, parts: [] })
  vi.advanceTimersByTime(600_000)
  expect(lost).toHaveBeenCalledTimes(1)
  expect(last.ended).toBe(true)
})
