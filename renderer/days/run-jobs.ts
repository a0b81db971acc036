/** The worker's side: one job of each kind at a time, a step of each in turn, and an ear for the page between the steps. */
import type { FromWorker, Job, JobKind, ToWorker } from './job.ts'
import type { Step } from './work.ts'

interface Begun {
  readonly id: number
  readonly steps: Iterator<Step>
}

interface Outside {
  readonly stepsOf: (job: Job) => Iterator<Step>
  readonly send: (message: FromWorker) => void
  /** Calls back once, after waiting messages have been heard. */
  readonly later: (turn: () => void) => void
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}

/** Answers with what hears the page's messages. */
export function runJobs({ stepsOf, send, later }: Outside): (message: ToWorker) => void {
  const live = new Map<JobKind, Begun>()
  let waiting = false

  const goOn = (kind: JobKind, { id, steps }: Begun): void => {
    try {
      const next = steps.next()
      if (next.done === true) live.delete(kind)
      else send({ say: 'found', id, ...next.value })
    } catch (error) {
      live.delete(kind)
      send({ say: 'failed', id, kind, message: messageOf(error) })
    }
  }
  const soon = (): void => {
    if (waiting || live.size === 0) return
    waiting = true
    later(() => {
      waiting = false
      for (const [kind, begun] of live) goOn(kind, begun)
      soon()
    })
  }
  return (message) => {
    if (message.say === 'stop') {
      if (live.get(message.kind)?.id === message.id) live.delete(message.kind)
      return
    }
    const { id, job } = message
    try {
      live.set(job.kind, { id, steps: stepsOf(job) })
    } catch (error) {
      live.delete(job.kind)
      send({ say: 'failed', id, kind: job.kind, message: messageOf(error) })
    }
    soon()
  }
}
