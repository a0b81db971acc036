/** What is noted about a spot: name, stars, status, notes, and the ways there, the permission and the hazards. */
import { NAME_MOST } from '#core/record/record-limits.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Spot } from '#core/record/spot.ts'
import { SPOT_STATUSES } from '#core/record/spot.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { ReadPart } from '#renderer/part/read-part.tsx'
import { Question } from '#renderer/part/question.tsx'
import { StarsChosen } from '#renderer/part/stars.tsx'
import { TextArea, TextField } from '#renderer/part/text-field.tsx'
import { changeSpot } from '#renderer/state/library/history.ts'
import { words } from '#renderer/words/en.ts'
import { AccessNotes } from './access-notes.tsx'
import { HazardNotes } from './hazard-notes.tsx'
import { PermissionNotes } from './permission-notes.tsx'

const NOTES_MOST = 100_000

function Noted({ spot }: { spot: Spot }) {
  const { edit } = words.spot
  return (
    <Question title={words.spot.title}>
      <TextField
        label={words.spot.name}
        value={spot.name}
        most={NAME_MOST}
        placeholder={words.board.untitledSpot}
        onTake={(name) => void changeSpot(edit.name, { ...spot, name })}
      />
      <div class="field-row">
        <Choice
          label={words.spot.status}
          value={spot.status}
          options={SPOT_STATUSES.map((status) => [status, words.spot.statuses[status]] as const)}
          onChoose={(status) => void changeSpot(edit.status, { ...spot, status })}
        />
        <StarsChosen count={spot.stars} onChoose={(stars) => void changeSpot(edit.stars, { ...spot, stars })} />
      </div>
      <TextArea
        label={words.spot.notes}
        value={spot.notes}
        most={NOTES_MOST}
        onTake={(notes) => void changeSpot(edit.notes, { ...spot, notes })}
      />
    </Question>
  )
}

/** Each shows what is noted on the spot of the board; made once, so that a part is drawn again only by what it reads. */
const NOTES = [Noted, AccessNotes, PermissionNotes, HazardNotes].map((Notes) => (plan: Plan) => (
  <Notes spot={plan.spot} />
))

export function SpotDetails() {
  return (
    <>
      {NOTES.map((show, index) => (
        <ReadPart key={index} show={show} />
      ))}
    </>
  )
}
