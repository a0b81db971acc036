/** A scan from start to end over workers of the test's own: the same whatever their number, stopped at once, explained where nothing is. */
import { beforeEach, expect, test, vi } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { USUAL_SCAN_WISHES, type ScanWishes } from '#core/record/scan-wishes.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import { scanCost } from '#core/scan/scan-cost.ts'
import type { ToWorker } from '#renderer/job/messages.ts'
import { runJobs } from '#renderer/job/run-jobs.ts'
import { openPool } from '#renderer/job/task-pool.ts'
import type { ScanJob, ScanUpdate } from '#renderer/panel/scan/scan-job.ts'
import { startScan, stopScan } from '#renderer/panel/scan/scan-run.ts'
import { scanSteps } from '#renderer/panel/scan/scan-work.ts'
import { type ScanShown, lastScan, showScan } from '#renderer/state/session/scan-shown.ts'
import { examplePlan } from '#test/help/plans.ts'

vi.mock('#renderer/host/host.ts', () => ({
  request: () => Promise.resolve({ ok: false, fault: { reason: 'no-host', message: '' } }),
}))

const AT = { lat: -41.2, lon: 12.4 }

function asked(wishes: Partial<ScanWishes> = {}): ScanRequest {
  const { shoot, spot } = examplePlan({ at: AT })
  const points = [destination(AT, 310, 60), destination(AT, 130, 60)]
  const ground = { id: 'track', name: 'Track', form: 'line', points, turn: 'either-way' } as const
  return {
    shoot: {
      ...shoot,
      light: NO_WISHES,
      stoppingGround: [ground],
      scanWishes: { ...USUAL_SCAN_WISHES, landmarkShown: null, landmarkFill: null, light: null, ...wishes },
    },
    spot: { ...spot, notes: 'ours', status: 'chosen', permission: { state: 'granted', whom: 'us', until: null } },
    terrain: null,
    pins: [],
    zone: 'UTC',
    parkings: [],
    steps: { place: 20, heading: 90, bearing: 20, focalLengths: 2, fills: 2, heights: 1, days: 1, minutes: 60 },
  }
}

/** Workers that do their steps when the test says so, in the order that it says. */
function testWorkers(size: number) {
  const turns: (() => void)[][] = []
  const pool = openPool<ScanJob, ScanUpdate>(size, ({ hear }) => {
    const own: (() => void)[] = []
    turns.push(own)
    const work = runJobs<ScanJob, ScanUpdate>({
      stepsOf: (job) => scanSteps(job, null),
      // As between a page and its worker, nothing is shared.
      send: (message) => hear(structuredClone(message)),
      later: (turn) => own.push(turn),
    })
    return { send: (message: ToWorker<ScanJob>) => work(structuredClone(message)), end: () => undefined }
  })
  const due = new Set<() => void>()
  let [clock, ids] = [0, 0]
  const world = {
    pool,
    now: () => (clock += 10),
    newId: () => `result ${++ids}`,
    later(run: () => void) {
      due.add(run)
      return () => due.delete(run)
    },
  }
  /** One step of the worker that is `nth` among those with something to do; false when none has. */
  const step = (nth: number): boolean => {
    const busy = turns.filter((own) => own.length > 0)
    busy[nth % Math.max(1, busy.length)]?.shift()?.()
    for (const run of due) run()
    return busy.length > 0
  }
  return { world, step }
}

function toTheEnd(request: ScanRequest, size: number, order: (turn: number) => number): ScanShown {
  const { world, step } = testWorkers(size)
  startScan(request, scanCost(request), world)
  for (let turn = 0; step(order(turn)); turn++);
  const shown = lastScan.value
  if (shown === null) throw new Error('nothing is shown')
  return shown
}

/** What is found, without the ids that are new with every scan. */
function told({ phase, places, results, why, share }: ScanShown): unknown {
  return {
    phase,
    share,
    places,
    why,
    best: results.map(({ number, candidate, window }) => [number, candidate, window]),
  }
}

beforeEach(() => {
  stopScan()
  showScan(null)
})

test('finds the same with one worker as with four, whichever of them is quicker', () => {
  const request = asked()
  const alone = toTheEnd(request, 1, () => 0)
  expect(alone.phase).toBe('done')
  expect(alone.results.length).toBeGreaterThan(1)
  for (const size of [2, 3, 4]) {
    expect(told(toTheEnd(request, size, (turn) => (size === 3 ? 0 : turn * 7)))).toEqual(told(alone))
  }
})

test('the best are numbered by their score after polishing, each a spot without the notes of the one it set out from', () => {
  const request = asked()
  const { results } = toTheEnd(request, 2, (turn) => turn)
  const scores = results.map(({ candidate }) => candidate.score)
  expect(scores).toEqual(scores.toSorted((one, other) => other - one))
  expect(results.map(({ number }) => number)).toEqual(results.map((_, index) => index + 1))
  expect(new Set(results.map(({ id }) => id)).size).toBe(results.length)
  for (const { spot, number, polished, candidate } of results) {
    expect(polished).toBe(true)
    expect(spot).toMatchObject({ name: `Best ${number}, Track`, notes: '', status: 'idea', landmarkId: 'bridge' })
    expect(spot.permission.state).toBe('to-ask')
    expect(spot.stop.at).toEqual(candidate.at)
    expect(spot.shot.focalLength).toBe(candidate.focalLength)
  }
})

test('what is found is shown while it is looked for', () => {
  const { world, step } = testWorkers(4)
  startScan(asked(), scanCost(asked()), world)
  const seen: number[] = []
  for (let turn = 0; lastScan.value?.phase === 'looking' && step(turn); turn++) seen.push(lastScan.value.places.length)
  expect(seen.some((count) => count > 0 && count < Math.max(...seen))).toBe(true)
  expect(seen).toEqual(seen.toSorted((one, other) => one - other))
})

test('while an arrangement stays among the best, its frame is the same and need not be drawn again', () => {
  const { world, step } = testWorkers(4)
  startScan(asked(), scanCost(asked()), world)
  const frames = new Map<unknown, unknown>()
  let again = 0
  for (let turn = 0; lastScan.value?.phase === 'looking' && step(turn); turn++) {
    for (const { candidate, frame } of lastScan.value.results) {
      if (frames.has(candidate)) again += 1
      expect(frames.get(candidate) ?? frame).toBe(frame)
      frames.set(candidate, frame)
    }
  }
  expect(again).toBeGreaterThan(0)
})

test('a scan that is done is not stopped any more', () => {
  toTheEnd(asked(), 1, () => 0)
  const done = lastScan.value
  stopScan()
  expect(lastScan.value).toBe(done)
})

test('a stop is shown at once, nothing comes after it, and what was found stays', () => {
  const { world, step } = testWorkers(2)
  startScan(asked(), scanCost(asked()), world)
  while ((lastScan.value?.places.length ?? 0) === 0) step(0)
  const before = lastScan.value
  stopScan()
  expect(lastScan.value).toMatchObject({ phase: 'stopped', places: before?.places })
  const stopped = lastScan.value
  for (let turn = 0; step(turn); turn++);
  expect(lastScan.value).toBe(stopped)
})

test('another scan takes the place of the one at work', () => {
  const { world, step } = testWorkers(2)
  const first = asked()
  const second = asked({ subjectView: { must: false, weight: 3, least: 75, most: 105 } })
  startScan(first, scanCost(first), world)
  step(0)
  startScan(second, scanCost(second), world)
  for (let turn = 0; step(turn); turn++);
  expect(lastScan.value?.request).toBe(second)
  expect(lastScan.value?.phase).toBe('done')
})

test('where nothing meets the musts it says what rules out how much, the same with every number of workers', () => {
  const request = asked({ landmarkFill: { must: true, weight: 3, axis: 'height', least: 0.8, most: 0.9 } })
  const alone = toTheEnd(request, 1, () => 0)
  expect(alone.results).toEqual([])
  expect(alone.why?.looked).toBeGreaterThan(0)
  expect(alone.why?.excluded.find(({ by }) => by === 'landmarkFill')?.count).toBeGreaterThan(0)
  expect(told(toTheEnd(request, 3, (turn) => turn))).toEqual(told(alone))
})
