/** The picture: horizon at its true place, softness as the lens has it, what covers what, and finite numbers in every state. */
import { DARKEST } from '#renderer/view/lens-picture/lighting.ts'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { SKIES } from '#core/light/exposure.ts'
import { assess } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { SUBJECT_KINDS, SUBJECT_PRESETS } from '#core/scene/subject.ts'
import { type Picture, pictureOf } from '#renderer/view/lens-picture/picture.ts'
import { cornersOf } from '#test/help/path.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'

function picture(plan: Plan, width = 360): Picture {
  const made = pictureOf(plan, assess(plan), width)
  if (made === null) throw new Error('framed')
  return made
}

/** The largest coordinate of all that is drawn; fails on text that is no number. */
function farthest(made: Picture): number {
  const layers = [...(made.landmark?.layers ?? []), ...made.subject.flatMap((soft) => soft.layers)]
  const { sun, moon } = made
  const shadows = [made.contact, made.subjectShadow, made.landmarkShadow]
  const bodies = [sun?.disc, moon?.disc, moon?.lit].map((path) => path ?? '')
  const text = [made.groundLines, ...shadows, ...bodies, ...layers.map(({ path }) => path)].join(' ')
  for (const body of [sun, moon])
    for (const value of [body?.x, body?.y, body?.radius]) expect(value ?? 0).toBeLessThan(1e6)
  expect(`${made.sunAltitude} ${made.skyDeviation}`).not.toMatch(/NaN|Infinity/u)
  for (const { step } of layers) expect(step === null || (step >= 0 && step <= DARKEST)).toBe(true)
  expect(text).not.toMatch(/NaN|Infinity|e/u)
  return Math.max(...cornersOf(text).flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)]))
}

test('the level horizon stands where the pitch puts it: v tan(pitch) below the middle when looking up', () => {
  const plan = examplePlan({ shot: { placement: { across: 0, up: -0.35 } } })
  const { view } = assess(plan)
  if (view === null) throw new Error('framed')
  const millimetres = view.imageDistance * Math.tan((view.pitch * Math.PI) / 180)
  expect(view.pitch).toBeGreaterThan(1)
  expect(picture(plan).horizon).toBeCloseTo(120 + millimetres * 10, 9)
})

test('the landmark is softened by a quarter of its blur disc, in the scale of the frame', () => {
  const plan = examplePlan()
  const disc = assess(plan).sharp?.landmark?.disc ?? 0
  expect(disc).toBeGreaterThan(0.1)
  expect(picture(plan).landmark?.deviation).toBeCloseTo((disc * 10) / 4, 9)
  expect(picture(plan, 720).landmark?.deviation).toBeCloseTo((disc * 20) / 4, 9)
})

test('a subject sharp from end to end is one sharp drawing; one that is not turns soft at its ends alone', () => {
  const sharp = examplePlan({ turned: 90, shot: { aperture: 16 } })
  expect(assess(sharp).sharp?.endToEnd).toBe(true)
  expect(picture(sharp).subject.map((soft) => soft.deviation)).toEqual([0])
  const soft = examplePlan({
    turned: 10,
    distance: 5,
    shot: { aperture: 2.8, focus: { on: 'middle', behindFront: 0 } },
  })
  expect(assess(soft).sharp?.endToEnd).toBe(false)
  const deviations = picture(soft, 1200).subject.map(({ deviation }) => deviation)
  expect(Math.max(...deviations)).toBeGreaterThan(0)
  expect(Math.min(...deviations)).toBe(0)
})

test('a landmark before the subject is drawn over it', () => {
  const at = { lat: -41.2, lon: 12.4 }
  const post: Landmark = {
    id: 'post',
    name: 'Post',
    kind: 'upright',
    at: destination(at, 40, 5),
    width: 0.3,
    height: 2,
    baseElevation: 12,
    baseSlope: null,
    baseAspect: null,
  }
  expect(picture(examplePlan({ at, distance: 12, landmark: post })).landmarkBefore).toBe(true)
  expect(picture(examplePlan({ at })).landmarkBefore).toBe(false)
})

describe('numbers stay finite and within reach', () => {
  test.each(SUBJECT_KINDS)('%s, all round and very near', (kind) => {
    for (const turned of [0, 37, 90, 141, 180, 233, 270, 328]) {
      for (const distance of [SUBJECT_PRESETS[kind].length * 0.75, 8]) {
        const plan = examplePlan({ subject: { kind, ...SUBJECT_PRESETS[kind] }, turned, distance })
        const made = pictureOf(plan, assess(plan), 360)
        if (made === null) continue
        expect(farthest(made)).toBeLessThan(600)
      }
    }
  })

  test('a bridge that runs past and behind the camera', () => {
    const at = { lat: -41.2, lon: 12.4 }
    const plan = examplePlan({ at, landmark: { ...bridgeAt(at, 40, 60, 8), baseElevation: 0 } })
    expect(assess(plan).problems).toContain('landmark-partly-behind-camera')
    expect(farthest(picture(plan))).toBeLessThan(600)
  })

  test('at any hour of any place, the poles included, under any sky', () => {
    const angle = fc.double({ min: 0, max: 360, noNaN: true })
    let framed = 0
    fc.assert(
      fc.property(
        fc.tuple(fc.double({ min: -89, max: 89, noNaN: true }), angle),
        fc.tuple(angle, angle),
        fc.integer({ min: Date.UTC(2024, 0, 1), max: Date.UTC(2034, 0, 1) }),
        fc.constantFrom(...SUBJECT_KINDS),
        fc.constantFrom(...SKIES),
        ([lat, lon], [bearing, turned], when, kind, sky) => {
          const subject = { kind, ...SUBJECT_PRESETS[kind] }
          const at = { lat, lon: lon - 180 }
          const bridge = { ...bridgeAt(at, bearing, 300), baseElevation: 12 }
          const plan = examplePlan({
            at,
            bearing,
            turned,
            subject,
            distance: 9,
            landmark: bridge,
            spot: { when },
            shoot: { sky },
          })
          const made = pictureOf(plan, assess(plan), 360)
          if (made !== null) framed++
          return made === null || farthest(made) < 600
        },
      ),
      { numRuns: 150 },
    )
    expect(framed).toBeGreaterThan(100)
  })

  test('with the sun in the zenith, in the frame, behind the camera and on the horizon', () => {
    const plan = examplePlan({ landmark: { ...bridgeAt({ lat: -41.2, lon: 12.4 }, 40, 300), baseElevation: 12 } })
    const found = assess(plan)
    for (const apparent of [90, 89.999, 40, 5, 0.31, 0.3, 0, -0.5]) {
      for (const turn of [0, 10, 90, 180]) {
        const sun = { ...found.light.sun, azimuth: 40 + turn, apparent, altitude: apparent, up: true }
        const made = pictureOf(plan, { ...found, light: { ...found.light, sun } }, 360)
        if (made === null) throw new Error('framed')
        expect(farthest(made)).toBeLessThan(600)
      }
    }
  })

  test('nothing to frame gives no picture', () => {
    const plan = examplePlan({ distance: 0 })
    expect(pictureOf(plan, assess(plan), 360)).toBeNull()
  })
})
