/** The scan's workers: one for each core, four at most, opened with the first scan and handed each ground once. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { FromWorker } from '#renderer/job/messages.ts'
import { ringSender } from '#renderer/job/sent-rings.ts'
import { type TaskPool, openPool } from '#renderer/job/task-pool.ts'
import type { GroundMessage, ScanJob, ScanUpdate } from './scan-job.ts'

const MOST_WORKERS = 4

interface Given {
  readonly worker: Worker
  readonly ringsToSend: ReturnType<typeof ringSender>
}

interface Opened {
  readonly pool: TaskPool<ScanJob, ScanUpdate>
  readonly workers: readonly Given[]
  /** The ground that lies with them. */
  terrain: ElevationGrid | null
}

let opened: Opened | null = null

function openWorkers(): Opened {
  const workers: Given[] = []
  const size = Math.max(1, Math.min(MOST_WORKERS, navigator.hardwareConcurrency))
  const pool = openPool<ScanJob, ScanUpdate>(size, ({ hear, lost }) => {
    const worker = new Worker(new URL('./scan-worker.ts', import.meta.url), { type: 'module' })
    worker.addEventListener('message', (event: MessageEvent<FromWorker<ScanJob, ScanUpdate>>) => hear(event.data))
    worker.addEventListener('error', (event) => {
      lost(event.message)
      closeWorkers()
    })
    workers.push({ worker, ringsToSend: ringSender() })
    return { send: (message) => worker.postMessage(message, []), end: () => worker.terminate() }
  })
  return { pool, workers, terrain: null }
}

/** Ends the workers; the next scan opens others. */
function closeWorkers(): void {
  opened?.pool.end()
  opened = null
}

/** Each worker gets cells of its own, handed over: they are large, and copied only here. */
function handGround(to: Opened, terrain: ElevationGrid | null): void {
  if (to.terrain === terrain) return
  to.terrain = terrain
  for (const { worker, ringsToSend } of to.workers) {
    const { rings, transfer } = ringsToSend(terrain)
    worker.postMessage({ say: 'ground', rings } satisfies GroundMessage, transfer)
  }
}

/** The workers, with this ground before them. */
export function scanPool(terrain: ElevationGrid | null): TaskPool<ScanJob, ScanUpdate> {
  opened ??= openWorkers()
  handGround(opened, terrain)
  return opened.pool
}
