/** When two arrangements count as two: apart in place, in the way to the camera, or in the time of day. */
import { geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import { turnBetween } from '#core/units/angle.ts'
import { DAY, MINUTE } from '#core/time/duration.ts'
import type { Candidate } from './scan-found.ts'

/** Degrees, and minutes of the clock, from which two arrangements at one place are two: less is mostly the same window of light. */
const APART_DEGREES = 20
const APART_MINUTES = 120

/** The same hour on another day is the same light again, near enough: what counts is the time of day. */
export function apartInTime(one: number, other: number): boolean {
  const between = Math.abs(one - other) % DAY
  return Math.min(between, DAY - between) >= APART_MINUTES * MINUTE
}

export function apartInBearing(one: number, other: number): boolean {
  return Math.abs(turnBetween(one, other)) >= APART_DEGREES
}

/** The bearing from the subject to the camera. */
export function wayToCamera({ at, standpoint }: Pick<Candidate, 'at' | 'standpoint'>): number {
  return geodesicLine(at, standpoint).bearing ?? 0
}

/** Whether two candidates are distinct where their places are no farther apart than so many metres. */
export function areDistinct(one: Candidate, other: Candidate, metres: number): boolean {
  return (
    geodesicDistance(one.at, other.at) > metres ||
    apartInTime(one.instant, other.instant) ||
    apartInBearing(wayToCamera(one), wayToCamera(other))
  )
}
