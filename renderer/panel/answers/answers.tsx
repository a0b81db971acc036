/** The answers on the right, each under its question. */
import type { ComponentChildren } from 'preact'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { Guarded } from '#renderer/part/guarded.tsx'
import { ReadPart } from '#renderer/part/read-part.tsx'
import { daylight } from '#renderer/state/plan/daylight.ts'
import { answeredSpotId, calmGroundLine } from '#renderer/state/plan/calm-board.ts'
import { notDrawnWords } from '#renderer/words/en-not-drawn.ts'
import { words } from '#renderer/words/en.ts'
import { DoesGround } from './does-ground.tsx'
import { HowFarOff } from './tolerances.tsx'
import { HowSharp } from './how-sharp.tsx'
import { WhenLight } from './when-light.tsx'
import { WhereExactly } from './where-exactly.tsx'
import { WhichLens } from './which-lens.tsx'

const part = notDrawnWords.parts.answer

/** Each shows its answer from plan and assessment; made once, so that a part is drawn again only by what it reads. */
const ANSWERS: readonly ((plan: Plan, found: Assessment) => ComponentChildren)[] = [
  (plan, found) => <WhichLens plan={plan} found={found} />,
  (plan, found) => <HowSharp plan={plan} found={found} />,
  // What moves with the hand is read here, so that it rests with its part: a part that read it by itself would not.
  (plan, found) => <WhenLight plan={plan} found={found} today={daylight.value} />,
  (plan, found) => <DoesGround plan={plan} found={found} line={calmGroundLine.value} today={daylight.value} />,
  () => <HowFarOff />,
  (plan, found) => <WhereExactly plan={plan} found={found} />,
]

export function Answers() {
  const spotId = answeredSpotId.value
  if (spotId === null) return <p class="empty-note">{words.answers.nothingYet}</p>
  // Another spot is another page of fields: no half-typed text goes over from one to the next.
  return (
    <div key={spotId}>
      {ANSWERS.map((show, index) => (
        <Guarded key={index} part={part}>
          <ReadPart show={show} />
        </Guarded>
      ))}
    </div>
  )
}
