/** Owns the turns at one tile server: two requests at a time, newest wish first, and no endless line of old wishes. */

/** `crowded`: newer wishes pushed it out. `left`: whoever wished for it no longer does. */
export type QueueTurn<Value> =
  | { readonly taken: true; readonly value: Value }
  | { readonly taken: false; readonly why: 'crowded' | 'left' }

export interface RequestQueue {
  run<Value>(work: () => Promise<Value>, signal: AbortSignal): Promise<QueueTurn<Value>>
}

interface Waiting {
  readonly burst: number
  readonly start: () => void
  readonly drop: () => void
}

/** OpenStreetMap's servers long asked for no more than two connections; it suits every volunteer's server. */
const AT_ONCE = 2
/** A 4K screen shows about 150 tiles; what waits beyond that has been scrolled past. */
const LONGEST_LINE = 200

/** Wishes closer together than this are one look at the map, which the page asks for from the middle outward. */
const BURST_MS = 100

export function makeRequestQueue(now: () => number, longestLine: number = LONGEST_LINE): RequestQueue {
  let running = 0
  let burst = 0
  let lastWish = Number.NEGATIVE_INFINITY
  const line: Waiting[] = []

  /** The newest look at the map goes first, and within it the wish made first. */
  function next(): void {
    if (running >= AT_ONCE) return
    const latest = line.at(-1)?.burst
    const at = line.findIndex((one) => one.burst === latest)
    if (at >= 0) line.splice(at, 1)[0]?.start()
  }

  async function run<Value>(work: () => Promise<Value>, signal: AbortSignal): Promise<QueueTurn<Value>> {
    if (signal.aborted) return { taken: false, why: 'left' }
    if (now() - lastWish > BURST_MS) burst += 1
    lastWish = now()
    return new Promise((resolve, reject) => {
      const leave = (): void => {
        const at = line.indexOf(waiting)
        if (at >= 0) line.splice(at, 1)
        resolve({ taken: false, why: 'left' })
      }
      const waiting: Waiting = {
        burst,
        start: () => {
          signal.removeEventListener('abort', leave)
          running += 1
          work()
            .then((value) => resolve({ taken: true, value }), reject)
            .finally(() => {
              running -= 1
              next()
            })
        },
        drop: () => {
          signal.removeEventListener('abort', leave)
          resolve({ taken: false, why: 'crowded' })
        },
      }
      signal.addEventListener('abort', leave, { once: true })
      line.push(waiting)
      next()
      if (line.length > longestLine) line.shift()?.drop()
    })
  }

  return { run }
}
