/** What is asked of the search for alignments, and why a question cannot be answered. */
import { type LatLon, isLatLon } from '#core/geo/lat-lon.ts'
import { type Result, done, failed } from '#core/result.ts'
import type { Body, DiscPoint } from './body.ts'
import type { LightSkyline } from './light-scene.ts'

/** A direction as it appears from the lens, and the point of the disc that is to stand in it. */
export interface AlignmentTarget {
  /** True, 0..360. */
  readonly bearing: number
  /** Degrees above the level horizon as it appears, -90..90. */
  readonly altitude: number
  /** Such as the lower limb for a body that rests on the target; the centre when absent. */
  readonly point?: DiscPoint
}

export interface AlignmentRequest {
  /** Where the lens stands. */
  readonly at: LatLon
  readonly body: Body
  readonly target: AlignmentTarget
  /** The skyline seen from there, without the landmark itself; null or absent where no ground is known. */
  readonly skyline?: LightSkyline | null
  /** Degrees of separation that count as standing on the target; above 0, up to WIDEST_TOLERANCE. */
  readonly tolerance: number
  /** Epoch milliseconds; `until` itself is left out. At most LONGEST_SEARCH apart. */
  readonly from: number
  readonly until: number
}

export type AlignmentReason = 'no-place' | 'no-direction' | 'tolerance' | 'no-dates' | 'reversed' | 'too-long'

/** Degrees. */
export const WIDEST_TOLERANCE = 5
/** Milliseconds: ten years, leap days included. */
export const LONGEST_SEARCH = 3653 * 86_400_000
/** The years over which sun and moon are known well. */
export const EARLIEST = Date.UTC(1900, 0, 1)
export const LATEST = Date.UTC(2101, 0, 1)

/** The request itself where it can be answered. */
export function checkedRequest(request: AlignmentRequest): Result<AlignmentRequest, AlignmentReason> {
  const { at, target, tolerance, from, until } = request
  if (!isLatLon(at.lat, at.lon))
    return failed(
      'no-place',
      `Latitude ${at.lat}, longitude ${at.lon} is not on the earth. Latitudes run from -90 to 90.`,
    )
  if (!Number.isFinite(target.bearing) || !(Math.abs(target.altitude) <= 90))
    return failed(
      'no-direction',
      `Bearing ${target.bearing}, altitude ${target.altitude} is not a direction. Altitudes run from -90 to 90 degrees.`,
    )
  if (!(tolerance > 0 && tolerance <= WIDEST_TOLERANCE))
    return failed('tolerance', `A tolerance of ${tolerance} degrees: give more than 0 and at most ${WIDEST_TOLERANCE}.`)
  if (!(from >= EARLIEST && from < LATEST && until >= EARLIEST && until <= LATEST))
    return failed('no-dates', 'Alignments are computed for the years 1900 to 2100. Choose dates within them.')
  if (until <= from) return failed('reversed', 'The search ends before it starts. Choose a later end.')
  if (until - from > LONGEST_SEARCH)
    return failed('too-long', 'A search spans ten years at most. Choose an earlier end, or search in parts.')
  return done(request)
}
