/** The board: shelf on the left, map in the middle, the view through the lens and the answers on the right, the day along the foot. */
import { Answers } from '#renderer/answers/answers.tsx'
import { DayStrip } from '#renderer/day-strip/day-strip.tsx'
import { LensView } from '#renderer/lens-view/lens-view.tsx'
import { BoardMap } from '#renderer/map/board-map.tsx'
import { Shelf } from '#renderer/shelf/shelf.tsx'
import { words } from '#renderer/words/en.ts'

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
        {/* The answers scroll by themselves: the frame stays in sight. They take the focus so that keys can scroll them. */}
        <div class="answers" tabIndex={0} role="group" aria-label={words.board.answers}>
          <Answers />
        </div>
      </aside>
      <DayStrip />
    </div>
  )
}
