/** The chosen instant in the hand: dragged by pointer or stepped by keys, shown while it moves, saved once as one edit. */
import type { Spot } from '#core/record/spot.ts'
import type { CivilDay } from '#core/time/civil.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { day } from '#renderer/state/plan/daylight.ts'
import { savedSpot } from '#renderer/state/library/library.ts'
import { giveUpWhen, keepWhen, showWhen } from '#renderer/state/act/planned-instant.ts'
import { instantAt, shareOf } from './time-axis.ts'

/** Milliseconds without a further step after which a burst of keys is saved. */
const PAUSE = 600
/** Pixels from the line within which a press takes it as it stands, without a jump. */
const NEAR = 7

let burst: { readonly start: Spot; timer: ReturnType<typeof setTimeout> } | null = null

/** Saves the steps taken so far. Called before anything else acts on the board. */
export function settleTime(): void {
  const now = burst
  if (now === null) return
  burst = null
  clearTimeout(now.timer)
  // A change from elsewhere has put its own state on the board.
  if (savedSpot.peek() === now.start) keepWhen()
}

/** Shows an instant that a key leads to; the burst it belongs to is saved when the keys rest. */
export function stepTime(instant: number): void {
  if (burst !== null && savedSpot.peek() !== burst.start) settleTime()
  const start = burst?.start ?? savedSpot.peek()
  if (start === null) return
  if (burst !== null) clearTimeout(burst.timer)
  burst = { start, timer: setTimeout(settleTime, PAUSE) }
  showWhen(instant)
}

/** A burst must not be overtaken by Undo or by a press elsewhere, nor lost with the page. */
export function followBursts(): () => void {
  const onOther = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.key === 'Tab' || event.key === 'Escape') settleTime()
  }
  window.addEventListener('keydown', onOther, true)
  window.addEventListener('pointerdown', settleTime, true)
  window.addEventListener('pagehide', settleTime)
  return () => {
    settleTime()
    window.removeEventListener('keydown', onOther, true)
    window.removeEventListener('pointerdown', settleTime, true)
    window.removeEventListener('pagehide', settleTime)
  }
}

interface Drag {
  readonly pointer: number
  readonly start: Spot
  /** The axis stays that of the day it began on. */
  readonly day: CivilDay
  readonly left: number
  readonly width: number
  /** From the pointer to the line, so that it doesn't jump under the finger. */
  readonly off: number
  x: number
  frame: number
}

function beginDrag(surface: HTMLElement, event: PointerEvent): Drag | null {
  const start = savedSpot.peek()
  const today = day.peek()
  const now = plan.peek()
  if (start === null || today === null || now === null) return null
  const { left, width } = surface.getBoundingClientRect()
  const line = left + shareOf(today, now.spot.when) * width
  const onLabel = event.target instanceof Element && event.target.closest('.time-label') !== null
  const off = onLabel || Math.abs(event.clientX - line) <= NEAR ? line - event.clientX : 0
  return { pointer: event.pointerId, start, day: today, left, width, off, x: event.clientX, frame: 0 }
}

/** Listens for presses and drags on the strip; answers with what takes the listeners away. */
export function followTimeDrag(surface: HTMLElement, onTaken: () => void): () => void {
  let drag: Drag | null = null

  function apply(now: Drag): void {
    if (savedSpot.peek() !== now.start) return letGo()
    const x = now.x + now.off
    showWhen(instantAt(now.day, (x - now.left) / now.width))
  }

  function letGo(): void {
    if (drag === null) return
    cancelAnimationFrame(drag.frame)
    drag = null
    document.removeEventListener('keydown', onKey, true)
  }

  function abandon(): void {
    const now = drag
    letGo()
    if (now !== null && savedSpot.peek() === now.start) giveUpWhen()
  }

  function onDown(event: PointerEvent): void {
    if (event.button !== 0 || drag !== null) return
    if (event.target instanceof Element && event.target.closest('button') !== null) return
    drag = beginDrag(surface, event)
    // A press beyond the axis is for the bars' scroll bar.
    if (drag === null || event.clientX > drag.left + drag.width) return letGo()
    event.preventDefault()
    surface.setPointerCapture(event.pointerId)
    document.addEventListener('keydown', onKey, true)
    onTaken()
    if (drag.off === 0) apply(drag)
  }

  function onMove(event: PointerEvent): void {
    const now = drag
    if (now === null || event.pointerId !== now.pointer || event.clientX === now.x) return
    now.x = event.clientX
    if (now.frame !== 0) return
    now.frame = requestAnimationFrame(() => {
      now.frame = 0
      if (drag === now) apply(now)
    })
  }

  function onUp(event: PointerEvent): void {
    const now = drag
    if (now === null || event.pointerId !== now.pointer) return
    // What the last frame has not shown yet.
    if (now.frame !== 0) apply(now)
    if (drag !== now) return
    letGo()
    keepWhen()
  }

  function onCancel(event: PointerEvent): void {
    if (drag !== null && event.pointerId === drag.pointer) abandon()
  }

  function onKey(event: KeyboardEvent): void {
    // No other key may change the board under the hand that holds it.
    event.preventDefault()
    event.stopPropagation()
    if (event.key === 'Escape') abandon()
  }

  surface.addEventListener('pointerdown', onDown)
  surface.addEventListener('pointermove', onMove)
  surface.addEventListener('pointerup', onUp)
  surface.addEventListener('pointercancel', onCancel)
  return () => {
    abandon()
    surface.removeEventListener('pointerdown', onDown)
    surface.removeEventListener('pointermove', onMove)
    surface.removeEventListener('pointerup', onUp)
    surface.removeEventListener('pointercancel', onCancel)
  }
}
