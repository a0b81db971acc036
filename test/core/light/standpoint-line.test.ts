/** The line of standpoints: from all of it the body is behind the landmark, from its marks on the crest. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { localFrame, toLocal } from '#core/geo/local-frame.ts'
import { bodyAt } from '#core/light/body.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { FARTHEST, type StandLine, type StandLineRequest, standLine } from '#core/light/standpoint-line.ts'
import { alignmentTargets } from '#core/plan/alignment-target.ts'
import type { Building, Summit, Upright } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { turnBetween } from '#core/units/angle.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'

const common = { id: 'landmark', name: 'Landmark', height: 40, baseElevation: 12, baseSlope: null, baseAspect: null }
const towerAt = (at: LatLon, parts: Partial<Upright> = {}): Upright => ({
  ...common,
  kind: 'upright',
  at,
  width: 9,
  ...parts,
})

function lineOf(request: StandLineRequest): StandLine {
  const line = standLine(request)
  if (!line.ok) throw new Error(line.fault.message)
  return line.value
}

const asks = fc
  .record({
    body: fc.constantFrom('sun' as const, 'moon' as const),
    instant: fc.integer({ min: Date.UTC(1950, 0, 1), max: Date.UTC(2060, 0, 1) }),
    at: fc.record({
      lat: fc.double({ min: -80, max: 80, noNaN: true }),
      lon: fc.double({ min: -180, max: 179.9, noNaN: true }),
    }),
    height: fc.double({ min: 5, max: 400, noNaN: true }),
    lensHeight: fc.double({ min: 0.2, max: 4, noNaN: true }),
    level: fc.double({ min: -50, max: 3000, noNaN: true }),
    reach: fc.double({ min: 100, max: 20_000, noNaN: true }),
  })
  .map(({ at, height, ...others }): StandLineRequest & { readonly landmark: Upright } => ({
    ...others,
    landmark: towerAt(at, { height }),
    refraction: 0.13,
  }))

/** Apparent altitude of a point over a place, from earth-centred metres alone. */
function altitudeFrom(at: LatLon, request: StandLineRequest, place: LatLon, height: number): number {
  const local = toLocal(
    localFrame(at, request.level + request.lensHeight),
    localFrame(place, request.level + height).origin,
  )
  const away = Math.hypot(local.east, local.north)
  const lift = (request.refraction * away * away) / (2 * MEAN_EARTH_RADIUS)
  return (Math.atan2(local.up + lift, away) * 180) / Math.PI
}

describe('of a tower', () => {
  test('from every point of the line the body is straight behind its middle', () => {
    let up = 0
    fc.assert(
      fc.property(asks, (request) => {
        const line = standLine(request)
        const disc = bodyAt(request.body, request.landmark.at, request.instant)
        if (!line.ok) {
          expect(line.fault.reason).toBe(disc.altitude < 0 ? 'not-up' : 'overhead')
          return
        }
        up++
        const { points } = line.value
        expect(points[0]?.distance).toBe(20)
        if (disc.altitude > 0.5) expect(points.at(-1)?.distance).toBeCloseTo(request.reach, 6)
        for (const { at, distance, altitude } of points) {
          const seen = bodyAt(request.body, at, request.instant)
          const toward = geodesicLine(at, request.landmark.at)
          expect(Math.abs(turnBetween(toward.bearing ?? Number.NaN, seen.azimuth))).toBeLessThan(0.000_1)
          expect(Math.abs(toward.distance - distance)).toBeLessThan(1e-3)
          expect(altitude).toBe(apparentAltitude(seen.altitude))
        }
      }),
      { numRuns: 200 },
    )
    expect(up).toBeGreaterThan(30)
  })

  test('from its marks the centre stands on the top’s near rim, and the lower limb touches it', () => {
    let marks = 0
    fc.assert(
      fc.property(asks, (request) => {
        const line = standLine(request)
        if (!line.ok) return
        for (const [mark, limb] of [
          [line.value.onTop, 0],
          [line.value.resting, 1],
        ] as const) {
          if (mark === null) continue
          marks++
          const seen = bodyAt(request.body, mark, request.instant)
          const back = geodesicLine(request.landmark.at, mark).bearing ?? Number.NaN
          const rim = destination(request.landmark.at, back, (0.6 * request.landmark.width) / 2)
          const wanted = apparentAltitude(seen.altitude - limb * seen.radius)
          // A ring of 32 edges lies up to half a hundredth of its radius within the circle: 1.3 cm.
          const slack = (0.013 / Math.max(geodesicDistance(mark, rim), 0.1)) * 60
          expect(Math.abs(altitudeFrom(mark, request, rim, request.landmark.height) - wanted)).toBeLessThan(
            0.005 + slack,
          )
        }
      }),
      { numRuns: 300 },
    )
    expect(marks).toBeGreaterThan(40)
  })

  test('a plan with its standpoint on a mark has the body in the direction of its target', () => {
    let marks = 0
    fc.assert(
      fc.property(asks, (request) => {
        const line = standLine(request)
        if (!line.ok || line.value.onTop === null) return
        const at = line.value.onTop
        if (geodesicDistance(at, request.landmark.at) < 30) return
        marks++
        const landmark = { ...request.landmark, baseElevation: request.level }
        const plan = examplePlan({ at, landmark })
        const standpoint = { at, lensHeight: request.lensHeight, elevation: request.level, slope: null, aspect: null }
        const top = alignmentTargets({ ...plan, spot: { ...plan.spot, standpoint } }).find(({ name }) => name === 'top')
        const seen = bodyAt(request.body, at, request.instant)
        expect(Math.abs((top?.altitude ?? Number.NaN) - apparentAltitude(seen.altitude))).toBeLessThan(0.005)
        expect(Math.abs(turnBetween(top?.bearing ?? Number.NaN, seen.azimuth))).toBeLessThan(0.001)
      }),
      { numRuns: 400 },
    )
    expect(marks).toBeGreaterThan(20)
  })

  test('where the body rests lies farther than where its centre is on the top: the top must appear lower by a radius', () => {
    fc.assert(
      fc.property(asks, (request) => {
        const line = standLine(request)
        if (!line.ok || line.value.onTop === null || line.value.resting === null) return
        const [centre, limb] = [line.value.onTop, line.value.resting].map((at) =>
          geodesicDistance(at, request.landmark.at),
        )
        expect(limb).toBeGreaterThan(centre ?? Number.NaN)
      }),
    )
  })
})

/** Midsummer afternoon at 47 north, the sun in the west. */
const AT: LatLon = { lat: 47, lon: 10 }
const ASK: StandLineRequest = {
  body: 'sun',
  instant: Date.UTC(2025, 5, 21, 16),
  landmark: towerAt(AT),
  level: 12,
  lensHeight: 1.5,
  refraction: 0.13,
  reach: 5000,
}
const SUN = bodyAt('sun', AT, ASK.instant)

describe('of other landmarks', () => {
  const altitude = (apparentAltitude(SUN.altitude) * Math.PI) / 180

  test('a building: on the edge of the roof that is nearest along the line, also from close by under a high sun', () => {
    const [side, deep] = [60, 30]
    const azimuth = SUN.azimuth
    const front = destination(AT, azimuth + 180, deep)
    const rear = destination(AT, azimuth, deep)
    const corners = [
      destination(front, azimuth - 90, side),
      destination(rear, azimuth - 90, side),
      destination(rear, azimuth + 90, side),
      destination(front, azimuth + 90, side),
    ]
    const landmark: Building = { ...common, kind: 'building', footprint: corners, height: 6 }
    const { onTop } = lineOf({ ...ASK, landmark })
    const expected = deep + (6 - 1.5) / Math.tan(altitude)
    expect(geodesicDistance(onTop ?? AT, AT)).toBeCloseTo(expected, 1)
  })

  test('a hanging bridge: on its deck, not as high as its towers', () => {
    const landmark = bridgeAt(destination(AT, SUN.azimuth + 180, 100), SUN.azimuth, 100)
    const { onTop } = lineOf({ ...ASK, landmark })
    const middle = landmarkMiddle(landmark.line) ?? AT
    expect(geodesicDistance(onTop ?? AT, middle)).toBeCloseTo(6 + (24 - 1.5) / Math.tan(altitude), 1)
  })

  test('a bridge seen along its length: on its near end', () => {
    const landmark = bridgeAt(destination(AT, SUN.azimuth + 180, 100), SUN.azimuth, 100, 0)
    const { onTop } = lineOf({ ...ASK, landmark })
    const middle = landmarkMiddle(landmark.line) ?? AT
    expect(geodesicDistance(onTop ?? AT, middle)).toBeCloseTo(170 + (24 - 1.5) / Math.tan(altitude), 1)
  })

  test('a summit: on its point, but nowhere within its foot', () => {
    const low: Summit = { ...common, kind: 'summit', at: AT, width: 100, height: 60 }
    const { onTop } = lineOf({ ...ASK, landmark: low })
    expect(geodesicDistance(onTop ?? AT, AT)).toBeCloseTo(58.5 / Math.tan(altitude), 1)
    expect(lineOf({ ...ASK, landmark: { ...low, width: 400 } }).onTop).toBeNull()
  })

  test('nowhere within reach, or lower than the lens: no mark', () => {
    expect(lineOf({ ...ASK, reach: 30 }).onTop).toBeNull()
    expect(lineOf({ ...ASK, landmark: towerAt(AT, { height: 1 }) }).onTop).toBeNull()
  })
})

describe('what cannot be answered is refused with a sentence', () => {
  const nowhere: Building = { ...common, kind: 'building', footprint: [] }
  test.each([
    ['not-up', { instant: Date.UTC(2025, 5, 21, 23) }],
    ['no-dates', { instant: Date.UTC(1850, 0, 1) }],
    ['no-dates', { instant: Number.NaN }],
    ['reach', { reach: 20 }],
    ['reach', { reach: Number.NaN }],
    ['reach', { reach: FARTHEST + 1 }],
    ['lens', { lensHeight: Number.NaN }],
    ['no-place', { landmark: nowhere }],
    ['no-place', { landmark: towerAt({ lat: Number.NaN, lon: 0 }) }],
  ] as const)('%s', (reason, change) => {
    const line = standLine({ ...ASK, ...change })
    expect(line.ok ? null : line.fault.reason).toBe(reason)
    expect(line.ok ? '' : line.fault.message).toMatch(/^[A-Z].+\.$/u)
  })

  test('at the pole the line leads along a meridian', () => {
    const { points } = lineOf({ ...ASK, landmark: towerAt({ lat: 90, lon: 0 }) })
    for (const { at } of points) {
      const seen = bodyAt('sun', at, ASK.instant)
      expect(Math.abs(turnBetween(0, seen.azimuth))).toBeLessThan(0.001)
    }
  })
})
