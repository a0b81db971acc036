/** The skyline before which sun and moon stand at a landmark: that of the lens, but a summit that is looked at is no hill in the way. */
import { maximaOf } from '#core/ground/block-maxima.ts'
import { type ElevationGrid, type GridPoint, gridPoint } from '#core/ground/elevation-grid.ts'
import { holdsPoint, mapRings, ringsOf } from '#core/ground/rings.ts'
import type { LightSkyline, PlanSkylines } from '#core/light/light-scene.ts'
import type { Landmark, Summit } from '#core/scene/landmark.ts'
import { keptWith } from '#core/kept-with.ts'
import { type Plan, levelsOf } from './plan.ts'
import { skyEyes, skylineFrom } from './plan-skylines.ts'

/** The ground without that of which the landmark itself consists: a summit is in the elevations, other landmarks stand on them. */
export function groundWithout(landmark: Landmark | null, grid: ElevationGrid): ElevationGrid {
  if (landmark?.kind !== 'summit') return grid
  return withoutSummit(grid, landmark)
}

const withoutSummit = keptWith((grid: ElevationGrid, { at, width }: Summit) => {
  const [middle, radius] = [gridPoint(grid, at), width / 2]
  return mapRings(grid, (ring) => (isOverlaid(grid, ring, middle, radius) ? ring : lowered(ring, middle, radius)))
})

/** Whether finer cells lie over a circle and all cells that touch it: then nothing of this ring is read there, and no copy is needed. */
function isOverlaid(grid: ElevationGrid, ring: ElevationGrid, middle: GridPoint, radius: number): boolean {
  const side = radius + ring.cell
  const corners = [-side, side].map((aside) => ({ east: middle.east + aside, north: middle.north + aside }))
  const rings = ringsOf(grid)
  return rings.slice(0, rings.indexOf(ring)).some((finer) => corners.every((corner) => holdsPoint(finer, corner)))
}

/** Cells within a circle at the lowest level that anything there could have: no hill, yet nothing unknown. The same ring where none lies in it. */
function lowered(ring: ElevationGrid, middle: GridPoint, radius: number): ElevationGrid {
  const rows = [ring.north - middle.north - radius, ring.north - middle.north + radius].map((at) => at / ring.cell)
  const columns = [middle.east - ring.west - radius, middle.east - ring.west + radius].map((at) => at / ring.cell)
  const within = ([low = 0, high = 0]: readonly number[], count: number): readonly [number, number] => [
    Math.max(0, Math.ceil(low)),
    Math.min(count - 1, Math.floor(high)),
  ]
  const [top, bottom] = within(rows, ring.rows)
  const [left, right] = within(columns, ring.columns)
  if (bottom < top || right < left) return ring
  const heights = ring.heights.slice()
  const lowest = Math.min(0, maximaOf(ring).bottom)
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      const away = Math.hypot(ring.west + column * ring.cell - middle.east, ring.north - row * ring.cell - middle.north)
      if (away <= radius) heights[row * ring.columns + column] = lowest
    }
  }
  return { ...ring, heights }
}

/** `skylines` are those of the plan at hand. Null where no ground is known around the lens. */
export function alignmentSkyline(plan: Plan, skylines: PlanSkylines): LightSkyline | null {
  const { landmark, terrain, shoot } = plan
  if (landmark?.kind !== 'summit' || terrain === null || skylines.lens === null) return skylines.lens
  const eye = skyEyes(plan, levelsOf(plan), terrain).lens
  return skylineFrom(groundWithout(landmark, terrain), eye, shoot.refraction, shoot.obstructions)
}
