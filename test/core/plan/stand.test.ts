/** Where to stand: the solver's answers projected back, the closed form, the ring, and the plain no. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import { assess } from '#core/plan/assess.ts'
import { moveStandpoint, setHold, wishFill } from '#core/plan/arrange.ts'
import { proportionRing, wishedProportion } from '#core/plan/proportion-ring.ts'
import { bearingAwayFromLandmark, landmarkShareAt, standForBothFills, standingAt } from '#core/plan/stand.ts'
import { type PlanParts, bridgeAt, examplePlan } from '#test/help/plans.ts'

const noLens: PlanParts = { lenses: [] }

describe('standing for both fills', () => {
  it('gives both wishes back when projected', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 0.8, noNaN: true }),
        fc.double({ min: 3, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 359, noNaN: true }),
        (subjectShare, distance, bearing) => {
          const base = examplePlan({
            ...noLens,
            bearing,
            shot: { subjectFill: { share: subjectShare, axis: 'width' } },
          })
          // A wish that some standpoint grants: what the landmark takes from a known distance.
          const away = bearingAwayFromLandmark(base)
          if (away === null) return false
          const share = landmarkShareAt(base, away, distance)
          if (share === null) return true
          const plan = {
            ...base,
            spot: { ...base.spot, shot: { ...base.spot.shot, landmarkFill: { share, axis: 'height' as const } } },
          }
          const found = standForBothFills(plan, away)
          if (!found.ok) return false
          const made = assess({ ...plan, spot: found.value })
          expect(Math.abs((made.subject?.widthFill ?? NaN) - subjectShare)).toBeLessThan(1e-9)
          expect(Math.abs((made.landmark?.heightFill ?? NaN) - share)).toBeLessThan(1e-9)
          expect(geodesicDistance(found.value.stop.at, found.value.standpoint.at)).toBeCloseTo(distance, 4)
          return true
        },
      ),
      { numRuns: 60 },
    )
  })

  it('agrees with d = proportion s g / (S - proportion s) for flat things square to the axis', () => {
    // Similar triangles; a subject and landmark without depth, lens level with their middles.
    const at = { lat: 0, lon: 20 }
    const landmark = {
      ...bridgeAt(at, 0, 1000),
      form: 'wall' as const,
      width: 0.001,
      height: 10,
      deckHeight: 10,
      baseElevation: 0,
      baseSlope: null,
      baseAspect: null,
    }
    const plan = examplePlan({
      ...noLens,
      at: destination(at, 0, -20),
      bearing: 0,
      distance: 20,
      landmark,
      subject: { width: 0.001, length: 2, height: 1 },
      shoot: { refraction: 0 },
      shot: {
        placement: { across: 0, up: 0 },
        subjectFill: { share: 0.5, axis: 'width' },
        landmarkFill: { share: 0.4, axis: 'width' },
      },
      spot: {},
    })
    const level = {
      ...plan,
      spot: {
        ...plan.spot,
        stop: { ...plan.spot.stop, elevation: 4.5 },
        standpoint: { ...plan.spot.standpoint, elevation: 4.5, lensHeight: 0.5 },
      },
    }
    const found = standForBothFills(level, 180)
    expect(found.ok).toBe(true)
    if (!found.ok) return
    const [s, S] = [2, 340]
    const g = 1000
    const proportion = wishedProportion(level)
    const d = (proportion * s * g) / (S - proportion * s)
    const got = geodesicDistance(found.value.stop.at, found.value.standpoint.at)
    expect(Math.abs(got - d) / d).toBeLessThan(1e-3)
  })

  it('says plainly that it cannot be, and what is the most', () => {
    // The proportion can't exceed the ratio of true sizes: 60 m of tower to 2.5 m of bicycle.
    const plan = examplePlan({
      ...noLens,
      shot: { subjectFill: { share: 0.5, axis: 'width' }, landmarkFill: { share: 19, axis: 'height' } },
    })
    const found = standForBothFills(plan, bearingAwayFromLandmark(plan) ?? 0)
    expect(found.ok).toBe(false)
    if (found.ok) return
    expect(found.fault.reason).toBe('too-large')
    expect(found.fault.message).toMatch(/at most \d+(\.\d)? %/)
    const small = examplePlan({ ...noLens, shot: { landmarkFill: { share: 0.001, axis: 'height' } } })
    const tooSmall = standForBothFills(small, bearingAwayFromLandmark(small) ?? 0)
    expect(tooSmall.ok ? '' : tooSmall.fault.reason).toBe('too-small')
  })
})

describe('the proportion ring', () => {
  it('is slid along with the proportion kept within 0.1 %, as projected', () => {
    const plan = examplePlan({
      ...noLens,
      shot: { subjectFill: { share: 0.3, axis: 'height' }, landmarkFill: { share: 0.2, axis: 'height' } },
    })
    const spot = setHold(plan, 'proportion')
    const held = { ...plan, spot }
    const before = assess(held).proportion ?? NaN
    const start = geodesicLine(spot.stop.at, spot.standpoint.at)
    for (const turn of [-25, -10, -3, 3, 10, 25]) {
      const to = destination(spot.stop.at, (start.bearing ?? 0) + turn, start.distance)
      const moved = moveStandpoint(held, to)
      expect(Math.abs((assess({ ...held, spot: moved }).proportion ?? NaN) / before - 1), `turn ${turn}`).toBeLessThan(
        0.001,
      )
      expect(
        Math.abs((assess({ ...held, spot: moved }).subject?.heightFill ?? NaN) - spot.shot.subjectFill.share),
      ).toBeLessThan(1e-6)
    }
  })

  it('is a circle of Apollonius around the subject', () => {
    const plan = examplePlan(noLens)
    const held = { ...plan, spot: setHold(plan, 'proportion') }
    const ring = proportionRing(held, assess(held).proportion ?? NaN)
    expect(ring).not.toBeNull()
    const { at } = held.spot.stop
    const ratios = (ring ?? []).map((place) => {
      const middle = { lat: 0, lon: 0 }
      const line = held.landmark?.kind === 'span' ? held.landmark.line : []
      for (const point of line) {
        Object.assign(middle, { lat: middle.lat + point.lat / line.length, lon: middle.lon + point.lon / line.length })
      }
      return geodesicDistance(place, at) / geodesicDistance(place, middle)
    })
    for (const ratio of ratios) expect(Math.abs(ratio / (ratios[0] ?? NaN) - 1)).toBeLessThan(1e-5)
  })
})

describe('a held focal length', () => {
  it('moves the standpoint along its sightline until the fill is as wished', () => {
    const plan = examplePlan({ ...noLens, spot: { hold: 'focal-length' }, shot: { focalLength: 85 } })
    const found = wishFill(plan, { subjectFill: { share: 0.33, axis: 'width' } })
    expect(found.ok).toBe(true)
    if (!found.ok) return
    const made = assess({ ...plan, spot: found.value })
    expect(made.focalLength).toBe(85)
    expect(Math.abs((made.subject?.widthFill ?? NaN) - 0.33)).toBeLessThan(1e-9)
    const before = geodesicLine(plan.spot.stop.at, plan.spot.standpoint.at).bearing ?? NaN
    expect(geodesicLine(found.value.stop.at, found.value.standpoint.at).bearing).toBeCloseTo(before, 5)
  })

  it('shrinks subject and landmark alike when only the focal length halves, whatever the format', () => {
    // Similar triangles: the ratio of two images depends on sizes and distances alone, (H1/d1)/(H2/d2).
    const reading = (focalLength: number, sensorWidth: number) => {
      const plan = examplePlan({
        ...noLens,
        camera: { sensorWidth, sensorHeight: sensorWidth / 1.5 },
        spot: { hold: 'focal-length' },
        shot: { focalLength, placement: { across: 0, up: 0 }, subjectFill: { share: 0.3, axis: 'height' } },
      })
      return assess(plan).proportion ?? NaN
    }
    expect(reading(100, 36) / reading(50, 36)).toBeCloseTo(1, 9)
    expect(reading(50, 23.5) / reading(50, 36)).toBeCloseTo(1, 9)
  })

  it('stands at a distance that the standpoint then has', () => {
    const plan = examplePlan(noLens)
    const moved = standingAt(plan, 123, 9)
    expect(geodesicLine(moved.spot.stop.at, moved.spot.standpoint.at).distance).toBeCloseTo(9, 6)
  })
})
