/** The landmark's solid: the shape of its kind inside its bounding points, and the frame in whose metres it is told. */
import { type LocalFrame, localFrame } from '#core/geo/local-frame.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import type { Solid } from '#core/scene/solid.ts'
import { buildingSolid } from './building.ts'
import { spanSolid } from './span.ts'
import { summitSolid } from './summit.ts'
import { uprightSolid } from './upright.ts'

export interface PlacedSolid {
  /** East, north and up at the landmark's first point, at its foot. */
  readonly frame: LocalFrame
  readonly solid: Solid
}

function shapeOf(landmark: Landmark, base: number): Solid {
  if (landmark.kind === 'upright') return uprightSolid(landmark)
  if (landmark.kind === 'summit') return summitSolid(landmark)
  if (landmark.kind === 'span') return spanSolid(landmark, base)
  return buildingSolid(landmark, base)
}

/** `base` is the foot's height in metres above the ellipsoid. Null for a landmark without points. */
export function landmarkSolid(landmark: Landmark, base: number): PlacedSolid | null {
  const [first] = landmarkPoints(landmark)
  if (first === undefined) return null
  return { frame: localFrame(first, base), solid: shapeOf(landmark, base) }
}
