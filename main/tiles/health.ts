/** Owns the account of how tile fetching fares since the start, and the sentence the page shows of it. */
import type { Output } from '#app/contract/index.ts'
import type { TileOutcome } from './fetch.ts'

export interface Health {
  /** What came of asking a server; tiles from the cache say nothing of the network. */
  asked(outcome: TileOutcome): void
  /** What the page got. A trouble is told until tiles arrive again. */
  gave(answer: { readonly served: boolean; readonly trouble: string | null }): void
  report(): Output<'tiles.health'>
}

const ALL_WELL = 'Map tiles arrive as asked.'
const OFFLINE =
  'No tile server can be reached, so there seems to be no network. Stored map tiles are shown; the others come when the network is back.'
/** One lost connection is no lost network, unless nothing has ever been reached. */
const UNREACHED_IN_A_ROW = 2

export function makeHealth(): Health {
  let served = 0
  let failed = 0
  let unreached = 0
  let everReached = false
  let trouble: string | null = null

  function isOffline(): boolean {
    return unreached >= (everReached ? UNREACHED_IN_A_ROW : 1)
  }

  return {
    asked: (outcome) => {
      if (outcome.kind === 'failed' && outcome.reason === 'unreached') {
        unreached += 1
      } else if (outcome.kind !== 'failed' || outcome.reason !== 'timeout') {
        unreached = 0
        everReached = true
      }
      if (outcome.kind !== 'failed') trouble = null
    },
    gave: (answer) => {
      if (answer.served) served += 1
      else failed += 1
      if (answer.trouble !== null) trouble = answer.trouble
    },
    report: () => ({ offline: isOffline(), failed, served, message: isOffline() ? OFFLINE : (trouble ?? ALL_WELL) }),
  }
}
