/** Owns what a wish for a tile is answered with: the picture, or why there is none and whether asking again can help. */
import type { KeptTile } from '#main/store/tile-cache.ts'
import type { FailReason } from './fetch.ts'

export interface TileAnswer {
  readonly status: number
  readonly type: string
  readonly body: Uint8Array
  /** How long the page may show it unasked; 0 for anything that should be asked for again. */
  readonly maxAgeSeconds: number
  /** After how long asking again may help; null where it cannot, or there is nothing to ask for. */
  readonly retryAfterSeconds: number | null
}

/** 404: asking again cannot help. */
export type GoneReason = 'unknown-source' | 'no-such-tile' | 'not-covered' | 'address-refused' | 'key-missing'
/** 502 and 504: asking again later can. */
export type LaterReason = FailReason | 'paused' | 'crowded' | 'left' | 'closed'

const UNANSWERED = new Set<LaterReason>(['unreached', 'timeout', 'crowded', 'left', 'closed'])

export function pictureAnswer(tile: KeptTile, now: number): TileAnswer {
  const maxAgeSeconds = Math.max(0, Math.floor((tile.freshUntil - now) / 1000))
  return { status: 200, type: tile.type, body: tile.body, maxAgeSeconds, retryAfterSeconds: null }
}

export function goneAnswer(reason: GoneReason, message: string): TileAnswer {
  return missing(404, { reason, message, retryAfterSeconds: null })
}

export function laterAnswer(reason: LaterReason, message: string, waitMilliseconds: number): TileAnswer {
  const status = UNANSWERED.has(reason) ? 504 : 502
  return missing(status, { reason, message, retryAfterSeconds: Math.ceil(waitMilliseconds / 1000) })
}

/** 202: being fetched; its page should ask again. */
export function underWayAnswer(retryAfterSeconds: number): TileAnswer {
  return missing(202, { reason: 'under-way', message: 'The tile is being fetched.', retryAfterSeconds })
}

interface Why {
  readonly reason: GoneReason | LaterReason | 'under-way'
  readonly message: string
  readonly retryAfterSeconds: number | null
}

function missing(status: number, why: Why): TileAnswer {
  const body = new TextEncoder().encode(JSON.stringify(why))
  return { status, type: 'application/json', body, maxAgeSeconds: 0, retryAfterSeconds: why.retryAfterSeconds }
}
