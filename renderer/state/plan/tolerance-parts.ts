/** What tolerances go by, by identity, on the board and outside it alike: a name or a note leaves these as they were. */
import type { Plan } from '#core/plan/plan.ts'
import type { Zone } from '#core/time/civil.ts'
import { spots } from '#renderer/state/library/library.ts'
import { planParts } from './assessments.ts'

export function toleranceParts(plan: Plan, zone: Zone): readonly unknown[] {
  const { scanWishes } = plan.shoot
  return [...planParts(plan), scanWishes, zone, scanWishes.parking === null ? null : spots.value]
}
