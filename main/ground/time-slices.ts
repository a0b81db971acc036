/** Owns how long work goes on before others get a turn: the process that cuts ground also answers the page. */

/** Longest time without letting others have a turn. */
const SLICE_MS = 12

/** Waits a turn of the event loop whenever a slice of time is used up. */
export function timeSlices(signal: AbortSignal): () => Promise<void> | undefined {
  let since = performance.now()
  return () => {
    if (performance.now() - since < SLICE_MS) return undefined
    return new Promise((resolve, reject) => {
      setImmediate(() => {
        since = performance.now()
        if (signal.aborted) reject(signal.reason as Error)
        else resolve()
      })
    })
  }
}

/** Lets those who come at the same time through one by one, each in a turn of the event loop of its own. */
export function makeTurnstile(): () => Promise<void> {
  let last = Promise.resolve()
  return async () => {
    last = last.then(nextTurn)
    return last
  }
}

async function nextTurn(): Promise<void> {
  await new Promise<void>((resolve) => {
    setImmediate(resolve)
  })
}
