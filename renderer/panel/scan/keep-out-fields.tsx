/** The fields of a keep-out: its name, what it is, how wide, whom it keeps out, and whether anybody can step across. */
import {
  KEEP_OUT_KINDS,
  KEPT_OUT,
  type KeepOut,
  type KeepOutKind,
  type KeptOut,
  USUAL_WIDTH,
} from '#core/record/keep-out.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { changeKeepOut } from '#renderer/state/act/drawn-acts.ts'
import { DRAWN_NAME_MOST } from '#core/record/record-limits.ts'

/** Metres, as a stored keep-out may have. */
const WIDTHS = { least: 0, most: 10_000, moreThanLeast: true } as const

interface KeepOutProps {
  readonly shoot: Shoot
  readonly keepOut: KeepOut
  readonly name: string
}

/** A width that nobody has changed goes along with the kind. */
export function withKind(keepOut: KeepOut, kind: KeepOutKind): KeepOut {
  const width = keepOut.width === USUAL_WIDTH[keepOut.kind] ? USUAL_WIDTH[kind] : keepOut.width
  return { ...keepOut, kind, width }
}

export function KeepOutFields({ shoot, keepOut, name }: KeepOutProps) {
  const change = (after: KeepOut): void => changeKeepOut(say.edit.change['keep-out'], shoot, after)
  return (
    <>
      <TextField
        label={say.name}
        value={keepOut.name}
        most={DRAWN_NAME_MOST}
        placeholder={name}
        onTake={(text) => changeKeepOut(say.edit.rename['keep-out'], shoot, { ...keepOut, name: text })}
      />
      <div class="drawn-pair">
        <Choice
          label={say.kind}
          value={keepOut.kind}
          options={KEEP_OUT_KINDS.map((kind) => [kind, say.kinds[kind]] as const)}
          onChoose={(kind: KeepOutKind) => change(withKind(keepOut, kind))}
        />
        {keepOut.form === 'area' ? null : (
          <LengthField
            label={say.width}
            value={keepOut.width}
            limits={WIDTHS}
            onTake={(width) => change({ ...keepOut, width })}
          />
        )}
      </div>
      <Choice
        label={say.whom}
        value={keepOut.whom}
        options={KEPT_OUT.map((whom) => [whom, say.whoms[whom]] as const)}
        onChoose={(whom: KeptOut) => change({ ...keepOut, whom })}
      />
      <label class="drawn-check">
        <input
          type="checkbox"
          checked={keepOut.noCrossing}
          onChange={(event) => change({ ...keepOut, noCrossing: event.currentTarget.checked })}
        />
        {say.noCrossing}
      </label>
    </>
  )
}
