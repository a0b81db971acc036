/** The measures of a landmark by its kind and form: only those that it has, under the names they go by. */
import { RECORD_LIMITS } from '#core/record/record-limits.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { archCount } from '#core/scene/solid/arches.ts'
import { type Landmark, type SpanLandmark, hasDeck } from '#core/scene/landmark.ts'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { TiltFields } from '#renderer/part/tilt-fields.tsx'
import { settings } from '#renderer/state/library/settings.ts'
import { assessment, plan } from '#renderer/state/plan/board-plan.ts'
import { elevationHint } from '#renderer/text/ground-text.ts'
import { formWords } from '#renderer/words/en-forms.ts'
import { words } from '#renderer/words/en.ts'
import { SpanLineFields } from './span-line-fields.tsx'

const ELEVATIONS = { least: -500, most: 9_000 } as const

/** The ground at hand, which is only known of the landmark that the spot on the board looks at. */
function underLandmark(landmark: Landmark): Assessment['under']['landmark'] | undefined {
  try {
    return plan.value?.landmark?.id === landmark.id ? assessment.value?.under.landmark : null
  } catch {
    // The form is where one mends what cannot be assessed.
    return null
  }
}

interface MeasuresProps {
  readonly landmark: Landmark
  readonly onChange: (next: Landmark) => void
}

export function Measures({ landmark, onChange }: MeasuresProps) {
  const say = words.shoot
  const under = underLandmark(landmark)
  return (
    <>
      <div class="field-row">
        {landmark.kind === 'span' ? (
          <SpanSizes span={landmark} onChange={onChange} />
        ) : (
          <LengthField
            label={formWords.landmark.height[landmark.kind]}
            value={landmark.height}
            limits={RECORD_LIMITS.landmarkSize}
            onTake={(height) => onChange({ ...landmark, height })}
          />
        )}
        {landmark.kind === 'building' ? null : (
          <LengthField
            label={formWords.landmark.width[landmark.kind === 'span' ? landmark.form : landmark.kind]}
            value={landmark.width}
            limits={RECORD_LIMITS.landmarkSize}
            onTake={(width) => onChange({ ...landmark, width })}
          />
        )}
      </div>
      {landmark.kind === 'span' ? <SpanLineFields span={landmark} onChange={onChange} /> : null}
      <div class="field-row">
        <LengthField
          label={say.baseElevation}
          value={landmark.baseElevation}
          limits={ELEVATIONS}
          hint={elevationHint(under, settings.value.units)}
          onTakeUnknown={(baseElevation) => onChange({ ...landmark, baseElevation })}
        />
        <TiltFields
          labels={say.baseTilt}
          slope={landmark.baseSlope}
          aspect={landmark.baseAspect}
          under={under}
          onSlope={(baseSlope) => onChange({ ...landmark, baseSlope })}
          onAspect={(baseAspect) => onChange({ ...landmark, baseAspect })}
        />
      </div>
    </>
  )
}

interface SpanProps {
  readonly span: SpanLandmark
  readonly onChange: (next: Landmark) => void
}

/** Height and deck, each judged by the other while there is a deck. */
function SpanSizes({ span, onChange }: SpanProps) {
  const say = formWords.landmark
  const { form, height, deckHeight } = span
  const bridge = hasDeck(form) ? form : null
  return (
    <>
      <LengthField
        label={say.height[form]}
        value={height}
        limits={RECORD_LIMITS.landmarkSize}
        hint={form === 'arches' ? say.arches(archCount(span.line, height)) : undefined}
        refuse={(top) => (bridge !== null && top < deckHeight ? say.topBelowDeck[bridge] : null)}
        judged={{ by: bridge === null ? '' : String(deckHeight), field: `${span.id} height` }}
        onTake={(top) => onChange({ ...span, height: top })}
      />
      {bridge === null ? null : (
        <LengthField
          label={say.deck}
          value={deckHeight}
          limits={RECORD_LIMITS.deckHeight}
          refuse={(deck) => (deck > height ? say.deckAboveTop[bridge] : null)}
          judged={{ by: String(height), field: `${span.id} deck` }}
          onTake={(deck) => onChange({ ...span, deckHeight: deck })}
        />
      )}
    </>
  )
}
