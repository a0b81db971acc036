/** Patience with other windows: work on the library is tried again for a while as long as one of them is writing. */
import type { Result } from '#core/result.ts'
import { guardedLater, type StoreReason } from './fault.ts'

/** Attempts to write while another window is writing; with the pauses between them about ten seconds. */
const ATTEMPTS = 24

export async function patiently<Value>(
  work: () => Value | Promise<Value>,
  pause: (milliseconds: number) => Promise<void>,
): Promise<Result<Value, StoreReason>> {
  for (let attempt = 1; ; attempt += 1) {
    // oxlint-disable-next-line no-await-in-loop
    const tried = await guardedLater(work)
    if (tried.ok || tried.fault.reason !== 'busy' || attempt === ATTEMPTS) return tried
    // oxlint-disable-next-line no-await-in-loop
    await pause(25 * attempt)
  }
}
