/** The composition follows pointer, keys and typed aims. */
import { describe, expect, test } from 'vitest'
import { projectLocal } from '#core/frame/projection.ts'
import { setShot } from '#core/plan/arrange.ts'
import { assess } from '#core/plan/assess.ts'
import { sceneOf } from '#core/plan/plan-scene.ts'
import type { Plan } from '#core/plan/plan.ts'
import { HOLDS } from '#core/record/spot.ts'
import { turnBetween } from '#core/units/angle.ts'
import {
  FARTHEST_PLACEMENT,
  draggedBy,
  keyStep,
  composedBy,
  placementForAim,
} from '#renderer/view/lens-view/composition.ts'
import { examplePlan } from '#test/help/plans.ts'

function centreInPixels(plan: Plan, width: number): { x: number; y: number } {
  const { view } = assess(plan)
  if (view === null) throw new Error('framed')
  const at = projectLocal(view, sceneOf(plan).scene.centre)
  if (at === null) throw new Error('before the lens')
  const height = (width * view.frameHeight) / view.frameWidth
  return { x: width * (0.5 + at.x), y: height * (0.5 - at.y) }
}

describe('a drag', () => {
  test('carries the subject along with the pointer, pixel by pixel', () => {
    for (const orientation of ['lying', 'upright'] as const) {
      const plan = examplePlan({ turned: 60, shot: { orientation } })
      const width = 376
      const height = orientation === 'lying' ? (width * 2) / 3 : (width * 3) / 2
      const before = centreInPixels(plan, width)
      const placement = draggedBy(plan.spot.shot.placement, { right: 41, down: -23 }, { width, height })
      const after = centreInPixels({ ...plan, spot: setShot(plan, { placement }) }, width)
      expect(after.x - before.x).toBeCloseTo(41, 6)
      expect(after.y - before.y).toBeCloseTo(-23, 6)
    }
  })

  test('stops a little beyond the edge', () => {
    expect(composedBy({ across: 0.6, up: -0.6 }, 3, -3)).toEqual({
      across: FARTHEST_PLACEMENT,
      up: -FARTHEST_PLACEMENT,
    })
  })
})

test('arrow keys step by a hundredth, with Shift by five', () => {
  expect(keyStep('ArrowLeft', false)).toEqual([-0.01, 0])
  expect(keyStep('ArrowUp', true)).toEqual([0, 0.05])
  expect(keyStep('Enter', false)).toBeNull()
})

describe('a typed aim', () => {
  test.each(HOLDS)('becomes the placement that has exactly this aim, holding the %s', (hold) => {
    const plan = examplePlan({ turned: 35, spot: { hold } })
    const { view } = assess(plan)
    if (view === null) throw new Error('framed')
    const aim = { bearing: view.bearing + 4.3, pitch: view.pitch - 3.1 }
    const placement = placementForAim(plan, aim)
    if (placement === null) throw new Error('it can be')
    const after = assess({ ...plan, spot: setShot(plan, { placement }) }).view
    expect(turnBetween(aim.bearing, after?.bearing ?? 0)).toBeCloseTo(0, 3)
    expect(after?.pitch).toBeCloseTo(aim.pitch, 3)
  })

  test('that leaves the subject out of the frame is refused', () => {
    const plan = examplePlan()
    const { view } = assess(plan)
    if (view === null) throw new Error('framed')
    expect(placementForAim(plan, { bearing: view.bearing + 90, pitch: 0 })).toBeNull()
    expect(placementForAim(plan, { bearing: view.bearing + 180, pitch: 0 })).toBeNull()
  })
})
