/** Lets only so many pieces of work run at once; the others wait in line, first come first served, until they are given up. */

export interface Turns {
  /** Rejects with the signal's reason when it is given up while it stands in line. */
  run<Value>(work: () => Promise<Value>, signal: AbortSignal): Promise<Value>
}

export function makeTurns(atOnce: number): Turns {
  const line: (() => void)[] = []
  let running = 0

  function next(): void {
    if (running < atOnce) line.shift()?.()
  }

  async function turn(signal: AbortSignal): Promise<void> {
    const { promise, resolve, reject } = Promise.withResolvers<void>()
    const begin = (): void => {
      signal.removeEventListener('abort', leave)
      running += 1
      resolve()
    }
    const leave = (): void => {
      line.splice(line.indexOf(begin), 1)
      reject(signal.reason as Error)
    }
    signal.addEventListener('abort', leave, { once: true })
    line.push(begin)
    next()
    return promise
  }

  return {
    run: async (work, signal) => {
      signal.throwIfAborted()
      await turn(signal)
      try {
        return await work()
      } finally {
        running -= 1
        next()
      }
    },
  }
}
