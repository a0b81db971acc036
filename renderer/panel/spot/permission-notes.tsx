/** Who must be asked? The state of the permission, whom it comes from, until when it holds. */
import { PERMISSION_STATES, type Permission, type Spot } from '#core/record/spot.ts'
import { civilTime } from '#core/time/civil.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { DateField } from '#renderer/part/date-field.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeSpot } from '#renderer/state/library/history.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { words } from '#renderer/words/en.ts'

const WHOM_MOST = 10_000

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
        <DateField
          label={words.spot.until}
          date={permission.until}
          near={permission.until ?? civilTime(spot.when, zone.value).date}
          onTake={(until) => {
            change({ until })
            return null
          }}
          onEmpty={() => change({ until: null })}
        />
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
