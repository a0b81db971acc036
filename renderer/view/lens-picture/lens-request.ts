/** What passes between the page and the worker that draws the picture: what is kept there, what is asked, and what was drawn. */
import { type PinHeight } from '#core/plan/height-read.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { ringsOf } from '#core/ground/rings.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
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

/** One ring of the ground, the finest first: sent once, then named by its number. */
export interface SentRing {
  readonly number: number
  /** Without what lies beyond it; null where the worker has it already. */
  readonly ring: ElevationGrid | null
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

function alone(ring: ElevationGrid): ElevationGrid {
  const copy: { -readonly [Key in keyof ElevationGrid]: ElevationGrid[Key] } = { ...ring }
  delete copy.beyond
  return copy
}

/** The page's end of a ground sent ring by ring: wide rings stay while fine ones change, and copying them takes longer than a frame. */
export function ringSender(): (ground: ElevationGrid | null) => readonly SentRing[] {
  let sent: ReadonlyMap<Float32Array, number> = new Map()
  let newest = 0
  return (ground) => {
    const rings = ground === null ? [] : ringsOf(ground)
    const message = rings.map((ring): SentRing => {
      const number = sent.get(ring.heights)
      return number === undefined ? { number: (newest += 1), ring: alone(ring) } : { number, ring: null }
    })
    sent = new Map(rings.map((ring, at) => [ring.heights, message[at]?.number ?? 0]))
    return message
  }
}

/** The worker's end: the ground laid together of what came now and what is kept from before. */
export function ringKeeper(): (rings: readonly SentRing[]) => ElevationGrid | null {
  let kept: ReadonlyMap<number, ElevationGrid> = new Map()
  return (rings) => {
    kept = new Map(
      rings.map(({ number, ring }) => {
        const grid = ring ?? kept.get(number)
        if (grid === undefined) throw new Error(`Ring ${number} of the ground was never sent.`)
        return [number, grid]
      }),
    )
    return [...kept.values()].reduceRight<ElevationGrid | null>(
      (beyond, ring) => (beyond === null ? ring : { ...ring, beyond }),
      null,
    )
  }
}
