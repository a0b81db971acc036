/** What is photographed? The subject's kind, name, size, and the places on it that one may focus on. */
import { useRef } from 'preact/hooks'
import { NAME_MOST, RECORD_LIMITS } from '#core/record/record-limits.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { SUBJECT_KINDS, SUBJECT_PRESETS, type Subject, type SubjectKind } from '#core/scene/subject.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { lengthInField, lengthUnit, metres } from '#renderer/text/figure.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { Question } from '#renderer/part/question.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeShoot } from '#renderer/state/library/history.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { formWords } from '#renderer/words/en-forms.ts'
import { words } from '#renderer/words/en.ts'
import { type SubjectSize, hasUsualSize, resized, sizeAs } from './typed-changes.ts'

const MOST_FEATURES = 50

export function SubjectForm({ shoot }: { shoot: Shoot }) {
  const { subject } = shoot
  const say = words.shoot
  const change = (next: Subject): void => void changeShoot(say.edit.subject, { ...shoot, subject: next })
  // The named places as they were before a shorter length moved them onto the subject, until something else changes them.
  const meantRef = useRef<{ shown: string; features: Subject['features'] } | null>(null)
  const resize = (size: Partial<SubjectSize>, kind = subject.kind): void => {
    const kept = meantRef.current
    const meant = kept?.shown === JSON.stringify(subject.features) ? kept.features : subject.features
    const next = { ...resized(subject, size, meant), kind }
    meantRef.current = { shown: JSON.stringify(next.features), features: meant }
    change(next)
  }
  return (
    <Question title={say.subject}>
      <div class="field-row">
        <Choice
          label={say.subjectKind}
          value={subject.kind}
          options={SUBJECT_KINDS.map((kind) => [kind, say.subjectKinds[kind]] as const)}
          onChoose={(kind: SubjectKind) => resize(sizeAs(subject, kind), kind)}
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
            onTake={(size) => resize({ [side]: size })}
          />
        ))}
      </div>
      {hasUsualSize(subject) || subject.kind === 'other' ? null : (
        <button
          type="button"
          class="button button-small usual-size"
          onClick={() => resize(SUBJECT_PRESETS[subject.kind])}
        >
          {formWords.subject.usualSize(sizeText(SUBJECT_PRESETS[subject.kind]))}
        </button>
      )}
      <Features shootId={shoot.id} subject={subject} onChange={change} />
    </Question>
  )
}

function sizeText({ length, width, height }: SubjectSize): string {
  const { units } = settings.value
  const figures = [length, width, height].map((side) => lengthInField(side, units, 2))
  return `${figures.join(' × ')} ${lengthUnit(units)}`
}

interface FeaturesProps {
  readonly shootId: string
  readonly subject: Subject
  readonly onChange: (next: Subject) => void
}

function Features({ shootId, subject, onChange }: FeaturesProps) {
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
            judged={{ by: String(length), field: `${shootId} place ${index}` }}
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
