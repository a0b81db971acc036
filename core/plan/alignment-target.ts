/** Where sun and moon may stand on a plan's landmark, as directions from its lens: on its top, behind its middle, at its edges. */
import { type AlignmentTarget } from '#core/light/alignment-request.ts'
import { LEFT_LIMB, LOWER_LIMB, RIGHT_LIMB } from '#core/light/body.ts'
import { geodesicLine } from '#core/geo/geodesic.ts'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { crestAltitude, crestEdges } from '#core/scene/crest.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { degrees, turnBetween, wrapBearing } from '#core/units/angle.ts'
import { type PlanScene, sceneOf } from './plan-scene.ts'
import type { Plan } from './plan.ts'

export const TARGET_NAMES = ['top', 'resting', 'middle', 'left-edge', 'right-edge'] as const
/** Centre on the top, lower limb on the top, centre behind the middle, limb touching the outline from outside at half its height. */
export type TargetName = (typeof TARGET_NAMES)[number]

export interface PlanTarget extends AlignmentTarget {
  readonly name: TargetName
}

/** Degrees; the bearing as a turn from the landmark's middle, clockwise positive. */
interface Seen {
  readonly turn: number
  readonly altitude: number
  /** Metres along the level. */
  readonly distance: number
}

/** Degrees within which two corners count as equally high: less shows in no picture. */
const AS_HIGH = 1e-3

/** Whether a corner is the top rather than another: the higher, of equals the nearer. */
function topper(one: Seen, other: Seen): boolean {
  if (Math.abs(one.altitude - other.altitude) > AS_HIGH) return one.altitude > other.altitude
  return one.distance < other.distance
}

function seenFrom(middle: number, { east, north, up }: LocalPoint): Seen {
  const distance = Math.sqrt(east * east + north * north)
  return {
    turn: turnBetween(middle, degrees(Math.atan2(east, north))),
    altitude: degrees(Math.atan2(up, distance)),
    distance,
  }
}

/** A round thing's highest point is on its axis; of others the highest corner counts. */
function topOf(
  plan: Plan,
  landmark: Landmark,
  found: PlanScene,
  middle: number,
  seen: readonly Seen[],
): Pick<Seen, 'turn' | 'altitude'> | null {
  const highest = seen.reduce<Seen | null>((top, one) => (top === null || topper(one, top) ? one : top), null)
  if (landmark.kind !== 'upright' && landmark.kind !== 'summit') return highest
  const edges = crestEdges(landmark, found.levels.landmark)
  const altitude = crestAltitude(edges, found.scene.frame, middle, plan.shoot.refraction)
  return altitude === null ? highest : { turn: 0, altitude }
}

/** How far left and right the outline reaches at one altitude: between every point above and every point below it. */
function outlineAt(altitude: number, seen: readonly Seen[]): { readonly left: number; readonly right: number } {
  const above = seen.filter((one) => one.altitude >= altitude)
  const below = seen.filter((one) => one.altitude < altitude)
  let [left, right] = [Infinity, -Infinity]
  for (const high of above) {
    for (const low of below) {
      const share = (altitude - low.altitude) / (high.altitude - low.altitude)
      const turn = low.turn + share * (high.turn - low.turn)
      left = Math.min(left, turn)
      right = Math.max(right, turn)
    }
  }
  return { left, right }
}

/** In the order of their names; none when there is no landmark, or when the lens stands within or under it. */
export function alignmentTargets(plan: Plan): readonly PlanTarget[] {
  const { landmark } = plan
  const found = sceneOf(plan)
  const place = landmark === null ? null : landmarkMiddle(landmarkPoints(landmark))
  const middle = place === null ? null : geodesicLine(plan.spot.standpoint.at, place).bearing
  if (landmark === null || middle === null || found.landmarkBoundingPoints === null) return []
  const seen = found.landmarkBoundingPoints.map((point) => seenFrom(middle, point))
  const turns = seen.map(({ turn }) => turn)
  if (Math.max(...turns) - Math.min(...turns) >= 180) return []
  const top = topOf(plan, landmark, found, middle, seen)
  if (top === null) return []
  const altitudes = seen.map((one) => one.altitude)
  const half = (Math.min(...altitudes) + Math.max(...altitudes)) / 2
  const { left, right } = outlineAt(half, seen)
  const crown = { bearing: wrapBearing(middle + top.turn), altitude: top.altitude }
  return [
    { name: 'top', ...crown },
    { name: 'resting', ...crown, point: LOWER_LIMB },
    { name: 'middle', bearing: middle, altitude: half },
    { name: 'left-edge', bearing: wrapBearing(middle + left), altitude: half, point: RIGHT_LIMB },
    { name: 'right-edge', bearing: wrapBearing(middle + right), altitude: half, point: LEFT_LIMB },
  ]
}
