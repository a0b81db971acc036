/** What the ground in the picture is drawn by: where one stands, what the looks found, and the bands and ridges made of it. */
import type { View } from '#core/frame/projection.ts'
import type { Ridge } from '#core/ground/ridges.ts'
import type { Footing, GroundBand } from './ground-bands.ts'
import type { GroundLooks } from './ground-looks.ts'
import type { Sheet } from './pen.ts'

export interface GroundStand {
  readonly view: View
  readonly sheet: Sheet
  readonly footing: Footing
  /** Metres between the elevations. */
  readonly cell: number
  /** Units of softness at a distance. */
  readonly soft: (distance: number) => number
}

/** A stand with all that is drawn from it. */
export interface GroundDrawing extends GroundStand {
  readonly seen: GroundLooks
  readonly bands: readonly GroundBand[]
  readonly ridges: readonly Ridge[]
}
