/** Presses on the map for a gesture that waits for them: told from drags of the map, from double presses, and from presses on what lies over it. */
import type { PlanView, Point } from '#renderer/view/drawing/plan-view.ts'
import { readPresses } from './press.ts'

export interface PressSurface {
  readonly holder: HTMLElement
  readonly view: () => PlanView | null
  readonly pointOf: (event: PointerEvent) => Point
}

export interface PressWish {
  readonly waits: () => boolean
  /** A press has ended where it began. */
  readonly press: (point: Point) => void
  /** A second press follows so soon that both are one double press; the first has been told already. */
  readonly double: () => void
  /** The pointer is here, pressed or not; null when it has left the map. */
  readonly point?: (point: Point | null) => void
  /** True when the gesture takes double presses for itself, which otherwise bring the map nearer. */
  readonly keepsDouble?: boolean
}

/** Listens on the map's holder. Returns a function that removes the listeners. */
export function followPresses({ holder, pointOf }: PressSurface, wish: PressWish): () => void {
  const presses = readPresses()
  const idle = (event: PointerEvent): boolean => !wish.waits() || !event.isPrimary
  const onMap = (event: Event): boolean => event.target instanceof Element && event.target.closest('.map-over') === null

  function onDown(event: PointerEvent): void {
    if (idle(event) || event.button !== 0 || !onMap(event)) return
    if (presses.down(pointOf(event), event.timeStamp).kind === 'take-back') wish.double()
  }

  function onMove(event: PointerEvent): void {
    if (idle(event)) return
    presses.move(pointOf(event))
    wish.point?.(pointOf(event))
  }

  function onUp(event: PointerEvent): void {
    if (idle(event)) return
    const answer = presses.up(pointOf(event), event.timeStamp)
    if (answer.kind === 'place-soon') wish.press(answer.at)
  }

  const onCancel = (): void => presses.cancel()
  const onLeave = (): void => wish.point?.(null)

  // The first of two presses may have ended the gesture, so the flurry is remembered beyond it.
  let lastWaited = 0
  const onAnyDown = (event: PointerEvent): void => {
    if (wish.waits()) lastWaited = event.timeStamp
  }
  const onDouble = (event: MouseEvent): void => {
    if (wish.keepsDouble === true && event.timeStamp - lastWaited < DOUBLE_LASTS) event.stopPropagation()
  }

  holder.addEventListener('pointerdown', onAnyDown, true)
  holder.addEventListener('pointerdown', onDown, true)
  holder.addEventListener('pointermove', onMove, true)
  holder.addEventListener('pointerleave', onLeave)
  holder.addEventListener('dblclick', onDouble, true)
  window.addEventListener('pointerup', onUp, true)
  holder.addEventListener('pointercancel', onCancel, true)
  return () => {
    holder.removeEventListener('pointerdown', onAnyDown, true)
    holder.removeEventListener('pointerdown', onDown, true)
    holder.removeEventListener('pointermove', onMove, true)
    holder.removeEventListener('pointerleave', onLeave)
    holder.removeEventListener('dblclick', onDouble, true)
    window.removeEventListener('pointerup', onUp, true)
    holder.removeEventListener('pointercancel', onCancel, true)
  }
}

/** Milliseconds from a press to the end of the double press that it belongs to, at the slowest. */
const DOUBLE_LASTS = 800
