/** Two fields for how the ground leans as measured: its slope and the bearing toward which it falls. */
import type { GroundUnder } from '#core/plan/ground-under.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { DegreesField } from './degrees-field.tsx'
import { aspectHint, slopeHint } from '#renderer/text/tilt-text.ts'

const SLOPES = { least: 0, most: 90 } as const
/** Any turn is understood: -90 and 450 are wrapped. */
const BEARINGS = { least: -3_600, most: 3_600 } as const

interface TiltFieldsProps {
  readonly labels: { readonly slope: string; readonly aspect: string }
  readonly slope: number | null
  readonly aspect: number | null
  /** What is known of the ground there; null where no elevations are at hand. */
  readonly under: GroundUnder | null | undefined
  readonly onSlope: (slope: number | null) => void
  readonly onAspect: (aspect: number | null) => void
}

export function TiltFields({ labels, slope, aspect, under, onSlope, onAspect }: TiltFieldsProps) {
  return (
    <div class="tilt-fields">
      <DegreesField
        label={labels.slope}
        value={slope}
        limits={SLOPES}
        hint={slopeHint(under)}
        onTakeUnknown={onSlope}
      />
      <DegreesField
        label={labels.aspect}
        value={aspect}
        limits={BEARINGS}
        hint={aspectHint(under)}
        onTakeUnknown={(toward) => onAspect(toward === null ? null : wrapBearing(toward))}
      />
    </div>
  )
}
