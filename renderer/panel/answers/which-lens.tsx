/** Which lens? The answer for what is held and wished, and the wishes themselves. */
import type { Assessment } from '#core/plan/assess.ts'
import { setHold, setShot } from '#core/plan/arrange.ts'
import type { Plan } from '#core/plan/plan.ts'
import { HOLDS } from '#core/record/spot.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { degreesText, millimetres, rounded } from '#renderer/text/figure.ts'
import { AnswerFigure, Fold } from '#renderer/part/question.tsx'
import { Reading, Readings } from '#renderer/part/reading.tsx'
import { Segment } from '#renderer/part/segment.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { changeSpot } from '#renderer/state/library/history.ts'
import { landmarkName, lensName, subjectName } from '#renderer/text/names.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'
import { CropTable } from './crop-table.tsx'
import { framingText } from '#renderer/text/framing-text.ts'
import { LensTable } from './lens-table.tsx'
import { lensNote, problemSentences } from '#renderer/text/problem-text.ts'
import { Sightlines } from './sightlines.tsx'
import { Wishes } from './wishes.tsx'

interface AnswerProps {
  readonly plan: Plan
  readonly found: Assessment
}

export function WhichLens({ plan, found }: AnswerProps) {
  const { answers } = words
  const { hold } = plan.spot
  return (
    <>
      <Segment
        label={answers.hold.label}
        showLabel
        value={hold}
        options={HOLDS.map((option) => [option, answers.hold.what[option], answers.hold.spoken[option]] as const)}
        onChoose={(chosen) => void changeSpot(answers.edit.hold, setHold(plan, chosen))}
      />
      <AnswerFigure
        figure={found.focalLength === null ? '–' : millimetres(found.focalLength)}
        note={found.focalLength === null ? words.board.unknown : lensNote(plan, found)}
      />
      <Warnings sentences={problemSentences(plan, found, settings.value.units, 'lens')} />
      <Fills plan={plan} found={found} />
      <Wishes plan={plan} />
      <LensChoice plan={plan} />
      <Fold title={answers.sightlines.title}>
        <Sightlines plan={plan} found={found} />
      </Fold>
      <Fold title={answers.lens.bag}>
        <LensTable plan={plan} found={found} />
      </Fold>
      <Fold title={answers.crops.title}>
        <CropTable plan={plan} found={found} />
      </Fold>
    </>
  )
}

function Fills({ plan, found }: AnswerProps) {
  const { answers } = words
  const { subjectFill, landmarkFill } = plan.spot.shot
  const behind = plan.landmark !== null && found.focalLength !== null && found.landmark === null
  const landmark = found.landmark === null ? null : framingText(found.landmark, landmarkFill.axis)
  return (
    <Readings>
      <Reading
        name={answers.subjectFills(subjectName(plan.shoot.subject))}
        value={found.subject === null ? null : framingText(found.subject, subjectFill.axis)}
      />
      {plan.landmark === null ? null : (
        <Reading name={answers.subjectFills(landmarkName(plan.landmark))} value={behind ? answers.behind : landmark} />
      )}
      {found.proportion === null ? null : (
        <Reading name={answers.proportion} value={answers.times(rounded(found.proportion, 2))} />
      )}
      <Reading
        name={answers.angle}
        value={
          found.angleWide === null || found.angleHigh === null
            ? null
            : `${degreesText(found.angleWide)} × ${degreesText(found.angleHigh)}`
        }
      />
    </Readings>
  )
}

function LensChoice({ plan }: { plan: Plan }) {
  const { answers } = words
  const { shot } = plan.spot
  const { lenses } = plan.shoot.bag
  return (
    <div class="field-row">
      <Choice
        label={answers.lens.label}
        value={lenses.some((lens) => lens.id === shot.lensId) ? (shot.lensId ?? '') : ''}
        options={[['', answers.lens.auto] as const, ...lenses.map((lens) => [lens.id, lensName(lens)] as const)]}
        onChoose={(id) => void changeSpot(answers.edit.lens, setShot(plan, { lensId: id === '' ? null : id }))}
      />
    </div>
  )
}
