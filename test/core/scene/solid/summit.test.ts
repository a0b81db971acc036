/** A summit over elevations: what is read at its point is its top, whatever its height and whichever of its figures are entered. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { elevationAtPlace, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { SEEN } from '#core/ground/viewshed-request.ts'
import { viewshed } from '#core/ground/viewshed.ts'
import { alignmentTargets } from '#core/plan/alignment-target.ts'
import { assess } from '#core/plan/assess.ts'
import { groundProfile } from '#core/plan/ground-profile.ts'
import { groundReading, lensOn } from '#core/plan/ground-reading.ts'
import { type Plan, footLevel, levelsOf } from '#core/plan/plan.ts'
import { skyEyes } from '#core/plan/plan-skylines.ts'
import { scanTable } from '#core/scan/scan-table.ts'
import type { Summit } from '#core/scene/landmark.ts'
import { areaRequest } from '#renderer/view/ground/area-request.ts'
import { plainSill } from '#test/help/brute-sight.ts'
import { examplePlan } from '#test/help/plans.ts'
import { requestOf } from '#test/help/scans.ts'
import { mountains } from '#test/help/terrain.ts'

const grid = mountains(501, 20, 5)
const REFRACTION = 0.13
const EARTH = 6_371_008.8

/** The highest of a massif, four kilometres or more from its edge. */
const TOP = (() => {
  let [best, at] = [-Infinity, 0]
  grid.heights.forEach((height, cell) => {
    const [column, row] = [cell % grid.columns, Math.floor(cell / grid.columns)]
    if (Math.min(column, row, 500 - column, 500 - row) >= 200 && height > best) [best, at] = [height, cell]
  })
  const [east, north] = [grid.west + (at % 501) * 20, grid.north - Math.floor(at / 501) * 20]
  return { east, north, height: best, at: placeOnGrid(grid, east, north) }
})()

function summit(parts: Partial<Summit> = {}): Summit {
  return {
    id: 'summit',
    name: 'Horn',
    kind: 'summit',
    at: TOP.at,
    height: 400,
    width: 800,
    baseElevation: null,
    baseSlope: null,
    baseAspect: null,
    ...parts,
  }
}

/** Looked at from metres east and north of the massif's middle, all levels left to the elevations. */
function from(east: number, north: number, landmark: Summit = summit()): Plan {
  const at = placeOnGrid(grid, east, north)
  const made = examplePlan({ at, landmark, shoot: { refraction: REFRACTION } })
  const { stop, standpoint } = made.spot
  const spot = { ...made.spot, stop: { ...stop, elevation: null }, standpoint: { ...standpoint, elevation: null } }
  return { ...made, spot, terrain: grid }
}

const metres = fc.integer({ min: -4_500, max: 4_500 })
const heights = fc.integer({ min: 20, max: 2_500 })
const feet = fc.option(fc.integer({ min: -200, max: 4_000 }))

describe('the top', () => {
  test('is what the elevations have at the point, for every height entered, seen from everywhere', () => {
    fc.assert(
      fc.property(metres, metres, metres, metres, heights, (east, north, atEast, atNorth, height) => {
        const at = placeOnGrid(grid, atEast, atNorth)
        const plan = from(east, north, summit({ at, height }))
        const read = elevationAtPlace(grid, at) ?? Number.NaN
        const { levels, under } = assess(plan)
        expect(levels.landmark + height).toBeCloseTo(read, 6)
        expect(levels.from.landmark).toBe('elevations')
        expect(under.landmark?.read).toBeCloseTo(read - height, 6)
        expect(under.landmark?.top?.elevation).toBeCloseTo(read, 6)
        expect(under.landmark?.top?.read).toBe(read)
        // How high it appears from the lens: the angle to a point so high and so far over the curved earth.
        const distance = geodesicDistance(plan.spot.standpoint.at, at)
        fc.pre(distance > 400)
        const eye = levels.standpoint + plan.spot.standpoint.lensHeight
        const rise = read - eye - ((1 - REFRACTION) * distance * distance) / (2 * EARTH)
        const top = alignmentTargets(plan).find(({ name }) => name === 'top')
        expect(top?.altitude ?? Number.NaN).toBeCloseTo((Math.atan2(rise, distance) * 180) / Math.PI, 1)
      }),
      { numRuns: 150 },
    )
  })

  test('is its foot and its height where the foot is entered, and what the elevations have is told beside it', () => {
    fc.assert(
      fc.property(heights, feet, fc.boolean(), (height, foot, footFirst) => {
        // One figure after the other, in either order, as they are typed.
        const steps: Partial<Summit>[] = footFirst
          ? [{ baseElevation: foot }, { height }]
          : [{ height }, { baseElevation: foot }]
        const landmark = steps.reduce<Summit>((before, step) => ({ ...before, ...step }), summit())
        const { levels, under } = assess(from(2_000, -1_500, landmark))
        const top = foot === null ? TOP.height : foot + height
        expect(levels.landmark).toBeCloseTo(top - height, 4)
        expect(under.landmark?.from).toBe(foot === null ? 'elevations' : 'measured')
        expect(under.landmark?.top?.elevation).toBeCloseTo(top, 4)
        expect(under.landmark?.top?.read).toBeCloseTo(TOP.height, 4)
        expect(under.landmark?.read).toBeCloseTo(TOP.height - height, 4)
      }),
    )
  })

  test('is no matter of other kinds: a tower stands on what is read', () => {
    const plan = from(2_000, -1_500, { ...summit(), kind: 'upright' } as unknown as Summit)
    expect(levelsOf(plan).landmark).toBeCloseTo(TOP.height, 4)
    expect(assess(plan).under.landmark?.top).toBeNull()
  })

  test('is what its own light, the scan and the ground it is seen from go by', () => {
    const plan = from(1_500, 1_200)
    const levels = levelsOf(plan)
    expect(skyEyes(plan, levels, grid).landmark?.elevation).toBeCloseTo(TOP.height, 4)
    const area = areaRequest('landmark', plan, levels, 0.5, 'ground')
    if (typeof area === 'string' || area.job.kind !== 'exact') throw new Error('its ground can be shown')
    expect(area.job.request.height).toBeCloseTo(TOP.height, 4)
    const request = { ...requestOf({ landmark: summit() }), terrain: grid }
    expect(scanTable(request).foot).toEqual(footLevel(summit(), { terrain: grid, pins: [] }))
    expect(scanTable(request).foot.level).toBeCloseTo(TOP.height - 400, 4)
  })
})

describe('what shows of its upper tenth', () => {
  /** Cameras that see its very top, and such from which ground far from it stands above its top. */
  const [seeing, hidden]: [Plan[], Plan[]] = [[], []]
  for (let east = -4_600; east <= 4_600; east += 410) {
    for (let north = -4_600; north <= 4_600; north += 430) {
      const plan = from(east, north)
      const eye = lensOn(grid, plan, levelsOf(plan))
      const away = Math.hypot(TOP.east - eye.east, TOP.north - eye.north)
      if (away < 1_500) continue
      if (plainSill(grid, eye, TOP, REFRACTION) < TOP.height) seeing.push(plan)
      const flank = {
        east: TOP.east + (400 * (eye.east - TOP.east)) / away,
        north: TOP.north + (400 * (eye.north - TOP.north)) / away,
      }
      const line = plainSill(grid, eye, flank, REFRACTION)
      if (eye.elevation + ((line - eye.elevation) * away) / (away - 400) > TOP.height + 5) hidden.push(plan)
    }
  }
  const shownOf = (plan: Plan): number | null => groundReading(plan, levelsOf(plan))?.landmarkShown ?? null

  test('is some of it wherever its very top is seen, by every line of sight worked out plainly', () => {
    expect(seeing.length).toBeGreaterThan(20)
    for (const plan of seeing) expect(shownOf(plan)).toBeGreaterThan(0)
  })

  test('is nothing where a rise before it stands above its top', () => {
    expect(hidden.length).toBeGreaterThan(20)
    for (const plan of hidden) expect(shownOf(plan)).toBe(0)
  })

  test('is the ground that is shown as seeing it, cell by cell', () => {
    const [plan] = seeing
    if (plan === undefined) throw new Error('somebody sees it')
    const area = areaRequest('landmark', plan, levelsOf(plan), 0.5, 'ground')
    if (typeof area === 'string' || area.job.kind !== 'exact') throw new Error('its ground can be shown')
    const seen = viewshed(grid, area.job.request)
    const cellOf = ({ spot }: Plan): number => {
      const { east, north } = gridPoint(grid, spot.standpoint.at)
      return Math.round((grid.north - north) / 20) * 501 + Math.round((east - grid.west) / 20)
    }
    const told = (plans: readonly Plan[]): number =>
      plans.filter((one) => seen[cellOf(one)] === SEEN).length / plans.length
    // Cameras stand beside the cells' middles: a few at an edge fall to the other side.
    expect(told(seeing)).toBeGreaterThan(0.9)
    expect(told(hidden)).toBeLessThan(0.02)
  })

  test('is not lost where its point was set a little beside its top', () => {
    for (const plan of seeing.filter((one) => (shownOf(one) ?? 0) > 0.95)) {
      for (const [east, north] of [
        [14, 0],
        [-14, 5],
        [0, -14],
        [5, 14],
      ] as const) {
        const beside = placeOnGrid(grid, TOP.east + east, TOP.north + north)
        const landmark = summit({ at: beside })
        expect(shownOf({ ...plan, landmark, shoot: { ...plan.shoot, landmarks: [landmark] } })).toBeGreaterThan(0)
      }
    }
  })

  test('has a drawing whose lines end at its top and where its upper part begins', () => {
    for (const plan of seeing.slice(0, 40)) {
      const line = groundProfile(plan, levelsOf(plan))
      expect(line?.high).toBeGreaterThan(TOP.height - 0.001)
      expect(line?.low ?? Infinity).toBeLessThan(line?.high ?? 0)
      expect(line?.tightest?.distance ?? 0).toBeLessThanOrEqual(line?.length ?? 0)
    }
  })
})
