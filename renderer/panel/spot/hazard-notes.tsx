/** What to watch for? The hazards seen at a spot, and the usual cautions that go with them. */
import { HAZARDS, type Hazard, type Spot } from '#core/record/spot.ts'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeSpot } from '#renderer/state/library/history.ts'
import { words } from '#renderer/words/en.ts'
import { CAUTIONS_ALWAYS, cautionsOf } from '#renderer/text/hazard-text.ts'

const NOTE_MOST = 10_000

export function HazardNotes({ spot }: { spot: Spot }) {
  const { hazards, hazardNote } = spot
  const { edit } = words.spot
  const toggle = (hazard: Hazard): void => {
    const next = HAZARDS.filter((option) => (option === hazard ? !hazards.includes(option) : hazards.includes(option)))
    void changeSpot(edit.hazards, { ...spot, hazards: next })
  }
  return (
    <>
      <fieldset class="checks">
        <legend class="unseen">{words.spot.hazardsLabel}</legend>
        {HAZARDS.map((hazard) => (
          <label key={hazard}>
            <input type="checkbox" checked={hazards.includes(hazard)} onChange={() => toggle(hazard)} />
            {words.spot.hazards[hazard]}
          </label>
        ))}
      </fieldset>
      <TextField
        label={words.spot.hazardNote}
        value={hazardNote}
        most={NOTE_MOST}
        onTake={(note) => void changeSpot(edit.hazards, { ...spot, hazardNote: note })}
      />
      <ul class="cautions">
        {[...cautionsOf(hazards), ...CAUTIONS_ALWAYS].map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </>
  )
}
