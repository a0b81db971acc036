/** Assessments of spots that are not on the board, each computed once for as long as spot and shoot stay the same. */
import { type Assessment, assess } from '#core/plan/assess.ts'
import { planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/plan/shoot.ts'
import type { Spot } from '#core/plan/spot.ts'

const known = new WeakMap<Spot, { readonly shoot: Shoot; readonly found: Assessment }>()

export function assessmentOf(shoot: Shoot, spot: Spot): Assessment {
  const before = known.get(spot)
  if (before?.shoot === shoot) return before.found
  const found = assess(planOf(shoot, spot))
  known.set(spot, { shoot, found })
  return found
}
