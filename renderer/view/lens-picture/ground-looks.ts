/** What the lens sees of the true ground across the frame, direction by direction; kept while the lens stays where it is. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { View } from '#core/frame/projection.ts'
import { lensOn } from '#core/plan/ground-reading.ts'
import type { Levels, Plan } from '#core/plan/plan.ts'
import { type SeenGround, type Settled, groundSeer } from '#core/ground/seen-ground.ts'
import { type ElevationGrid, elevationAtPlace, gridPoint } from '#core/ground/elevation-grid.ts'
import { type Raised, sameEye } from '#core/ground/sight.ts'
import { RADIANS_PER_DEGREE, degrees } from '#core/units/angle.ts'
import type { Sheet } from './pen.ts'

/** Looks in equal steps of azimuth, from left to right. */
export interface GroundLooks {
  /** Degrees from true north; may lie outside 0..360. */
  readonly from: number
  readonly step: number
  readonly looks: readonly SeenGround[]
  /** Metres of the lens above the sea, and refraction coefficient k. */
  readonly elevation: number
  readonly refraction: number
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
  readonly settled: Settled
  readonly refraction: number
  readonly step: number
  readonly look: (azimuth: number) => SeenGround
  readonly seen: Map<number, SeenGround>
}

const MOST_KEPT = 8
/** Looks kept of one place: those all around it, and finer ones ahead. */
const MOST_SEEN = 2000
const keptLooks = new WeakMap<ElevationGrid, Kept[]>()

function sameLevels(one: Settled, other: Settled): boolean {
  return one.underEye === other.underEye && one.there === other.there && one.at === other.at
}

/** From the same place, as fine as wished or up to four times finer. */
function keptFor(grid: ElevationGrid, eye: Raised, settled: Settled, refraction: number, step: number): Kept {
  const all = keptLooks.get(grid) ?? []
  const known = all.find(
    (one) =>
      sameEye(one.eye, eye) &&
      sameLevels(one.settled, settled) &&
      one.refraction === refraction &&
      one.step <= step &&
      one.step >= step / 4,
  )
  if (known !== undefined) return known
  const look = groundSeer(grid, eye, refraction, step * RADIANS_PER_DEGREE * LEAST_RISE, settled)
  const made: Kept = { eye, settled, refraction, step, look, seen: new Map() }
  keptLooks.set(grid, [made, ...all].slice(0, MOST_KEPT))
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
  const wantedStep = degrees(spacing / sheet.scale)
  return Math.min(LARGEST_STEP, 2 ** Math.floor(Math.log2(wantedStep)))
}

/** Metres beyond the subject, at least, over which the ground returns from measured levels to the elevations, and cells. */
const RETURN = 80
const RETURN_CELLS = 6

/** Measured levels hold about camera and subject: the ground drawn there is the one they stand on. */
function settledFor(grid: ElevationGrid, plan: Plan, levels: Levels): Settled {
  const { standpoint, stop } = plan.spot
  const lens = gridPoint(grid, standpoint.at)
  const off = (at: LatLon, level: number): number => level - (elevationAtPlace(grid, at) ?? level)
  const subject = gridPoint(grid, stop.at)
  const at = Math.hypot(subject.east - lens.east, subject.north - lens.north)
  return {
    underEye: off(standpoint.at, levels.standpoint),
    at,
    there: off(stop.at, levels.stop),
    gone: at + Math.max(RETURN, RETURN_CELLS * grid.cell),
  }
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
  const eye = lensOn(grid, plan, levels)
  const settled = settledFor(grid, plan, levels)
  const wantedStep = stepFor(sheet, moving ? SPACING.coarse : SPACING.fine)
  const { step, look, seen } = keptFor(grid, eye, settled, shoot.refraction, wantedStep)
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
  return { from: first * step, step, looks, elevation: eye.elevation, refraction: shoot.refraction }
}
