/** The assessment: its facts of the trade, its properties, its faults. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { setUp, subjectShare } from '#core/frame/set-up.ts'
import { assess } from '#core/plan/assess.ts'
import { sceneOf, settingOf } from '#core/plan/plan-scene.ts'
import { setHold, spotFollowing } from '#core/plan/arrange.ts'
import { destination } from '#core/geo/geodesic.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { ZOOM, bridgeAt, examplePlan } from '#test/help/plans.ts'

/** Every number anywhere in a value; the path names a stray one. */
function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]]
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`))
}

describe('facts of the trade (common practice, no source)', () => {
  // A two-metre vehicle nearly side on at about 70 mm, filling two thirds of a 36 mm wide frame.
  const vehicle = { length: 2, width: 0.65, height: 1.1 }
  const wide = { subjectFill: { share: 2 / 3, axis: 'width' as const }, placement: { across: 0, up: 0 } }

  it.each([78, 102])('holds a vehicle 10 to 15 degrees off its side end to end at f/2.8 (heading %i)', (turned) => {
    const plan = examplePlan({ subject: vehicle, distance: 5.9, turned, shot: { ...wide, aperture: 2.8 } })
    const made = assess(plan)
    expect(made.wantedFocalLength).toBeGreaterThan(64)
    expect(made.wantedFocalLength).toBeLessThan(76)
    expect(made.sharp?.endToEnd).toBe(true)
  })

  it('needs one to two stops more than f/4 when the vehicle is turned well toward the lens in a tight upright frame', () => {
    const shot = {
      orientation: 'upright' as const,
      subjectFill: { share: 0.85, axis: 'width' as const },
      focus: { on: 'near' as const, behindFront: 0 },
      placement: { across: 0, up: 0 },
    }
    const plan = examplePlan({ subject: vehicle, turned: 125, distance: 5.9, shot: { ...shot, aperture: 4 } })
    const atFour = assess(plan)
    expect(atFour.sharp?.endToEnd).toBe(false)
    expect(atFour.sharp?.limits.far).toBeLessThan(atFour.sharp?.far ?? 0)
    const needed = assess({ ...plan, spot: { ...plan.spot, shot: { ...plan.spot.shot, aperture: null } } }).sharp
      ?.neededStop?.mark
    expect(needed).toBeGreaterThanOrEqual(5.6)
    expect(needed).toBeLessThanOrEqual(6.3)
  })
})

describe('the reading of a plan', () => {
  it('gives the wished fill back when projected', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.double({ min: 0.15, max: 0.95, noNaN: true }),
        fc.constantFrom('width' as const, 'height' as const),
        fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        fc.double({ min: -80, max: 80, noNaN: true }),
        (distance, bearing, turned, share, axis, across, lat) => {
          const plan = examplePlan({
            at: { lat, lon: 179.99999 },
            bearing,
            distance,
            turned,
            lenses: [],
            shot: { subjectFill: { share, axis }, placement: { across, up: -0.1 } },
          })
          const made = assess(plan)
          if (made.wantedFocalLength === null) {
            // Only where every lens shows more: a near thing pinned off the axis has a least share, at no very short focal length.
            const { scene } = sceneOf(plan)
            const shares = Array.from({ length: 200 }, (_, index) =>
              setUp(scene, settingOf(plan, 'lying'), 0.5 * 1.03 ** index),
            )
            return shares.every((tried) => tried === null || subjectShare(tried, axis) > share * 0.999)
          }
          const fill = axis === 'width' ? made.subject?.widthFill : made.subject?.heightFill
          expect(Math.abs((fill ?? NaN) - share)).toBeLessThan(1e-9)
          return true
        },
      ),
      { numRuns: 400 },
    )
  })

  it('places the subject where it is wished in the frame', () => {
    const plan = examplePlan({ turned: 90, subject: { width: 1e-3 }, shot: { placement: { across: 0.2, up: -0.15 } } })
    const made = assess(plan)
    // Seen square from the side the box is flat, and its bounds' middle is its centre but for the slight turn off the axis.
    expect(((made.subject?.left ?? 0) + (made.subject?.right ?? 0)) / 2).toBeCloseTo(0.2, 1)
  })

  it('never deepens the field with a wider aperture', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.4, max: 22, noNaN: true }),
        fc.double({ min: 1.4, max: 22, noNaN: true }),
        fc.double({ min: 3, max: 40, noNaN: true }),
        (one, other, distance) => {
          const depth = (aperture: number) => {
            const limits = assess(examplePlan({ distance, shot: { aperture } })).sharp?.limits
            return limits === undefined ? null : (limits.far ?? Infinity) - limits.near
          }
          const wide = depth(Math.min(one, other))
          const narrow = depth(Math.max(one, other))
          if (wide === null || narrow === null) return
          expect(wide).toBeLessThanOrEqual(narrow + 1e-9)
        },
      ),
      { numRuns: 200 },
    )
  })

  it('holds no NaN and no Infinity for any finite input', () => {
    const metres = fc.oneof(fc.double({ min: 1e-3, max: 1e5, noNaN: true }), fc.constantFrom(0.001, 1, 1000))
    fc.assert(
      fc.property(
        fc.record({
          lat: fc.oneof(fc.double({ min: -90, max: 90, noNaN: true }), fc.constantFrom(90, -90, 0)),
          lon: fc.oneof(fc.double({ min: -180, max: 179.999, noNaN: true }), fc.constantFrom(-180, 179.9999999)),
          distance: fc.oneof(fc.double({ min: 0, max: 1e5, noNaN: true }), fc.constantFrom(0, 1e-9, 0.1, 0.6, 1)),
          bearing: fc.double({ min: 0, max: 359.99, noNaN: true }),
          turned: fc.double({ min: 0, max: 359.99, noNaN: true }),
          length: metres,
          width: metres,
          height: metres,
          lensHeight: fc.double({ min: 0, max: 1000, noNaN: true }),
          share: fc.double({ min: 1e-3, max: 20, noNaN: true }),
          focal: fc.double({ min: 0.5, max: 10_000, noNaN: true }),
          hold: fc.constantFrom('standpoint' as const, 'focal-length' as const, 'proportion' as const),
          aperture: fc.option(fc.double({ min: 0.5, max: 128, noNaN: true })),
          landmarkDistance: fc.oneof(fc.double({ min: 0, max: 1e5, noNaN: true }), fc.constantFrom(0, 0.01, 7)),
          base: fc.option(fc.double({ min: -500, max: 9000, noNaN: true })),
          sensor: fc.double({ min: 0.5, max: 1000, noNaN: true }),
          across: fc.double({ min: -2, max: 2, noNaN: true }),
          on: fc.constantFrom('near' as const, 'middle' as const, 'far' as const, 'feature' as const, 'best' as const),
        }),
        (from) => {
          const at = { lat: from.lat, lon: from.lon }
          const landmark = { ...bridgeAt(at, from.bearing, from.landmarkDistance), baseElevation: from.base }
          const plan = examplePlan({
            at,
            bearing: from.bearing,
            distance: from.distance,
            turned: from.turned,
            landmark,
            camera: { sensorWidth: from.sensor },
            subject: { length: from.length, width: from.width, height: from.height },
            spot: { hold: from.hold },
            shot: {
              subjectFill: { share: from.share, axis: 'width' },
              focalLength: from.focal,
              aperture: from.aperture,
              placement: { across: from.across, up: 0.1 },
              focus: { on: from.on, behindFront: 0.5 },
            },
          })
          const tall = {
            ...plan,
            spot: { ...plan.spot, standpoint: { ...plan.spot.standpoint, lensHeight: from.lensHeight } },
          }
          const stray = numbersIn(assess(tall)).filter(([, number]) => !Number.isFinite(number))
          expect(stray).toEqual([])
        },
      ),
      { numRuns: 600 },
    )
  })

  it('is plain: it survives JSON unchanged', () => {
    const made = assess(examplePlan())
    expect(JSON.parse(JSON.stringify(made))).toEqual(made)
  })
})

describe('what stands in the way is told', () => {
  const problems = (parts: Parameters<typeof examplePlan>[0]) => assess(examplePlan(parts)).problems

  it('subject on top of the standpoint', () => {
    const made = assess(examplePlan({ distance: 0 }))
    expect(made.problems).toContain('on-top-of-each-other')
    expect(made.toSubject.bearing).toBeNull()
    expect(made.view).toBeNull()
  })

  it('landmark behind the camera, nearer than the subject, missing', () => {
    const at = { lat: -41.2, lon: 12.4 }
    expect(problems({ at, bearing: 40, landmark: bridgeAt(at, 220, 600) })).toContain('landmark-behind-camera')
    const post: Landmark = {
      id: 'post',
      name: 'Post',
      kind: 'upright',
      at: destination(at, 40, 3),
      height: 2,
      width: 0.1,
      baseElevation: 12,
      baseSlope: null,
      baseAspect: null,
    }
    expect(problems({ at, bearing: 40, landmark: post })).toContain('landmark-nearer-than-subject')
    expect(problems({ landmark: null })).toContain('no-landmark')
  })

  it('a landmark is nearer when its nearest part is nearer than the subject’s, wherever the rest of both lies', () => {
    const at = { lat: -41.2, lon: 12.4 }
    /** Along the sightline from one distance to another; the bicycle side-on stands from 6.7 to 7.3 m, end-on from 5.75 to 8.25 m. */
    const wall = (from: number, to: number): Landmark => ({
      ...bridgeAt(at, 40, 600),
      form: 'wall',
      line: [destination(at, 40, from), destination(at, 40, to)],
      height: 1,
      deckHeight: 1,
      width: 0.05,
      baseElevation: 12,
    })
    const nearer = (from: number, to: number, turned: number): boolean =>
      problems({ at, bearing: 40, landmark: wall(from, to), turned }).includes('landmark-nearer-than-subject')
    // It begins before the subject and ends far behind it; it begins within the subject's depth, and behind it.
    expect([nearer(4, 60, 90), nearer(6.4, 60, 0), nearer(7.9, 60, 0), nearer(9, 60, 0)]).toEqual([
      true,
      false,
      false,
      false,
    ])
    expect([nearer(6.4, 60, 90), nearer(7.5, 60, 90)]).toEqual([true, false])
  })

  it('a focus too near once, by the lens taken and from the sensor on', () => {
    const made = assess(examplePlan())
    const { lens, sharp, view } = made
    if (lens === null || sharp === null || view === null) throw new Error('nothing is framed')
    const focus = sharp.focusDistance + view.imageDistance / 1000
    const told = (closestFocus: number): readonly string[] =>
      problems({ lenses: [{ ...ZOOM, closestFocus }] }).filter((problem) => problem === 'focus-too-near')
    expect(told(focus + 0.001)).toEqual(['focus-too-near'])
    expect(told(focus - 0.001)).toEqual([])
    // Another lens of the bag that could not focus so near is of no account.
    const long = { ...ZOOM, id: 'long', focalMin: 100, focalMax: 400, closestFocus: 20 }
    expect(problems({ lenses: [ZOOM, long] })).not.toContain('focus-too-near')
    expect(problems({ lenses: [ZOOM, long], shot: { lensId: 'long' } })).toContain('focus-too-near')
  })

  it('an empty bag, a lens that does not reach, a focal length outside it, a focus too near', () => {
    expect(problems({ lenses: [] })).toContain('empty-bag')
    expect(problems({ distance: 60 })).toContain('no-lens-reaches')
    expect(problems({ spot: { hold: 'focal-length' }, shot: { focalLength: 300 } })).toContain(
      'focal-length-outside-lens',
    )
    expect(problems({ lenses: [{ ...ZOOM, closestFocus: 20 }] })).toContain('focus-too-near')
    expect(problems({ shot: { aperture: 1.4 } })).toContain('aperture-outside-lens')
  })

  it('the nearest lens says what it gives instead', () => {
    const made = assess(examplePlan({ distance: 60 }))
    expect(made.lens?.focalLength).toBe(70)
    expect(made.lens?.end).toBe('long')
    expect(made.lens?.gives).toBeCloseTo(made.subject?.widthFill ?? 0, 12)
    expect(made.subject?.widthFill).toBeLessThan(0.5)
  })
})

describe('degrees off the subject’s side', () => {
  // The sightline's bearing is 40: a heading turned by 90 from it is side-on, by 0 or 180 end-on, to either hand.
  it.each([
    [90, 0],
    [-90, 0],
    [270, 0],
    [0, 90],
    [180, 90],
    [60, 30],
    [120, 30],
    [-60, 30],
    [-120, 30],
    [200, 70],
    [340, 70],
  ])('turned by %d from the sightline it is %d', (turned, off) => {
    expect(assess(examplePlan({ turned })).offSide).toBeCloseTo(off, 3)
  })

  it('is never below 0 or above 90, and without meaning at one place', () => {
    for (let turned = 0; turned < 360; turned += 7) {
      const off = assess(examplePlan({ turned })).offSide ?? NaN
      expect(off).toBeGreaterThanOrEqual(0)
      expect(off).toBeLessThanOrEqual(90)
    }
    expect(assess(examplePlan({ distance: 0 })).offSide).toBeNull()
  })
})

describe('levels', () => {
  it('lower a far foot by curvature less refraction', () => {
    // d^2 (1 - k) / 2R at 20 km: 31.4 m without air, 27.3 m with k 0.13.
    const seen = (refraction: number) => {
      const at = { lat: 10, lon: 20 }
      const far: Landmark = {
        id: 'x',
        name: 'X',
        kind: 'upright',
        at: destination(at, 90, 20_000),
        height: 1,
        width: 1,
        baseElevation: 0,
        baseSlope: null,
        baseAspect: null,
      }
      const plan = examplePlan({ at, bearing: 90, distance: 50, landmark: far, shoot: { refraction } })
      const spot = {
        ...plan.spot,
        stop: { ...plan.spot.stop, elevation: 0 },
        standpoint: { ...plan.spot.standpoint, elevation: 0, lensHeight: 0.5 },
      }
      const altitude = assess({ ...plan, spot }).toLandmark?.altitude ?? NaN
      return -Math.tan((altitude * Math.PI) / 180) * 20_000
    }
    expect(Math.abs(seen(0) - 31.4)).toBeLessThan(0.15)
    expect(Math.abs(seen(0.13) - 27.3)).toBeLessThan(0.15)
  })
})

describe('what is held', () => {
  it('keeps the present fill and focal length when the focal length is held', () => {
    const plan = examplePlan({ lenses: [] })
    const before = assess(plan)
    const spot = setHold(plan, 'focal-length')
    const after = assess({ ...plan, spot })
    expect(spot.shot.focalLength).toBeCloseTo(before.focalLength ?? NaN, 9)
    expect(after.subject?.widthFill).toBeCloseTo(before.subject?.widthFill ?? NaN, 9)
  })

  it('keeps the present proportion when the proportion is held, and changes nothing by being chosen', () => {
    const plan = examplePlan({ lenses: [] })
    const spot = setHold(plan, 'proportion')
    const moved = spotFollowing({ ...plan, spot })
    expect(assess({ ...plan, spot: moved }).proportion).toBeCloseTo(assess(plan).proportion ?? NaN, 6)
    expect(moved.standpoint.at.lat).toBeCloseTo(plan.spot.standpoint.at.lat, 8)
  })
})

describe('a camera inside the subject', () => {
  // By the van's own outline, turned: 5.9 m long and 2.1 m wide, so no single distance tells inside from outside.
  const van = { length: 5.9, width: 2.1, height: 2.8 }
  const at = { lat: -41.2, lon: 12.4 }

  it('is told wherever it stands within the turned outline, and nowhere else', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        (heading, ahead, right) => {
          fc.pre(Math.hypot(ahead, right) > 0.06)
          fc.pre(Math.abs(Math.abs(ahead) - 2.95) > 1e-3 && Math.abs(Math.abs(right) - 1.05) > 1e-3)
          // Seen from the camera the van's middle lies the other way.
          const toMiddle = heading + (Math.atan2(-right, -ahead) * 180) / Math.PI
          const plan = examplePlan({ at, subject: van, bearing: toMiddle, distance: Math.hypot(ahead, right) })
          const turned = { ...plan, spot: { ...plan.spot, stop: { ...plan.spot.stop, heading } } }
          const inside = Math.abs(ahead) < 2.95 && Math.abs(right) < 1.05
          expect(assess(turned).problems.includes('inside-subject')).toBe(inside)
        },
      ),
    )
  })
})
