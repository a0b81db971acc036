/** How far off spots may be that are shown outside the board, each worked out once for as long as nothing changes that it depends on. */
import { parkingsOf } from '#core/record/parkings.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Spot } from '#core/record/spot.ts'
import { type Sensitivity, sensitivityOf } from '#core/tolerance/sensitivity.ts'
import type { Zone } from '#core/time/civil.ts'
import { spots } from '#renderer/state/library/library.ts'

interface Known {
  readonly parts: readonly unknown[]
  readonly found: Sensitivity | null
}

const known = new WeakMap<Spot, Known>()

/** Some tens of milliseconds when it is new. Null when nothing is framed. */
export function sensitivityFor(plan: Plan, zone: Zone): Sensitivity | null {
  const { shoot, spot, terrain, pins } = plan
  const parts = [shoot, terrain, zone, spots.value, ...pins]
  const before = known.get(spot)
  if (before?.parts.length === parts.length && before.parts.every((part, index) => part === parts[index]))
    return before.found
  const found = sensitivityOf({ plan, zone, parkings: parkingsOf(spots.value) })
  known.set(spot, { parts, found })
  return found
}
