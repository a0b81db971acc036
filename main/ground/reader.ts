/** Owns the thread that reads elevation files: tasks one after the other, each ended when it takes too long or too much memory. */
import { Worker } from 'node:worker_threads'
import { done, failed, type Result } from '#core/result.ts'
import type { FromReader, ReaderTasks, TaskName, ToReader } from './reader-task.ts'

export type ReaderReason = 'too-long' | 'too-much-memory' | 'broke' | 'ended'

export interface Reader {
  /** `about` names what the sentence is on when it fails. */
  ask<Name extends TaskName>(
    name: Name,
    task: ReaderTasks[Name]['task'],
    about: string,
  ): Promise<Result<ReaderTasks[Name]['answer'], ReaderReason>>
  close(): Promise<void>
}

/** Without a sign of life for so long a task is given up: an honest part is unpacked in a fraction of a second. */
const QUIET_MS = 20_000
/** A thread that does not even begin: a busy machine takes seconds. */
const START_MS = 60_000
/** To be gone at the end; it holds up nothing that matters. */
const LEAVE_MS = 2_000
/** Bytes of the thread's own objects, and of samples beside them: the largest part there may be takes 290 MB on its way. */
const MOST_HEAP = 120_000_000
const MOST_SAMPLES = 380_000_000
/** How often they are looked at. The engine's own limits alone don't do: one list that grows past them ends the whole program. */
const LOOK_MS = 50
const ENGINE_LIMITS = { maxOldGenerationSizeMb: 512, maxYoungGenerationSizeMb: 16 }

interface Waiting {
  readonly message: ToReader
  readonly about: string
  readonly settle: (outcome: Result<ReaderTasks[TaskName]['answer'], ReaderReason>) => void
}

export function openReader(code: () => Promise<string>, quietMs: number = QUIET_MS): Reader {
  const queue: Waiting[] = []
  let current: Waiting | null = null
  let worker: Worker | null = null
  let quiet: NodeJS.Timeout | undefined
  let looking: NodeJS.Timeout | undefined
  let ids = 0
  let closed = false

  function settle(outcome: Result<ReaderTasks[TaskName]['answer'], ReaderReason>): void {
    const settled = current
    clearTimeout(quiet)
    clearInterval(looking)
    current = null
    // An idle thread holds up no end; one at work does.
    worker?.unref()
    settled?.settle(outcome)
    if (!closed) void next()
  }

  /** The thread is done with, whatever it was at: the next task gets a new one. */
  function give(reason: ReaderReason): void {
    const lost = worker
    worker = null
    void lost?.terminate()
    if (current !== null) settle(failed(reason, sentence(reason, current.about)))
  }

  function watch(ms: number): void {
    clearTimeout(quiet)
    quiet = setTimeout(() => give('too-long'), ms)
    quiet.unref()
  }

  /** Looks at the memory of a thread that is at work. */
  function lookAt(one: Worker): void {
    clearInterval(looking)
    looking = setInterval(() => {
      // Rejects once the thread is gone.
      one.getHeapStatistics().then(
        ({ used_heap_size: heap, external_memory: samples }) => {
          if (worker === one && (heap > MOST_HEAP || samples > MOST_SAMPLES)) give('too-much-memory')
        },
        () => undefined,
      )
    }, LOOK_MS)
    looking.unref()
  }

  function hear(message: FromReader): void {
    if (message.id !== current?.message.id) return
    if (message.say === 'alive') watch(quietMs)
    else if (message.say === 'done') settle(done(message.answer))
    else settle(failed('broke', sentence('broke', current.about)))
  }

  async function start(): Promise<Worker> {
    const started = new Worker(await code(), {
      eval: true,
      execArgv: [],
      // A library that geotiff brings along looks into it at once, and fails where there is none.
      workerData: {},
      resourceLimits: ENGINE_LIMITS,
    })
    started.on('message', hear)
    started.on('online', () => {
      if (worker === started && current !== null) watch(quietMs)
    })
    started.on('error', (error: Error & { code?: string }) => {
      if (worker === started) give(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'too-much-memory' : 'broke')
    })
    started.on('exit', () => {
      if (worker === started) give('broke')
    })
    return started
  }

  async function next(): Promise<void> {
    if (current !== null) return
    current = queue.shift() ?? null
    if (current === null) return
    watch(worker === null ? START_MS : quietMs)
    const asked = current
    try {
      const begun = worker ?? (await start())
      if (current === asked) {
        worker = begun
        begun.ref()
        begun.postMessage(asked.message, [])
        lookAt(begun)
      } else if (begun !== worker) void begun.terminate()
    } catch {
      if (current === asked) give('broke')
    }
  }

  return {
    ask: async (name, task, about) => {
      if (closed) return failed('ended', sentence('ended', about))
      // A thread that isn't there holds nothing.
      if (name === 'forget' && worker === null && current === null) return done(null)
      const id = (ids += 1)
      return new Promise((resolve) => {
        const message = { id, name, task } as ToReader
        queue.push({ message, about, settle: resolve })
        void next()
      })
    },
    close: async () => {
      closed = true
      for (const { about, settle: end } of queue.splice(0)) end(failed('ended', sentence('ended', about)))
      worker?.ref()
      const ending = worker?.terminate()
      give('ended')
      await Promise.race([ending, new Promise((resolve) => void setTimeout(resolve, LEAVE_MS).unref())])
    },
  }
}

function sentence(reason: ReaderReason, about: string): string {
  return `${about} ${SENTENCES[reason]}`
}

const WRITE_AGAIN = 'it is damaged. Download it again, or save it again, for instance by gdal_translate.'

const SENTENCES = {
  'too-long': `was not read, because reading it did not come to an end: ${WRITE_AGAIN}`,
  'too-much-memory': `was not read, because reading it takes more memory than there is for it: ${WRITE_AGAIN}`,
  broke: 'cannot be read: reading it failed. Look at its permissions, or download it again.',
  ended: 'was not read to its end: the program was closing. Add it again.',
} as const satisfies Record<ReaderReason, string>
