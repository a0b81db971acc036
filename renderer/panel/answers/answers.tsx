/** The answers on the right, each under its question. */
import { assessment, plan } from '#renderer/state/plan/board-plan.ts'
import { words } from '#renderer/words/en.ts'
import { DoesGround } from './does-ground.tsx'
import { HowFarOff } from './how-far-off.tsx'
import { HowSharp } from './how-sharp.tsx'
import { WhenLight } from './when-light.tsx'
import { WhereExactly } from './where-exactly.tsx'
import { WhichLens } from './which-lens.tsx'

export function Answers() {
  const now = plan.value
  const found = assessment.value
  if (now === null || found === null) return <p class="empty-note">{words.answers.nothingYet}</p>
  // Another spot is another page of fields: no half-typed text goes over from one to the next.
  return (
    <div key={now.spot.id}>
      <WhichLens plan={now} found={found} />
      <HowSharp plan={now} found={found} />
      <WhenLight plan={now} found={found} />
      <DoesGround plan={now} found={found} />
      <HowFarOff />
      <WhereExactly plan={now} found={found} />
    </div>
  )
}
