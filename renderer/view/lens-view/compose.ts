/** Edits of the composition: live while the pointer or a key is down, one saved edit when it is let go. */
import { type Placement } from '#core/frame/set-up.ts'
import { setShot } from '#core/plan/arrange.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { boardPins } from '#renderer/state/plan/pin-heights.ts'
import { terrain } from '#renderer/state/plan/terrain.ts'
import { changeSpot } from '#renderer/state/library/history.ts'
import { type LiveChange, begin } from '#renderer/state/act/live-change.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { draggedBy, keyStep, composedBy } from './composition.ts'

/** What is being moved in the frame, until it is saved or given up. */
let change: LiveChange | null = null

function take(): LiveChange | null {
  if (change?.lasts() !== true) {
    change = begin(lensViewWords.moveComposition, { onEnd: () => (change = null) })
  }
  return change
}

function show(moving: LiveChange | null, from: Plan, placement: Placement): void {
  moving?.show({ shoot: moving.start.shoot, spot: setShot(from, { placement }) })
}

/** Saves what is being shown as one edit. */
export function letGo(): void {
  void change?.keep()
}

export function giveUp(): void {
  change?.giveUp()
}

/** A drag in the frame, by where the pointer came down. */
export interface FrameDrag {
  readonly x: number
  readonly y: number
  /** Null until it has moved; settled from elsewhere it is over, whatever the pointer does. */
  change: LiveChange | null
}

/** Pixels the pointer may tremble before a press becomes a drag. */
const TREMBLE = 3

export function dragTo(drag: FrameDrag, x: number, y: number, frame: { width: number; height: number }): void {
  const pixels = { right: x - drag.x, down: y - drag.y }
  if (drag.change === null && Math.hypot(pixels.right, pixels.down) < TREMBLE) return
  drag.change ??= take()
  if (drag.change === null) return
  const { start } = drag.change
  const from = planOf(start.shoot, start.spot, terrain.peek(), boardPins.peek())
  show(drag.change, from, draggedBy(start.spot.shot.placement, pixels, frame))
}

/** Moves the composition by a key; false when the key means nothing here. */
export function keyDown(key: string, shift: boolean): boolean {
  const now = plan.value
  if (now === null) return false
  if (key === '0') {
    centre()
    return true
  }
  const step = keyStep(key, shift)
  if (step === null) return false
  show(take(), now, composedBy(now.spot.shot.placement, step[0], step[1]))
  return true
}

export function centre(): void {
  place({ across: 0, up: 0 }, lensViewWords.centreSubject)
}

/** Puts the subject's centre at a place and saves. */
export function place(placement: Placement, label: string): void {
  const now = plan.value
  if (now === null) return
  giveUp()
  void changeSpot(label, setShot(now, { placement }))
}

export function turnCamera(orientation: 'lying' | 'upright'): void {
  const now = plan.value
  if (now === null || now.spot.shot.orientation === orientation) return
  void changeSpot(lensViewWords.turnCamera, setShot(now, { orientation }))
}
