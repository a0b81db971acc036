/** The chosen instant in the hand: dragged by pointer or stepped by keys, shown while it moves, saved once as one edit. */
import type { CivilDay } from '#core/time/civil.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { day } from '#renderer/state/plan/daylight.ts'
import { type LiveChange, begin, beginSteps } from '#renderer/state/act/live-change.ts'
import { atInstant } from '#renderer/state/act/planned-instant.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { keysWhileHeld } from '#renderer/view/hand/keys-while-held.ts'
import { instantAt, shareOf } from './time-axis.ts'

/** Pixels from the line within which a press takes it as it stands, without a jump. */
const NEAR = 7

/** Shows an instant that a key leads to; the steps it belongs to are saved when the keys rest. */
export function stepTime(instant: number): void {
  const steps = beginSteps(lightWords.edit.when)
  steps?.show(atInstant(steps.start, instant))
}

interface Drag {
  readonly pointer: number
  readonly change: LiveChange
  /** The axis stays that of the day it began on. */
  readonly day: CivilDay
  readonly left: number
  readonly width: number
  /** From the pointer to the line, so that it doesn't jump under the finger. */
  readonly off: number
  x: number
  frame: number
}

function beginDrag(surface: HTMLElement, event: PointerEvent, onEnd: () => void): Drag | null {
  const today = day.peek()
  const now = plan.peek()
  if (today === null || now === null) return null
  const { left, width } = surface.getBoundingClientRect()
  const line = left + shareOf(today, now.spot.when) * width
  const onLabel = event.target instanceof Element && event.target.closest('.time-label') !== null
  // A press beyond the axis is for the bars' scroll bar.
  if (event.clientX > left + width) return null
  const change = begin(lightWords.edit.when, { onEnd })
  if (change === null) return null
  const off = onLabel || Math.abs(event.clientX - line) <= NEAR ? line - event.clientX : 0
  return { pointer: event.pointerId, change, day: today, left, width, off, x: event.clientX, frame: 0 }
}

/** Listens for presses and drags on the strip. Returns a function that removes the listeners. */
export function followTimeDrag(surface: HTMLElement, onTaken: () => void): () => void {
  let drag: Drag | null = null
  const keys = keysWhileHeld(abandon)

  function apply(now: Drag): void {
    if (!now.change.lasts()) return now.change.giveUp()
    const x = now.x + now.off
    now.change.show(atInstant(now.change.start, instantAt(now.day, (x - now.left) / now.width)))
  }

  function letGo(): void {
    if (drag === null) return
    cancelAnimationFrame(drag.frame)
    drag = null
    keys.end()
  }

  function abandon(): void {
    drag?.change.giveUp()
  }

  function onDown(event: PointerEvent): void {
    if (event.button !== 0 || drag !== null) return
    if (event.target instanceof Element && event.target.closest('button') !== null) return
    drag = beginDrag(surface, event, letGo)
    if (drag === null) return
    event.preventDefault()
    surface.setPointerCapture(event.pointerId)
    keys.begin()
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
    void now.change.keep()
  }

  function onCancel(event: PointerEvent): void {
    if (drag !== null && event.pointerId === drag.pointer) abandon()
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
