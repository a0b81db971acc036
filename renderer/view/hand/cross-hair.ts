/** Pressing on the map by keys alone: arrows move the map under a cross-hair in its middle, Space presses there. */
import { type ReadonlySignal, effect, signal } from '@preact/signals'
import type { PlanView, Point } from '#renderer/view/drawing/plan-view.ts'

const crossHairOnSignal = signal(false)
/** True while a gesture is led by keys, until the pointer moves over the map again. */
export const crossHairOn: ReadonlySignal<boolean> = crossHairOnSignal

/** Pixels that an arrow key moves the map, without and with Shift. */
const STEP = 8
const LONG_STEP = 80

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
}

/** The cross-hair's place in a view's pixels. */
export function middleOf({ box }: PlanView): Point {
  return { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 }
}

export interface CrossHairSurface {
  readonly holder: HTMLElement
  readonly view: () => PlanView | null
  /** Moves the map by pixels to the right and down. */
  readonly panBy: (x: number, y: number) => void
}

export interface CrossHairWish {
  /** Read within an effect too: it must read signals. */
  readonly waits: () => boolean
  readonly press: (point: Point) => void
  readonly end: () => void
  readonly takeBack: () => void
  readonly giveUp: () => void
}

function typing(event: KeyboardEvent): boolean {
  return event.target instanceof HTMLElement && event.target.matches('input, textarea, select, [contenteditable]')
}

/** Gives the map the focus while the gesture waits, and back again afterwards. Returns a function that removes the listeners. */
export function followCrossHair(surface: CrossHairSurface, wish: CrossHairWish): () => void {
  const { holder } = surface
  let from: Element | null = null
  let waited = false

  const stopFocus = effect(() => {
    const waits = wish.waits()
    if (waits === waited) return
    waited = waits
    if (waits) {
      from = document.activeElement
      // A button worked by a key leaves its focus ring behind; then keys go on leading.
      crossHairOnSignal.value = from instanceof HTMLElement && from !== document.body && from.matches(':focus-visible')
      holder.focus({ preventScroll: true })
      return
    }
    crossHairOnSignal.value = false
    if (from instanceof HTMLElement && from.isConnected && onMapOrNowhere()) from.focus({ preventScroll: true })
    from = null
  })

  /** A note over the map that ended the gesture may be gone by now, and the focus with it. */
  function onMapOrNowhere(): boolean {
    const { activeElement } = document
    return activeElement === document.body || activeElement?.closest('.board-map') !== null
  }

  function act(event: KeyboardEvent): boolean {
    const arrow = ARROWS[event.key]
    if (arrow !== undefined) {
      crossHairOnSignal.value = true
      const step = event.shiftKey ? LONG_STEP : STEP
      surface.panBy(arrow[0] * step, arrow[1] * step)
      return true
    }
    if (event.key === ' ') {
      const view = surface.view()
      crossHairOnSignal.value = true
      if (view !== null) wish.press(middleOf(view))
      return true
    }
    if (event.key === 'Enter') wish.end()
    else if (event.key === 'Backspace' || event.key === 'Delete') wish.takeBack()
    else return false
    return true
  }

  function onKey(event: KeyboardEvent): void {
    if (!wish.waits() || event.ctrlKey || event.metaKey || event.altKey || typing(event)) return
    if (event.key === 'Escape') wish.giveUp()
    else {
      // Buttons beside the map have Space and Enter for themselves.
      const { target } = event
      const onMap = target === document.body || (target instanceof Node && holder.contains(target))
      if (!onMap || !act(event)) return
    }
    event.preventDefault()
    event.stopPropagation()
  }

  const onPointer = (event: PointerEvent): void => {
    // Moving the map by keys also sends a pointer's event when the pointer lies still over it.
    if (event.movementX !== 0 || event.movementY !== 0) crossHairOnSignal.value = false
  }

  document.addEventListener('keydown', onKey, true)
  holder.addEventListener('pointermove', onPointer)
  return () => {
    stopFocus()
    document.removeEventListener('keydown', onKey, true)
    holder.removeEventListener('pointermove', onPointer)
    crossHairOnSignal.value = false
  }
}
