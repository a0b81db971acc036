/** Owns how long a page's wish for a tile may hold its connection: an unready tile is answered in time, fetched on, and asked for again. */
import { type TileAnswer, underWayAnswer } from './answer.ts'

/** A browser has six connections to a host, for all its windows: pictures that are slow must not keep a save from its turn. */
const PATIENCE_MS = 1_500
/** How long a wish stays in line after its page was told to ask again; longer than any page's pause. */
const LINGER_MS = 30_000
const ASK_AGAIN_SECONDS = 1

export interface SoonOptions {
  readonly patienceMs?: number
  readonly lingerMs?: number
}

/** A wish by its key: `begin` joins or starts the work, which ends early when nobody's signal is without abort any longer. */
export type Soon = (
  key: string,
  begin: (left: AbortSignal) => Promise<TileAnswer>,
  left?: AbortSignal,
) => Promise<TileAnswer>

interface Lingering {
  readonly wish: AbortController
  readonly timer: NodeJS.Timeout
}

export function answerSoon({ patienceMs = PATIENCE_MS, lingerMs = LINGER_MS }: SoonOptions = {}): Soon {
  const lingering = new Map<string, Lingering>()

  function end(key: string, one: Lingering): void {
    clearTimeout(one.timer)
    if (lingering.get(key) === one) lingering.delete(key)
    one.wish.abort()
  }

  function linger(key: string, wish: AbortController, work: Promise<TileAnswer>): void {
    const one: Lingering = { wish, timer: setTimeout(() => end(key, one), lingerMs).unref() }
    lingering.set(key, one)
    // Whoever asks next finds the tile in the cache, or begins again.
    const over = (): void => end(key, one)
    work.then(over, over)
  }

  return async (key, begin, left) => {
    const before = lingering.get(key)
    const wish = new AbortController()
    const leave = (): void => wish.abort()
    if (left?.aborted) leave()
    left?.addEventListener('abort', leave, { once: true })
    const work = begin(wish.signal)
    // Only now, since work that nobody waits for is given up.
    if (before !== undefined) end(key, before)
    // Asked a second time, it is told at once how things stand.
    const settled = await within(work, before === undefined ? patienceMs : 0)
    left?.removeEventListener('abort', leave)
    if (settled !== null || wish.signal.aborted) return settled ?? work
    const other = lingering.get(key)
    linger(key, wish, work)
    if (other !== undefined) end(key, other)
    return underWayAnswer(ASK_AGAIN_SECONDS)
  }
}

/** What the work comes to, or null when it takes longer. */
async function within(work: Promise<TileAnswer>, milliseconds: number): Promise<TileAnswer | null> {
  const { promise: late, resolve } = Promise.withResolvers<null>()
  const timer = setTimeout(() => resolve(null), milliseconds)
  try {
    return await Promise.race([work, late])
  } finally {
    clearTimeout(timer)
  }
}
