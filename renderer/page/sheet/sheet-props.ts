/** All that the sheet is made of. */
import type { WindowPart } from '#app/contract/ground.ts'
import type { PlanTolerances } from '#core/tolerance/plan-tolerances.ts'
import type { Crop } from '#core/frame/crop.ts'
import type { BaseMap } from '#renderer/view/still-map/base-map.ts'
import type { GroundProps } from './ground-texts.ts'

export interface SheetProps extends GroundProps {
  readonly tolerances: PlanTolerances | null
  readonly base: BaseMap
  /** The crop chosen over the view through the lens; null for the whole frame. */
  readonly crop: Crop | null
  /** The day of printing, as people write it. */
  readonly day: string
  /** What the ground is known from: profile and times are drawn of it. */
  readonly elevations: readonly WindowPart[]
  readonly missing: number
  readonly onPainted: (painted: { readonly missing: number }) => void
}
