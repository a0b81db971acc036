/** The way to the light conditions on the board from wherever they are read. */
import { backToBoard, putBeside } from '#renderer/state/session/navigation.ts'
import { openAnswer } from '#renderer/state/session/open-answers.ts'
import { whenDrawn } from '#renderer/state/session/when-drawn.ts'

/** Goes to the board, opens the answer, unfolds the conditions there and puts the focus on the first, as soon as each is drawn. */
export function toWishes(): void {
  backToBoard()
  putBeside('answers')
  openAnswer('light')
  whenDrawn('.wishes-fold > details', (fold) => {
    if (fold instanceof HTMLDetailsElement) fold.open = true
    whenDrawn('.wishes-fold select', (first) => {
      fold.scrollIntoView({ block: 'start' })
      first.focus({ preventScroll: true })
    })
  })
}
