/** The close plan as it stands: what it shows, its drawing and its light, computed once per change. */
import { computed } from '@preact/signals'
import type { Assessment } from '#core/plan/assess.ts'
import { turnBetween } from '#core/units/angle.ts'
import { closePlanSize, closePlanState } from '#renderer/state/session/close-plan-size.ts'
import { GRAB_SIZE, type PlanDrawing, drawPlan } from '#renderer/view/drawing/plan-drawing.ts'
import { sunNow } from '#renderer/view/drawing/light-drawing.ts'
import { type ThingsLight, thingsLight } from '#renderer/view/drawing/things-light.ts'
import { mapLook } from '#renderer/view/drawing/map-look.ts'
import { type PlanView, distanceBetween } from '#renderer/view/drawing/plan-view.ts'
import { heldGrip } from '#renderer/state/act/held.ts'
import { assessment, plan, ring } from '#renderer/state/plan/board-plan.ts'
import { steady } from '#renderer/job/steady.ts'
import { type CloseFrame, frameView, nextFrame } from './close-frame.ts'

/** The same while the map pans: what is drawn close by does not change with it. */
export const size = steady(() => {
  const box = mapLook.value?.box ?? { left: 0, top: 0, right: 1000, bottom: 800 }
  return closePlanSize(box.right - box.left, box.bottom - box.top)
})

export interface Close {
  readonly frame: CloseFrame
  readonly view: PlanView
  readonly drawing: PlanDrawing
  readonly reading: Assessment
  readonly light: ThingsLight
  /** Pixels from the subject's middle to the tip of the rays that show where the light comes from. */
  readonly raysGap: number
}

/** Degrees about the heading within which the rays keep clear of the handle by which the subject is turned. */
const HANDLE_WITHIN = 24

/** Clear of the body with its strokes, and of the handle where the light comes from ahead. */
export function raysGap({ subject }: PlanDrawing, azimuth: number): number {
  const ahead = Math.abs(turnBetween(subject.heading, azimuth)) < HANDLE_WITHIN
  return ahead ? distanceBetween(subject.at, subject.handle) + 12 : Math.max(subject.size / 2, GRAB_SIZE / 2) + 14
}

let frameBefore: { readonly frame: CloseFrame; readonly spotId: string; readonly width: number } | null = null

export const close = computed<Close | null>(() => {
  const now = plan.value
  const reading = assessment.value
  if (now === null || reading === null || closePlanState.value === 'folded') return null
  const room = size.value
  const same = frameBefore !== null && frameBefore.spotId === now.spot.id && frameBefore.width === room.width
  const before = same ? (frameBefore?.frame ?? null) : null
  // Under a hand that drags, the plan neither zooms nor shifts.
  const frame = heldGrip.value !== null && before !== null ? before : nextFrame(now, room, before)
  frameBefore = { frame, spotId: now.spot.id, width: room.width }
  const view = frameView(frame, room)
  const drawing = drawPlan(now, reading, ring.value, view, frame.across * 3)
  const light = thingsLight(now, reading, drawing, sunNow(now, reading), view, true)
  return { frame, view, reading, drawing, light, raysGap: raysGap(drawing, reading.light.sun.azimuth) }
})
