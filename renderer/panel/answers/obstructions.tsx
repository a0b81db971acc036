/** Trees and walls: the list of what hides beside the ground, each with its name and height, and one more put across the way. */
import { useEffect, useState } from 'preact/hooks'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { Plan } from '#core/plan/plan.ts'
import { DRAWN_NAME_MOST, RECORD_LIMITS } from '#core/record/record-limits.ts'
import { withObstruction } from '#core/plan/obstructions.ts'
import type { ObstructionRecord } from '#core/record/shoot.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { fitPlaces } from '#renderer/state/session/map-window.ts'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { metres } from '#renderer/text/figure.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeShoot } from '#renderer/state/library/history.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { obstructionName } from '#renderer/text/ground-text.ts'
import { addObstruction, removeObstruction } from '#renderer/state/act/obstruction-acts.ts'

const { obstructions: say } = groundWords

export function Obstructions({ plan }: { readonly plan: Plan }) {
  const { obstructions } = plan.shoot
  const count = obstructions.length
  const [open, setOpen] = useState(count > 0)
  // Whatever is new is there to be seen: an obstruction just added, or one that undo brought back.
  useEffect(() => {
    if (count > 0) setOpen(true)
  }, [count])
  return (
    <details class="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{count === 0 ? say.title : say.titleCount(count)}</summary>
      <div class="fold-body">
        <p class="hint">{say.hint}</p>
        {obstructions.map((obstruction, index) => (
          <ObstructionRow
            key={obstruction.id}
            plan={plan}
            obstruction={obstruction}
            name={obstructionName(obstructions, index)}
          />
        ))}
        <button type="button" class="button button-small obstruction-add" onClick={() => addObstruction(plan)}>
          <Icon name="add" /> {say.add}
        </button>
      </div>
    </details>
  )
}

function lengthOf({ line }: ObstructionRecord): number {
  return line.slice(1).reduce((sum, at, index) => sum + geodesicDistance(line[index] ?? at, at), 0)
}

interface RowProps {
  readonly plan: Plan
  readonly obstruction: ObstructionRecord
  readonly name: string
}

function ObstructionRow({ plan: { shoot }, obstruction, name }: RowProps) {
  const middle = landmarkMiddle(obstruction.line)
  return (
    <fieldset class="obstruction-row">
      <legend class="unseen">{name}</legend>
      <TextField
        label={say.name}
        value={obstruction.name}
        most={DRAWN_NAME_MOST}
        placeholder={name}
        onTake={(text) => void changeShoot(say.edit.name, withObstruction(shoot, { ...obstruction, name: text }))}
      />
      <LengthField
        label={say.height}
        value={obstruction.height}
        limits={RECORD_LIMITS.obstructionHeight}
        hint={say.length(metres(lengthOf(obstruction), settings.value.units))}
        onTake={(height) => void changeShoot(say.edit.height, withObstruction(shoot, { ...obstruction, height }))}
      />
      <span class="obstruction-acts">
        {middle === null ? null : (
          <button
            type="button"
            class="icon-button"
            aria-label={say.show(name)}
            onClick={() => fitPlaces(obstruction.line)}
          >
            <Icon name="map" />
          </button>
        )}
        <button
          type="button"
          class="icon-button"
          aria-label={say.remove(name)}
          onClick={() => removeObstruction(shoot, obstruction, name)}
        >
          <Icon name="remove" />
        </button>
      </span>
    </fieldset>
  )
}
