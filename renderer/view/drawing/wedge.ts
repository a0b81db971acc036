/** The view wedge on the ground: what the frame takes in sideways, and the stretch of it that is sharp. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { localFrame } from '#core/geo/local-frame.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Standpoint } from '#core/record/spot.ts'
import { degrees } from '#core/units/angle.ts'
import { outlinePlaceAlong } from './outline.ts'

export interface Wedge {
  readonly aim: number
  /** Degrees to each side of the aim, measured on level ground. */
  readonly half: number
}

/** Null when nothing can be framed. A pitched camera takes in a little less of the level ground to each side. */
export function wedgeOf(assessment: Assessment): Wedge | null {
  const { view } = assessment
  if (view === null) return null
  const half = Math.atan((view.frameWidth / (2 * view.imageDistance)) * Math.abs(view.cosPitch))
  return { aim: view.bearing, half: degrees(half) }
}

/** Places along the wedge's far edge, left to right. */
export function wedgeArc(standpoint: Standpoint, wedge: Wedge, reach: number, count = 13): LatLon[] {
  const frame = localFrame(standpoint.at, 0)
  return Array.from({ length: count }, (_, index) =>
    outlinePlaceAlong(frame, wedge.aim + wedge.half * ((2 * index) / (count - 1) - 1), reach),
  )
}

/** The band between two depths within the wedge, square to the axis: near left, far left, far right, near right. */
export function sharpBand(standpoint: Standpoint, wedge: Wedge, near: number, far: number): LatLon[] {
  const frame = localFrame(standpoint.at, 0)
  const slant = Math.cos((wedge.half * Math.PI) / 180)
  const at = (side: -1 | 1, depth: number): LatLon =>
    outlinePlaceAlong(frame, wedge.aim + side * wedge.half, depth / slant)
  return [at(-1, near), at(-1, far), at(1, far), at(1, near)]
}
