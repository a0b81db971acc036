/** The board: shelf on the left, map in the middle, the view through the lens and the answers on the right, the day along the foot. */
import { Answers } from '#renderer/panel/answers/answers.tsx'
import { DayStrip } from '#renderer/panel/day-strip/day-strip.tsx'
import { LensView } from '#renderer/view/lens-view/lens-view.tsx'
import { BoardMap } from '#renderer/view/map/board-map.tsx'
import { SpotDetails } from '#renderer/panel/spot/spot-details.tsx'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { Shelf } from '#renderer/panel/shelf/shelf.tsx'
import { beside } from '#renderer/state/session/navigation.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { words } from '#renderer/words/en.ts'
import { LazyPage } from '#renderer/part/lazy-page.tsx'

/** Another spot is another page of fields: no half-typed text goes over from one to the next. */
function BesideMap() {
  const open = plan.value
  return (
    <>
      <Answers />
      {open === null ? null : <SpotDetails key={open.spot.id} spot={open.spot} />}
    </>
  )
}

/** It scrolls by itself: the frame stays in sight. It takes the focus so that keys can scroll it. */
function Beside() {
  const scan = beside.value === 'scan'
  const name = scan ? scanWords.panel : words.board.answers
  return (
    <div
      key={beside.value}
      class={scan ? 'answers answers-scan' : 'answers'}
      tabIndex={0}
      role="group"
      aria-label={name}
    >
      {scan ? (
        <LazyPage
          within
          load={async () => (await import('#renderer/panel/scan/scan-panel.tsx')).ScanPanel}
          parts={{}}
        />
      ) : (
        <BesideMap />
      )}
    </div>
  )
}

export function Board() {
  return (
    <div class="board">
      <Shelf />
      <main class="board-middle">
        <h1 class="unseen">{words.board.program}</h1>
        <BoardMap />
      </main>
      <aside class="board-right" aria-label={words.board.answers}>
        <LensView />
        <Beside />
      </aside>
      <DayStrip />
    </div>
  )
}
