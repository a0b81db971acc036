/** Assessments of spots that are not on the board, each computed once for as long as spot, shoot and the ground at hand stay the same. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { type Assessment, assess } from '#core/plan/assess.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { terrainAtHand } from './terrain.ts'

interface Known {
  readonly shoot: Shoot
  readonly terrain: ElevationGrid | null
  readonly found: Assessment
}

const known = new WeakMap<Spot, Known>()

/** The plan of a spot that is not on the board, over the ground that is at hand. */
export function planAtHand(shoot: Shoot, spot: Spot): Plan {
  const flat = planOf(shoot, spot)
  return { ...flat, terrain: terrainAtHand(spot.stop.at, flat.landmark) }
}

export function assessmentOf(shoot: Shoot, spot: Spot): Assessment {
  const plan = planAtHand(shoot, spot)
  const before = known.get(spot)
  if (before?.shoot === shoot && before.terrain === plan.terrain) return before.found
  const found = assess(plan)
  known.set(spot, { shoot, terrain: plan.terrain, found })
  return found
}
