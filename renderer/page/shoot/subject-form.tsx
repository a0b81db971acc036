/** What is photographed? The subject's kind, name, size, and the places on it that one may focus on. */
import { NAME_MOST, RECORD_LIMITS } from '#core/record/record-limits.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { SUBJECT_KINDS, SUBJECT_PRESETS, type Subject, type SubjectKind } from '#core/scene/subject.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { metres } from '#renderer/text/figure.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { Question } from '#renderer/part/question.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeShoot } from '#renderer/state/library/history.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'
import { resized } from './typed-changes.ts'

const MOST_FEATURES = 50

export function SubjectForm({ shoot }: { shoot: Shoot }) {
  const { subject } = shoot
  const say = words.shoot
  const change = (next: Subject): void => void changeShoot(say.edit.subject, { ...shoot, subject: next })
  return (
    <Question title={say.subject}>
      <div class="field-row">
        <Choice
          label={say.subjectKind}
          value={subject.kind}
          options={SUBJECT_KINDS.map((kind) => [kind, say.subjectKinds[kind]] as const)}
          onChoose={(kind: SubjectKind) => change({ ...resized(subject, SUBJECT_PRESETS[kind]), kind })}
        />
        <TextField
          label={say.subjectName}
          value={subject.name}
          most={NAME_MOST}
          placeholder={say.subjectKinds[subject.kind]}
          onTake={(name) => change({ ...subject, name })}
        />
      </div>
      <div class="field-row">
        {(['length', 'width', 'height'] as const).map((side) => (
          <LengthField
            key={side}
            label={say[side]}
            value={subject[side]}
            limits={RECORD_LIMITS.subjectSize}
            onTake={(size) => change(resized(subject, { [side]: size }))}
          />
        ))}
      </div>
      <Features subject={subject} onChange={change} />
    </Question>
  )
}

function Features({ subject, onChange }: { subject: Subject; onChange: (next: Subject) => void }) {
  const say = words.shoot
  const { features, length } = subject
  const replace = (index: number, part: Partial<Subject['features'][number]>): void =>
    onChange({ ...subject, features: features.map((other, at) => (at === index ? { ...other, ...part } : other)) })
  return (
    <fieldset class="sub-list">
      <legend>{say.features}</legend>
      {features.map((feature, index) => (
        // Places have no identity of their own but their order.
        // oxlint-disable-next-line react/no-array-index-key
        <div class="field-row" key={index}>
          <TextField
            label={say.featureName}
            value={feature.name}
            most={NAME_MOST}
            onTake={(name) => replace(index, { name })}
          />
          <LengthField
            label={say.featureAt}
            value={feature.behindFront}
            limits={{ least: 0, most: 1_000 }}
            refuse={(at) => (at > length ? say.field.behindEnd(metres(length, settings.value.units)) : null)}
            judged={{ by: String(length) }}
            onTake={(behindFront) => replace(index, { behindFront })}
          />
          <button
            type="button"
            class="icon-button"
            aria-label={say.removeLens(feature.name === '' ? say.featureName : feature.name)}
            onClick={() => onChange({ ...subject, features: features.filter((_, at) => at !== index) })}
          >
            <Icon name="remove" />
          </button>
        </div>
      ))}
      <button
        type="button"
        class="button button-small"
        disabled={features.length >= MOST_FEATURES}
        onClick={() =>
          onChange({ ...subject, features: [...features, { name: '', behindFront: Math.min(length, length / 2) }] })
        }
      >
        <Icon name="add" /> {say.addFeature}
      </button>
    </fieldset>
  )
}
