/** How sun and moon stand to what bounds the sky: the level horizon, or the skyline that the ground makes of it. */
import { HIGHEST_GROUND } from '#core/ground/rings.ts'
import { skylineAt } from '#core/ground/skyline.ts'
import type { CivilDay } from '#core/time/civil.ts'
import { degrees, wrapBearing } from '#core/units/angle.ts'
import type { BodyDisc } from './body.ts'
import { type Doubt, type Span, spansAbove } from './crossing.ts'
import { SUN_RISE_ALTITUDE } from './day-events.ts'
import { sunkBelowLevel } from './dip.ts'
import type { LightSkyline } from './light-scene.ts'
import { apparentAltitude, trueAltitude } from './refraction.ts'
import { type BodyPlace, SUN_RADIUS } from './sky.ts'

/** Metres to the nearest unknown ground in a direction that could stand above the skyline; null where none could. */
export function unknownAt({ unknown, step }: LightSkyline, azimuth: number): number | null {
  if (unknown === undefined) return null
  const before = Math.floor(wrapBearing(azimuth) / step) % unknown.length
  const [one, other] = [unknown[before] ?? Number.NaN, unknown[(before + 1) % unknown.length] ?? Number.NaN]
  if (Number.isNaN(one)) return Number.isNaN(other) ? null : other
  return Number.isNaN(other) ? one : Math.min(one, other)
}

/** The same in whichever direction it lies nearest; null where all is known. */
export function nearestUnknown({ unknown }: LightSkyline): number | null {
  const nearest = unknown?.reduce((least, metres) => (metres < least ? metres : least), Infinity) ?? Infinity
  return nearest === Infinity ? null : nearest
}

/** Metres by which the highest ground there is stands over the lowest that an eye can be at: no shore lies 500 m below the sea. */
const HIGHEST_RISE = HIGHEST_GROUND + 500

/**
 * Metres to the nearest unknown ground that could hide something of a disc that stands over the skyline; null where none could, or
 * where it is too high for any ground that far off.
 */
export function unknownBefore(skyline: LightSkyline, { azimuth, altitude }: BodyPlace): number | null {
  const metres = unknownAt(skyline, azimuth)
  if (metres === null) return null
  const highest = degrees(Math.atan2(HIGHEST_RISE, metres))
  return apparentAltitude(altitude - SUN_RADIUS) > highest ? null : metres
}

/** The true altitude of a body that appears at the level. */
const TRUE_AT_LEVEL = trueAltitude(0)

/** Degrees at which a body seen just over ground appears by the formulas for an eye by the sea: below the level they need the dip. */
function seenOver(ground: number): number {
  return ground >= 0 ? ground : apparentAltitude(TRUE_AT_LEVEL - sunkBelowLevel(-ground))
}

/** Degrees of an edge above what is seen over ground, by its airless altitude: the air lifts each edge by itself, not the centre. */
function edgeOver(ground: number, edge: number): number {
  return apparentAltitude(edge) - seenOver(ground)
}

/** Degrees of the sun's upper edge above the level horizon by the almanacs' convention, or above the skyline where it is known. */
export function overSkyline(skyline: LightSkyline | null, sun: BodyPlace): number {
  return overGround(skyline === null ? null : skylineAt(skyline, sun.azimuth), sun)
}

/** The same where the skyline's altitude toward the sun is at hand; null where it is unknown. */
export function overGround(ground: number | null, sun: BodyPlace): number {
  if (ground === null) return sun.altitude - SUN_RISE_ALTITUDE
  return edgeOver(ground, sun.altitude + SUN_RADIUS)
}

export const BEHIND_GROUND = ['clear', 'partly', 'behind'] as const
/** Whether all of a disc stands above the skyline, some of it, or nothing. */
export type BehindGround = (typeof BEHIND_GROUND)[number]

/** A disc against the skyline at its own azimuth; null where no ground is known in its direction. */
export function behindGround(skyline: LightSkyline | null, disc: BodyDisc): BehindGround | null {
  const ground = skyline === null ? null : skylineAt(skyline, disc.azimuth)
  if (ground === null) return null
  if (edgeOver(ground, disc.altitude + disc.radius) <= 0) return 'behind'
  return edgeOver(ground, disc.altitude - disc.radius) < 0 ? 'partly' : 'clear'
}

/** Milliseconds between two looks over a skyline, which is as jagged as its hills: a gap in them shorter than this may be missed. */
export const LOOK_OVER_GROUND_EVERY = 2 * 60_000

/** Degrees within which the sun's edge stands on the skyline: no crossing is found worse than so. */
const ON_EDGE = 0.02

/**
 * Spans with what is not sure of their ends: where it is the skyline that begins or ends one, and unknown ground there could stand
 * higher. `lit` for spans in which the sun shows, else for such in which it does not. The day's own ends are sure.
 */
export function withDoubts(
  spans: readonly Span[],
  skyline: LightSkyline | null,
  sunAt: (instant: number) => BodyPlace,
  day: Pick<CivilDay, 'start' | 'end'>,
  lit = true,
): readonly Span[] {
  if (skyline?.unknown === undefined || skyline.unknown.every(Number.isNaN)) return spans
  const doubt = (instant: number, way: Doubt['way']): Doubt | null => {
    if (instant <= day.start || instant >= day.end) return null
    const sun = sunAt(instant)
    const metres = unknownAt(skyline, sun.azimuth)
    return metres === null || Math.abs(overSkyline(skyline, sun)) > ON_EDGE ? null : { metres, way }
  }
  return spans.map((span) => {
    const from = doubt(span.from, lit ? 'earliest' : 'latest')
    const until = doubt(span.until, lit ? 'latest' : 'earliest')
    return {
      ...span,
      ...(from === null ? {} : { fromDoubt: from }),
      ...(until === null ? {} : { untilDoubt: until }),
    }
  })
}

/** The stretches of a day in which some of the sun's disc stands above the skyline at a place: direct light. Exact to a second. */
export function directLight(
  sunAt: (instant: number) => BodyPlace,
  skyline: LightSkyline,
  day: CivilDay,
): readonly Span[] {
  const over = (instant: number): number => overSkyline(skyline, sunAt(instant))
  return withDoubts(spansAbove(over, day.start, day.end, LOOK_OVER_GROUND_EVERY), skyline, sunAt, day)
}
