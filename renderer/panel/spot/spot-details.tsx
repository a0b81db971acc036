/** What is noted about a spot: name, stars, status, notes, and the ways there, the permission and the hazards. */
import { NAME_MOST } from '#core/record/record-limits.ts'
import type { Spot } from '#core/record/spot.ts'
import { SPOT_STATUSES } from '#core/record/spot.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { type BoardAnswer, AnswerLine } from '#renderer/part/answer-line.tsx'
import { StarsChosen } from '#renderer/part/stars.tsx'
import { TextArea, TextField } from '#renderer/part/text-field.tsx'
import { changeSpot } from '#renderer/state/library/history.ts'
import { hazardGlance, permissionGlance, spotGlance, wayGlance } from '#renderer/text/glance-text.ts'
import { words } from '#renderer/words/en.ts'
import { AccessNotes } from './access-notes.tsx'
import { HazardNotes } from './hazard-notes.tsx'
import { PermissionNotes } from './permission-notes.tsx'

const NOTES_MOST = 100_000

function Noted({ spot }: { spot: Spot }) {
  const { edit } = words.spot
  return (
    <>
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
    </>
  )
}

const NOTES: readonly BoardAnswer[] = [
  {
    id: 'way',
    title: words.spot.getThere,
    glance: ({ spot }) => wayGlance(spot),
    show: ({ spot }) => <AccessNotes spot={spot} />,
  },
  {
    id: 'permission',
    title: words.spot.whoAsked,
    glance: ({ spot }) => permissionGlance(spot),
    show: ({ spot }) => <PermissionNotes spot={spot} />,
  },
  {
    id: 'hazards',
    title: words.spot.watchFor,
    glance: ({ spot }) => hazardGlance(spot),
    show: ({ spot }) => <HazardNotes spot={spot} />,
  },
  {
    id: 'spot',
    title: words.spot.title,
    glance: ({ spot }) => spotGlance(spot),
    show: ({ spot }) => <Noted spot={spot} />,
  },
]

export function SpotDetails() {
  return (
    <>
      {NOTES.map((answer) => (
        <AnswerLine key={answer.id} answer={answer} />
      ))}
    </>
  )
}
