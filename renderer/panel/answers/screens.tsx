/** Trees and walls: the list of what hides beside the ground, each with its name and height, and one more put across the way. */
import { useEffect, useState } from 'preact/hooks'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { Plan } from '#core/plan/plan.ts'
import { RECORD_LIMITS } from '#core/record/record-limits.ts'
import { withScreen } from '#core/plan/screens.ts'
import type { ScreenRecord } from '#core/record/shoot.ts'
import { landmarkMiddle } from '#core/scene/shell.ts'
import { fitPlaces } from '#renderer/state/session/map-window.ts'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { metres } from '#renderer/text/figure.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeShoot } from '#renderer/state/library/history.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { screenName } from '#renderer/text/ground-text.ts'
import { addScreen, removeScreen } from '#renderer/state/act/screen-acts.ts'

const { screens: say } = groundWords
const NAME_MOST = 200

export function Screens({ plan }: { readonly plan: Plan }) {
  const { screens } = plan.shoot
  const count = screens.length
  const [open, setOpen] = useState(count > 0)
  // Whatever is new is there to be seen: a screen just added, or one that undo brought back.
  useEffect(() => {
    if (count > 0) setOpen(true)
  }, [count])
  return (
    <details class="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{count === 0 ? say.title : say.titleCount(count)}</summary>
      <div class="fold-body">
        <p class="hint">{say.hint}</p>
        {screens.map((screen, index) => (
          <ScreenRow key={screen.id} plan={plan} screen={screen} name={screenName(screens, index)} />
        ))}
        <button type="button" class="button button-small screen-add" onClick={() => addScreen(plan)}>
          <Icon name="add" /> {say.add}
        </button>
      </div>
    </details>
  )
}

function lengthOf({ line }: ScreenRecord): number {
  return line.slice(1).reduce((sum, at, index) => sum + geodesicDistance(line[index] ?? at, at), 0)
}

interface RowProps {
  readonly plan: Plan
  readonly screen: ScreenRecord
  readonly name: string
}

function ScreenRow({ plan: { shoot }, screen, name }: RowProps) {
  const middle = landmarkMiddle(screen.line)
  return (
    <fieldset class="screen-row">
      <legend class="unseen">{name}</legend>
      <TextField
        label={say.name}
        value={screen.name}
        most={NAME_MOST}
        placeholder={name}
        onTake={(text) => void changeShoot(say.edit.name, withScreen(shoot, { ...screen, name: text }))}
      />
      <LengthField
        label={say.height}
        value={screen.height}
        limits={RECORD_LIMITS.screenHeight}
        hint={say.length(metres(lengthOf(screen), settings.value.units))}
        onTake={(height) => void changeShoot(say.edit.height, withScreen(shoot, { ...screen, height }))}
      />
      <span class="screen-acts">
        {middle === null ? null : (
          <button type="button" class="icon-button" aria-label={say.show(name)} onClick={() => fitPlaces(screen.line)}>
            <Icon name="map" />
          </button>
        )}
        <button
          type="button"
          class="icon-button"
          aria-label={say.remove(name)}
          onClick={() => removeScreen(shoot, screen, name)}
        >
          <Icon name="remove" />
        </button>
      </span>
    </fieldset>
  )
}
