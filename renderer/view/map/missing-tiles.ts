/** Tiles that did not come: counted for the user, and asked for again with growing pauses or as soon as the network is back. */
import { type ReadonlySignal, signal } from '@preact/signals'

const missingTilesSignal = signal(0)
/** How many tiles in sight are missing right now. */
export const missingTiles: ReadonlySignal<number> = missingTilesSignal

/** Seconds before the first retry; each further one waits twice as long, up to the longest. */
const FIRST_PAUSE = 4
const LONGEST_PAUSE = 120

export function pauseBefore(attempt: number): number {
  return Math.min(LONGEST_PAUSE, FIRST_PAUSE * 2 ** attempt)
}

export interface Clock {
  readonly set: (run: () => void, milliseconds: number) => unknown
  readonly clear: (timer: unknown) => void
}

const pageClock: Clock = {
  set: (run, milliseconds) => setTimeout(run, milliseconds),
  clear: (timer) => clearTimeout(timer as ReturnType<typeof setTimeout>),
}

export interface Retry<Tile> {
  failed(tile: Tile): void
  /** It came, or is out of sight and no longer wanted. */
  settled(tile: Tile): void
  /** Asks for all that is missing at once: the network is back, or the user wants it. */
  now(): void
  stop(): void
}

export function retryMissing<Tile>(again: (tile: Tile) => void, clock: Clock = pageClock): Retry<Tile> {
  const missing = new Set<Tile>()
  let attempt = 0
  let timer: unknown = null

  function halt(): void {
    if (timer !== null) clock.clear(timer)
    timer = null
  }

  function askAgain(): void {
    timer = null
    attempt += 1
    // A tile that fails once more comes back through `failed`, which starts the next pause.
    for (const tile of missing) again(tile)
  }

  return {
    failed(tile) {
      missing.add(tile)
      missingTilesSignal.value = missing.size
      timer ??= clock.set(askAgain, pauseBefore(attempt) * 1000)
    },
    settled(tile) {
      if (!missing.delete(tile)) return
      missingTilesSignal.value = missing.size
      if (missing.size > 0) return
      attempt = 0
      halt()
    },
    now() {
      if (missing.size === 0) return
      halt()
      attempt = 0
      askAgain()
    },
    stop() {
      halt()
      missing.clear()
      missingTilesSignal.value = 0
    },
  }
}
