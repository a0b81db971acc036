/** The page's end of the ground's worker: opened at the first question, given each window of elevations once. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { type Asker, askJobs } from '#renderer/job/ask-jobs.ts'
import { ringSender } from '#renderer/job/sent-rings.ts'
import {
  type FromGroundWorker,
  type GroundJob,
  type GroundUpdate,
  type ToGroundWorker,
  WINDOWS_KEPT,
} from './ground-job.ts'

interface Open {
  readonly worker: Worker
  readonly asker: Asker<GroundJob, GroundUpdate>
  /** The numbers of the windows that this worker has, in the order they were handed over. */
  readonly given: Set<number>
  readonly ringsToSend: ReturnType<typeof ringSender>
}

let open: Open | null = null
const numbers = new WeakMap<ElevationGrid, number>()
let count = 0

function opened(): Open {
  if (open !== null) return open
  const worker = new Worker(new URL('./ground-worker.ts', import.meta.url), { type: 'module' })
  const asker = askJobs<GroundJob, GroundUpdate>((message) => worker.postMessage(message, []))
  worker.addEventListener('message', (event: MessageEvent<FromGroundWorker>) => asker.hear(event.data))
  worker.addEventListener('error', (event) => {
    open?.worker.terminate()
    open = null
    asker.lost(event.message)
  })
  open = { worker, asker, given: new Set(), ringsToSend: ringSender(WINDOWS_KEPT) }
  return open
}

/** A window's number, by which jobs name it. */
export function groundNumber(grid: ElevationGrid): number {
  const known = numbers.get(grid)
  if (known !== undefined) return known
  count += 1
  numbers.set(grid, count)
  return count
}

/** Where jobs on a window are asked: the worker has it before. */
export function askerOn(grid: ElevationGrid): Asker<GroundJob, GroundUpdate>['ask'] {
  const { worker, asker, given, ringsToSend } = opened()
  const ground = groundNumber(grid)
  if (!given.has(ground)) {
    given.add(ground)
    for (const oldest of given) {
      if (given.size <= WINDOWS_KEPT) break
      given.delete(oldest)
    }
    const { rings, transfer } = ringsToSend(grid)
    worker.postMessage({ say: 'ground', ground, rings } satisfies ToGroundWorker, transfer)
  }
  return asker.ask
}
