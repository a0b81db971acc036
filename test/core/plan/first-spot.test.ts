/** The first spot of a shoot: clear of its landmark, both things whole in the frame with a lens of the bag, and by day, anywhere on the globe. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { sunAt } from '#core/light/sky.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import type { Lens } from '#core/optics/lens.ts'
import { assess } from '#core/plan/assess.ts'
import { type FirstSpot, firstSpot } from '#core/plan/first-spot.ts'
import { planOf } from '#core/plan/plan.ts'
import { newLandmark, newLens, newShoot } from '#core/record/new-records.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { LANDMARK_KINDS, type Landmark, type LandmarkKind, landmarkPoints } from '#core/scene/landmark.ts'
import { SUBJECT_KINDS, SUBJECT_PRESETS, type SubjectKind } from '#core/scene/subject.ts'
import { DAY, HOUR } from '#core/time/duration.ts'
import { turnBetween } from '#core/units/angle.ts'
import { number } from '#test/help/arbitrary.ts'

const prime = (focal: number): Lens => ({ ...newLens(`prime-${focal}`), focalMin: focal, focalMax: focal })
const zoom = (focalMin: number, focalMax: number): Lens => ({
  ...newLens(`zoom-${focalMin}`),
  focalMin,
  focalMax,
  closestFocus: 1.2,
})
const BAGS: readonly (readonly Lens[])[] = [
  [newLens('usual')],
  [prime(35)],
  [prime(85), prime(50)],
  [zoom(70, 200)],
  [zoom(16, 35)],
]

interface Parts {
  readonly kind: LandmarkKind
  readonly at: LatLon
  readonly subject: SubjectKind
  readonly lenses: readonly Lens[]
}

function shootWith({ kind, at, subject, lenses }: Parts): Shoot {
  const fresh = newShoot('shoot', 'lens', 0)
  return {
    ...fresh,
    subject: { ...fresh.subject, kind: subject, ...SUBJECT_PRESETS[subject] },
    landmarks: [newLandmark('landmark', kind, at)],
    bag: { ...fresh.bag, lenses },
  }
}

function laid(shoot: Shoot, now: number): FirstSpot {
  const made = firstSpot(shoot, { id: 'spot', rank: 1 }, now, 'UTC')
  if (made === null) throw new Error('no spot was laid')
  return made
}

/** Places where nothing is usual, and any others. */
const place = fc.oneof(
  fc.constantFrom<LatLon>(
    { lat: 90, lon: 0 },
    { lat: -90, lon: 0 },
    { lat: 89.99, lon: 75 },
    { lat: -12, lon: 180 },
    { lat: 51, lon: -179.9995 },
    { lat: 0, lon: 0 },
  ),
  fc.record({ lat: number(-85, 85), lon: number(-180, 180) }),
)
const parts: fc.Arbitrary<Parts> = fc.record({
  kind: fc.constantFrom(...LANDMARK_KINDS),
  at: place,
  subject: fc.constantFrom(...SUBJECT_KINDS),
  lenses: fc.constantFrom(...BAGS),
})
const instant = fc.integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2040, 0, 1) })

/** Metres from a place to the landmark's nearest corner on the ground, its own thickness taken off. */
function clearance(landmark: Landmark, at: LatLon): number {
  const half = landmark.kind === 'building' ? 0 : landmark.width / 2
  return Math.min(...landmarkPoints(landmark).map((corner) => geodesicDistance(corner, at))) - half
}

describe('wherever it is laid', () => {
  it('both sizes are as wanted with a lens of the bag, whole in the frame, and nothing stands in the landmark', () => {
    fc.assert(
      fc.property(parts, instant, (given, now) => {
        const shoot = shootWith(given)
        const { spot } = laid(shoot, now)
        const found = assess(planOf(shoot, spot))
        expect(found.problems.filter((problem) => problem !== 'landmark-level-assumed')).not.toEqual(
          expect.arrayContaining([expect.stringMatching(/landmark|no-lens|focus-too-near|fill|inside|on-top|aim/u)]),
        )
        const lens = shoot.bag.lenses.find(({ id }) => id === found.lens?.lensId)
        expect(found.lens?.reaches).toBe(true)
        expect(lens?.closestFocus).toBeLessThan(found.toSubject.distance + 1)
        const { subjectFill, landmarkFill } = spot.shot
        const took = (framing: typeof found.subject, axis: 'width' | 'height') =>
          axis === 'width' ? framing?.widthFill : framing?.heightFill
        expect((took(found.subject, subjectFill.axis) ?? 0) / subjectFill.share).toBeCloseTo(1, 1)
        expect((took(found.landmark, landmarkFill.axis) ?? 0) / landmarkFill.share).toBeCloseTo(1, 1)
        expect(found.subject?.whole).toBe(true)
        expect(found.landmark?.whole).toBe(true)
        for (const landmark of shoot.landmarks) {
          expect(clearance(landmark, spot.stop.at)).toBeGreaterThanOrEqual(9.99)
          expect(clearance(landmark, spot.standpoint.at)).toBeGreaterThanOrEqual(9.99)
        }
      }),
      { numRuns: 150 },
    )
  })

  it('keeps clear of a landmark so low that its wanted size would have one stand in it', () => {
    fc.assert(
      fc.property(parts, instant, number(0.5, 6), (given, now, height) => {
        const shoot = shootWith(given)
        const low = { ...shoot, landmarks: shoot.landmarks.map((one) => ({ ...one, height })) }
        const { spot } = laid(low, now)
        for (const landmark of low.landmarks)
          for (const { at } of [spot.stop, spot.standpoint])
            expect(clearance(landmark, at)).toBeGreaterThanOrEqual(9.99)
        expect(assess(planOf(low, spot)).problems).not.toContain('landmark-behind-camera')
      }),
      { numRuns: 60 },
    )
  })

  it('is planned ahead, by day where the sun rises within the week, with the landmark lit where that is said', () => {
    fc.assert(
      fc.property(parts, instant, (given, now) => {
        const shoot = shootWith(given)
        const { spot, light } = laid(shoot, now)
        expect(spot.when).toBeGreaterThanOrEqual(now - HOUR)
        expect(spot.when).toBeLessThan(now + 8 * DAY)
        // By hours, on days that lie whole within what was looked at; a sun that only grazes the horizon is left out.
        const looks = Array.from({ length: 5 * 24 }, (_, hour) => sunAt(spot.stop.at, now + DAY + hour * HOUR).altitude)
        const rises = looks.some((altitude, hour) => altitude > 0.5 && (looks[hour + 1] ?? -1) > 0.5)
        if (rises) expect(sunAt(spot.stop.at, spot.when).altitude).toBeGreaterThan(-0.9)
        if (light?.landmark !== 'lit') return
        const seen = assess(planOf(shoot, spot)).light.landmark
        const lit = seen?.sides.reduce((sum, side) => sum + (side.upright && side.incidence < 90 ? side.share : 0), 0)
        expect(lit).toBeGreaterThanOrEqual(0.49)
      }),
      { numRuns: 60 },
    )
  })
})

const CAR: Omit<Parts, 'kind' | 'at'> = { subject: 'car', lenses: [newLens('usual')] }
/** Just before midnight at 9 degrees east, in the middle of December. */
const NIGHT = Date.UTC(2026, 11, 14, 23)

describe('which side', () => {
  const off = (at: LatLon, kind: LandmarkKind, turned: number): number => {
    const shoot = shootWith({ ...CAR, kind, at })
    const [landmark] = shoot.landmarks
    const middle = landmark === undefined ? null : landmarkMiddle(landmarkPoints(landmark))
    const { spot } = laid(shoot, NIGHT)
    return Math.abs(turnBetween(geodesicLine(spot.standpoint.at, middle ?? at).bearing ?? NaN, turned))
  }

  it('from the south in the northern winter, from the north in the southern midwinter', () => {
    for (const kind of ['upright', 'span', 'summit'] as const) {
      expect(off({ lat: 47, lon: 9 }, kind, 0)).toBeLessThan(1)
      const shoot = shootWith({ ...CAR, kind, at: { lat: -33, lon: 18 } })
      const { spot } = laid(shoot, Date.UTC(2026, 5, 14, 22))
      expect(Math.abs(turnBetween(geodesicLine(spot.stop.at, { lat: -33, lon: 18 }).bearing ?? NaN, 180))).toBeLessThan(
        1,
      )
    }
  })

  it('a bridge that runs north and south is looked at square to it', () => {
    const shoot = shootWith({ ...CAR, kind: 'span', at: { lat: 47, lon: 9 } })
    const line = [
      { lat: 46.999, lon: 9 },
      { lat: 47.001, lon: 9 },
    ]
    const turned = { ...shoot, landmarks: shoot.landmarks.map((one) => (one.kind === 'span' ? { ...one, line } : one)) }
    const { bearing } = geodesicLine(laid(turned, NIGHT).spot.standpoint.at, { lat: 47, lon: 9 })
    expect(Math.min(Math.abs((bearing ?? 0) - 90), Math.abs((bearing ?? 0) - 270))).toBeLessThan(1)
  })
})

describe('which time', () => {
  it('never now at night: the next day that has the light', () => {
    const { spot, light } = laid(shootWith({ ...CAR, kind: 'upright', at: { lat: 47, lon: 9 } }), NIGHT)
    expect(light).toEqual({ ...NO_WISHES, landmark: 'lit' })
    expect(new Date(spot.when).toISOString().slice(0, 10)).toBe('2026-12-15')
  })

  it('today while enough of the light is left', () => {
    const { spot } = laid(shootWith({ ...CAR, kind: 'upright', at: { lat: 47, lon: 9 } }), Date.UTC(2026, 11, 14, 12))
    expect(new Date(spot.when).toISOString().slice(0, 10)).toBe('2026-12-14')
    expect(spot.when).toBeGreaterThan(Date.UTC(2026, 11, 14, 12))
  })

  it('by daylight alone where no side is ever lit, and the brightest of tomorrow in the polar night', () => {
    const { spot, light } = laid(shootWith({ ...CAR, kind: 'upright', at: { lat: 78, lon: 15 } }), NIGHT)
    expect(light).toBeNull()
    // Solar noon at 15 degrees east.
    expect(Math.abs(spot.when - Date.UTC(2026, 11, 15, 11))).toBeLessThan(HOUR)
  })

  it('what light the shoot wants is looked for first', () => {
    const shoot = shootWith({ ...CAR, kind: 'upright', at: { lat: 47, lon: 9 } })
    const wanting = { ...shoot, light: { ...NO_WISHES, altitude: { least: 0, most: 6 } } }
    const { spot, light } = laid(wanting, NIGHT)
    expect(light?.altitude).toEqual({ least: 0, most: 6 })
    expect(sunAt(spot.stop.at, spot.when).altitude).toBeLessThan(6)
  })
})

describe('the picture', () => {
  it('somebody upright has the tower beside them, not behind their head', () => {
    const shoot = shootWith({ ...CAR, subject: 'person', kind: 'upright', at: { lat: 47, lon: 9 } })
    const { subject, landmark } = assess(planOf(shoot, laid(shoot, NIGHT).spot))
    expect(landmark?.left).toBeGreaterThan((subject?.right ?? 1) + 0.02)
  })

  it('a long wall is wanted by its width, so that all of it is in the frame', () => {
    const shoot = shootWith({ ...CAR, kind: 'span', at: { lat: 47, lon: 9 } })
    const long = {
      ...shoot,
      landmarks: shoot.landmarks.map((one) =>
        one.kind === 'span'
          ? {
              ...one,
              form: 'wall' as const,
              height: 6,
              deckHeight: 6,
              line: [
                { lat: 47, lon: 9 },
                { lat: 47, lon: 9.01 },
              ],
            }
          : one,
      ),
    }
    const { spot } = laid(long, NIGHT)
    expect(spot.shot.landmarkFill.axis).toBe('width')
    expect(assess(planOf(long, spot)).landmark?.whole).toBe(true)
  })

  it('without a landmark there is nothing to lay by', () => {
    expect(firstSpot(newShoot('shoot', 'lens', 0), { id: 'spot', rank: 1 }, NIGHT, 'UTC')).toBeNull()
  })
})
