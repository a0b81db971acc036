/** The answers on the right, each under its question. */
import { Guarded } from '#renderer/part/guarded.tsx'
import { calmAssessment, calmPlan } from '#renderer/state/plan/calm-board.ts'
import { notDrawnWords } from '#renderer/words/en-not-drawn.ts'
import { words } from '#renderer/words/en.ts'
import { DoesGround } from './does-ground.tsx'
import { HowFarOff } from './tolerances.tsx'
import { HowSharp } from './how-sharp.tsx'
import { WhenLight } from './when-light.tsx'
import { WhereExactly } from './where-exactly.tsx'
import { WhichLens } from './which-lens.tsx'

const part = notDrawnWords.parts.answer

export function Answers() {
  const now = calmPlan.value
  const found = calmAssessment.value
  if (now === null || found === null) return <p class="empty-note">{words.answers.nothingYet}</p>
  // Another spot is another page of fields: no half-typed text goes over from one to the next.
  return (
    <div key={now.spot.id}>
      <Guarded part={part}>
        <WhichLens plan={now} found={found} />
      </Guarded>
      <Guarded part={part}>
        <HowSharp plan={now} found={found} />
      </Guarded>
      <Guarded part={part}>
        <WhenLight plan={now} found={found} />
      </Guarded>
      <Guarded part={part}>
        <DoesGround plan={now} found={found} />
      </Guarded>
      <Guarded part={part}>
        <HowFarOff />
      </Guarded>
      <Guarded part={part}>
        <WhereExactly plan={now} found={found} />
      </Guarded>
    </div>
  )
}
