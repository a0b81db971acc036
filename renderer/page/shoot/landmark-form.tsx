/** What stands behind? The landmarks of the shoot, each of its kind, with its measures and its places. */
import { useState } from 'preact/hooks'
import { NAME_MOST, RECORD_LIMITS } from '#core/record/record-limits.ts'
import { type Assessment } from '#core/plan/assess.ts'
import type { Shoot } from '#core/record/shoot.ts'
import {
  LANDMARK_KINDS,
  type Landmark,
  type LandmarkKind,
  SPAN_FORMS,
  type SpanLandmark,
} from '#core/scene/landmark.ts'
import { elevationHint } from '#renderer/text/ground-text.ts'
import { TiltFields } from '#renderer/part/tilt-fields.tsx'
import { Choice } from '#renderer/part/choice.tsx'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { Question } from '#renderer/part/question.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { assessment, plan } from '#renderer/state/plan/board-plan.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'
import { addLandmark, changeLandmark, placeLandmark, removeLandmark } from '#renderer/state/act/landmark-acts.ts'
import { LandmarkPoints } from './landmark-points.tsx'

const ELEVATIONS = { least: -500, most: 9_000 } as const
const MOST_LANDMARKS = 100

export function LandmarkForm({ shoot }: { shoot: Shoot }) {
  const say = words.shoot
  const [kind, setKind] = useState<LandmarkKind>('upright')
  return (
    <Question title={say.landmarks}>
      {shoot.landmarks.length === 0 ? <p class="hint">{say.noLandmark}</p> : null}
      {shoot.landmarks.map((landmark) => (
        <LandmarkCard key={landmark.id} shoot={shoot} landmark={landmark} />
      ))}
      <div class="field-row">
        <Choice
          label={say.edit.addLandmark}
          value={kind}
          options={LANDMARK_KINDS.map((option) => [option, say.landmarkKinds[option]] as const)}
          onChoose={setKind}
        />
        <button
          type="button"
          class="button"
          disabled={shoot.landmarks.length >= MOST_LANDMARKS}
          onClick={() => void addLandmark(shoot, kind)}
        >
          <Icon name="add" /> {say.addLandmark}
        </button>
      </div>
    </Question>
  )
}

function LandmarkCard({ shoot, landmark }: { shoot: Shoot; landmark: Landmark }) {
  const say = words.shoot
  const change = (next: Landmark): void => changeLandmark(shoot, next)
  const name = landmarkName(landmark).slice(0, 100)
  return (
    <fieldset class="card">
      <legend>{say.landmarkKinds[landmark.kind]}</legend>
      <TextField
        label={say.landmarkName}
        value={landmark.name}
        most={NAME_MOST}
        placeholder={say.unnamedLandmark}
        onTake={(text) => change({ ...landmark, name: text })}
      />
      <Measures landmark={landmark} onChange={change} />
      <LandmarkPoints landmark={landmark} onChange={change} />
      <div class="buttons">
        <button type="button" class="button button-small" onClick={() => placeLandmark(landmark)}>
          <Icon name="map" /> {say.placeOnMap}
        </button>
        <button type="button" class="button button-small" onClick={() => void removeLandmark(shoot, landmark)}>
          <Icon name="remove" /> {say.removeLandmark(name)}
        </button>
      </div>
    </fieldset>
  )
}

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

function Measures({ landmark, onChange }: MeasuresProps) {
  const say = words.shoot
  const under = underLandmark(landmark)
  return (
    <div class="field-row">
      <LengthField
        label={landmark.kind === 'span' ? say.spanHeights[landmark.form] : say.landmarkHeights[landmark.kind]}
        value={landmark.height}
        limits={RECORD_LIMITS.landmarkSize}
        refuse={(height) => (hasDeck(landmark) && height < landmark.deckHeight ? say.field.topBelowDeck : null)}
        {...(hasDeck(landmark) ? { judged: { by: String(landmark.deckHeight), field: `${landmark.id} height` } } : {})}
        onTake={(height) => onChange(ofHeight(landmark, height))}
      />
      {landmark.kind === 'building' ? null : (
        <LengthField
          label={landmark.kind === 'span' ? say.acrossDeck : say.diameter}
          value={landmark.width}
          limits={RECORD_LIMITS.landmarkSize}
          onTake={(width) => onChange({ ...landmark, width })}
        />
      )}
      {landmark.kind === 'span' ? <SpanMeasures span={landmark} onChange={onChange} /> : null}
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
  )
}

function hasDeck(landmark: Landmark): landmark is SpanLandmark {
  return landmark.kind === 'span' && landmark.form !== 'wall'
}

/** A wall's deck is neither shown nor asked for: it goes down with a lower top, so that it is never above it. */
function ofHeight(landmark: Landmark, height: number): Landmark {
  if (landmark.kind !== 'span' || landmark.form !== 'wall') return { ...landmark, height }
  return { ...landmark, height, deckHeight: Math.min(landmark.deckHeight, height) }
}

function SpanMeasures({ span, onChange }: { span: SpanLandmark; onChange: (next: Landmark) => void }) {
  const say = words.shoot
  return (
    <>
      {hasDeck(span) ? (
        <LengthField
          label={say.deckHeight}
          value={span.deckHeight}
          limits={RECORD_LIMITS.deckHeight}
          refuse={(deck) => (deck > span.height ? say.field.deckAboveTop : null)}
          judged={{ by: String(span.height), field: `${span.id} deck` }}
          onTake={(deckHeight) => onChange({ ...span, deckHeight })}
        />
      ) : null}
      <Choice
        label={say.form}
        value={span.form}
        options={SPAN_FORMS.map((form) => [form, say.spanForms[form]] as const)}
        onChoose={(form) => onChange({ ...span, form })}
      />
    </>
  )
}
