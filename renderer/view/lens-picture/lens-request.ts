/** What passes between the page and the worker that draws the picture: what is kept there, what is asked, and what was drawn. */
import { type PinHeight } from '#core/plan/height-read.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import type { SentRing } from '#renderer/job/sent-rings.ts'
import type { StrokePart } from './stroke.ts'

/** One picture: of the spot, over what was sent before it. */
export interface LensRequest {
  readonly say: 'draw'
  /** Grows with every request; an answer names the one it is to. */
  readonly turn: number
  readonly spot: Spot
  /** Heights read exactly where its things stand. */
  readonly pins: readonly PinHeight[]
  /** Of the frame in CSS pixels. */
  readonly width: number
  /** Device pixels a CSS pixel. */
  readonly pixelRatio: number
  /** While something is dragged the ground is looked at less finely. */
  readonly moving: boolean
}

/** Shoot and ground change seldom, so they are sent when they do and kept. */
export type ToLensWorker =
  | { readonly say: 'canvas'; readonly canvas: OffscreenCanvas }
  | { readonly say: 'shoot'; readonly changed: Partial<Shoot> }
  | { readonly say: 'ground'; readonly rings: readonly SentRing[] }
  | LensRequest

export type FromLensWorker =
  | { readonly say: 'drawn'; readonly turn: number; readonly parts: readonly StrokePart[] }
  | { readonly say: 'failed'; readonly turn: number; readonly message: string }

/** What no picture shows: drawn ground may be large. */
const UNSEEN = { stoppingGround: [], keepOuts: [] } satisfies Partial<Shoot>

/** The page's end of the shoot: only those of its fields that are other objects than before; null when none is. */
export function shootSender(): (shoot: Shoot) => Partial<Shoot> | null {
  let sent: Partial<Shoot> = {}
  return (shoot) => {
    if (shoot === sent) return null
    const known = new Map<string, unknown>(Object.entries(sent))
    const changed = Object.entries(shoot).filter(([field, value]) => !(field in UNSEEN) && known.get(field) !== value)
    sent = shoot
    return changed.length === 0 ? null : (Object.fromEntries(changed) as Partial<Shoot>)
  }
}

/** The worker's end: what did not change stays the same object, and all that was worked out of it serves on. */
export function withChanged(shoot: Shoot | null, changed: Partial<Shoot>): Shoot {
  return { ...UNSEEN, ...shoot, ...changed } as Shoot
}
