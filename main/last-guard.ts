/** The last guard of the loopback host: a fault nobody caught is written down and answered, and the program goes on; a flood ends it in words. */
import type { EventEmitter } from 'node:events'
import type { Log } from './log.ts'

export interface LastGuardOptions {
  /** Where uncaught faults are heard: the process. */
  readonly on: Pick<EventEmitter, 'on'>
  readonly log: Log
  readonly say: (line: string) => void
  /** Answers the request out of whose work the fault came. */
  readonly answerFailed: () => void
  readonly end: () => void
  readonly now: () => number
}

/** So many faults within so many milliseconds: whatever is broken does not mend itself. */
const FLOOD = 20
const FLOOD_MS = 60_000

export function guardLast(options: LastGuardOptions): void {
  const { log, say, now } = options
  let faults: readonly number[] = []
  const hear = (event: string) => (error: unknown) => {
    log.error(event, { error })
    options.answerFailed()
    faults = [...faults.filter((at) => at > now() - FLOOD_MS), now()]
    if (faults.length === 1) say('Something failed that should not have; the log tells what. Standpoint goes on.')
    if (faults.length < FLOOD) return
    log.error('flood-of-faults')
    say(
      'One fault follows another, so Standpoint stops here; the log tells why. Everything saved is kept: start it again.',
    )
    options.end()
  }
  options.on.on('uncaughtException', hear('uncaught-exception'))
  options.on.on('unhandledRejection', hear('unhandled-rejection'))
}
