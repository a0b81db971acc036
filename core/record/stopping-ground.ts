/** Stopping ground: lines and areas, drawn by the user, in which the subject may stop, and how it can be turned there. */
import type { LatLon } from '#core/geo/lat-lon.ts'

export const DRAWN_FORMS = ['line', 'area'] as const
export type DrawnForm = (typeof DRAWN_FORMS)[number]

/** Headings the subject can take: along a line as it was drawn, along it either way, or any. */
export const TURNS = ['along', 'either-way', 'free'] as const
export type Turn = (typeof TURNS)[number]

export interface StoppingGround {
  readonly id: string
  readonly name: string
  readonly form: DrawnForm
  /** Of a line from end to end, at least two; of an area its corners in order, at least three, the last not the first again. */
  readonly points: readonly LatLon[]
  /** In an area the subject turns freely whatever stands here. */
  readonly turn: Turn
}
