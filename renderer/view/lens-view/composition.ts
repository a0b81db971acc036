/** The composition: where in the frame the subject's centre falls, changed by dragging, by keys, and by a typed aim. */
import { makeView, projectLocal } from '#core/frame/projection.ts'
import type { Placement } from '#core/frame/set-up.ts'
import { setShot } from '#core/plan/arrange.ts'
import { assess } from '#core/plan/assess.ts'
import { sceneOf } from '#core/plan/plan-scene.ts'
import type { Plan } from '#core/plan/plan.ts'
import { turnBetween } from '#core/units/angle.ts'

/** How far from the middle the subject's centre may be put: just out of the frame, so that it can be cut at an edge. */
export const FARTHEST_PLACEMENT = 0.75

function withinPlacement(value: number): number {
  const inside = Math.min(FARTHEST_PLACEMENT, Math.max(-FARTHEST_PLACEMENT, value))
  return inside === 0 ? 0 : inside
}

/** A placement moved by a share of the frame, right and up positive. */
export function composedBy(placement: Placement, right: number, up: number): Placement {
  return { across: withinPlacement(placement.across + right), up: withinPlacement(placement.up + up) }
}

/**
 * The placement after the pointer has moved by so many pixels in a frame of the given size. What is held by the pointer
 * stays under it: the subject's centre is imaged exactly where its placement says.
 */
export function draggedBy(
  placement: Placement,
  pixels: { readonly right: number; readonly down: number },
  frame: { readonly width: number; readonly height: number },
): Placement {
  return composedBy(placement, pixels.right / frame.width, -pixels.down / frame.height)
}

/** Shares of the frame by which a key moves the composition; null for other keys. */
export function keyStep(key: string, shift: boolean): readonly [right: number, up: number] | null {
  const step = shift ? 0.05 : 0.01
  if (key === 'ArrowLeft') return [-step, 0]
  if (key === 'ArrowRight') return [step, 0]
  if (key === 'ArrowUp') return [0, step]
  if (key === 'ArrowDown') return [0, -step]
  return null
}

const ROUNDS = 12
/** Degrees: a thousandth of what is shown. */
const CLOSE = 1e-4

/**
 * The placement that gives the axis a typed bearing and pitch. Focus, focal length and perhaps the standpoint follow the
 * aim and shift the image a little, so it is found in rounds through the very edit that will be made. Null when the
 * subject would then lie farther out than a placement may be.
 */
export function placementForAim(plan: Plan, aim: LensAim): Placement | null {
  let now = plan
  for (let round = 0; round < ROUNDS; round++) {
    const { view } = assess(now)
    if (view === null) return null
    if (
      round > 0 &&
      Math.abs(turnBetween(view.bearing, aim.bearing)) < CLOSE &&
      Math.abs(view.pitch - aim.pitch) < CLOSE
    )
      return now.spot.shot.placement
    const { centre } = sceneOf(now).scene
    const at = projectLocal(makeView({ ...view, bearing: aim.bearing, pitch: aim.pitch }), centre)
    if (at === null || Math.abs(at.x) > FARTHEST_PLACEMENT || Math.abs(at.y) > FARTHEST_PLACEMENT) return null
    now = { ...plan, spot: setShot(plan, { placement: { across: at.x, up: at.y } }) }
  }
  return null
}

export interface LensAim {
  readonly bearing: number
  readonly pitch: number
}
