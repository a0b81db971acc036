/** Targets of a plan: where the landmark's top, middle and edges appear from the lens. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { alignments } from '#core/light/alignment.ts'
import { bodyAt } from '#core/light/body.ts'
import { TARGET_NAMES, alignmentTargets } from '#core/plan/alignment-target.ts'
import { assess } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Landmark, Upright } from '#core/scene/landmark.ts'
import { turnBetween } from '#core/units/angle.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'

const AT: LatLon = { lat: -41.2, lon: 12.4 }
const EYE = 1.2
const RADIANS = Math.PI / 180
const common = { id: 'landmark', name: 'Landmark', height: 50, baseElevation: 12, baseSlope: null, baseAspect: null }

/** The plan's standpoint is at AT, 12 m above the sea as all landmarks here, its lens 1.2 m above the ground. */
const planWith = (landmark: Landmark | null, elevation: number | null = 12): Plan => {
  const plan = examplePlan({ at: AT, landmark })
  return {
    ...plan,
    spot: { ...plan.spot, standpoint: { at: AT, lensHeight: EYE, elevation, slope: null, aspect: null } },
  }
}

function targetsOf(landmark: Landmark, elevation: number | null = 12) {
  const found = alignmentTargets(planWith(landmark, elevation))
  expect(found.map(({ name }) => name)).toEqual(TARGET_NAMES)
  const [top, resting, middle, left, right] = found
  if (!top || !resting || !middle || !left || !right) throw new Error('targets are missing')
  return { top, resting, middle, left, right }
}

const towerAt = (bearing: number, distance: number, parts: Partial<Upright> = {}): Upright => ({
  ...common,
  kind: 'upright',
  at: destination(AT, bearing, distance),
  width: 10,
  ...parts,
})

/** Degrees; what a height over the eye makes at a distance over which the earth's curve is nothing. */
const rise = (height: number, distance: number): number => Math.atan2(height - EYE, distance) / RADIANS

describe('of a tower', () => {
  test('the top is over its axis and as high as its near rim, the edges are where it is as wide as at half height', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 359.99, noNaN: true }), (bearing) => {
        const { top, middle, left, right } = targetsOf(towerAt(bearing, 300))
        expect(Math.abs(turnBetween(bearing, top.bearing))).toBeLessThan(1e-4)
        expect(Math.abs(turnBetween(bearing, middle.bearing))).toBeLessThan(1e-4)
        expect(top.altitude).toBeCloseTo(rise(50, 297), 1)
        expect(middle.altitude).toBeCloseTo((rise(50, 297) + rise(0, 295)) / 2, 1)
        // It tapers to 0.6 of its foot: at half height it is 8 m across.
        const half = Math.atan2(4, 300) / RADIANS
        expect(Math.abs(turnBetween(left.bearing, bearing) - half)).toBeLessThan(0.01)
        expect(Math.abs(turnBetween(bearing, right.bearing) - half)).toBeLessThan(0.01)
        expect([left.altitude, right.altitude]).toEqual([middle.altitude, middle.altitude])
      }),
    )
  })

  test('middle and height agree with what the assessment says of the landmark', () => {
    const plan = planWith(towerAt(77, 900))
    const { toLandmark } = assess(plan)
    const middle = alignmentTargets(plan).find(({ name }) => name === 'middle')
    expect(middle?.bearing).toBe(toLandmark?.bearing)
    expect(middle?.altitude).toBeCloseTo(toLandmark?.altitude ?? Number.NaN, 9)
  })

  test('far away the earth’s curve lowers it and the air lifts it a little', () => {
    const { top } = targetsOf(towerAt(10, 20_000))
    // d² (1 - k) / 2R for k = 0.13: 27.3 m at 20 km.
    expect(top.altitude).toBeCloseTo(rise(50 - 27.3, 20_000), 3)
  })

  test('with unknown ground it is taken as level with the standpoint', () => {
    const known = targetsOf(towerAt(10, 400))
    const unknown = targetsOf(towerAt(10, 400, { baseElevation: null }))
    expect(unknown.top.altitude).toBeCloseTo(known.top.altitude, 9)
    const plan = examplePlan({ at: AT, landmark: towerAt(10, 400, { baseElevation: null }) })
    expect(assess(plan).problems).toContain('landmark-level-assumed')
  })
})

describe('of others', () => {
  test('the top of a hanging bridge seen askew is its nearer tower', () => {
    const { top, middle, left, right } = targetsOf(bridgeAt(AT, 40, 600, 40))
    // The tower 110 m back along a line turned 40 degrees: left of the middle, and nearer.
    expect(turnBetween(middle.bearing, top.bearing)).toBeLessThan(-5)
    expect(turnBetween(middle.bearing, left.bearing)).toBeLessThan(-5)
    expect(turnBetween(middle.bearing, right.bearing)).toBeGreaterThan(3)
  })

  test('of two equally high towers the top is the nearer, if by a hair, whichever way it is looked at', () => {
    for (let bearing = 0; bearing < 360; bearing += 3) {
      // Nearly square to the sightline: one tower is a few centimetres nearer, and not lower by what could be seen.
      for (const turned of [90.02, 89.98, -90.02, -89.98]) {
        const bridge = bridgeAt(AT, bearing, 600, turned)
        const [, one, other] = bridge.line
        if (one === undefined || other === undefined) throw new Error('the bridge has two towers')
        const [first, second] = [one, other].map((tower) => geodesicLine(AT, tower))
        const nearer = (first?.distance ?? 0) < (second?.distance ?? 0) ? first : second
        const { top } = targetsOf(bridge)
        // Its foot is at 0 m, 12 m under the ground where the camera stands; the towers are 60 m high.
        expect(top.altitude).toBeCloseTo(rise(60 - 12, nearer?.distance ?? NaN), 0)
        expect(Math.abs(turnBetween(nearer?.bearing ?? NaN, top.bearing)), `bearing ${bearing}`).toBeLessThan(0.6)
      }
    }
  })

  test('of corners that appear equally high the nearest is the top, whatever their order', () => {
    // The roof is level with the lens: its corners, from 60 to 80 m away, appear within a thousandth of a degree.
    const corners = [-8, 8].flatMap((aside) => [60, 80].map((away) => [away, aside] as const))
    const place = ([away, aside]: readonly [number, number]): LatLon =>
      destination(destination(AT, 40, away), 130, aside)
    const order = [1, 3, 2, 0].map((index) => corners[index] ?? ([0, 0] as const))
    for (const line of [order, order.toReversed()]) {
      const { top, middle } = targetsOf({ ...common, kind: 'building', footprint: line.map(place), height: EYE })
      expect(Math.abs(turnBetween(middle.bearing, top.bearing))).toBeCloseTo(Math.atan2(8, 60) / RADIANS, 1)
    }
  })

  test('a summit is half as wide at half its height', () => {
    const at = destination(AT, 200, 5000)
    const { left, right } = targetsOf({ ...common, kind: 'summit', at, width: 400, height: 300 })
    expect(turnBetween(left.bearing, right.bearing)).toBeCloseTo((2 * Math.atan2(100, 5000)) / RADIANS, 2)
  })

  test('a building that spans north is not turned inside out', () => {
    const middle = destination(AT, 0, 200)
    const corner = (east: number, north: number): LatLon => destination(destination(middle, 90, east), 0, north)
    const footprint = [corner(-40, -10), corner(40, -10), corner(40, 10), corner(-40, 10)]
    const { left, right } = targetsOf({ ...common, kind: 'building', footprint, height: 20 })
    expect(left.bearing).toBeCloseTo(360 - Math.atan2(40, 190) / RADIANS, 1)
    expect(right.bearing).toBeCloseTo(Math.atan2(40, 190) / RADIANS, 1)
  })

  test('there is none without a landmark, within it or at it', () => {
    expect(alignmentTargets(planWith(null))).toEqual([])
    expect(alignmentTargets(planWith(towerAt(0, 0)))).toEqual([])
    expect(alignmentTargets(planWith(towerAt(0, 2)))).toEqual([])
    expect(alignmentTargets(planWith({ ...common, kind: 'building', footprint: [] }))).toEqual([])
  })
})

describe('given to the search', () => {
  /** In the north-west, where the winter sun of that latitude goes down. */
  const targets = targetsOf(towerAt(295, 800))
  const span = { from: Date.UTC(2025, 3, 1), until: Date.UTC(2025, 8, 15) }
  const search = (target: keyof typeof targets) => {
    const found = alignments({ at: AT, body: 'sun', target: targets[target], tolerance: 0.3, ...span })
    if (!found.ok) throw new Error(found.fault.message)
    expect(found.value.length).toBeGreaterThan(1)
    return found.value
  }

  test('resting, the sun’s lower limb and not its centre is at the height of the top', () => {
    for (const one of search('resting')) {
      const { radius } = bodyAt('sun', AT, one.instant)
      expect(Math.abs(one.altitude - radius - targets.top.altitude)).toBeLessThan(0.31)
      expect(one.altitude).toBeGreaterThan(targets.top.altitude - 0.04)
    }
  })

  test('at its edges the sun stands wholly beside the tower', () => {
    for (const one of search('left')) {
      const { radius } = bodyAt('sun', AT, one.instant)
      const centre = turnBetween(one.azimuth, targets.left.bearing) * Math.cos(one.altitude * RADIANS)
      expect(Math.abs(centre - radius)).toBeLessThan(0.31)
      expect(centre).toBeGreaterThan(-0.04)
    }
    for (const one of search('right')) {
      const centre = turnBetween(targets.right.bearing, one.azimuth) * Math.cos(one.altitude * RADIANS)
      expect(centre).toBeGreaterThan(-0.04)
    }
  })
})
