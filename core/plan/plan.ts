/** A plan: all that an assessment needs of one spot and its shoot, and the levels its things stand at. */
import type { Landmark } from '#core/scene/landmark.ts'
import type { Shoot } from './shoot.ts'
import type { Spot } from './spot.ts'

export interface Plan {
  readonly shoot: Shoot
  readonly spot: Spot
  /** The landmark looked at; null when the spot has none. */
  readonly landmark: Landmark | null
}

export function planOf(shoot: Shoot, spot: Spot): Plan {
  return { shoot, spot, landmark: shoot.landmarks.find((landmark) => landmark.id === spot.landmarkId) ?? null }
}

/** Metres above the sea of the ground under each thing, and whether some had to be taken as level. */
export interface Levels {
  readonly standpoint: number
  readonly stop: number
  readonly landmark: number
  /** True when the landmark's foot is taken level with the standpoint because one of the two is unknown. */
  readonly landmarkAssumed: boolean
}

/** Unknown ground is taken level with the known: the subject with the standpoint, both with the landmark's foot. */
export function levelsOf(plan: Plan): Levels {
  const { standpoint, stop } = plan.spot
  const foot = plan.landmark?.baseElevation ?? null
  const here = standpoint.elevation ?? stop.elevation
  const level = here ?? foot ?? 0
  return {
    standpoint: level,
    stop: stop.elevation ?? level,
    landmark: foot ?? level,
    landmarkAssumed: plan.landmark !== null && (here === null || foot === null),
  }
}
