/** How long a span is and toward where it runs, read off its points; typed, they move its points about the first. */
import { lineLength } from '#core/geo/line-length.ts'
import { RECORD_LIMITS } from '#core/record/record-limits.ts'
import type { Landmark, SpanLandmark } from '#core/scene/landmark.ts'
import { endToEnd, turnedToward, withLength } from '#core/scene/span-line.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { DegreesField } from '#renderer/part/degrees-field.tsx'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { settings } from '#renderer/state/library/settings.ts'
import { metres } from '#renderer/text/figure.ts'
import { formWords } from '#renderer/words/en-forms.ts'

/** Any turn is understood: -90 and 450 are wrapped. */
const TOWARD = { least: -3_600, most: 3_600 } as const
/** From this part more a line bends enough to tell both of its lengths. */
const BENDS = 1.005

const say = formWords.landmark

interface SpanLineProps {
  readonly span: SpanLandmark
  readonly onChange: (next: Landmark) => void
}

export function SpanLineFields({ span, onChange }: SpanLineProps) {
  const { distance, bearing } = endToEnd(span.line)
  const along = lineLength(span.line)
  const alongText = metres(along, settings.value.units)
  if (bearing === null) return <p class="hint">{say.endsMeet(alongText)}</p>
  return (
    <div class="field-row">
      <LengthField
        label={say.length}
        decimals={2}
        value={distance}
        limits={RECORD_LIMITS.landmarkSize}
        hint={along > distance * BENDS ? say.alongPoints(alongText) : undefined}
        onTake={(length) => onChange({ ...span, line: withLength(span.line, length) })}
      />
      <DegreesField
        label={say.bearing}
        value={wrapBearing(Math.round(bearing * 10) / 10)}
        limits={TOWARD}
        hint={say.firstStays}
        onTake={(toward) => onChange({ ...span, line: turnedToward(span.line, toward) })}
      />
    </div>
  )
}
