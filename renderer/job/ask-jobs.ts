/** The page's side: asks jobs of the worker, passes on what belongs to the latest of each kind, and drops the rest. */
import type { FromWorker, OfKind, ToWorker, WithKind } from './messages.ts'

export interface Hearer<Update extends OfKind> {
  readonly found: (update: Update, share: number) => void
  readonly failed: (message: string) => void
}

export interface Asker<Job extends OfKind, Update extends OfKind> {
  /** Answers with the way to stop it, after which nothing more of it is heard. */
  readonly ask: <Kind extends Job['kind'] & Update['kind']>(
    job: WithKind<Job, Kind>,
    hearer: Hearer<WithKind<Update, Kind>>,
  ) => () => void
  readonly hear: (message: FromWorker<Job, Update>) => void
  /** The worker itself is lost: every job still at work has failed. */
  readonly lost: (message: string) => void
}

export function askJobs<Job extends OfKind, Update extends OfKind>(
  send: (message: ToWorker<Job>) => void,
): Asker<Job, Update> {
  const latest = new Map<string, { readonly id: number; readonly hearer: Hearer<Update> }>()
  let count = 0
  const forget = (kind: string, id: number): boolean => latest.get(kind)?.id === id && latest.delete(kind)
  return {
    ask(job, hearer) {
      const id = ++count
      // What is found for an id is of its job's kind.
      latest.set(job.kind, { id, hearer: hearer as unknown as Hearer<Update> })
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
