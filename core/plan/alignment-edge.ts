/** The skyline before which sun and moon stand at a landmark: that of the lens, but a summit that is looked at is no hill in the way. */
import { type ElevationGrid, gridPoint } from '#core/ground/elevation-grid.ts'
import type { SkyEdge, StagedSkylines } from '#core/light/light-stage.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { type Plan, levelsOf } from './plan.ts'
import { skyEyes, skylineFrom } from './sky-edges.ts'

const withoutBefore = new WeakMap<
  ElevationGrid,
  { readonly landmark: Landmark | null; readonly without: ElevationGrid }
>()

/** The ground without that of which the landmark itself consists: a summit is in the elevations, other landmarks stand on them. */
export function groundWithout(landmark: Landmark | null, grid: ElevationGrid): ElevationGrid {
  if (landmark?.kind !== 'summit') return grid
  const before = withoutBefore.get(grid)
  if (before?.landmark === landmark) return before.without
  const heights = grid.heights.slice()
  const middle = gridPoint(grid, landmark.at)
  const radius = landmark.width / 2
  const rows = [grid.north - middle.north - radius, grid.north - middle.north + radius].map((at) => at / grid.cell)
  const columns = [middle.east - grid.west - radius, middle.east - grid.west + radius].map((at) => at / grid.cell)
  const within = ([low = 0, high = 0]: readonly number[], count: number): readonly [number, number] => [
    Math.max(0, Math.ceil(low)),
    Math.min(count - 1, Math.floor(high)),
  ]
  const [top, bottom] = within(rows, grid.rows)
  const [left, right] = within(columns, grid.columns)
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      const away = Math.hypot(grid.west + column * grid.cell - middle.east, grid.north - row * grid.cell - middle.north)
      if (away <= radius) heights[row * grid.columns + column] = Number.NaN
    }
  }
  const without = { ...grid, heights }
  withoutBefore.set(grid, { landmark, without })
  return without
}

/** `skylines` are those of the plan at hand. Null where no ground is known around the lens. */
export function alignmentEdge(plan: Plan, skylines: StagedSkylines): SkyEdge | null {
  const { landmark, terrain, shoot } = plan
  if (landmark?.kind !== 'summit' || terrain === null || skylines.lens === null) return skylines.lens
  const eye = skyEyes(plan, levelsOf(plan), terrain).lens
  return skylineFrom(groundWithout(landmark, terrain), eye, shoot.refraction, shoot.screens)
}
