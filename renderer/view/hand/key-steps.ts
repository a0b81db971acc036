/** Moving a thing by keys: each step is shown at once, a burst of them is saved as one edit. */
import { begin, beginSteps, settleSteps } from '#renderer/state/act/live-change.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { stoppingWords } from '#renderer/words/en-stopping.ts'
import { type Grip, type Moved, gripBroughtTo, gripPlace, readGrip, withoutCorner } from '#core/plan/grip.ts'
import { withoutDrawnPoint } from '#core/plan/drawn-grip.ts'
import { selectGrip } from './select.ts'
import { heldGrip, moveLabel, refuseGround } from '#renderer/state/act/held.ts'
import { type KeyStep, keyStepOf, gripStepped } from './step.ts'

/** Metres that an arrow moves a thing on the map and in the close plan, without Shift. */
export const KEY_STEP = { map: 1, close: 0.1 } as const

function labelOf(grip: Grip, step: KeyStep): string {
  return step.kind === 'turn' ? mapWords.turnSubject : moveLabel(grip)
}

function walk(grip: Grip, step: KeyStep): void {
  const steps = beginSteps(labelOf(grip, step), refuseGround)
  const now = plan.peek()
  if (steps === null || now === null) return
  const moved = gripStepped(now, grip, step)
  if (moved !== null) steps.show(moved)
}

/** Does one thing at once, as one edit. */
function change(label: string, moved: Moved): void {
  const change = begin(label, { refuse: refuseGround })
  change?.show(moved)
  void change?.keep()
}

/** Takes a corner of the landmark, or a point of drawn ground, away. */
function removePoint(grip: Grip): void {
  settleSteps()
  const now = plan.peek()
  if (now === null) return
  if ('sort' in grip) {
    const left = withoutDrawnPoint(now.shoot, grip)
    if ('needed' in left) tell('fault', stoppingWords.pointsFew[left.needed])
    else change(stoppingWords.edit.removePoint, { shoot: left.shoot, spot: now.spot })
    return
  }
  const moved = grip.on === 'corner' ? withoutCorner(now, grip.index) : null
  if (moved === null) tell('fault', mapWords.cornersFew)
  else change(mapWords.removeCorner, moved)
}

/** Makes the middle of an edge or leg a corner or point of its own. */
function addPoint(grip: Grip): void {
  settleSteps()
  const now = plan.peek()
  const at = now === null ? null : gripPlace(now, grip)
  if (now !== null && at !== null) change(moveLabel(grip), gripBroughtTo(now, grip, at))
}

function onPoint(grip: Grip): boolean {
  return grip.on === 'corner' || grip.on === 'drawn-point'
}

function onLeg(grip: Grip): boolean {
  return grip.on === 'edge' || grip.on === 'drawn-leg'
}

/** What a key does to the thing that has the focus; true when it was for it. */
function act(grip: Grip, event: KeyboardEvent, metres: number): boolean {
  if (event.key === 'Enter' || event.key === ' ') {
    if (onLeg(grip)) addPoint(grip)
    else selectGrip(grip)
    return true
  }
  if (onPoint(grip) && (event.key === 'Delete' || event.key === 'Backspace')) {
    removePoint(grip)
    return true
  }
  const step = keyStepOf(event, metres)
  if (step === null || onLeg(grip)) return false
  walk(grip, step)
  return true
}

/** Listens for keys on a plan's surface; `metres` is its step without Shift. Returns a function that removes the listeners. */
export function followKeys(surface: SVGSVGElement, metres: number): () => void {
  const gripOf = (event: Event): Grip | null => {
    const part = event.target instanceof Element ? event.target.closest('[data-grip]') : null
    return part === null ? null : readGrip(part.getAttribute('data-grip') ?? '')
  }
  const onKey = (event: KeyboardEvent): void => {
    const grip = gripOf(event)
    if (grip === null || heldGrip.peek() !== null || !act(grip, event, metres)) return
    event.preventDefault()
    event.stopPropagation()
  }
  const onFocus = (event: Event): void => {
    const grip = gripOf(event)
    if (grip !== null) selectGrip(grip)
  }
  const onDouble = (event: Event): void => {
    const grip = gripOf(event)
    if (grip === null) return
    event.stopPropagation()
    if (onPoint(grip)) removePoint(grip)
  }
  surface.addEventListener('keydown', onKey)
  surface.addEventListener('focusin', onFocus)
  surface.addEventListener('focusout', settleSteps)
  surface.addEventListener('dblclick', onDouble)
  return () => {
    settleSteps()
    surface.removeEventListener('keydown', onKey)
    surface.removeEventListener('focusin', onFocus)
    surface.removeEventListener('focusout', settleSteps)
    surface.removeEventListener('dblclick', onDouble)
  }
}
