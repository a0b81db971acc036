/** Who must be asked? The state of the permission, whom it comes from, until when it holds. */
import { PERMISSION_STATES, type Permission, type Spot } from '#core/record/spot.ts'
import { type Result, done, failed } from '#core/result.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { useDraft } from '#renderer/part/draft.ts'
import { Field } from '#renderer/part/field.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeSpot } from '#renderer/state/library/history.ts'
import { words } from '#renderer/words/en.ts'

const WHOM_MOST = 10_000

/** A calendar day YYYY-MM-DD that exists; an empty text is "no end known". */
export function parseDay(text: string): Result<string | null> {
  const plain = text.normalize('NFKC').trim()
  if (plain === '') return done(null)
  const match = /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})$/u.exec(plain)
  if (match === null) return failed('unreadable', words.spot.badDay)
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])]
  const date = new Date(Date.UTC(year, month - 1, day))
  // The 31st of June would roll over into July: such a day is not in the calendar.
  if (year < 1000 || date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) {
    return failed('no-such-day', words.spot.badDay)
  }
  return done(date.toISOString().slice(0, 10))
}

function DayField({ value, onTake }: { value: string | null; onTake: (day: string | null) => void }) {
  const draft = useDraft(value ?? '', (text) => {
    const read = parseDay(text)
    if (read.ok) onTake(read.value)
    return read
  })
  return <Field label={words.spot.until} draft={draft} width="wide" placeholder="2026-06-14" />
}

export function PermissionNotes({ spot }: { spot: Spot }) {
  const { permission } = spot
  const change = (part: Partial<Permission>): void =>
    void changeSpot(words.spot.edit.permission, { ...spot, permission: { ...permission, ...part } })
  return (
    <>
      <div class="field-row">
        <Choice
          label={words.spot.permission}
          value={permission.state}
          options={PERMISSION_STATES.map((state) => [state, words.spot.permissions[state]] as const)}
          onChoose={(state) => change({ state })}
        />
        <DayField value={permission.until} onTake={(until) => change({ until })} />
      </div>
      <TextField
        label={words.spot.whom}
        value={permission.whom}
        most={WHOM_MOST}
        hint={words.spot.whomHint}
        onTake={(whom) => change({ whom })}
      />
      <p class="caution">{words.spot.cautions.ground}</p>
    </>
  )
}
