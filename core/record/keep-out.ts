/** Keep-outs: ground where subject or camera may not stand, and lines that may not be crossed, as the user drew them. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { DrawnForm } from './stopping-ground.ts'

export const KEEP_OUT_KINDS = ['carriageway', 'rail', 'water', 'crops', 'fence', 'other'] as const
export type KeepOutKind = (typeof KEEP_OUT_KINDS)[number]

export const KEPT_OUT = ['both', 'subject', 'camera'] as const
export type KeptOut = (typeof KEPT_OUT)[number]

export interface KeepOut {
  readonly id: string
  readonly name: string
  readonly kind: KeepOutKind
  readonly form: DrawnForm
  readonly points: readonly LatLon[]
  /** Metres from edge to edge of a line, its middle as drawn; of no meaning for an area. */
  readonly width: number
  /** Whom it keeps out. */
  readonly whom: KeptOut
  /** Whether subject and camera must stand on the same side of it: nobody can step across. */
  readonly noCrossing: boolean
}

/** Metres of a line's usual width by its kind (common practice, no source). */
export const USUAL_WIDTH: Readonly<Record<KeepOutKind, number>> = {
  carriageway: 6,
  rail: 12,
  water: 4,
  crops: 10,
  fence: 0.5,
  other: 2,
}
