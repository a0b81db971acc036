/** What stands behind? The landmarks of the shoot, each of its kind, with its measures and its places. */
import { useState } from 'preact/hooks'
import { NAME_MOST } from '#core/record/record-limits.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { LANDMARK_KINDS, type Landmark, type LandmarkKind, SPAN_FORMS, inForm } from '#core/scene/landmark.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { Question } from '#renderer/part/question.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { landmarkName } from '#renderer/text/names.ts'
import { words } from '#renderer/words/en.ts'
import { addLandmark, changeLandmark, placeLandmark, removeLandmark } from '#renderer/state/act/landmark-acts.ts'
import { Measures } from './landmark-measures.tsx'
import { LandmarkPoints } from './landmark-points.tsx'

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
      <legend>{landmark.kind === 'span' ? say.spanForms[landmark.form] : say.landmarkKinds[landmark.kind]}</legend>
      <div class="field-row">
        {landmark.kind === 'span' ? (
          <Choice
            label={say.form}
            value={landmark.form}
            options={SPAN_FORMS.map((form) => [form, say.spanForms[form]] as const)}
            onChoose={(form) => change(inForm(landmark, form))}
          />
        ) : null}
        <TextField
          label={say.landmarkName}
          value={landmark.name}
          most={NAME_MOST}
          placeholder={say.unnamedLandmark}
          onTake={(text) => change({ ...landmark, name: text })}
        />
      </div>
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
