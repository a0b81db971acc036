/** One job at a time of those wished one after the other: each is brought to its end, and of those that come meanwhile only the last is begun. */
import type { Hearer } from './ask-jobs.ts'
import type { OfKind } from './messages.ts'

export interface OneAtATime<Job> {
  /** Null wants nothing: what is at work is stopped. */
  readonly want: (job: Job | null) => void
}

/** `found` tells whether the job has come to its end. */
export function oneAtATime<Job, Update extends OfKind>(
  ask: (job: Job, hearer: Hearer<Update>) => () => void,
  found: (job: Job, update: Update) => void,
): OneAtATime<Job> {
  let wanted: Job | null = null
  let begun: Job | null = null
  let stop: (() => void) | null = null

  function end(): void {
    stop = null
    if (wanted !== begun) begin()
  }

  function begin(): void {
    const job = wanted
    begun = job
    if (job === null) return
    stop = ask(job, {
      found(update, share) {
        found(job, update)
        if (share >= 1) end()
      },
      failed: end,
    })
  }

  return {
    want(job) {
      wanted = job
      if (job === null) {
        stop?.()
        stop = null
        begun = null
      } else if (stop === null && job !== begun) begin()
    },
  }
}
