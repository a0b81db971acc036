/** The light as one demand: the margins of a shoot's light wishes at an instant, each by its own measure, and all of them together. */
import type { LightScene } from '#core/light/light-scene.ts'
import { type Hours, type LightWishes, SOFT_ENDS, type WishKind, wishesMade } from '#core/light/light-wish.ts'
import { SUN_RISE_ALTITUDE } from '#core/light/day-events.ts'
import { type SunLook, type SunOver, lookAtSun, wishMargin } from '#core/light/wish-margin.ts'
import { type Zone, civilTime } from '#core/time/civil.ts'
import { DAY_MINUTES } from '#core/time/duration.ts'
import { degreeOf, meets } from './score.ts'

/** Cosine, or radians of the sun over the skyline, from which a lit, raked or shaded side counts as fully so. */
const FULL_ON_SIDES = 0.25
/** Degrees within or beside the frame, and of the moon's height, from which these wishes count as fully met. */
const FULL_IN_SKY = 5
/** Degrees, the half-width taken for a narrower band of the sun's heights. */
const FINEST_ALTITUDE = 0.5

/** What one of a wish's own units is of its margin. */
function fullAt(kind: Exclude<WishKind, 'hours'>, { altitude }: LightWishes): number {
  if (kind === 'subject' || kind === 'landmark') return FULL_ON_SIDES
  if (kind === 'soft') return (SUN_RISE_ALTITUDE - SOFT_ENDS) / 2
  if (kind === 'altitude' && altitude !== null) return Math.max((altitude.most - altitude.least) / 2, FINEST_ALTITUDE)
  return FULL_IN_SKY
}

/** The margin of clock hours: 1 in their middle, 0 at their ends, below outside. */
export function hoursMargin({ from, until }: Hours, instant: number, zone: Zone): number {
  const { hour, minute, second } = civilTime(instant, zone)
  const long = until > from ? until - from : until + DAY_MINUTES - from
  const after = (hour * 60 + minute + second / 60 - from + DAY_MINUTES) % DAY_MINUTES
  const inside = after <= long ? Math.min(after, long - after) : -Math.min(after - long, DAY_MINUTES - after)
  return inside / (long / 2)
}

/** The margin of one light wish, in the measure of score.ts. */
export function lightMargin(
  kind: Exclude<WishKind, 'hours'>,
  wishes: LightWishes,
  scene: LightScene,
  instant: number,
  sun: SunLook,
  over: SunOver | null = null,
): number {
  return wishMargin(kind, wishes, scene, instant, sun, over) / fullAt(kind, wishes)
}

/** The margins of all light wishes made, in their order. */
export function lightMargins(scene: LightScene, wishes: LightWishes, instant: number, zone: Zone): number[] {
  const sun = lookAtSun(scene.at, instant)
  return wishesMade(wishes).map((kind) => {
    if (kind !== 'hours') return lightMargin(kind, wishes, scene, instant, sun)
    return wishes.hours === null ? 1 : hoursMargin(wishes.hours, instant, zone)
  })
}

export interface LightMet {
  /** How many of the wishes hold. */
  readonly value: number
  /** The least of their margins; 1 when nothing is wished. */
  readonly margin: number
  /** The mean of their degrees; 1 when nothing is wished. */
  readonly degree: number
}

/** All light wishes together. */
export function lightMet(margins: readonly number[]): LightMet {
  let value = 0
  let least = 1
  let degrees = 0
  for (const margin of margins) {
    if (meets(margin)) value++
    if (margin < least) least = margin
    degrees += degreeOf(margin)
  }
  return { value, margin: least, degree: margins.length > 0 ? degrees / margins.length : 1 }
}
