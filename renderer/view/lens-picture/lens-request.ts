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
  readonly dark: boolean
  /** While something is dragged the ground is looked at less finely. */
  readonly moving: boolean
}

/** Shoot and ground change seldom, so they are sent when they do and kept. */
export type ToLensWorker =
  | { readonly say: 'canvas'; readonly canvas: OffscreenCanvas }
  | { readonly say: 'shoot'; readonly shoot: Shoot }
  | { readonly say: 'ground'; readonly rings: readonly SentRing[] }
  | LensRequest

export type FromLensWorker =
  | { readonly say: 'drawn'; readonly turn: number; readonly parts: readonly StrokePart[] }
  | { readonly say: 'failed'; readonly turn: number; readonly message: string }

/** The shoot without what no picture shows: drawn ground may be large. */
export function shootInPicture(shoot: Shoot): Shoot {
  return { ...shoot, stoppingGround: [], keepOuts: [] }
}
