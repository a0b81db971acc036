/** The board: shelf on the left, map in the middle, the view through the lens and the answers on the right, the day along the foot. */
import { AnswerColumn } from '#renderer/part/answer-column.tsx'
import { Answers } from '#renderer/panel/answers/answers.tsx'
import { DayStrip } from '#renderer/panel/day-strip/day-strip.tsx'
import { LensView } from '#renderer/view/lens-view/lens-view.tsx'
import { BoardMap } from '#renderer/view/map/board-map.tsx'
import { SpotDetails } from '#renderer/panel/spot/spot-details.tsx'
import { answeredSpotId } from '#renderer/state/plan/calm-board.ts'
import { Guarded } from '#renderer/part/guarded.tsx'
import { Shelf } from '#renderer/panel/shelf/shelf.tsx'
import { picturePlace } from '#renderer/state/session/picture-place.ts'
import { stepsShown } from '#renderer/state/session/first-steps.ts'
import { beside } from '#renderer/state/session/navigation.ts'
import { notDrawnWords } from '#renderer/words/en-not-drawn.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { words } from '#renderer/words/en.ts'
import { LazyPage } from '#renderer/part/lazy-page.tsx'

const { parts } = notDrawnWords

/** Another spot is another page of fields: no half-typed text goes over from one to the next. */
function BesideMap() {
  const open = answeredSpotId.value
  return (
    <>
      <Answers />
      {open === null ? null : (
        <Guarded key={open} part={parts.beside}>
          <SpotDetails />
        </Guarded>
      )}
    </>
  )
}

/** The scan scrolls by itself: the frame stays in sight. It takes the focus so that keys can scroll it. */
function Beside() {
  if (beside.value === 'answers')
    return (
      <AnswerColumn key="answers" label={words.board.answers}>
        <Guarded part={parts.beside}>
          <BesideMap />
        </Guarded>
      </AnswerColumn>
    )
  return (
    <div key="scan" class="answers answers-scan" tabIndex={0} role="group" aria-label={scanWords.panel}>
      <Guarded part={parts.beside}>
        <LazyPage
          within
          load={async () => (await import('#renderer/panel/scan/scan-panel.tsx')).ScanPanel}
          parts={{}}
        />
      </Guarded>
    </div>
  )
}

/** Few starts lead to an empty shoot: the steps are fetched by one that does. */
function FirstStepsOfShoot() {
  if (stepsShown.value === null) return null
  return <LazyPage within load={async () => (await import('./first-steps.tsx')).FirstSteps} parts={{}} />
}

export function Board() {
  return (
    <div class={picturePlace.value === 'traded' ? 'board board-traded' : 'board'}>
      <Guarded part={parts.shelf}>
        <Shelf />
      </Guarded>
      <main class="board-middle">
        <h1 class="unseen">{words.board.program}</h1>
        <Guarded part={parts.map}>
          <BoardMap />
        </Guarded>
        <Guarded part={parts.map}>
          <FirstStepsOfShoot />
        </Guarded>
      </main>
      <aside class="board-right" aria-label={words.board.answers}>
        <Guarded part={parts.lensView}>
          <LensView />
        </Guarded>
        <Beside />
      </aside>
      <Guarded part={parts.dayStrip}>
        <DayStrip />
      </Guarded>
    </div>
  )
}
