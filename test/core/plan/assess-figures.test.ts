/** Each figure of an assessment against its definition, worked out beside it, and each problem told against the figure it is about. */
import { assert, constantFrom, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { projectLocal } from '#core/frame/projection.ts'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { assess, landmarkDepth, sharpnessOf } from '#core/plan/assess.ts'
import { setHold } from '#core/plan/arrange.ts'
import type { Plan } from '#core/plan/plan.ts'
import { sceneOf } from '#core/plan/plan-scene.ts'
import type { Landmark, Upright } from '#core/scene/landmark.ts'
import { ZOOM, bridgeAt, examplePlan } from '#test/help/plans.ts'
import { number } from '#test/help/arbitrary.ts'

const AT = { lat: -41.2, lon: 12.4 }

function tower(at: LatLon, height = 60, baseElevation: number | null = 12): Upright {
  const lean = { baseSlope: null, baseAspect: null }
  return { id: 'tower', name: 'Tower', kind: 'upright', at, height, width: 10, baseElevation, ...lean }
}

const reading = (plan: Plan) => assess(plan)

describe('the sightlines', () => {
  const landmark = tower(destination(AT, 70, 500))
  const plan = examplePlan({ at: AT, bearing: 40, distance: 7, landmark })

  it('are the geodesics between the things', () => {
    const { toSubject, toLandmark, subjectToLandmark } = reading(plan)
    const { stop } = plan.spot
    expect(toSubject).toMatchObject(geodesicLine(AT, stop.at))
    expect(toLandmark).toMatchObject(geodesicLine(AT, landmark.at))
    expect(subjectToLandmark).toMatchObject(geodesicLine(stop.at, landmark.at))
    expect([toSubject.distance, toLandmark?.distance]).toEqual([expect.closeTo(7, 6), expect.closeTo(500, 6)])
    expect([toSubject.bearing, toLandmark?.bearing]).toEqual([expect.closeTo(40, 6), expect.closeTo(70, 6)])
    expect(subjectToLandmark?.altitude).toBeNull()
  })

  it('rise from the lens to the middle of what is looked at', () => {
    const { toSubject, toLandmark } = reading(plan)
    // Ground level everywhere, the lens 1.2 m above it: the bicycle's middle is 0.6 m below, 7 m off.
    expect(toSubject.altitude).toBeCloseTo((Math.atan2(-0.6, 7) * 180) / Math.PI, 4)
    // From the tower's foot, at a distance of 495 to 505 m, to its top: the middle between the two altitudes.
    const [foot, top] = [-1.2, 58.8].map((up) => (Math.atan2(up, 500) * 180) / Math.PI)
    expect(Math.abs((toLandmark?.altitude ?? 0) - ((foot ?? 0) + (top ?? 0)) / 2)).toBeLessThan(0.04)
  })

  it('rise to the middle between the lowest and the highest part, wherever along it those are', () => {
    // A hanging bridge square to the view at 600 m: its feet nearest at 594, its towers of 60 m 110 m to either side.
    const bridge = reading(
      examplePlan({ at: AT, bearing: 40, landmark: { ...bridgeAt(AT, 40, 600), baseElevation: 12 } }),
    )
    const [foot, top] = [Math.atan2(-1.2, 594), Math.atan2(58.8, Math.hypot(594, 110))]
    const middle = ((foot + top) / 2) * (180 / Math.PI)
    expect(Math.abs((bridge.toLandmark?.altitude ?? 0) - middle)).toBeLessThan(0.03)
  })

  it('are none to a landmark that there is not', () => {
    const alone = reading(examplePlan({ landmark: null }))
    expect([alone.toLandmark, alone.subjectToLandmark, alone.landmark, alone.landmarkExtent, alone.proportion]).toEqual(
      [null, null, null, null, null],
    )
    expect(alone.subject).not.toBeNull()
  })
})

describe('a camera on the subject’s very place', () => {
  const at = (distance: number) => reading(examplePlan({ distance }))

  it('is told within five centimetres, and frames nothing', () => {
    const made = at(0.049)
    expect(made.problems).toEqual(['on-top-of-each-other'])
    expect(made.toSubject.altitude).toBeNull()
    const nothing = [made.view, made.focalLength, made.wantedFocalLength, made.lens, made.angleWide, made.angleHigh]
    expect(nothing).toEqual(nothing.map(() => null))
    expect([made.subject, made.landmark, made.subjectExtent, made.sharp, made.proportion]).toEqual(
      Array.from({ length: 5 }, () => null),
    )
    expect([made.offers, made.crops]).toEqual([[], []])
  })

  it('is all that is told then: nothing of landmark or proportion, which nobody sees', () => {
    for (const landmark of [null, bridgeAt(AT, 40, 600)]) {
      const known = landmark === null ? null : { ...landmark, baseElevation: 12 }
      const plan = examplePlan({ at: AT, distance: 0, landmark: known, spot: { hold: 'proportion' } })
      expect(reading(plan).problems).toEqual(['on-top-of-each-other'])
    }
  })

  it('is no longer told beyond, but that it is inside the subject', () => {
    const made = at(0.051)
    expect(made.problems).not.toContain('on-top-of-each-other')
    expect(made.problems).toContain('inside-subject')
    expect(made.toSubject.altitude).not.toBeNull()
  })
})

describe('a plan in whose way nothing stands', () => {
  it('has no problems', () => {
    const plan = examplePlan({ at: AT, landmark: tower(destination(AT, 40, 500)), shot: { aperture: 11 } })
    expect(reading(plan).problems).toEqual([])
  })

  it('is exposed for the aperture used', () => {
    // Two stops smaller take four times as long.
    const time = (aperture: number) =>
      reading(examplePlan({ shot: { aperture } })).light.exposure?.seconds ?? Number.NaN
    expect(time(16) / time(8)).toBeCloseTo(4, 6)
  })
})

describe('the frame', () => {
  it.each(['lying', 'upright'] as const)('%s has the angles of a pinhole, 2 atan(side / 2 v)', (orientation) => {
    const { view, angleWide, angleHigh } = reading(examplePlan({ shot: { orientation } }))
    const [wide, high] = orientation === 'lying' ? [36, 24] : [24, 36]
    const angle = (side: number) => (2 * Math.atan(side / 2 / (view?.imageDistance ?? Number.NaN)) * 180) / Math.PI
    expect(angleWide).toBeCloseTo(angle(wide), 12)
    expect(angleHigh).toBeCloseTo(angle(high), 12)
  })

  it('holds the things where their corners are projected', () => {
    const plan = examplePlan()
    const made = reading(plan)
    const { scene, landmarkBoundingPoints } = sceneOf(plan)
    for (const [framing, points] of [
      [made.subject, scene.corners],
      [made.landmark, landmarkBoundingPoints ?? []],
    ] as const) {
      if (framing === null || made.view === null) throw new Error('both are framed')
      const { view } = made
      const places = points.map((point) => projectLocal(view, point))
      expect(framing.left).toBeCloseTo(Math.min(...places.map((place) => place?.x ?? 0)), 12)
      expect(framing.right).toBeCloseTo(Math.max(...places.map((place) => place?.x ?? 0)), 12)
      expect(framing.bottom).toBeCloseTo(Math.min(...places.map((place) => place?.y ?? 0)), 12)
      expect(framing.top).toBeCloseTo(Math.max(...places.map((place) => place?.y ?? 0)), 12)
    }
  })

  it('has every crop of the shoot, lying and upright', () => {
    const plan = examplePlan()
    const { crops } = reading(plan)
    const wanted = (['lying', 'upright'] as const).flatMap((orientation) =>
      plan.shoot.crops.map((crop) => ({ crop, orientation })),
    )
    expect(crops.map(({ crop, orientation }) => ({ crop, orientation }))).toEqual(wanted)
  })
})

describe('the proportion', () => {
  it('is of millimetres on the wished sides', () => {
    assert(
      property(
        constantFrom('width' as const, 'height' as const),
        constantFrom('width' as const, 'height' as const),
        number(0.2, 0.8),
        (subjectAxis, landmarkAxis, share) => {
          const plan = examplePlan({
            lenses: [],
            shot: { subjectFill: { share, axis: subjectAxis }, landmarkFill: { share: 0.3, axis: landmarkAxis } },
          })
          const { subject, landmark, proportion } = reading(plan)
          if (subject === null || landmark === null) throw new Error('both are framed')
          const behind = landmarkAxis === 'width' ? landmark.widthFill * 36 : landmark.heightFill * 24
          const before = subjectAxis === 'width' ? subject.widthFill * 36 : subject.heightFill * 24
          expect(proportion).toBeCloseTo(behind / before, 9)
        },
      ),
      { numRuns: 30 },
    )
  })

  it('is none of a landmark that lies partly behind the lens, which is told', () => {
    // A bridge that runs over the camera along its view.
    const over = reading(examplePlan({ at: AT, bearing: 40, landmark: bridgeAt(AT, 40, 20, 0) }))
    expect(over.problems).toContain('landmark-partly-behind-camera')
    expect(over.problems).not.toContain('landmark-behind-camera')
    expect(over.proportion).toBeNull()
    expect(over.landmark?.whole).toBe(false)
    const before = reading(examplePlan())
    expect(before.problems).not.toContain('landmark-partly-behind-camera')
    expect(before.proportion).not.toBeNull()
  })

  it('held is told as not held from a millionth on, more or less, and only while it is held', () => {
    const plan = examplePlan({ lenses: [] })
    const held = { ...plan, spot: setHold(plan, 'proportion') }
    const off = (factor: number, hold = held.spot.hold) => {
      const { shot } = held.spot
      const { share, axis } = shot.landmarkFill
      const wished = { ...shot, landmarkFill: { share: share * factor, axis } }
      return reading({ ...held, spot: { ...held.spot, hold, shot: wished } }).problems.includes('proportion-not-held')
    }
    expect([1 - 2e-6, 1 - 5e-7, 1, 1 + 5e-7, 1 + 2e-6].map((factor) => off(factor))).toEqual([
      true,
      false,
      false,
      false,
      true,
    ])
    expect([off(2, 'standpoint'), off(2, 'focal-length')]).toEqual([false, false])
  })

  it('held with the landmark behind the camera is not held, and without one nothing is said of it', () => {
    const problems = (landmark: Landmark | null) =>
      reading(examplePlan({ at: AT, landmark, spot: { hold: 'proportion' } })).problems
    expect(problems(bridgeAt(AT, 220, 600))).toContain('proportion-not-held')
    expect(problems(null)).not.toContain('proportion-not-held')
  })
})

describe('sharpness', () => {
  it('is told where it fails, and only there', () => {
    let [deep, diffracted, outside] = [0, 0, 0]
    assert(
      property(number(1, 45), number(2.5, 30), number(0, 359), (aperture, distance, turned) => {
        const { problems, sharp } = reading(examplePlan({ distance, turned, shot: { aperture } }))
        if (sharp === null) return
        expect(problems.includes('not-sharp-end-to-end')).toBe(!sharp.endToEnd)
        expect(problems.includes('diffraction')).toBe(sharp.diffracted)
        // The bag's one lens opens from f/2.8 to f/22.
        if (problems.includes('no-lens-reaches')) return
        expect(problems.includes('aperture-outside-lens')).toBe(sharp.outsideLens)
        deep += sharp.endToEnd ? 0 : 1
        diffracted += sharp.diffracted ? 1 : 0
        outside += sharp.outsideLens ? 1 : 0
      }),
      { numRuns: 200 },
    )
    expect(Math.min(deep, diffracted, outside)).toBeGreaterThan(0)
  })

  it('needs no stopping down where the lens is sharp front to back wide open, and only there', () => {
    const seen = new Set<boolean>()
    for (const turned of [0, 30, 60, 90]) {
      const { sharp } = reading(examplePlan({ distance: 6, turned, shot: { aperture: 2.8 } }))
      if (sharp === null) continue
      expect(sharp.anyStop).toBe(sharp.endToEnd)
      seen.add(sharp.anyStop)
    }
    expect(seen.size).toBe(2)
    expect(reading(examplePlan({ lenses: [], shot: { aperture: 2.8 } })).sharp?.anyStop).toBe(false)
  })

  it('is judged at the lens taken: its own limits, none without a lens', () => {
    const slow = { ...ZOOM, id: 'slow', widestAtMin: 5.6, widestAtMax: 5.6 }
    const told = (parts: Parameters<typeof examplePlan>[0]) =>
      reading(examplePlan(parts)).problems.includes('aperture-outside-lens')
    expect(told({ lenses: [ZOOM, slow], shot: { aperture: 4 } })).toBe(false)
    expect(told({ lenses: [ZOOM, slow], shot: { aperture: 4, lensId: 'slow' } })).toBe(true)
    expect(told({ lenses: [], shot: { aperture: 4 } })).toBe(false)
    // From 60 m the zoom is taken at its long end, and reaches that.
    expect(told({ distance: 60, shot: { aperture: 1 } })).toBe(true)
  })

  it('goes by the subject’s ends, and by the landmark’s middle depth', () => {
    const plan = examplePlan({ shot: { aperture: 8 } })
    const made = reading(plan)
    const { sharp, subjectExtent, landmarkExtent, focalLength, view } = made
    if (sharp === null || subjectExtent === null || landmarkExtent === null || view === null)
      throw new Error('both are framed')
    expect([sharp.near, sharp.far]).toEqual([subjectExtent.near, subjectExtent.far])
    const setUp = { view, focalLength: focalLength ?? 0, focusDistance: sharp.focusDistance, subject: subjectExtent }
    const { camera } = plan.shoot.bag
    expect(sharpnessOf(camera, ZOOM, 8, setUp, landmarkExtent)).toEqual(sharp)
    expect(sharpnessOf(camera, ZOOM, 8, setUp, null)).toEqual({ ...sharp, landmark: null })
    const deep = { ...landmarkExtent, near: 500, far: 700 }
    expect(landmarkDepth(deep)).toBe(600)
    // The blur disc of what lies 600 m off (textbook): f / N of the pupil, by how far it lies behind the focus, as the image is large.
    const focal = setUp.focalLength / 1000
    const u = sharp.focusDistance
    const disc = ((focal / sharp.used.exact) * ((600 - u) / 600) * focal) / (u - focal)
    expect(sharpnessOf(camera, ZOOM, 8, setUp, deep).landmark?.disc).toBeCloseTo(disc * 1000, 9)
  })
})

describe('an assumed level', () => {
  it('is told of a landmark whose foot is not known, and of no other', () => {
    const problems = (landmark: Landmark | null) => reading(examplePlan({ at: AT, landmark })).problems
    expect(problems(tower(destination(AT, 40, 500), 60, null))).toContain('landmark-level-assumed')
    expect(problems(tower(destination(AT, 40, 500)))).not.toContain('landmark-level-assumed')
    expect(problems(null)).not.toContain('landmark-level-assumed')
  })
})
