/** Effects that outlast a fault in what they read: else it would strike whoever wrote the value, an edit about to be saved among them. */
import { effect } from '@preact/signals'

/** Runs as an effect; what it cannot work out now it tries again with the next change. The part that shows it tells the user. */
export function calmly(run: () => unknown): () => void {
  return effect(() => {
    try {
      const clean = run()
      return typeof clean === 'function' ? (clean as () => void) : undefined
    } catch (fault) {
      // oxlint-disable-next-line no-console -- for whoever mends it
      console.error(fault)
      return undefined
    }
  })
}
