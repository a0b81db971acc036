/** Several workers over one list of tasks: each takes the next when it is free, all of them stop when the page has enough. */
import { type Asker, askJobs } from './ask-jobs.ts'
import type { FromWorker, OfKind, ToWorker } from './messages.ts'

export interface PoolWorker<Job extends OfKind> {
  readonly send: (message: ToWorker<Job>) => void
  readonly end: () => void
}

/** Opens a worker; what it says and its loss are passed on. */
export type SpawnWorker<Job extends OfKind, Update extends OfKind> = (ears: {
  readonly hear: (message: FromWorker<Job, Update>) => void
  readonly lost: (message: string) => void
}) => PoolWorker<Job>

export interface TaskHearer<Update> {
  /** `shares` tells of each task how much of it is done, 0..1. */
  readonly found: (task: number, update: Update, shares: readonly number[]) => void
  /** Every task has come to its end. */
  readonly done: () => void
  /** One of them could not be done; the others are stopped. */
  readonly failed: (message: string) => void
}

export interface TaskPool<Job extends OfKind, Update extends OfKind> {
  readonly size: number
  /** Answers with the way to stop, after which nothing more is heard. One list at a time: another takes its place. */
  readonly run: (tasks: readonly Job[], hearer: TaskHearer<Update>) => () => void
  readonly end: () => void
}

export function openPool<Job extends OfKind, Update extends OfKind>(
  size: number,
  spawn: SpawnWorker<Job, Update>,
): TaskPool<Job, Update> {
  const workers = Array.from({ length: size }, () => openOne(spawn))
  let stopLast: () => void = () => undefined

  function run(tasks: readonly Job[], hearer: TaskHearer<Update>): () => void {
    stopLast()
    const shares = tasks.map(() => 0)
    const stops = new Map<number, () => void>()
    let [next, ended, over] = [0, 0, false]

    const stop = (): void => {
      over = true
      for (const stopTask of stops.values()) stopTask()
      stops.clear()
    }
    const end = (task: number): void => {
      stops.delete(task)
      ended += 1
    }
    const takeNext = (worker: Asker<Job, Update>): void => {
      const task = next
      const job = tasks[task]
      if (job === undefined || over) return
      next += 1
      const stopTask = worker.ask(job as never, {
        found: (update: Update, share: number) => {
          if (over) return
          shares[task] = share
          if (share >= 1) end(task)
          hearer.found(task, update, shares)
          if (over || share < 1) return
          if (ended === tasks.length) {
            over = true
            hearer.done()
          } else takeNext(worker)
        },
        failed: (message: string) => {
          if (over) return
          stops.delete(task)
          stop()
          hearer.failed(message)
        },
      })
      if (!over) stops.set(task, stopTask)
    }
    stopLast = stop
    if (tasks.length === 0) hearer.done()
    for (const { asker } of workers) takeNext(asker)
    return stop
  }

  return {
    size,
    run,
    end() {
      stopLast()
      for (const { worker } of workers) worker.end()
    },
  }
}

function openOne<Job extends OfKind, Update extends OfKind>(spawn: SpawnWorker<Job, Update>) {
  const worker = spawn({
    hear: (message) => asker.hear(message),
    lost: (message) => asker.lost(message),
  })
  const asker = askJobs<Job, Update>((message) => worker.send(message))
  return { worker, asker }
}
