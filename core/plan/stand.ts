/** Where to stand: the standpoint for a fill at a held focal length, for a held proportion, or for both fills at once. */
import { type Bracket, edge, narrow, rootNear } from '#core/frame/bracketed-root.ts'
import { imageSize, sideOf } from '#core/frame/fill.ts'
import { extentOf } from '#core/frame/framing.ts'
import { type SetUp, setUp, subjectShare } from '#core/frame/set-up.ts'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import { type Result, done, failed } from '#core/result.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import type { Subject } from '#core/scene/subject.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { sceneOf, settingOf } from './plan-scene.ts'
import type { Plan } from './plan.ts'
import type { Spot } from '#core/record/spot.ts'
import { solvedFill } from './solved-fill.ts'

export type StandReason = 'no-landmark' | 'same-place' | 'too-large' | 'too-small' | 'cannot-be'

/** Metres from the subject's centre within which the search for a standpoint looks. */
const FARTHEST = 50_000

/** The plan with its standpoint set `distance` metres from the subject toward `bearing`. */
export function standingAt(plan: Plan, bearing: number, distance: number): Plan {
  const { spot } = plan
  const at = destination(spot.stop.at, bearing, distance)
  return { ...plan, spot: { ...spot, standpoint: { ...spot.standpoint, at } } }
}

/** Bearing from the subject to the standpoint; away from the landmark when they are at one place; null without either. */
export function bearingOfStandpoint(plan: Plan): number | null {
  const { bearing } = geodesicLine(plan.spot.stop.at, plan.spot.standpoint.at)
  return bearing ?? bearingAwayFromLandmark(plan)
}

/** Bearing from the subject straight away from the landmark's middle: standing there the two are in one line. */
export function bearingAwayFromLandmark(plan: Plan): number | null {
  const middle = plan.landmark === null ? null : landmarkMiddle(landmarkPoints(plan.landmark))
  if (middle === null) return null
  const { bearing } = geodesicLine(plan.spot.stop.at, middle)
  return bearing === null ? null : wrapBearing(bearing + 180)
}

/** Metres nearer than which the camera would stand in the subject. */
export function nearestStand({ length, width }: Subject): number {
  return Math.hypot(length, width) / 2 + 0.3
}

/** The spot standing where the held focal length gives the subject its wished fill, on the present bearing. */
export function standForFill(plan: Plan): Result<Spot, StandReason> {
  const bearing = bearingOfStandpoint(plan)
  if (bearing === null) return failed('same-place', 'Subject and camera are at the same place: move one of them first.')
  const { shot } = plan.spot
  const setting = settingOf(plan, shot.orientation)
  const excess = (distance: number): number | null => {
    const made = setUp(sceneOf(standingAt(plan, bearing, distance)).scene, setting, shot.focalLength)
    return made === null ? null : Math.log(subjectShare(made, shot.subjectFill.axis) / shot.subjectFill.share)
  }
  const distance = rootByDistance(excess, nearestStand(plan.shoot.subject), FARTHEST, -1)
  if (distance === 'never') {
    return failed(
      'cannot-be',
      `With ${figure(shot.focalLength)} mm the subject cannot fill that much of the frame: the camera would have to be too close to it.`,
    )
  }
  return done(standingAt(plan, bearing, distance).spot)
}

interface Pair {
  readonly made: SetUp
  /** Landmark's share of its wished side, when the subject has its wished fill. */
  readonly landmark: number
}

/** The set-up that gives the subject its wished fill, and what the landmark then takes; null when it can't be. */
function pairAt(plan: Plan): Pair | null {
  const { shot } = plan.spot
  const found = sceneOf(plan)
  const made = solvedFill(found.scene, settingOf(plan, shot.orientation), shot.subjectFill)
  if (made === null || found.landmarkBoundingPoints === null) return null
  const extent = extentOf(made.view, found.landmarkBoundingPoints)
  if (extent === null || extent.partlyBehind) return null
  const { axis } = shot.landmarkFill
  return { made, landmark: imageSize(extent, axis) / sideOf(made.view, axis) }
}

/** Share the landmark takes from where the camera stands, the subject filling as wished; null when it can't be. */
export function landmarkShareHere(plan: Plan): number | null {
  return pairAt(plan)?.landmark ?? null
}

/** Share the landmark takes from `distance` metres on a bearing, the subject filling as wished; null when it can't be. */
export function landmarkShareAt(plan: Plan, bearing: number, distance: number): number | null {
  return landmarkShareHere(standingAt(plan, bearing, distance))
}

/** Nearer than this, metres, no camera stands to anything, whichever way it is turned. */
const NEAREST = 0.05
/** Relative miss of the landmark's share at which the search ends; and by which the answer, projected back, may be off. */
const SOUGHT = 1e-11
const HELD = 1e-8

/**
 * The plan with its standpoint slid along its bearing to where subject and landmark both take their wished shares, as projected:
 * there the held proportion holds. Of several such places the nearest; null when there is none.
 */
export function standForProportion(plan: Plan): Plan | null {
  const bearing = bearingOfStandpoint(plan)
  if (bearing === null || plan.landmark === null) return null
  const { stop, standpoint, shot } = plan.spot
  const excess = (log: number): number | null => {
    const share = landmarkShareAt(plan, bearing, Math.exp(log))
    return share === null || share <= 0 ? null : Math.log(share / shot.landmarkFill.share)
  }
  const from = Math.max(NEAREST, geodesicDistance(stop.at, standpoint.at))
  const log = rootNear(excess, Math.log(from), Math.log(NEAREST), Math.log(FARTHEST), SOUGHT)
  if (log === null || !(Math.abs(excess(log) ?? NaN) < HELD)) return null
  return standingAt(plan, bearing, Math.exp(log))
}

/**
 * The spot standing where subject and landmark take their wished shares at once, on the given bearing from the subject, with
 * its focal length. The farther the camera stands, the larger the landmark beside the subject, up to the ratio of their true
 * sizes: a wish beyond it fails as `too-large`, one that even the nearest place overshoots as `too-small`.
 */
export function standForBothFills(plan: Plan, bearing: number): Result<Spot, StandReason> {
  if (plan.landmark === null)
    return failed(
      'no-landmark',
      'Put a landmark on the map first: there is nothing to hold in proportion to the subject.',
    )
  const { shot } = plan.spot
  const wantedShare = shot.landmarkFill.share
  const excess = (distance: number): number | null => {
    const share = landmarkShareAt(plan, bearing, distance)
    return share === null || share <= 0 ? null : Math.log(share / wantedShare)
  }
  const distance = rootByDistance(excess, nearestStand(plan.shoot.subject), FARTHEST, 1)
  if (distance === 'never') return cannotStand(plan, bearing, wantedShare)
  const there = standingAt(plan, bearing, distance)
  const pair = pairAt(there)
  if (pair === null) return failed('cannot-be', 'No place on this line gives both sizes.')
  return done({ ...there.spot, shot: { ...shot, focalLength: pair.made.focalLength } })
}

function cannotStand(plan: Plan, bearing: number, wantedShare: number): Result<never, StandReason> {
  const nearest = landmarkShareAt(plan, bearing, nearestStand(plan.shoot.subject))
  const farthest = landmarkShareAt(plan, bearing, FARTHEST)
  const side = plan.spot.shot.landmarkFill.axis
  if (farthest !== null && farthest < wantedShare) {
    return failed(
      'too-large',
      `Not possible: with the subject at the size you want, the landmark fills at most ${percent(farthest)} of the ${side} from this side, however far back the camera is. Ask for a smaller landmark or a larger subject.`,
    )
  }
  if (nearest !== null && nearest > wantedShare) {
    return failed(
      'too-small',
      `Not possible: even from right beside the subject the landmark fills ${percent(nearest)} of the ${side}. Ask for a larger landmark or a smaller subject.`,
    )
  }
  return failed('cannot-be', 'Not possible from this side: the landmark would not be in front of the camera.')
}

/**
 * Metres at which a quantity that rises (direction 1) or falls (-1) with the distance crosses 0, by bisection and secant
 * over the logarithm of the distance; values of null count as "not here". `never` when it doesn't cross.
 */
function rootByDistance(
  excess: (distance: number) => number | null,
  nearest: number,
  farthest: number,
  direction: 1 | -1,
): number | 'never' {
  const STEPS = 24
  const from = Math.log(nearest)
  const step = (Math.log(farthest) - from) / STEPS
  const at = (log: number): number | null => {
    const value = excess(Math.exp(log))
    return value === null ? null : value * direction
  }
  let before: Bracket | null = null
  let dead = from
  for (let index = 0; index <= STEPS; index++) {
    const log = from + step * index
    const value = at(log)
    if (value === null) {
      before = null
      dead = log
      continue
    }
    // The first place that works may already lie beyond the crossing: look for the edge of what works.
    if (before === null && value > 0 && index > 0) before = edge(at, dead, log)
    if (before !== null && before.value <= 0 && value >= 0) {
      return Math.exp(narrow((where) => at(where) ?? NaN, before, { log, value }))
    }
    before = { log, value }
  }
  return 'never'
}

function percent(share: number): string {
  return `${Math.round(share * 1000) / 10} %`
}

function figure(value: number): string {
  return String(Math.round(value * 10) / 10)
}
