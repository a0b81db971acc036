/** The ways in which an arrangement is off on the day: subject, camera and lens moved, the subject turned, the clock gone on. */
import { exhaustive } from '#core/exhaustive.ts'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { elevationAtPlace } from '#core/ground/elevation-grid.ts'
import type { Plan } from '#core/plan/plan.ts'
import { wrapBearing } from '#core/units/angle.ts'
import type { WalkReach } from './offset-walk.ts'

/** Left and right are the camera's; nearer and farther go along the sightline from camera to subject; turns are seen from above. */
export const PLACE_MOVES = [
  'subject-nearer',
  'subject-farther',
  'subject-left',
  'subject-right',
  'subject-counter-clockwise',
  'subject-clockwise',
  'camera-nearer',
  'camera-farther',
  'camera-left',
  'camera-right',
  'lens-lower',
  'lens-higher',
] as const
export type PlaceMove = (typeof PLACE_MOVES)[number]

export const CLOCK_MOVES = ['earlier', 'later'] as const
export type ClockMove = (typeof CLOCK_MOVES)[number]

export const MOVES = [...PLACE_MOVES, ...CLOCK_MOVES] as const
export type Move = PlaceMove | ClockMove

export type MoveUnit = 'metres' | 'degrees' | 'seconds'

export function unitOf(move: Move): MoveUnit {
  if (move === 'earlier' || move === 'later') return 'seconds'
  return move === 'subject-clockwise' || move === 'subject-counter-clockwise' ? 'degrees' : 'metres'
}

/** Metres, degrees and seconds beyond which nobody is off by mistake. */
export const FARTHEST_OFF = 50
export const MOST_TURNED = 90
export const LONGEST_OFF = 6 * 3600

/** The sightline as it lies before anything moves. */
export interface MoveLine {
  readonly distance: number
  /** Bearing from the camera to the subject. */
  readonly fromCamera: number
  /** Bearing from the subject to the camera. */
  readonly fromSubject: number
}

/** Null when camera and subject are at one place: no way is then nearer or farther. */
export function moveLine({ spot }: Plan): MoveLine | null {
  const ahead = geodesicLine(spot.standpoint.at, spot.stop.at)
  const back = geodesicLine(spot.stop.at, spot.standpoint.at)
  if (ahead.bearing === null || back.bearing === null) return null
  return { distance: ahead.distance, fromCamera: ahead.bearing, fromSubject: back.bearing }
}

/** How far and how finely a move is looked into. The two can come no nearer than into each other, the lens no lower than the ground. */
export function reachOf(move: PlaceMove, line: MoveLine, { spot }: Plan): WalkReach {
  if (unitOf(move) === 'degrees') return { limit: MOST_TURNED, close: 0.1, first: 0.5, most: 2 }
  const limit =
    move === 'subject-nearer' || move === 'camera-nearer'
      ? Math.min(FARTHEST_OFF, line.distance)
      : move === 'lens-lower'
        ? Math.min(FARTHEST_OFF, spot.standpoint.lensHeight)
        : FARTHEST_OFF
  return { limit, close: 0.01, first: 0.05, most: 1 }
}

/**
 * A level measured by hand belongs to the place where it was measured: elsewhere it is that much more or less as the elevations
 * are. Without them the ground counts as level.
 */
function levelAt(plan: Plan, from: LatLon, to: LatLon, measured: number | null): number | null {
  if (measured === null || plan.terrain === null) return measured
  const here = elevationAtPlace(plan.terrain, from)
  const there = elevationAtPlace(plan.terrain, to)
  return here === null || there === null ? measured : measured + there - here
}

function withStop(plan: Plan, bearing: number, offset: number): Plan {
  const { stop } = plan.spot
  const at = destination(stop.at, bearing, offset)
  const elevation = levelAt(plan, stop.at, at, stop.elevation)
  return { ...plan, spot: { ...plan.spot, stop: { ...stop, at, elevation } } }
}

function withStandpoint(plan: Plan, bearing: number, offset: number): Plan {
  const { standpoint } = plan.spot
  const at = destination(standpoint.at, bearing, offset)
  const elevation = levelAt(plan, standpoint.at, at, standpoint.elevation)
  return { ...plan, spot: { ...plan.spot, standpoint: { ...standpoint, at, elevation } } }
}

function turned(plan: Plan, clockwise: number): Plan {
  const { stop } = plan.spot
  return { ...plan, spot: { ...plan.spot, stop: { ...stop, heading: wrapBearing(stop.heading + clockwise) } } }
}

function raised(plan: Plan, by: number): Plan {
  const { standpoint } = plan.spot
  // Rounding must not put the lens a hair under the ground.
  const lensHeight = Math.max(0, standpoint.lensHeight + by)
  return { ...plan, spot: { ...plan.spot, standpoint: { ...standpoint, lensHeight } } }
}

/** The plan with one thing off by so many metres or degrees; all else as it was, in directions told by the sightline of before. */
export function movedBy(plan: Plan, move: PlaceMove, offset: number, line: MoveLine): Plan {
  const { fromCamera, fromSubject } = line
  switch (move) {
    case 'subject-nearer':
      return withStop(plan, fromSubject, offset)
    case 'subject-farther':
      return withStop(plan, fromSubject, -offset)
    case 'subject-left':
      return withStop(plan, fromSubject + 90, offset)
    case 'subject-right':
      return withStop(plan, fromSubject - 90, offset)
    case 'subject-clockwise':
      return turned(plan, offset)
    case 'subject-counter-clockwise':
      return turned(plan, -offset)
    case 'camera-nearer':
      return withStandpoint(plan, fromCamera, offset)
    case 'camera-farther':
      return withStandpoint(plan, fromCamera, -offset)
    case 'camera-left':
      return withStandpoint(plan, fromCamera - 90, offset)
    case 'camera-right':
      return withStandpoint(plan, fromCamera + 90, offset)
    case 'lens-lower':
      return raised(plan, -offset)
    case 'lens-higher':
      return raised(plan, offset)
    default:
      return exhaustive(move)
  }
}
