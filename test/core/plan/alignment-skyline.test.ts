/** The ground before which sun and moon stand at a landmark: a summit that is looked at hides nothing by itself, other hills do. */
import { skyline, skylineAt } from '#core/ground/skyline.ts'
import { describe, expect, it } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { placeOnGrid } from '#core/ground/elevation-grid.ts'
import { sunAt } from '#core/light/sky.ts'
import { alignmentSkyline, groundWithout } from '#core/plan/alignment-skyline.ts'
import type { Plan } from '#core/plan/plan.ts'
import { skylinesOf } from '#core/plan/plan-skylines.ts'
import { hiddenAlong } from '#core/plan/stand-line-ground.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { LEVEL_HORIZON } from '#core/light/light-scene.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'

const AT = { lat: 46.9, lon: 10.3 }
const [FAR, WIDTH, HEIGHT] = [1_500, 600, 300]
/** A cone to the north, a bank across the way to the east, the rest level. */
const grid = groundOf(
  401,
  10,
  (east, north) =>
    Math.max(0, HEIGHT * (1 - Math.hypot(east, north - FAR) / (WIDTH / 2))) + (east >= 400 && east <= 420 ? 60 : 0),
  AT,
)
const at = placeOnGrid(grid, 0, FAR)
const common = { id: 'l', name: 'Horn', baseElevation: 0, baseSlope: null, baseAspect: null, height: HEIGHT }
const SUMMIT: Landmark = { ...common, kind: 'summit', at, width: WIDTH }

function plan(landmark: Landmark, obstructions: Plan['shoot']['obstructions'] = []): Plan {
  const made = examplePlan({ at: AT, landmark, shoot: { obstructions } })
  const { standpoint, stop } = made.spot
  const spot = { ...made.spot, standpoint: { ...standpoint, elevation: null }, stop: { ...stop, elevation: null } }
  return { ...made, spot, terrain: grid }
}

const skylineOf = (of: Plan, azimuth: number): number | null => {
  const line = alignmentSkyline(of, skylinesOf(of) ?? LEVEL_HORIZON)
  return line === null ? null : skylineAt(line, azimuth)
}

describe('the skyline before which a body stands', () => {
  const topSeen = (Math.atan((HEIGHT - 1.2) / FAR) * 180) / Math.PI

  it('is without the summit that is looked at', () => {
    const whole = skylinesOf(plan(SUMMIT))?.lens
    expect(whole === null || whole === undefined ? null : skylineAt(whole, 0)).toBeCloseTo(topSeen, 0)
    expect(skylineOf(plan(SUMMIT), 0)).toBeLessThan(0.1)
  })

  it('is with a summit at which another landmark stands, and with every other hill', () => {
    expect(skylineOf(plan(bridgeAt(AT, 0, 900)), 0)).toBeCloseTo(topSeen, 0)
    const bank = (Math.atan((60 - 1.2) / 400) * 180) / Math.PI
    expect(skylineOf(plan(SUMMIT), 90)).toBeCloseTo(bank, 1)
  })

  it('has the trees and walls on it', () => {
    const line = [placeOnGrid(grid, -40, 100), placeOnGrid(grid, 40, 100)]
    const wall = { id: 'w', name: '', line, height: 11.2 }
    for (const landmark of [SUMMIT, bridgeAt(AT, 0, 60)])
      expect(skylineOf(plan(landmark, [wall]), 0)).toBeGreaterThan((Math.atan(0.09999) * 180) / Math.PI)
    expect(skylineOf(plan(SUMMIT, [wall]), 0)).toBeCloseTo((Math.atan(0.1) * 180) / Math.PI, 2)
  })

  it('is unknown without elevations', () => {
    expect(alignmentSkyline({ ...plan(SUMMIT), terrain: null }, LEVEL_HORIZON)).toBeNull()
  })

  it('takes nothing but the summit out of the ground, and leaves the ground itself as it was', () => {
    const before = grid.heights.slice()
    const { heights } = groundWithout(SUMMIT, grid)
    expect(grid.heights).toEqual(before)
    heights.forEach((height, index) => {
      const [east, north] = [(index % 401) * 10 - 2000, 2000 - Math.floor(index / 401) * 10]
      const away = Math.hypot(east, north - FAR)
      // Lowered to the lowest there is, not made unknown: what hides nothing must not put the times in doubt either.
      if (Math.abs(away - WIDTH / 2) > 1e-3) expect(height).toBe(away < WIDTH / 2 ? 0 : before[index])
    })
  })
})

describe('of rings of ground', () => {
  /** The same hills in coarse cells, so far to each side. */
  const ringOf = (half: number, cell: number) =>
    groundOf(
      2 * half + 1,
      cell,
      (east, north) => Math.max(0, HEIGHT * (1 - Math.hypot(east, north - FAR) / (WIDTH / 2))),
      AT,
    )

  it('those that lie under finer cells at the summit are not made again, and the skyline is as if they were', () => {
    const outer = ringOf(60, 100)
    const ground = { ...grid, beyond: outer }
    const made = groundWithout(SUMMIT, ground)
    expect(made.heights).not.toBe(grid.heights)
    expect(made.beyond?.heights).toBe(outer.heights)
    const all = { ...groundWithout(SUMMIT, grid), beyond: groundWithout(SUMMIT, outer) }
    expect(all.beyond.heights).not.toBe(outer.heights)
    const eye = { east: 0, north: 0, elevation: 1.2 }
    expect(skyline(made, eye, 0.13).altitudes).toEqual(skyline(all, eye, 0.13).altitudes)
  })

  it('those that are read about the summit are, too', () => {
    // The finer cells end 50 m behind the summit's foot: a cell of the outer ring reaches over it.
    const fine = groundOf(371, 10, (east, north) => (Math.hypot(east, north - FAR) < WIDTH / 2 ? 100 : 0), AT)
    const outer = ringOf(60, 100)
    expect(groundWithout(SUMMIT, { ...fine, beyond: outer }).beyond?.heights).not.toBe(outer.heights)
  })
})

describe('along a line of standpoints', () => {
  it('places behind a bank do not see the sun that stands below its top, those before it do', () => {
    const instant = Date.UTC(2026, 2, 20, 6, 30)
    const sun = sunAt(AT, instant)
    expect(sun.azimuth).toBeGreaterThan(80)
    expect(sun.altitude).toBeGreaterThan(3)
    expect(sun.altitude).toBeLessThan(15)
    const places = [330, 380, 450, 700].map((east) => placeOnGrid(grid, east, 0))
    const near = plan(bridgeAt(AT, 90, 900))
    const reach = 60 / Math.tan((sun.altitude * Math.PI) / 180)
    const hidden = hiddenAlong(near, 'sun', instant, places)
    expect(hidden).toEqual([330 > 420 - reach, true, false, false])
    expect(hiddenAlong({ ...near, terrain: null }, 'sun', instant, places)).toEqual([null, null, null, null])
    expect(hiddenAlong(near, 'sun', instant, [destination(AT, 90, 90_000)])).toEqual([null])
  })
})
