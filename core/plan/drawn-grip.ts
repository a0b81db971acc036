/** Taking hold of the points of drawn ground: where they are, and what the shoot becomes when one is brought elsewhere, added or taken away. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import {
  type Drawn,
  type DrawnSort,
  type ShapeFault,
  drawnOf,
  legMiddle,
  shapeFault,
  withDrawnPoints,
  withPointOn,
  withoutPoint,
} from '#core/record/drawn-ground.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { DrawnForm } from '#core/record/stopping-ground.ts'

/** A point of drawn ground, or the middle of one of its legs: taking that makes a new point after the one of its number. */
export interface DrawnGrip {
  readonly on: 'drawn-point' | 'drawn-leg'
  readonly sort: DrawnSort
  /** Which of its sort, and which point or leg of it. */
  readonly index: number
  readonly at: number
}

function drawnTaken(shoot: Shoot, grip: DrawnGrip): Drawn | null {
  return drawnOf(shoot, grip.sort)[grip.index] ?? null
}

export function drawnGripPlace(shoot: Shoot, grip: DrawnGrip): LatLon | null {
  const drawn = drawnTaken(shoot, grip)
  if (drawn === null) return null
  return grip.on === 'drawn-leg' ? legMiddle(drawn, grip.at) : (drawn.points[grip.at] ?? null)
}

export function withDrawnGripAt(shoot: Shoot, grip: DrawnGrip, at: LatLon): Shoot {
  const drawn = drawnTaken(shoot, grip)
  if (drawn === null || drawn.points[grip.at] === undefined) return shoot
  const points = grip.on === 'drawn-leg' ? withPointOn(drawn.points, grip.at, at) : drawn.points.with(grip.at, at)
  return withDrawnPoints(shoot, grip.sort, drawn.id, points)
}

/** The shoot without that point; when the shape needs it, the form that does. */
export function withoutDrawnPoint(
  shoot: Shoot,
  grip: DrawnGrip,
): { readonly shoot: Shoot } | { readonly needed: DrawnForm } {
  const drawn = drawnTaken(shoot, grip)
  const points = drawn === null ? null : withoutPoint(drawn, grip.at)
  if (drawn === null || points === null) return { needed: drawn?.form ?? 'line' }
  return { shoot: withDrawnPoints(shoot, grip.sort, drawn.id, points) }
}

/** What is wrong with drawn ground as a hand has left it. */
export interface DrawnFault {
  readonly fault: ShapeFault
  readonly form: DrawnForm
}

/** Why drawn ground can't be kept as a hand has left it; null when all that changed can. */
export function drawnFault(before: Shoot, after: Shoot): DrawnFault | null {
  for (const sort of ['stopping', 'keep-out'] as const) {
    const known = new Set(drawnOf(before, sort))
    for (const drawn of drawnOf(after, sort)) {
      const fault = known.has(drawn) ? null : shapeFault(drawn)
      if (fault !== null) return { fault, form: drawn.form }
    }
  }
  return null
}
