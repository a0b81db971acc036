/** What a user does to an arrangement: pure changes of a spot after which the held thing still holds. */
import { MOST_SHARE } from '#core/frame/fill.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type Result, done } from '#core/result.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { assess } from './assess.ts'
import { sceneOf, settingOf } from './plan-scene.ts'
import type { Plan } from './plan.ts'
import { wishedProportion } from './proportion-ring.ts'
import type { Hold, Shot, Spot, Standpoint, Stop } from '#core/record/spot.ts'
import { type StandReason, landmarkShareHere, standForFill, standForProportion } from './stand.ts'
import { solvedFill } from './solved-fill.ts'

/**
 * The plan's spot with the standpoint and the focal length following what is held. A proportion that no place on the camera's bearing
 * gives leaves the camera where it is, and the assessment says so.
 */
export function spotFollowing(plan: Plan): Spot {
  const { hold } = plan.spot
  if (hold === 'focal-length') return plan.spot
  if (hold === 'standpoint') return withSolvedFocal(plan)
  return withSolvedFocal(standForProportion(plan) ?? plan)
}

function withSolvedFocal(plan: Plan): Spot {
  const { shot } = plan.spot
  const made = solvedFill(sceneOf(plan).scene, settingOf(plan, shot.orientation), shot.subjectFill)
  return made === null ? plan.spot : { ...plan.spot, shot: { ...shot, focalLength: made.focalLength } }
}

function change(plan: Plan, part: Partial<Spot>): Spot {
  return spotFollowing({ ...plan, spot: { ...plan.spot, ...part } })
}

export function moveStandpoint(plan: Plan, at: LatLon): Spot {
  return change(plan, { standpoint: { ...plan.spot.standpoint, at } })
}

export function moveStop(plan: Plan, at: LatLon): Spot {
  return change(plan, { stop: { ...plan.spot.stop, at } })
}

/** Moves subject and standpoint together, as the ringed group on the map is dragged. */
export function moveBoth(plan: Plan, stop: LatLon, standpoint: LatLon): Spot {
  return change(plan, {
    stop: { ...plan.spot.stop, at: stop },
    standpoint: { ...plan.spot.standpoint, at: standpoint },
  })
}

export function turnSubject(plan: Plan, heading: number): Spot {
  return change(plan, { stop: { ...plan.spot.stop, heading: wrapBearing(heading) } })
}

export function setStandpoint(plan: Plan, part: Partial<Standpoint>): Spot {
  return change(plan, { standpoint: { ...plan.spot.standpoint, ...part } })
}

export function setStop(plan: Plan, part: Partial<Stop>): Spot {
  return change(plan, { stop: { ...plan.spot.stop, ...part } })
}

/** Shot settings that leave the standpoint where it is, but for what is held. */
export function setShot(plan: Plan, part: Partial<Shot>): Spot {
  return change(plan, { shot: { ...plan.spot.shot, ...part } })
}

/**
 * A new wished fill of the subject, or a new held focal length. With the focal length held the standpoint moves along its
 * sightline until the fill is as wished; otherwise the focal length follows.
 */
export function wishFill(
  plan: Plan,
  part: Partial<Pick<Shot, 'subjectFill' | 'focalLength'>>,
): Result<Spot, StandReason> {
  const spot = { ...plan.spot, shot: { ...plan.spot.shot, ...part } }
  const next = { ...plan, spot }
  return spot.hold === 'focal-length' ? standForFill(next) : done(spotFollowing(next))
}

/**
 * Chooses what is held. Holding the proportion keeps the one seen now: the landmark's wished fill becomes what it takes at
 * the subject's wished fill.
 */
export function setHold(plan: Plan, hold: Hold): Spot {
  const { shot } = plan.spot
  const now = assess(plan)
  if (hold === 'focal-length') {
    const subjectShare = shot.subjectFill.axis === 'width' ? now.subject?.widthFill : now.subject?.heightFill
    const subjectFill = subjectShare === undefined ? shot.subjectFill : { ...shot.subjectFill, share: subjectShare }
    return { ...plan.spot, hold, shot: { ...shot, subjectFill, focalLength: now.focalLength ?? shot.focalLength } }
  }
  if (hold === 'standpoint') return change(plan, { hold })
  const here = landmarkShareHere(plan)
  // Where the subject can't fill as wished, what is seen now is all there is to keep.
  const share =
    here ?? (now.proportion === null ? null : (shot.landmarkFill.share * now.proportion) / wishedProportion(plan))
  if (share === null || share <= 0) return { ...plan.spot, hold }
  return change(plan, {
    hold,
    shot: { ...shot, landmarkFill: { ...shot.landmarkFill, share: Math.min(share, MOST_SHARE) } },
  })
}
