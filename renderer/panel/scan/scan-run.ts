/** A scan from its start to its end: looked for by all workers, the best polished, or the reasons sought why there is none. */
import { bestOf } from '#core/scan/best-of.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import type { PlaceFound, ScanCost } from '#core/scan/scan-found.ts'
import { whyNone } from '#core/scan/why-none.ts'
import type { WhyNonePart } from '#core/scan/why-tally.ts'
import type { TaskPool } from '#renderer/job/task-pool.ts'
import { type ScanPhase, type ScanShown, showScan } from '#renderer/state/session/scan-shown.ts'
import { measure } from './cost-text.ts'
import type { PolishUpdate, ScanJob, ScanUpdate } from './scan-job.ts'
import { numberResults } from './scan-results.ts'

/** Milliseconds between two looks of the page at what has been found: it must stay fluid. */
const SHOW_EVERY = 300
/** A look at very many places takes long itself: no more than this part of the time goes to it. */
const SHOW_SHARE = 0.1

/** What a scan needs of the world around it. */
export interface ScanWorld {
  readonly pool: TaskPool<ScanJob, ScanUpdate>
  /** Milliseconds, of any beginning. */
  readonly now: () => number
  readonly newId: () => string
  /** Calls back after so many milliseconds; answers with the way to call it off. */
  readonly later: (run: () => void, milliseconds: number) => () => void
}

interface Running {
  /** Nothing more is heard of it. */
  readonly giveUp: () => void
  /** The same, and what was found until then is shown. */
  readonly stop: () => void
}

let running: Running | null = null

/** Stops the scan at work; what it found until then stays. */
export function stopScan(): void {
  running?.stop()
  running = null
}

/** Begins a scan; one at work is given up for it. */
export function startScan(request: ScanRequest, cost: ScanCost, world: ScanWorld): void {
  running?.giveUp()
  running = scan(request, cost, world)
}

/** A phase of the work: its tasks, what becomes of what is found, and what the page is shown on the way. */
interface Work {
  readonly phase: ScanPhase
  readonly tasks: readonly ScanJob[]
  readonly found: (update: ScanUpdate, task: number) => void
  readonly soFar: () => Partial<ScanShown>
  readonly done: () => void
}

function scan(request: ScanRequest, cost: ScanCost, { pool, now, newId, later }: ScanWorld): Running {
  const { terrain: _terrain, ...plain } = request
  const number = numberResults(request, newId)
  const places = new Map<number, PlaceFound>()
  // One part for each worker: places are dealt to them in turn, so that none has much more to do than another.
  const parts = Array.from({ length: pool.size }, (_, part) => part)
  let shown: ScanShown = {
    request,
    cost,
    phase: 'looking',
    share: 0,
    elapsed: 0,
    places: [],
    results: [],
    why: null,
    fault: null,
  }
  let [began, share, over] = [now(), 0, false]
  let lookTook = 0
  let soFar: Work['soFar'] = () => ({})
  let stopTasks: () => void = () => undefined
  let callOff: (() => void) | null = null

  function show(part: Partial<ScanShown>): void {
    callOff?.()
    callOff = null
    shown = { ...shown, elapsed: now() - began, ...part }
    showScan(shown)
  }

  function look(): void {
    const before = now()
    show({ ...soFar(), share })
    lookTook = now() - before
  }

  function work({ phase, tasks, found, soFar: shownSoFar, done }: Work): void {
    began = now()
    share = 0
    soFar = shownSoFar
    show({ phase, share })
    stopTasks = pool.run(tasks, {
      found(task, update, shares) {
        found(update, task)
        share = shares.reduce((sum, one) => sum + one, 0) / shares.length
        callOff ??= later(look, Math.max(SHOW_EVERY, lookTook / SHOW_SHARE))
      },
      done,
      failed(message) {
        over = true
        show({ ...soFar(), phase: 'failed', fault: message })
      },
    })
  }

  function looked(): Pick<ScanShown, 'places' | 'results'> {
    const inOrder = [...places.values()].toSorted((one, other) => one.place - other.place)
    return { places: inOrder, results: number.best(bestOf(inOrder)) }
  }

  function search(): void {
    work({
      phase: 'looking',
      tasks: parts.map((part) => ({ kind: 'look', request: plain, part, of: pool.size })),
      found(update) {
        if (update.kind === 'look') for (const found of update.found) places.set(found.place, found)
      },
      soFar: looked,
      done() {
        show({ ...looked(), share: 1 })
        measure(cost, shown.elapsed)
        if (shown.results.length > 0) polish()
        else explain()
      },
    })
  }

  /** Numbers are given again once all are at their best. */
  function polish(): void {
    const before = shown.results
    const after: PolishUpdate[] = []
    work({
      phase: 'polishing',
      tasks: before.map(({ candidate }) => ({ kind: 'polish', request: plain, candidate })),
      found(update, task) {
        if (update.kind === 'polish') after[task] = update
      },
      soFar: () => ({}),
      done() {
        over = true
        const polished = after.map((update, task) => ({ ...update, id: before[task]?.id ?? newId() }))
        show({ results: number.polished(polished), share: 1, phase: 'done' })
      },
    })
  }

  function explain(): void {
    const reasons: WhyNonePart[] = []
    work({
      phase: 'explaining',
      tasks: parts.map((part) => ({ kind: 'why', request: plain, part, of: pool.size })),
      found(update, task) {
        if (update.kind === 'why' && update.part !== null) reasons[task] = update.part
      },
      soFar: () => ({}),
      done() {
        over = true
        show({ why: whyNone(reasons), share: 1, phase: 'done' })
      },
    })
  }

  function giveUp(): void {
    stopTasks()
    callOff?.()
    over = true
  }

  search()
  return {
    giveUp,
    stop() {
      if (over) return
      giveUp()
      show({ ...soFar(), share, phase: 'stopped' })
    },
  }
}
