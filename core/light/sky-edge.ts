/** How far the sun stands above what bounds the sky: the level horizon, or the skyline that the ground makes of it. */
import { valueAround } from '#core/units/around.ts'
import type { CivilDay } from '#core/time/civil.ts'
import { type Span, spansAbove } from './crossing.ts'
import { SUN_RISE_ALTITUDE } from './day-events.ts'
import type { SkyEdge } from './light-stage.ts'
import { SUN_RADIUS } from './sky.ts'

/** Degrees of the skyline at an azimuth, straight between the two next to it; null where no ground is known. */
export function edgeAt(edge: SkyEdge, azimuth: number): number | null {
  return valueAround(edge.altitudes, edge.step, azimuth)
}

/** The sun as this question needs it, degrees. */
export interface Standing {
  readonly azimuth: number
  /** Airless. */
  readonly altitude: number
  /** As it appears. */
  readonly apparent: number
}

/** Degrees of the sun's upper edge above the level horizon by the almanacs' convention, or above the skyline where it is known. */
export function overEdge(edge: SkyEdge | null, sun: Standing): number {
  return overGround(edge === null ? null : edgeAt(edge, sun.azimuth), sun)
}

/** The same where the skyline's altitude toward the sun is at hand; null where it is unknown. */
export function overGround(ground: number | null, sun: Standing): number {
  return ground === null ? sun.altitude - SUN_RISE_ALTITUDE : sun.apparent + SUN_RADIUS - ground
}

/** Milliseconds between two looks over a skyline, which is as jagged as its hills: a gap in them shorter than this may be missed. */
export const LOOK_OVER_GROUND_EVERY = 2 * 60_000

/** The stretches of a day in which some of the sun's disc stands above the skyline at a place: direct light. Exact to a second. */
export function directLight(sunAt: (instant: number) => Standing, edge: SkyEdge, day: CivilDay): Span[] {
  return spansAbove((instant) => overEdge(edge, sunAt(instant)), day.start, day.end, LOOK_OVER_GROUND_EVERY)
}
