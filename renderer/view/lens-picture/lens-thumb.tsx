/** A small still of a spot's frame for lists: made once for each state of the spot and its shoot. */
import { useMemo } from 'preact/hooks'
import { planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { assessmentOf, planAtHand } from '#renderer/state/plan/assessments.ts'
import { EmptyFrame, LensDrawing } from './lens-drawing.tsx'

interface LensThumbProps {
  readonly shoot: Shoot
  readonly spot: Spot
  /** CSS pixels of the thumb's longer side, lying or upright. */
  readonly width?: number
  /** The ground it is drawn over; left out, what is at hand around the spot. */
  readonly ground?: ElevationGrid | null
}

export function LensThumb({ shoot, spot, width = 66, ground }: LensThumbProps) {
  const own = planAtHand(shoot, spot)
  const { pins } = own
  const terrain = ground === undefined ? own.terrain : ground
  // The same drawing comes back while records and ground stay the same, and then nothing is compared or touched.
  return useMemo(() => {
    const plan = planOf(shoot, spot, terrain, pins)
    const assessment = assessmentOf(plan)
    const { sensorWidth, sensorHeight } = shoot.bag.camera
    const ratio = Math.min(sensorWidth, sensorHeight) / Math.max(sensorWidth, sensorHeight)
    const across = spot.shot.orientation === 'lying' ? width : width * ratio * ratio
    const Frame = assessment.view === null ? EmptyFrame : LensDrawing
    return (
      <span class="lens-thumb" style={{ width: `${width}px`, height: `${width * ratio}px` }}>
        <Frame plan={plan} assessment={assessment} width={across} decorative />
      </span>
    )
  }, [shoot, spot, terrain, pins, width])
}
