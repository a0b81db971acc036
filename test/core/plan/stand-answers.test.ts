/** Where to stand: each answer and each plain no, by thin-lens figures worked out beside them. */
import { assert, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { assess } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import {
  bearingAwayFromLandmark,
  bearingOfStandpoint,
  landmarkShareAt,
  landmarkShareHere,
  nearestStand,
  standForBothFills,
  standForFill,
  standForProportion,
  standingAt,
} from '#core/plan/stand.ts'
import type { Spot } from '#core/record/spot.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'
import { number } from '#test/help/arbitrary.ts'

const AT: LatLon = { lat: -41.2, lon: 12.4 }
const away = ({ stop, standpoint }: Spot): number => geodesicDistance(stop.at, standpoint.at)

/** A board square to the camera at the height of its lens, without depth: 2 m wide and 1.2 m high, as seen from the south. */
function board(focalLength: number, share: number, axis: 'width' | 'height' = 'width'): Plan {
  const plan = examplePlan({
    at: AT,
    bearing: 0,
    distance: 20,
    turned: 90,
    landmark: null,
    subject: { length: 2, width: 1e-6, height: 1.2 },
    lenses: [],
    shoot: { refraction: 0 },
    spot: { hold: 'focal-length' },
    shot: {
      focalLength,
      placement: { across: 0, up: 0 },
      focus: { on: 'middle', behindFront: 0 },
      subjectFill: { share, axis },
    },
  })
  const { standpoint, stop } = plan.spot
  // By the sea: distances along the ellipsoid are then those before the lens.
  const spot = {
    ...plan.spot,
    standpoint: { ...standpoint, lensHeight: 0.6, elevation: 0 },
    stop: { ...stop, elevation: 0 },
  }
  return { ...plan, spot }
}

describe('bearings', () => {
  it('lead from the subject to the camera, and straight away from the landmark', () => {
    const plan = examplePlan({ at: AT, bearing: 40, landmark: bridgeAt(AT, 100, 600) })
    expect(bearingOfStandpoint(plan)).toBeCloseTo(220, 3)
    const [one, , , other] = bridgeAt(AT, 100, 600).line
    if (one === undefined || other === undefined) throw new Error('the bridge has four points')
    const middle = geodesicLine(plan.spot.stop.at, destination(AT, 100, 600)).bearing ?? Number.NaN
    expect(bearingAwayFromLandmark(plan)).toBeCloseTo(middle + 180, 3)
    expect(bearingAwayFromLandmark(examplePlan({ at: AT, bearing: 40, landmark: null }))).toBeNull()
  })

  it('with camera and subject at one place lead away from the landmark, if there is one', () => {
    const one = examplePlan({ at: AT, distance: 0, landmark: bridgeAt(AT, 100, 600) })
    expect(bearingOfStandpoint(one)).toBe(bearingAwayFromLandmark(one))
    expect(bearingOfStandpoint(one)).toBeCloseTo(280, 2)
    expect(bearingOfStandpoint(examplePlan({ at: AT, distance: 0, landmark: null }))).toBeNull()
  })

  it('lead nowhere from a landmark on the subject’s very place', () => {
    const plan = examplePlan({ at: AT, distance: 5 })
    const upright = { id: 'u', name: '', kind: 'upright', height: 9, width: 1, baseElevation: 0 } as const
    const landmark = { ...upright, at: plan.spot.stop.at, baseSlope: null, baseAspect: null }
    expect(bearingAwayFromLandmark({ ...plan, landmark })).toBeNull()
  })
})

describe('the nearest stand', () => {
  it('is a hand’s breadth beyond the corner of the subject', () => {
    // Half the diagonal of 3 x 4 is 2.5.
    const { subject } = examplePlan({ subject: { length: 3, width: 4 } }).shoot
    expect(nearestStand(subject)).toBeCloseTo(2.5 + 0.3, 12)
  })
})

describe('standing for a fill', () => {
  it('is as far off as a thin lens has it: d = f (1 + W / (s S))', () => {
    assert(
      property(number(20, 400), number(0.05, 0.9), (focal, share) => {
        for (const [axis, size, side] of [
          ['width', 2, 36],
          ['height', 1.2, 24],
        ] as const) {
          const wanted = (focal / 1000) * (1 + (1000 * size) / (share * side))
          const plan = board(focal, share, axis)
          // Nearer than beside the subject nobody stands.
          if (wanted < nearestStand(plan.shoot.subject) * 1.001) return
          const found = standForFill(plan)
          if (!found.ok) throw new Error(found.fault.message)
          expect(Math.abs(away(found.value) / wanted - 1)).toBeLessThan(1e-6)
          expect(geodesicLine(found.value.stop.at, found.value.standpoint.at).bearing).toBeCloseTo(180, 3)
          expect(found.value.shot).toBe(plan.spot.shot)
        }
      }),
      { numRuns: 60 },
    )
  })

  it('can be just beyond the nearest stand, and not before it', () => {
    const nearest = nearestStand(board(50, 0.5).shoot.subject)
    // d = f (1 + W / (s S)) solved for the share.
    const shareAt = (distance: number) => (0.05 * 2000) / ((distance - 0.05) * 36)
    const [far, near] = [1.001, 0.999].map((factor) => standForFill(board(50, shareAt(nearest * factor))))
    expect(far?.ok === true && Math.abs(away(far.value) / nearest - 1.001) < 1e-6).toBe(true)
    expect(near?.ok === false && near.fault.reason).toBe('cannot-be')
    expect(near?.ok === false && near.fault.message).toContain('With 50 mm')
  })

  it('says plainly with which focal length it cannot be', () => {
    const found = standForFill(board(23.456, 19))
    expect(!found.ok && found.fault.message).toContain('With 23.5 mm')
  })

  it('is none where camera and subject are at one place and nothing says which way', () => {
    const plan = board(50, 0.5)
    const one = { ...plan, spot: { ...plan.spot, standpoint: { ...plan.spot.standpoint, at: plan.spot.stop.at } } }
    const found = standForFill(one)
    expect(!found.ok && found.fault.reason).toBe('same-place')
  })

  it('is at the edge of what a long lens can focus, where nearer places give no image at all', () => {
    // Of a metre of focal length no image nearer than 2 m, which lies beyond the nearest stand of 1.3 m: from there the share falls.
    // By 20 well beyond that edge, by the others right at it, before the next place that a coarse search would try.
    for (const [focal, share] of [
      [1000, 20],
      [1000, 55],
      [1100, 45],
      [1500, 50],
    ] as const) {
      const found = standForFill(board(focal, share))
      if (!found.ok) throw new Error(found.fault.message)
      expect(away(found.value)).toBeCloseTo((focal / 1000) * (1 + 2000 / (share * 36)), 4)
    }
    // Larger than life it is nowhere.
    expect(standForFill(board(1000, 56)).ok).toBe(false)
  })
})

describe('the share that the landmark takes', () => {
  const plan = examplePlan({ at: AT, lenses: [], shot: { landmarkFill: { share: 0.3, axis: 'height' } } })

  it('is that of the assessment, on the side it is wished of', () => {
    const { landmark } = assess(plan)
    expect(landmarkShareHere(plan)).toBeCloseTo(landmark?.heightFill ?? Number.NaN, 12)
    const wide = { ...plan.spot.shot, landmarkFill: { share: 0.3, axis: 'width' as const } }
    const other = { ...plan, spot: { ...plan.spot, shot: wide } }
    expect(landmarkShareHere(other)).toBeCloseTo(assess(other).landmark?.widthFill ?? Number.NaN, 12)
    const there = standingAt(plan, 200, 15)
    expect(landmarkShareAt(plan, 200, 15)).toBe(landmarkShareHere(there))
  })

  it('is none without one, with one behind or partly behind, and where the subject cannot fill', () => {
    const share = (landmark: Plan['landmark'], distance = 7) =>
      landmarkShareHere(examplePlan({ at: AT, bearing: 40, distance, landmark, lenses: [] }))
    expect(share(null)).toBeNull()
    expect(share(bridgeAt(AT, 220, 600))).toBeNull()
    expect(share(bridgeAt(AT, 40, 20, 0))).toBeNull()
    expect(share(bridgeAt(AT, 40, 600), 0)).toBeNull()
    expect(share(bridgeAt(AT, 40, 600))).not.toBeNull()
  })
})

describe('standing for both fills', () => {
  const base = examplePlan({ at: AT, lenses: [] })
  const wishing = (share: number, plan = base): Plan => ({
    ...plan,
    spot: { ...plan.spot, shot: { ...plan.spot.shot, landmarkFill: { share, axis: 'height' } } },
  })
  const toward = bearingAwayFromLandmark(base) ?? Number.NaN
  const nearest = nearestStand(base.shoot.subject)
  const reasonOf = (plan: Plan, bearing = toward): string => {
    const found = standForBothFills(plan, bearing)
    return found.ok ? 'found' : found.fault.reason
  }

  it('has the focal length that goes with it', () => {
    const share = landmarkShareAt(base, toward, 12) ?? Number.NaN
    const plan = wishing(share)
    const found = standForBothFills(plan, toward)
    if (!found.ok) throw new Error(found.fault.message)
    expect(away(found.value)).toBeCloseTo(12, 4)
    const { wantedFocalLength } = assess({ ...plan, spot: found.value })
    expect(found.value.shot.focalLength).toBeCloseTo(wantedFocalLength ?? Number.NaN, 9)
    expect(found.value.shot.landmarkFill).toEqual(plan.spot.shot.landmarkFill)
  })

  it('can be from the nearest stand to the farthest, and says which end is missed', () => {
    const least = landmarkShareAt(base, toward, nearest) ?? Number.NaN
    const most = landmarkShareAt(base, toward, 50_000) ?? Number.NaN
    expect(least).toBeLessThan(most)
    expect(reasonOf(wishing(least * 1.001))).toBe('found')
    expect(reasonOf(wishing(most * 0.999))).toBe('found')
    expect(reasonOf(wishing(least * 0.999))).toBe('too-small')
    expect(reasonOf(wishing(most * 1.001))).toBe('too-large')
  })

  it('tells in the figure what can be had', () => {
    const message = (share: number) => {
      const found = standForBothFills(wishing(share), toward)
      return found.ok ? '' : found.fault.message
    }
    const percent = (distance: number) => Math.round((landmarkShareAt(base, toward, distance) ?? NaN) * 1000) / 10
    expect(message(19)).toContain(`at most ${percent(50_000)} % of the height`)
    expect(message(0.0001)).toContain(`fills ${percent(nearest)} % of the height`)
  })

  it('can be right from where the subject can be so small, with nothing nearer', () => {
    // Pinned far aside in the frame, a subject near by shows more of itself than so little with any lens.
    const aside = examplePlan({
      at: AT,
      lenses: [],
      shot: { subjectFill: { share: 0.03, axis: 'width' }, placement: { across: 0.45, up: -0.3 } },
    })
    expect(landmarkShareAt(aside, toward, nearest)).toBeNull()
    let [none, some] = [nearest, 1000]
    expect(landmarkShareAt(aside, toward, some)).not.toBeNull()
    while (some - none > 1e-3) {
      const middle = (none + some) / 2
      if (landmarkShareAt(aside, toward, middle) === null) none = middle
      else some = middle
    }
    for (const factor of [1.02, 1.1, 1.3, 3]) {
      const plan = wishing(landmarkShareAt(aside, toward, some * factor) ?? Number.NaN, aside)
      const found = standForBothFills(plan, toward)
      if (!found.ok) throw new Error(found.fault.message)
      expect(away(found.value) / (some * factor)).toBeCloseTo(1, 5)
      expect(landmarkShareHere({ ...plan, spot: found.value })).toBeCloseTo(plan.spot.shot.landmarkFill.share, 9)
    }
    // Less than it takes there it takes nowhere: but neither is it too small from right beside, where nothing can be said.
    const less = wishing((landmarkShareAt(aside, toward, some) ?? Number.NaN) * 0.9, aside)
    expect(reasonOf(less)).toBe('cannot-be')
  })

  it('cannot be with the landmark behind the camera, or without one', () => {
    const found = standForBothFills(wishing(0.3), toward + 180)
    expect(!found.ok && found.fault.reason).toBe('cannot-be')
    expect(reasonOf(examplePlan({ at: AT, landmark: null }), 0)).toBe('no-landmark')
    // So far off that it is behind the camera from every place that is looked at.
    const remote = examplePlan({ at: AT, bearing: 40, lenses: [], landmark: bridgeAt(AT, 40, 80_000) })
    expect(reasonOf(remote, 40)).toBe('cannot-be')
  })
})

describe('standing for the proportion', () => {
  const plan = examplePlan({ at: AT, lenses: [], shot: { landmarkFill: { share: 0.4, axis: 'height' } } })

  it('keeps bearing and wishes, and only slides', () => {
    const found = standForProportion(plan)
    if (found === null) throw new Error('a bridge of 60 m can fill so much')
    expect(landmarkShareHere(found)).toBeCloseTo(0.4, 7)
    const [before, after] = [plan, found].map(({ spot }) => geodesicLine(spot.stop.at, spot.standpoint.at).bearing)
    expect(after).toBeCloseTo(before ?? Number.NaN, 5)
    expect(found.spot.shot).toBe(plan.spot.shot)
  })

  it('is none without a landmark, and where no place gives it', () => {
    expect(standForProportion({ ...plan, landmark: null })).toBeNull()
    const much = { ...plan.spot.shot, landmarkFill: { share: 19, axis: 'height' as const } }
    expect(standForProportion({ ...plan, spot: { ...plan.spot, shot: much } })).toBeNull()
  })
})
