/** The light conditions: ready-made ones, of subject and landmark, of the sun's height and place, twilight, the moon, and the hours one can be there. */
import { useState } from 'preact/hooks'
import { LIGHT_PRESETS, lightPresetOf, withLightPreset } from '#core/light/light-preset.ts'
import {
  LANDMARK_LIGHTS,
  type LightWishes,
  NO_WISHES,
  SOFT_LIGHTS,
  SUBJECT_LIGHTS,
  SUN_PLACES,
  wishesMade,
} from '#core/light/light-wish.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type Result, done, failed } from '#core/result.ts'
import { clockText, parseClock } from '#core/time/clock-text.ts'
import { Choice } from './choice.tsx'
import { useDraft } from './draft.ts'
import { Field } from './field.tsx'
import { DegreesField } from './degrees-field.tsx'
import { Fold } from './question.tsx'
import { useTryAgain } from './try-again.ts'
import { changeShoot } from '#renderer/state/library/history.ts'
import { landmarkName, subjectName } from '#renderer/text/names.ts'
import { lightWords } from '#renderer/words/en-light.ts'

const { wishes: say } = lightWords
const ALTITUDES = { least: -90, most: 90 } as const
const ANY = ''

interface WishProps {
  readonly light: LightWishes
  readonly onWish: (part: Partial<LightWishes>) => void
}

export function LightWishesForm({ plan }: { plan: Plan }) {
  const { shoot } = plan
  const { light } = shoot
  const wish = (part: Partial<LightWishes>): void =>
    void changeShoot(lightWords.edit.wishes, { ...shoot, light: { ...light, ...part } })
  const count = wishesMade(light).length
  return (
    <Fold title={count === 0 ? say.title : say.titleCount(count)}>
      <div class="light-wishes">
        <Presets light={light} onWish={wish} />
        <OneOf
          label={say.subject(subjectName(shoot.subject))}
          value={light.subject}
          values={SUBJECT_LIGHTS}
          names={say.subjectOptions}
          onChoose={(subject) => wish({ subject })}
        />
        <OneOf
          label={say.landmark(landmarkName(plan.landmark))}
          value={light.landmark}
          values={LANDMARK_LIGHTS}
          names={say.landmarkOptions}
          onChoose={(landmark) => wish({ landmark })}
        />
        <OneOf
          label={say.sun}
          value={light.sun}
          values={SUN_PLACES}
          names={say.sunOptions}
          onChoose={(sun) => wish({ sun })}
        />
        <OneOf
          label={say.soft}
          value={light.soft}
          values={SOFT_LIGHTS}
          names={say.softOptions}
          onChoose={(soft) => wish({ soft })}
        />
        <SunHeight light={light} onWish={wish} />
        <HoursThere light={light} onWish={wish} />
        <label class="light-check">
          <input
            type="checkbox"
            checked={light.moonUp}
            onChange={(event) => wish({ moonUp: event.currentTarget.checked })}
          />
          {say.moonUp}
        </label>
        {count === 0 ? null : (
          <button type="button" class="button button-small" onClick={() => wish(NO_WISHES)}>
            {say.clear}
          </button>
        )}
      </div>
    </Fold>
  )
}

/** Golden and blue hour, as everybody calls them; what they set shows in the fields below. */
function Presets({ light, onWish }: WishProps) {
  const set = lightPresetOf(light)
  return (
    <div class="buttons" role="group" aria-label={say.ready}>
      {LIGHT_PRESETS.map((preset) => (
        <button
          key={preset}
          type="button"
          class={set === preset ? 'button button-small on' : 'button button-small'}
          aria-pressed={set === preset}
          title={say.presetHints[preset]}
          onClick={() => onWish(withLightPreset(light, preset))}
        >
          {say.presets[preset]}
        </button>
      ))}
    </div>
  )
}

interface OneOfProps<Value extends string> {
  readonly label: string
  readonly value: Value | null
  readonly values: readonly Value[]
  readonly names: Readonly<Record<Value, string>>
  readonly onChoose: (value: Value | null) => void
}

function OneOf<Value extends string>({ label, value, values, names, onChoose }: OneOfProps<Value>) {
  const options: readonly (readonly [string, string])[] = [
    [ANY, say.any],
    ...values.map((option) => [option, names[option]] as const),
  ]
  return (
    <Choice
      label={label}
      value={value ?? ANY}
      options={options}
      onChoose={(chosen) => onChoose(values.find((option) => option === chosen) ?? null)}
    />
  )
}

/** Two heights; one of them alone leaves the other end open, and both empty are no wish. */
function SunHeight({ light, onWish }: WishProps) {
  const { altitude } = light
  const take = (least: number | null, most: number | null): void =>
    onWish({ altitude: least === null && most === null ? null : { least: least ?? -90, most: most ?? 90 } })
  const least = altitude === null || altitude.least <= -90 ? null : altitude.least
  const most = altitude === null || altitude.most >= 90 ? null : altitude.most
  return (
    <div class="field-row">
      <DegreesField
        label={say.least}
        value={least}
        limits={ALTITUDES}
        refuse={(value) => (value < (most ?? 90) ? null : say.order)}
        judged={{ by: String(most) }}
        onTakeUnknown={(value) => take(value, most)}
      />
      <DegreesField
        label={say.most}
        value={most}
        limits={ALTITUDES}
        refuse={(value) => (value > (least ?? -90) ? null : say.order)}
        judged={{ by: String(least) }}
        onTakeUnknown={(value) => take(least, value)}
      />
    </div>
  )
}

/** The two times make a wish together: while only one is known it waits here. */
function HoursThere({ light, onWish }: WishProps) {
  const { hours } = light
  const [half, setHalf] = useState<{ readonly from: number | null; readonly until: number | null }>({
    from: null,
    until: null,
  })
  const from = hours?.from ?? half.from
  const until = hours?.until ?? half.until
  const take = (next: { from: number | null; until: number | null }): Result<unknown> => {
    if (next.from !== null && next.until !== null) {
      const closed = next.until === 0 ? 1440 : next.until
      if (next.from % 1440 === closed % 1440 && closed - next.from !== 1440) return failed('same', say.sameHours)
      setHalf({ from: null, until: null })
      onWish({ hours: { from: next.from % 1440, until: closed } })
      return done(null)
    }
    setHalf(next)
    if (hours !== null) onWish({ hours: null })
    return done(null)
  }
  return (
    <fieldset class="hours-there">
      <legend>{say.hours}</legend>
      <div class="field-row">
        <ClockField label={say.from} value={from} by={until} onTake={(value) => take({ from: value, until })} />
        <ClockField label={say.until} value={until} by={from} onTake={(value) => take({ from, until: value })} />
      </div>
    </fieldset>
  )
}

interface ClockFieldProps {
  readonly label: string
  readonly value: number | null
  /** The other end. */
  readonly by: number | null
  readonly onTake: (minutes: number | null) => Result<unknown>
}

function ClockField({ label, value, by, onTake }: ClockFieldProps) {
  const shown = value === null ? '' : clockText(value)
  const draft = useDraft(shown, (text) => {
    if (text.trim() === '') return onTake(null)
    const read = parseClock(text)
    return read.ok ? onTake(read.value) : read
  })
  useTryAgain(draft, shown, { by: String(by) })
  return <Field label={label} draft={draft} placeholder={say.anyTime} />
}
