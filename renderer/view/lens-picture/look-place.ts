/** Where what is told by direction and slope lies in the drawing. */
import type { View } from '#core/frame/projection.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { type ImagePoint, NEAR } from './clip.ts'
import type { GroundLooks } from './ground-looks.ts'
import { type Sheet, toSheet } from './pen.ts'

/** What a look is drawn by. */
export interface LookStand {
  readonly view: View
  readonly sheet: Sheet
  readonly seen: GroundLooks
}

/** Metres down by metre along below which no frame looks: there what is capped at nothing (minus infinity) is drawn to. */
const STEEPEST = -5

/** Where a look (its number may lie between two) meets a slope in the drawing; null beside or behind the lens. */
export function lookPlace({ view, sheet, seen }: LookStand, index: number, rise: number): ImagePoint | null {
  const slope = Math.max(STEEPEST, rise)
  const turn = (seen.from + index * seen.step - view.bearing) * RADIANS_PER_DEGREE
  const ahead = Math.cos(turn)
  const depth = view.cosPitch * ahead + view.sinPitch * slope
  if (depth < NEAR) return null
  return toSheet(sheet, { right: Math.sin(turn), up: view.cosPitch * slope - view.sinPitch * ahead, depth })
}
