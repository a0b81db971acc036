/** The way to the light conditions on the board from wherever they are read. */
import { backToBoard, putBeside } from '#renderer/state/session/navigation.ts'
import { openAnswer } from '#renderer/state/session/open-answers.ts'

/** Frames that the board is given to be drawn, and then its fold. */
const PATIENCE = 120

/** Goes to the board, opens the answer, unfolds the conditions there and puts the focus on the first, as soon as each is drawn. */
export function toWishes(): void {
  backToBoard()
  putBeside('answers')
  openAnswer('light')
  const look = (frames: number): void => {
    const fold = document.querySelector<HTMLDetailsElement>('.wishes-fold > details')
    const select = fold?.querySelector<HTMLElement>('select') ?? null
    if (fold !== null && select !== null) {
      fold.scrollIntoView({ block: 'start' })
      select.focus({ preventScroll: true })
      return
    }
    if (fold !== null) fold.open = true
    if (frames > 0) requestAnimationFrame(() => look(frames - 1))
  }
  requestAnimationFrame(() => look(PATIENCE))
}
