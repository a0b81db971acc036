/** Where along a line of standpoints the ground hides the body: seen from each place as high above its ground as the lens is. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { elevationAt, gridPoint } from '#core/ground/elevation-grid.ts'
import { type Body, bodyAt } from '#core/light/body.ts'
import { behindGround } from '#core/light/over-skyline.ts'
import { groundWithout } from './alignment-skyline.ts'
import type { Plan } from './plan.ts'
import { skylineToward } from './plan-skylines.ts'

/** Whether the ground, or an obstruction on it, hides all of the body from each place; null where no ground is known. */
export function hiddenAlong(
  plan: Plan,
  body: Body,
  instant: number,
  places: readonly LatLon[],
): readonly (boolean | null)[] {
  const { terrain, landmark, shoot, spot } = plan
  if (terrain === null) return places.map(() => null)
  const grid = groundWithout(landmark, terrain)
  return places.map((at) => {
    const point = gridPoint(grid, at)
    const ground = elevationAt(terrain, point.east, point.north)
    if (ground === null) return null
    const disc = bodyAt(body, at, instant)
    const eye = { ...point, elevation: ground + spot.standpoint.lensHeight }
    const skyline = skylineToward(grid, eye, shoot, disc.azimuth)
    const behind = behindGround(skyline, disc)
    return behind === null ? null : behind === 'behind'
  })
}
