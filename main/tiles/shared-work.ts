/** Owns the sharing of work under way: whoever asks for the same thing meanwhile gets the same answer. */

export interface SharedWork<Value> {
  /** `work` hears by its signal when nobody waits for it any longer. */
  run(key: string, work: (signal: AbortSignal) => Promise<Value>, signal?: AbortSignal): Promise<Value>
}

interface UnderWay<Value> {
  readonly promise: Promise<Value>
  readonly nobodyWaits: AbortController
  waiters: number
}

export function makeSharedWork<Value>(): SharedWork<Value> {
  const underWay = new Map<string, UnderWay<Value>>()

  function begin(key: string, work: (signal: AbortSignal) => Promise<Value>): UnderWay<Value> {
    const nobodyWaits = new AbortController()
    const begun: UnderWay<Value> = { promise: work(nobodyWaits.signal), nobodyWaits, waiters: 0 }
    underWay.set(key, begun)
    const end = (): void => {
      if (underWay.get(key) === begun) underWay.delete(key)
    }
    begun.promise.then(end, end)
    return begun
  }

  return {
    run: async (key, work, signal) => {
      const shared = underWay.get(key) ?? begin(key, work)
      shared.waiters += 1
      const leave = (): void => {
        shared.waiters -= 1
        if (shared.waiters > 0) return
        // A newcomer must not join work that is being given up.
        if (underWay.get(key) === shared) underWay.delete(key)
        shared.nobodyWaits.abort()
      }
      if (signal?.aborted) leave()
      else signal?.addEventListener('abort', leave, { once: true })
      try {
        return await shared.promise
      } finally {
        signal?.removeEventListener('abort', leave)
      }
    },
  }
}
