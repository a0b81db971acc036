/** What the lens sees of the true ground across the frame, direction by direction; kept while the lens stays where it is. */
import type { View } from '#core/frame/projection.ts'
import { lensOn } from '#core/plan/ground-reading.ts'
import type { Levels, Plan } from '#core/plan/plan.ts'
import { type SeenGround, groundSeer } from '#core/ground/seen-ground.ts'
import { type ElevationGrid, elevationAt } from '#core/ground/elevation-grid.ts'
import type { Raised } from '#core/ground/sight.ts'
import { RADIANS_PER_DEGREE, degrees } from '#core/units/angle.ts'
import type { Sheet } from './pen.ts'

/** Looks in equal steps of azimuth, from left to right. */
export interface GroundLooks {
  /** Degrees from true north; may lie outside 0..360. */
  readonly from: number
  readonly step: number
  readonly looks: readonly SeenGround[]
}

/** Units between neighbouring looks in the middle of the frame: as a rule, and while the standpoint moves. */
const SPACING = { fine: 2.5, coarse: 6 } as const
/** Of the way between two looks, the rise of the ground that is told. */
const LEAST_RISE = 0.02
/** Degrees. */
const LARGEST_STEP = 1
/** Degrees to both sides of the aim beyond which the ground is of no picture. */
const WIDEST = 80

/** Looks from one place, by the number of their step. */
interface Kept {
  readonly eye: Raised
  readonly refraction: number
  readonly step: number
  readonly look: (azimuth: number) => SeenGround
  readonly seen: Map<number, SeenGround>
}

const MOST_KEPT = 8
/** Looks kept of one place: those all around it, and finer ones ahead. */
const MOST_SEEN = 2000
const kept = new WeakMap<ElevationGrid, Kept[]>()

function sameEye(one: Raised, other: Raised): boolean {
  return one.east === other.east && one.north === other.north && one.elevation === other.elevation
}

/** From the same place, as fine as wished or up to four times finer. */
function keptFor(grid: ElevationGrid, eye: Raised, refraction: number, step: number): Kept {
  const all = kept.get(grid) ?? []
  const known = all.find(
    (one) => sameEye(one.eye, eye) && one.refraction === refraction && one.step <= step && one.step >= step / 4,
  )
  if (known !== undefined) return known
  const made: Kept = {
    eye,
    refraction,
    step,
    look: groundSeer(grid, eye, refraction, step * RADIANS_PER_DEGREE * LEAST_RISE),
    seen: new Map(),
  }
  kept.set(grid, [made, ...all].slice(0, MOST_KEPT))
  return made
}

/** Degrees to both sides of the aim that the picture spans, `margin` units beyond the frame. */
function halfSpan(view: View, sheet: Sheet, margin: number): number {
  const right = (sheet.middleX + margin) / sheet.scale
  const up = (sheet.middleY + margin) / sheet.scale
  const aside = [up, -up].map((height) => Math.atan2(right, view.cosPitch - view.sinPitch * height))
  return Math.min(WIDEST, degrees(Math.max(...aside)))
}

/** Steps are powers of two, so that looks serve on when the focal length changes. */
function stepFor(sheet: Sheet, spacing: number): number {
  const wished = degrees(spacing / sheet.scale)
  return Math.min(LARGEST_STEP, 2 ** Math.floor(Math.log2(wished)))
}

/** A level measured lower than the elevations have it there leaves the lens over the ground all the same. */
function eyeOf(grid: ElevationGrid, plan: Plan, levels: Levels): Raised {
  const eye = lensOn(grid, plan, levels)
  const ground = elevationAt(grid, eye.east, eye.north) ?? -Infinity
  return { ...eye, elevation: Math.max(eye.elevation, ground + plan.spot.standpoint.lensHeight) }
}

/** Null without elevations. `moving` while the standpoint is dragged: fewer looks then. */
export function groundLooks(
  plan: Plan,
  levels: Levels,
  view: View,
  sheet: Sheet,
  margin: number,
  moving: boolean,
): GroundLooks | null {
  const { terrain: grid, shoot } = plan
  if (grid === null) return null
  const eye = eyeOf(grid, plan, levels)
  const wished = stepFor(sheet, moving ? SPACING.coarse : SPACING.fine)
  const { step, look, seen } = keptFor(grid, eye, shoot.refraction, wished)
  const half = halfSpan(view, sheet, margin)
  const first = Math.floor((view.bearing - half) / step)
  const last = Math.ceil((view.bearing + half) / step)
  const around = Math.round(360 / step)
  if (seen.size > MOST_SEEN) seen.clear()
  const looks = Array.from({ length: last - first + 1 }, (_, index) => {
    // One number for each direction, however often the aim goes around.
    const number = (((first + index) % around) + around) % around
    const known = seen.get(number)
    if (known !== undefined) return known
    const made = look(number * step)
    seen.set(number, made)
    return made
  })
  return { from: first * step, step, looks }
}
