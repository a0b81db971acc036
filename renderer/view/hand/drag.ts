/** Dragging on a plan with mouse, pen or finger: shown once per frame while it lasts, saved once at its end, put back by Escape. */
import type { Plan } from '#core/plan/plan.ts'
import { planOf } from '#core/plan/plan.ts'
import { type LiveChange, begin } from '#renderer/state/act/live-change.ts'
import { boardPins } from '#renderer/state/plan/pin-heights.ts'
import { terrain } from '#renderer/state/plan/terrain.ts'
import { type Grip, gripBroughtTo, gripPlace, readGrip } from '#core/plan/grip.ts'
import { type PlanView, type Point, distanceBetween } from '#renderer/view/drawing/plan-view.ts'
import { keysWhileHeld } from './keys-while-held.ts'
import { selectGrip } from './select.ts'
import { moveLabel, refuseGround, letGripGo, holdGrip } from '#renderer/state/act/held.ts'

export interface DragSurface {
  readonly svg: SVGSVGElement
  readonly where: 'map' | 'close'
  readonly view: () => PlanView
  /** A pointer's place in the view's pixels. */
  readonly pointOf: (event: PointerEvent) => Point
}

/** Less than this, pixels, is a press, not a drag. */
const DRAG_FROM = 3

interface Drag {
  readonly grip: Grip
  readonly pointer: number
  readonly change: LiveChange
  readonly plan: Plan
  readonly down: Point
  /** From the window's pixels to the view's: read once, for reading it again after each change would lay the page out again. */
  readonly origin: Point
  /** From the pointer to the grip's own place, so that a thing doesn't jump under the finger. */
  readonly off: Point
  point: Point
  moving: boolean
  frame: number
}

function gripUnder(event: Event): Grip | null {
  const part = event.target instanceof Element ? event.target.closest('[data-grip]') : null
  return part === null ? null : readGrip(part.getAttribute('data-grip') ?? '')
}

function beginDrag(surface: DragSurface, event: PointerEvent, grip: Grip, onEnd: () => void): Drag | null {
  const change = begin(moveLabel(grip), { refuse: refuseGround, onEnd })
  if (change === null) return null
  const plan = planOf(change.start.shoot, change.start.spot, terrain.peek(), boardPins.peek())
  const place = gripPlace(plan, grip)
  if (place === null) {
    change.giveUp()
    return null
  }
  const down = surface.pointOf(event)
  const at = surface.view().toPoint(place)
  // The notch is turned toward the pointer itself.
  const off = grip.on === 'heading' ? { x: 0, y: 0 } : { x: at.x - down.x, y: at.y - down.y }
  return {
    grip,
    pointer: event.pointerId,
    change,
    plan,
    down,
    origin: { x: down.x - event.clientX, y: down.y - event.clientY },
    off,
    point: down,
    moving: false,
    frame: 0,
  }
}

/** What the map under the surface listens to by itself: it must not pan, zoom or take the focus when a thing is taken. */
const BELOW = ['mousedown', 'touchstart', 'click', 'contextmenu'] as const

function keepFromBelow(event: Event): void {
  if (gripUnder(event) !== null) event.stopPropagation()
}

/** Listens on a plan's surface. Returns a function that removes the listeners. */
export function followDrags(surface: DragSurface): () => void {
  const { svg } = surface
  let drag: Drag | null = null
  const keys = keysWhileHeld(abandon)

  function apply(now: Drag): void {
    if (!now.change.lasts()) return now.change.giveUp()
    const place = surface.view().toPlace({ x: now.point.x + now.off.x, y: now.point.y + now.off.y })
    now.change.show(gripBroughtTo(now.plan, now.grip, place))
  }

  function letGo(): void {
    if (drag === null) return
    cancelAnimationFrame(drag.frame)
    drag = null
    letGripGo()
    keys.end()
  }

  function abandon(): void {
    drag?.change.giveUp()
  }

  function onDown(event: PointerEvent): void {
    const grip = gripUnder(event)
    if (grip === null || event.button !== 0) return
    // The map below must neither pan nor take this for its own press.
    event.stopPropagation()
    if (drag !== null) return
    drag = beginDrag(surface, event, grip, letGo)
    if (drag === null) return
    svg.setPointerCapture(event.pointerId)
    keys.begin()
    selectGrip(grip)
  }

  function onMove(event: PointerEvent): void {
    const now = drag
    if (now === null || event.pointerId !== now.pointer) return
    now.point = { x: event.clientX + now.origin.x, y: event.clientY + now.origin.y }
    if (!now.moving) {
      if (distanceBetween(now.point, now.down) < DRAG_FROM) return
      now.moving = true
      holdGrip(now.grip, surface.where)
    }
    if (now.frame !== 0) return
    now.frame = requestAnimationFrame(() => {
      now.frame = 0
      if (drag === now) apply(now)
    })
  }

  function onUp(event: PointerEvent): void {
    const now = drag
    if (now === null || event.pointerId !== now.pointer) return
    event.stopPropagation()
    if (!now.moving) return now.change.giveUp()
    now.point = { x: event.clientX + now.origin.x, y: event.clientY + now.origin.y }
    apply(now)
    void now.change.keep()
  }

  function onCancel(event: PointerEvent): void {
    if (drag !== null && event.pointerId === drag.pointer) abandon()
  }

  for (const name of BELOW) svg.addEventListener(name, keepFromBelow)
  svg.addEventListener('pointerdown', onDown)
  svg.addEventListener('pointermove', onMove)
  svg.addEventListener('pointerup', onUp)
  svg.addEventListener('pointercancel', onCancel)
  return () => {
    abandon()
    for (const name of BELOW) svg.removeEventListener(name, keepFromBelow)
    svg.removeEventListener('pointerdown', onDown)
    svg.removeEventListener('pointermove', onMove)
    svg.removeEventListener('pointerup', onUp)
    svg.removeEventListener('pointercancel', onCancel)
  }
}
