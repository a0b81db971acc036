/** All that the sheet is made of. */
import { type Plan } from '#core/plan/plan.ts'
import { type DayLight } from '#core/plan/day-light.ts'
import { type UnitSystem } from '#core/units/length.ts'
import { type BaseMap } from '#renderer/view/still-map/base-map.ts'
import { type PlanTolerances } from '#core/tolerance/plan-tolerances.ts'
import { type Assessment } from '#core/plan/assess.ts'

export interface SheetProps {
  readonly plan: Plan
  readonly assessment: Assessment
  /** The light of the spot's own day. */
  readonly daylight: DayLight
  readonly tolerances: PlanTolerances | null
  readonly units: UnitSystem
  readonly base: BaseMap
  /** The day of printing, as people write it. */
  readonly day: string
  readonly attribution: string
  readonly missing: number
  /** Why there are no elevations, where there are none: no source knows the place, they failed, or did not come in time. */
  readonly groundMissing: 'none-known' | 'failed' | 'late'
  readonly onPainted: (painted: { readonly missing: number }) => void
}
