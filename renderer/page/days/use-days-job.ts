/** A job's findings in a component: begun again when what is asked changes, stopped when the component goes. */
import { useEffect, useState } from 'preact/hooks'
import { type Asker, askJobs } from '#renderer/job/ask-jobs.ts'
import type { FromWorker } from '#renderer/job/messages.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import type { Job, JobKind, JobOf, Update, UpdateOf } from './days-job.ts'

interface Open {
  readonly worker: Worker
  readonly asker: Asker<Job, Update>
}

let open: Open | null = null

function opened(): Open {
  if (open !== null) return open
  const worker = new Worker(new URL('./days-worker.ts', import.meta.url), { type: 'module' })
  const asker = askJobs<Job, Update>((message) => worker.postMessage(message, []))
  worker.addEventListener('message', (event: MessageEvent<FromWorker<Job, Update>>) => asker.hear(event.data))
  worker.addEventListener('error', (event) => {
    asker.lost(event.message)
    closeWorker()
  })
  open = { worker, asker }
  return open
}

/** Ends the worker; the next question opens another. */
export function closeWorker(): void {
  open?.worker.terminate()
  open = null
}

export interface Findings<Found> {
  readonly found: Found
  /** 0..1; 1 when all is found. */
  readonly share: number
  /** The sentence when it could not be worked out. */
  readonly fault: string | null
}

/** `grow` adds an update to what was found before. The job must be the same object while the same is asked; null asks nothing. */
export function useJob<Kind extends JobKind, Found>(
  job: JobOf<Kind> | null,
  nothing: Found,
  grow: (found: Found, update: UpdateOf<Kind>) => Found,
): Findings<Found> {
  const none: Findings<Found> = { found: nothing, share: 0, fault: null }
  const [findings, setFindings] = useState<Findings<Found> & { readonly of: JobOf<Kind> | null }>({ ...none, of: job })
  useEffect(() => {
    setFindings({ ...none, of: job })
    if (job === null) return undefined
    return opened().asker.ask<Kind>(job, {
      found: (update, share) =>
        setFindings((before) => ({ found: grow(before.found, update), share, fault: null, of: job })),
      failed: (message) => setFindings((before) => ({ ...before, fault: daysWords.notFound(message) })),
    })
    // What grows it and what it grows from are the same for a kind.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [job])
  // Until the effect has run, what is held belongs to the job before.
  return findings.of === job ? findings : none
}
