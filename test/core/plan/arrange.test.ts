/** What a user does to an arrangement: it changes what it names, keeps the rest, and what is held still holds. */
import { describe, expect, it } from 'vitest'
import { MOST_SHARE } from '#core/frame/fill.ts'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import {
  moveBoth,
  moveStandpoint,
  moveStop,
  setHold,
  setShot,
  setStandpoint,
  setStop,
  spotFollowing,
  turnSubject,
  wishFill,
} from '#core/plan/arrange.ts'
import { assess } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { wishedProportion } from '#core/plan/proportion-ring.ts'
import { landmarkShareHere } from '#core/plan/stand.ts'
import type { Hold, Spot } from '#core/record/spot.ts'
import { type PlanParts, bridgeAt, examplePlan } from '#test/help/plans.ts'

const AT = { lat: -41.2, lon: 12.4 }
const held = (hold: Hold, parts: PlanParts = {}): Plan =>
  examplePlan({ lenses: [], ...parts, spot: { hold, ...parts.spot } })
const within = (plan: Plan, spot: Spot): Plan => ({ ...plan, spot })

/** The share that the subject takes of its wished side with the focal length and the place of a spot. */
function fillOf(plan: Plan, spot: Spot): number {
  const { subject } = assess(within(plan, spot))
  const { axis } = spot.shot.subjectFill
  return (axis === 'width' ? subject?.widthFill : subject?.heightFill) ?? Number.NaN
}

describe('each move', () => {
  const plan = held('focal-length')
  const { spot } = plan
  const elsewhere = destination(AT, 200, 3)
  const { stop, standpoint, shot } = spot

  // With the focal length held nothing follows, so that nothing but what is named may change.
  it.each<[string, (from: Plan) => Spot, Partial<Spot>]>([
    ['of the camera', (from) => moveStandpoint(from, elsewhere), { standpoint: { ...standpoint, at: elsewhere } }],
    ['of the subject', (from) => moveStop(from, elsewhere), { stop: { ...stop, at: elsewhere } }],
    [
      'of both',
      (from) => moveBoth(from, elsewhere, AT),
      { stop: { ...stop, at: elsewhere }, standpoint: { ...standpoint, at: AT } },
    ],
    ['of the heading', (from) => turnSubject(from, -30), { stop: { ...stop, heading: 330 } }],
    [
      'of the lens’s height',
      (from) => setStandpoint(from, { lensHeight: 0.3 }),
      { standpoint: { ...standpoint, lensHeight: 0.3 } },
    ],
    ['of the ground', (from) => setStop(from, { elevation: 7 }), { stop: { ...stop, elevation: 7 } }],
    ['of the shot', (from) => setShot(from, { aperture: 8 }), { shot: { ...shot, aperture: 8 } }],
  ])('%s changes that alone while the focal length is held', (_, move, part) => {
    expect(move(plan)).toEqual({ ...spot, ...part })
  })

  it('is followed by the focal length while the standpoint is held', () => {
    const start = held('standpoint')
    for (const made of [
      moveStandpoint(start, elsewhere),
      moveStop(start, destination(AT, 70, 11)),
      turnSubject(start, 10),
      setStandpoint(start, { lensHeight: 3 }),
      setStop(start, { elevation: 13 }),
      setShot(start, { placement: { across: 0.2, up: 0 } }),
      spotFollowing(start),
    ]) {
      expect(fillOf(start, made)).toBeCloseTo(0.5, 9)
      expect(made.shot.focalLength).not.toBe(50)
      const { focalLength } = assess(within(start, made))
      expect(made.shot.focalLength).toBeCloseTo(focalLength ?? Number.NaN, 9)
    }
  })

  it('leaves the focal length where none gives the fill', () => {
    // A thing beside which the camera stands shows at least so much of itself.
    const start = held('standpoint', { distance: 0 })
    expect(spotFollowing(start)).toBe(start.spot)
  })

  it('leaves the camera where it is when no place keeps the proportion, and still gives the wished fill', () => {
    const start = held('proportion', { landmark: null })
    const made = spotFollowing(start)
    expect(made.standpoint).toEqual(start.spot.standpoint)
    expect(fillOf(start, made)).toBeCloseTo(0.5, 9)
  })

  it('slides the camera along its bearing while the proportion is held', () => {
    const start = held('proportion', { shot: { landmarkFill: { share: 0.6, axis: 'height' } } })
    const made = spotFollowing(start)
    expect(landmarkShareHere(within(start, made))).toBeCloseTo(0.6, 7)
    expect(fillOf(start, made)).toBeCloseTo(0.5, 9)
    const [before, after] = [start.spot, made].map(({ stop: s, standpoint: p }) => geodesicLine(s.at, p.at))
    expect(after?.bearing).toBeCloseTo(before?.bearing ?? Number.NaN, 5)
    expect(Math.abs((after?.distance ?? 0) - (before?.distance ?? 0))).toBeGreaterThan(0.1)
  })
})

describe('a wished fill', () => {
  it('is met by the focal length while the standpoint is held', () => {
    const plan = held('standpoint')
    const made = wishFill(plan, { subjectFill: { share: 0.7, axis: 'height' } })
    if (!made.ok) throw new Error(made.fault.message)
    expect(fillOf(plan, made.value)).toBeCloseTo(0.7, 9)
    expect(made.value.standpoint).toEqual(plan.spot.standpoint)
    expect(made.value.shot.subjectFill).toEqual({ share: 0.7, axis: 'height' })
  })

  it('moves the camera while the focal length is held, and keeps its other fill', () => {
    const plan = held('focal-length')
    const made = wishFill(plan, { focalLength: 90 })
    if (!made.ok) throw new Error(made.fault.message)
    expect(made.value.shot).toEqual({ ...plan.spot.shot, focalLength: 90 })
    expect(fillOf(plan, made.value)).toBeCloseTo(0.5, 9)
    expect(made.value.standpoint.at).not.toEqual(plan.spot.standpoint.at)
  })
})

describe('what is held', () => {
  it('as the focal length is the one in use, with the fill seen, on whichever side it is wished', () => {
    for (const axis of ['width', 'height'] as const) {
      const plan = held('standpoint', { shot: { subjectFill: { share: 0.4, axis } } })
      const made = setHold(plan, 'focal-length')
      expect(made.hold).toBe('focal-length')
      expect(made.shot.subjectFill.axis).toBe(axis)
      expect(made.shot.subjectFill.share).toBeCloseTo(0.4, 9)
      expect(made.shot.focalLength).toBe(assess(plan).focalLength)
      expect(made.standpoint).toEqual(plan.spot.standpoint)
    }
  })

  it('as the focal length of a lens that does not reach is what the lens gives, not what was wished', () => {
    const far = examplePlan({ distance: 60 })
    const made = setHold(far, 'focal-length')
    // 24-70 mm: the long end.
    expect(made.shot.focalLength).toBe(70)
    expect(made.shot.subjectFill.share).toBeCloseTo(assess(far).subject?.widthFill ?? Number.NaN, 12)
    expect(made.shot.subjectFill.share).toBeLessThan(0.2)
  })

  it('keeps wish and focal length when nothing can be framed', () => {
    for (const axis of ['width', 'height'] as const) {
      const plan = held('standpoint', { distance: 0, shot: { subjectFill: { share: 0.4, axis } } })
      expect(setHold(plan, 'focal-length')).toEqual({ ...plan.spot, hold: 'focal-length' })
    }
  })

  it('as the standpoint lets the focal length follow at once', () => {
    const plan = held('focal-length', { shot: { focalLength: 20 } })
    const made = setHold(plan, 'standpoint')
    expect(made.hold).toBe('standpoint')
    expect(made.shot.landmarkFill).toEqual(plan.spot.shot.landmarkFill)
    expect(made.standpoint).toEqual(plan.spot.standpoint)
    expect(fillOf(plan, made)).toBeCloseTo(0.5, 9)
  })

  it('as the proportion makes what the landmark takes its wish, at the subject’s own', () => {
    const plan = held('standpoint', { shot: { landmarkFill: { share: 7, axis: 'width' } } })
    const made = setHold(plan, 'proportion')
    expect(made.hold).toBe('proportion')
    expect(made.shot.landmarkFill.axis).toBe('width')
    expect(made.shot.landmarkFill.share).toBeCloseTo(landmarkShareHere(plan) ?? Number.NaN, 9)
    expect(assess(within(plan, made)).problems).not.toContain('proportion-not-held')
  })

  it('as the proportion is the one seen where the subject cannot fill as wished', () => {
    // So near and so far aside in the frame no focal length shows less than a part of it.
    const plan = held('standpoint', {
      distance: 1.5,
      shot: { subjectFill: { share: 0.001, axis: 'width' }, placement: { across: 0.4, up: -0.3 } },
    })
    const { proportion, problems } = assess(plan)
    expect(problems).toContain('fill-cannot-be')
    expect(landmarkShareHere(plan)).toBeNull()
    expect(proportion).not.toBeNull()
    const made = setHold(plan, 'proportion')
    expect(wishedProportion(within(plan, made))).toBeCloseTo(proportion ?? Number.NaN, 9)
  })

  it('as the proportion with no landmark, or one behind, is but the word', () => {
    for (const landmark of [null, bridgeAt(AT, 220, 600)]) {
      const plan = held('standpoint', { landmark })
      expect(setHold(plan, 'proportion')).toEqual({ ...plan.spot, hold: 'proportion' })
    }
  })

  it('as the proportion never wishes for more than may be wished', () => {
    // From so near the wall is more than forty frames wide.
    const wall = { ...bridgeAt(AT, 40, 9), form: 'wall' as const, height: 3, deckHeight: 3, width: 0.2 }
    const plan = held('standpoint', {
      landmark: wall,
      shot: { subjectFill: { share: 0.9, axis: 'width' }, landmarkFill: { share: 1, axis: 'width' } },
    })
    expect(landmarkShareHere(plan)).toBeGreaterThan(MOST_SHARE)
    expect(setHold(plan, 'proportion').shot.landmarkFill.share).toBe(MOST_SHARE)
  })
})
