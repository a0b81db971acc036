/** What is asked of the ground: seen from the landmark at the share wished, from the lens, or by the sun; else the reason why not. */
import { describe, expect, test } from 'vitest'
import { elevationAtPlace, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { viewshed } from '#core/ground/viewshed.ts'
import { SEEN } from '#core/ground/viewshed-request.ts'
import { sunAt } from '#core/light/sky.ts'
import { groundReading } from '#core/plan/ground-reading.ts'
import { type Plan, levelsOf } from '#core/plan/plan.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { type AreaRequest, type NoArea, areaRequest } from '#renderer/view/ground/area-request.ts'
import { examplePlan } from '#test/help/plans.ts'
import { mountains } from '#test/help/terrain.ts'

const centre = mountains(3).centre
const grid = mountains(401, 20)

function planOn(parts: Partial<Plan> = {}): Plan {
  return { ...examplePlan({ at: centre }), terrain: grid, ...parts }
}

function told(
  plan: Plan,
  ...rest: [Parameters<typeof areaRequest>[0], number?, ('ground' | 'subject')?]
): AreaRequest | NoArea {
  const [shown, share = 0.5, seen = 'ground'] = rest
  return areaRequest(shown, plan, levelsOf(plan), share, seen)
}

function sight(found: AreaRequest | NoArea) {
  if (typeof found === 'string' || found.job.kind !== 'exact') throw new Error('no sight is asked')
  return found.job.request
}

function tower(at: Plan['spot']['stop']['at'], kind: 'upright' | 'summit' = 'upright'): Landmark {
  return {
    id: 'tower',
    name: 'Tower',
    kind,
    at,
    height: 40,
    width: 8,
    baseElevation: null,
    baseSlope: null,
    baseAspect: null,
  }
}

describe('where the landmark shows', () => {
  const at = { lat: centre.lat + 0.012, lon: centre.lon + 0.006 }
  const plan = planOn({ landmark: tower(at) })
  const foot = elevationAtPlace(grid, at) ?? Number.NaN

  test.each([
    [0.01, 39.6],
    [0.25, 30],
    [0.5, 20],
    [1, 0],
  ])('at least %f of a tower of 40 m is what its point %f m up sees, at the lens’s height', (share, up) => {
    const asked = sight(told(plan, 'landmark', share))
    expect(asked.height).toBeCloseTo(foot + up, 6)
    expect(asked.targetHeight).toBe(plan.spot.standpoint.lensHeight)
    expect(asked).toMatchObject(gridPoint(grid, at))
    expect(asked.refraction).toBe(plan.shoot.refraction)
  })

  test('of a summit its top is told, which the elevations have at its point, whatever share is wished', () => {
    const summit = planOn({ landmark: tower(at, 'summit') })
    for (const share of [0.01, 0.5, 1]) expect(sight(told(summit, 'landmark', share)).height).toBeCloseTo(foot, 6)
  })

  test('of a broad summit it is the highest ground by its point', () => {
    const broad = planOn({ landmark: { ...tower(at, 'summit'), width: 2_000 } as Landmark })
    const asked = sight(told(broad, 'landmark'))
    const point = gridPoint(grid, at)
    expect(asked.height).toBeGreaterThanOrEqual(foot)
    expect(Math.hypot(asked.east - point.east, asked.north - point.north)).toBeLessThanOrEqual(100)
    expect(elevationAtPlace(grid, placeOnGrid(grid, asked.east, asked.north))).toBeCloseTo(asked.height, 2)
  })

  test('a span is told by its middle', () => {
    const bridge = planOn().landmark
    const middle = bridge === null ? null : landmarkMiddle(landmarkPoints(bridge))
    if (middle === null) throw new Error('the example has a bridge')
    expect(sight(told(planOn(), 'landmark'))).toMatchObject(gridPoint(grid, middle))
  })

  test('the board’s own answer along the line agrees with the area, cell by cell', () => {
    const seen = viewshed(grid, sight(told(plan, 'landmark', 0.5)))
    let [shown, hidden] = [0, 0]
    for (let column = 40; column < 360; column += 23) {
      for (let row = 20; row < 300; row += 19) {
        const stand = placeOnGrid(grid, grid.west + column * grid.cell, grid.north - row * grid.cell)
        const spot = { ...plan.spot, standpoint: { ...plan.spot.standpoint, at: stand, elevation: null } }
        const here = { ...plan, spot }
        const share = groundReading(here, levelsOf(here))?.toLandmark?.share ?? null
        // Exactly at the limit rounding decides.
        if (share === null || Math.abs(share - 0.5) < 0.01) continue
        expect(seen[row * grid.columns + column] === SEEN).toBe(share > 0.5)
        if (share > 0.5) shown++
        else hidden++
      }
    }
    expect(shown).toBeGreaterThan(5)
    expect(hidden).toBeGreaterThan(5)
  })
})

describe('what the standpoint sees', () => {
  test('is looked for from the lens, on the ground or at the subject’s height', () => {
    const plan = planOn()
    const { standpoint } = plan.spot
    const asked = sight(told(plan, 'standpoint'))
    expect(asked.height).toBeCloseTo(levelsOf(plan).standpoint + standpoint.lensHeight, 9)
    expect(asked).toMatchObject({ ...gridPoint(grid, standpoint.at), targetHeight: 0 })
    expect(sight(told(plan, 'standpoint', 0.5, 'subject')).targetHeight).toBe(plan.shoot.subject.height)
  })
})

describe('the hills’ shadow', () => {
  test('is cast by the upper edge of the sun as it appears', () => {
    const plan = planOn({ spot: { ...planOn().spot, when: Date.UTC(2027, 5, 14, 16) } })
    const found = told(plan, 'shade')
    if (typeof found === 'string' || found.job.kind !== 'shade') throw new Error('no shadow is asked')
    const sun = sunAt(grid.centre, plan.spot.when)
    expect(found.job.sun.azimuth).toBe(sun.azimuth)
    const raised = found.job.sun.altitude - sun.altitude
    // The sun's radius is a good quarter of a degree, refraction well up a few hundredths.
    expect(raised).toBeGreaterThan(0.26)
    expect(raised).toBeLessThan(0.36)
  })
})

describe('why not', () => {
  test('each reason by its word', () => {
    const far = { lat: centre.lat + 1, lon: centre.lon }
    const night = { ...planOn().spot, when: Date.UTC(2027, 5, 14, 23) }
    expect(told(planOn({ terrain: null }), 'shade')).toBe('no-elevations')
    expect(told(planOn({ landmark: null }), 'landmark')).toBe('no-landmark')
    expect(told(planOn({ landmark: tower(far) }), 'landmark')).toBe('outside')
    expect(told(planOn({ spot: night }), 'shade')).toBe('sun-down')
  })
})
