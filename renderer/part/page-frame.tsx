/** The frame of the pages that take the board's place: a title, the way back, the content in the middle. */
import { backToBoard } from '#renderer/state/session/navigation.ts'
import type { ComponentChildren } from 'preact'
import { words } from '#renderer/words/en.ts'

export function PageFrame({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <main class="page">
      <div class="page-head">
        <h1>{title}</h1>
        <button
          type="button"
          class="button"
          onClick={() => {
            backToBoard()
          }}
        >
          {words.board.back}
        </button>
      </div>
      {children}
    </main>
  )
}
