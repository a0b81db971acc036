/** The answers on the right, each a line under its question. */
import { Guarded } from '#renderer/part/guarded.tsx'
import { type BoardAnswer, AnswerLine } from '#renderer/part/answer-line.tsx'
import { boardTolerances } from '#renderer/state/plan/board-tolerances.ts'
import { daylight } from '#renderer/state/plan/daylight.ts'
import { answeredSpotId, calmGroundLine } from '#renderer/state/plan/calm-board.ts'
import { boardGround } from '#renderer/state/plan/terrain.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { settings } from '#renderer/state/library/settings.ts'
import {
  groundGlance,
  lensGlance,
  lightGlance,
  marginGlance,
  sharpGlance,
  whereGlance,
} from '#renderer/text/glance-text.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { notDrawnWords } from '#renderer/words/en-not-drawn.ts'
import { toleranceWords } from '#renderer/words/en-tolerance.ts'
import { words } from '#renderer/words/en.ts'
import { DoesGround } from './does-ground.tsx'
import { HowFarOff } from './tolerances.tsx'
import { HowSharp } from './how-sharp.tsx'
import { WhenLight } from './when-light.tsx'
import { WhereExactly } from './where-exactly.tsx'
import { WhichLens } from './which-lens.tsx'

const part = notDrawnWords.parts.answer

/** Made once, so that a part is drawn again only by what it reads. What moves with the hand is read in here, so that it rests with its part. */
const ANSWERS: readonly BoardAnswer[] = [
  {
    id: 'lens',
    title: words.answers.whichLens,
    glance: (plan, found) => lensGlance(plan, found),
    show: (plan, found) => <WhichLens plan={plan} found={found} />,
  },
  {
    id: 'sharp',
    title: words.answers.howSharp,
    glance: (_, found) => sharpGlance(found, settings.value.units),
    show: (plan, found) => <HowSharp plan={plan} found={found} />,
  },
  {
    id: 'light',
    title: lightWords.question,
    glance: (plan, found) => lightGlance(plan, found, daylight.value, zone.value),
    show: (plan, found) => <WhenLight plan={plan} found={found} today={daylight.value} />,
  },
  {
    id: 'ground',
    title: groundWords.question,
    glance: (plan, found) => groundGlance(plan, found, boardGround.value.settled, settings.value.units),
    show: (plan, found) => <DoesGround plan={plan} found={found} line={calmGroundLine.value} today={daylight.value} />,
  },
  {
    id: 'margin',
    title: toleranceWords.question,
    glance: () => marginGlance(boardTolerances.value?.found, settings.value.units),
    show: () => <HowFarOff />,
  },
  {
    id: 'where',
    title: words.answers.where.title,
    glance: (plan, found) => whereGlance(plan, found, settings.value.units),
    show: (plan, found) => <WhereExactly plan={plan} found={found} />,
  },
]

export function Answers() {
  const spotId = answeredSpotId.value
  if (spotId === null) return <p class="empty-note">{words.answers.nothingYet}</p>
  return (
    <>
      {ANSWERS.map((answer) => (
        <Guarded key={`${spotId} ${answer.id}`} part={part}>
          <AnswerLine answer={answer} />
        </Guarded>
      ))}
    </>
  )
}
