/** What stands on the ring of hours at one instant: the beads, the sun, the moon, and the room they take. */
import type { LightReading } from '#core/plan/light-reading.ts'
import { pointMoved, toward } from './plan-drawing.ts'
import { type PlacedBead, beadRadius } from './hour-ring.ts'
import { RAY_LENGTH } from './light-drawing.ts'
import type { Box, Point } from './plan-view.ts'
import { boxAround } from './pixel-lines.ts'

export interface RingDrawing {
  readonly middle: Point
  readonly radius: number
  readonly beads: readonly PlacedBead[]
  readonly sun: { readonly at: Point; readonly radius: number }
  /** Null while the moon is down. */
  readonly moon: Point | null
}

/** Pixels: the mark of a sun that is down, what a sun that is up has over its bead, the moon's disc. */
const SUN_DOWN = 3
const SUN_OVER = 1.6
export const MOON_MARK = 5.5
/** Pixels from the ring out to the moon, which so hides neither a bead nor the sun. */
const MOON_OUT = 15

export function ringOf(middle: Point, radius: number, beads: readonly PlacedBead[], light: LightReading): RingDrawing {
  const { sun, moon } = light
  return {
    middle,
    radius,
    beads,
    sun: {
      at: pointMoved(middle, toward(sun.azimuth), radius),
      radius: sun.up ? beadRadius(sun.apparent) + SUN_OVER : SUN_DOWN,
    },
    moon: moon.up ? pointMoved(middle, toward(moon.azimuth), radius + MOON_OUT) : null,
  }
}

/** Pixels between the subject's middle and the tip of the rays that come from the ring's sun. */
export function ringRaysGap({ radius, sun }: RingDrawing): number {
  return radius - sun.radius - 6 - RAY_LENGTH
}

/** What the marks of sun and moon take on the surface. */
export function ringMarks({ sun, moon }: RingDrawing): Box[] {
  const side = 2 * sun.radius + 9
  return [
    boxAround(sun.at, side, side),
    ...(moon === null ? [] : [boxAround(moon, 2 * MOON_MARK + 4, 2 * MOON_MARK + 4)]),
  ]
}
