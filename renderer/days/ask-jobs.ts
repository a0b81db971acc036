/** The page's side: asks jobs of the worker, passes on what belongs to the latest of each kind, and drops the rest. */
import type { FromWorker, JobKind, JobOf, ToWorker, UpdateOf } from './job.ts'

export interface Hearer<Kind extends JobKind> {
  readonly found: (update: UpdateOf<Kind>, share: number) => void
  readonly failed: (message: string) => void
}

export interface Asker {
  /** Answers with the way to stop it, after which nothing more of it is heard. */
  readonly ask: <Kind extends JobKind>(job: JobOf<Kind>, hearer: Hearer<Kind>) => () => void
  readonly hear: (message: FromWorker) => void
  /** The worker itself is lost: every job still at work has failed. */
  readonly lost: (message: string) => void
}

export function askJobs(send: (message: ToWorker) => void): Asker {
  const latest = new Map<JobKind, { readonly id: number; readonly hearer: Hearer<JobKind> }>()
  let count = 0
  const forget = (kind: JobKind, id: number): boolean => latest.get(kind)?.id === id && latest.delete(kind)
  return {
    ask(job, hearer) {
      const id = ++count
      // What is found for an id is of its job's kind.
      latest.set(job.kind, { id, hearer: hearer as unknown as Hearer<JobKind> })
      send({ say: 'do', id, job })
      return () => {
        if (forget(job.kind, id)) send({ say: 'stop', id, kind: job.kind })
      }
    },
    hear(message) {
      const kind = message.say === 'found' ? message.update.kind : message.kind
      const asked = latest.get(kind)
      if (asked?.id !== message.id) return
      if (message.say === 'failed' || message.share >= 1) forget(kind, message.id)
      if (message.say === 'failed') asked.hearer.failed(message.message)
      else asked.hearer.found(message.update, message.share)
    },
    lost(message) {
      const failed = [...latest.values()]
      latest.clear()
      for (const { hearer } of failed) hearer.failed(message)
    },
  }
}
