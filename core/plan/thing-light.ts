/** The light on one thing: each seen side with its share and angle, and how much of what is seen is lit. */
import { type Strike } from '#core/light/incidence.ts'

export interface SideLight {
  readonly id: string
  /** Bearing it looks toward; null for one that looks up. */
  readonly bearing: number | null
  readonly upright: boolean
  /** Its part of all that is seen of the thing, 0..1. */
  readonly share: number
  /** Degrees between the side's normal and the sun, 0..180. */
  readonly incidence: number
  /** In shade also while the sun is down. */
  readonly strike: Strike
}

export interface ThingLight {
  /** The sides that the camera sees in the frame, the largest first; none when nothing of the thing is in it. */
  readonly sides: readonly SideLight[]
  /** Share of the seen area that the sun reaches; null when nothing is seen. */
  readonly lit: number | null
  /** The upright side of which most is seen. */
  readonly main: SideLight | null
}
