/** What is read follows a moving hand in turns, one part of the page a frame, and is exact again once the hand lets go. */
import { effect } from '@preact/signals'
import { afterAll, beforeEach, expect, test, vi } from 'vitest'
import { examplePlan } from '#test/help/plans.ts'

vi.mock('#renderer/host/host.ts', () => ({
  ask: () => Promise.resolve({ ok: false, fault: { reason: 'none', message: 'nobody is asked' } }),
  readBytes: () => Promise.resolve(null),
}))

let frames: FrameRequestCallback[] = []
vi.stubGlobal('requestAnimationFrame', (run: FrameRequestCallback) => frames.push(run))
vi.stubGlobal('cancelAnimationFrame', () => {
  frames = []
})
afterAll(() => void vi.unstubAllGlobals())

const { endLive, showLive, showRecords } = await import('#renderer/state/library/library.ts')
const { followCalmly, lensBoard, answersBoard, dayBoard } = await import('#renderer/state/plan/calm-board.ts')
const { plan } = await import('#renderer/state/plan/board-plan.ts')

const { shoot, spot } = examplePlan()
const READERS = [answersBoard, dayBoard, lensBoard]

function nextFrame(): void {
  const due = frames
  frames = []
  for (const run of due) run(0)
}

/** The hand moves the subject on by so many degrees. */
function turn(heading: number): void {
  showLive({ ...spot, stop: { ...spot.stop, heading } }, shoot)
}

beforeEach(() => {
  endLive()
  showRecords({ shoot, spots: [spot], spotId: spot.id })
})

test('in each frame of a movement one part reads anew, and in three frames all have', () => {
  const stop = followCalmly()
  turn(1)
  const written: number[] = []
  const watches = READERS.map((reader, index) => effect(() => void (reader.plan.value && written.push(index))))
  const inFrames: number[][] = []
  for (let frame = 0; frame < 6; frame++) {
    written.length = 0
    turn(2 + frame)
    nextFrame()
    inFrames.push([...written])
  }
  expect(inFrames.every((readers) => readers.length === 1)).toBe(true)
  expect(new Set(inFrames.slice(0, 3).flat())).toEqual(new Set([0, 1, 2]))
  expect(inFrames.slice(3)).toEqual(inFrames.slice(0, 3))
  for (const end of [...watches, stop]) end()
})

test('what rests is read exactly, by all at once', () => {
  const stop = followCalmly()
  turn(40)
  const before = READERS.map((reader) => reader.plan.value)
  turn(50)
  expect(READERS.map((reader) => reader.plan.value)).toEqual(before)
  expect(answersBoard.plan.value?.spot.stop.heading).toBe(40)
  endLive()
  for (const reader of READERS) expect(reader.plan.value).toBe(plan.value)
  expect(answersBoard.plan.value?.spot.stop.heading).toBe(spot.stop.heading)
  stop()
})
