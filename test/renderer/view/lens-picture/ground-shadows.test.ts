/** Shadows in the picture lie where the geometry of the sun puts them. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { apparent, toCamera } from '#core/frame/projection.ts'
import { destination } from '#core/geo/geodesic.ts'
import { type LocalPoint, localFrame, toEarth } from '#core/geo/local-frame.ts'
import { sunDirection } from '#core/light/incidence.ts'
import { shadowOf } from '#core/light/shadow.ts'
import { type Assessment, assess } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { boxCorners, subjectPoint } from '#core/scene/box.ts'
import { subjectSolid } from '#core/scene/solid/subject-solid.ts'
import { SUBJECT_KINDS, SUBJECT_PRESETS } from '#core/scene/subject.ts'
import { castOf } from '#renderer/view/lens-picture/cast-shadow.ts'
import { type Picture, pictureOf } from '#renderer/view/lens-picture/picture.ts'
import { seer } from '#renderer/view/lens-picture/camera-transform.ts'
import { cornersOf } from '#test/help/path.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'

const WIDTH = 1200
const BOX = { kind: 'other', length: 2, width: 1, height: 1.5, features: [] } as const

function withSun(plan: Plan, azimuth: number, altitude: number): Assessment {
  const found = assess(plan)
  const sun = { ...found.light.sun, azimuth, apparent: altitude, altitude, up: altitude > 0 }
  return { ...found, light: { ...found.light, sun } }
}

function picture(plan: Plan, assessment: Assessment): Picture {
  const made = pictureOf(plan, assessment, WIDTH)
  if (made === null) throw new Error('framed')
  return made
}

/** Drawing units, by way of earth-centred metres. */
function inPicture(plan: Plan, { view, levels }: Assessment, point: LocalPoint): [number, number] {
  if (view === null) throw new Error('framed')
  const earth = toEarth(localFrame(plan.spot.stop.at, levels.stop), point.east, point.north, point.up)
  const { right, up, depth } = toCamera(view, apparent(view.frame, earth, view.refraction))
  const scale = (WIDTH * view.imageDistance) / view.frameWidth / depth
  return [WIDTH / 2 + right * scale, (WIDTH * view.frameHeight) / view.frameWidth / 2 - up * scale]
}

test('a box casts the shadow whose corners the light alone tells, its tip included', () => {
  const plan = examplePlan({
    subject: BOX,
    turned: 60,
    distance: 12,
    shot: { focalLength: 24 },
    spot: { hold: 'focal-length' },
  })
  for (const [azimuth, altitude] of [
    [130, 40],
    [310, 55],
    [40, 35],
    [0, 89.9],
  ] as const) {
    const assessment = withSun(plan, azimuth, altitude)
    const drawn = cornersOf(picture(plan, assessment).subjectShadow)
    const outline = shadowOf(boxCorners(plan.shoot.subject, plan.spot.stop.heading), sunDirection(azimuth, altitude))
    expect(outline?.length).toBeGreaterThanOrEqual(4)
    for (const point of outline ?? []) {
      const [x, y] = inPicture(plan, assessment, point)
      const off = Math.min(...drawn.map((corner) => Math.hypot(corner.x - x, corner.y - y)))
      expect(off).toBeLessThan(0.1)
    }
  }
})

describe('within the shadow of its box', () => {
  test.each(SUBJECT_KINDS)('falls the shadow of the %s, and reaches as far', (kind) => {
    const subject = { kind, name: '', features: [], ...SUBJECT_PRESETS[kind] }
    const solid = subjectSolid(subject)
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 3, max: 90, noNaN: true }),
        (azimuth, altitude) => {
          const direction = sunDirection(azimuth, altitude)
          const outline = shadowOf(boxCorners(subject, 0), direction) ?? []
          const points = castOf(solid, direction).flatMap(({ shade }) => shade)
          expect(points.length).toBeGreaterThan(3)
          const reach = (point: LocalPoint): number =>
            -Math.sin((azimuth * Math.PI) / 180) * point.east - Math.cos((azimuth * Math.PI) / 180) * point.north
          const [far, most] = [Math.max(...points.map(reach)), Math.max(...outline.map(reach))]
          // A rod that lies on the ground is as thick as it is; below that nothing stands out.
          expect(far).toBeLessThan(most + 0.02 * subject.height + 0.02 / Math.tan((altitude * Math.PI) / 180))
          expect(far).toBeGreaterThan(0.4 * (subject.height / Math.tan((altitude * Math.PI) / 180)) - subject.length)
        },
      ),
      { numRuns: 40 },
    )
  })
})

test('no shadow falls when the sun is down or hidden, or the ground can’t be seen', () => {
  const plan = examplePlan()
  expect(picture(plan, withSun(plan, 130, 40)).subjectShadow).not.toBe('')
  expect(picture(plan, withSun(plan, 130, -1)).subjectShadow).toBe('')
  for (const sky of ['cloudy-bright', 'overcast', 'open-shade'] as const) {
    const clouded = examplePlan({ shoot: { sky } })
    expect(picture(clouded, withSun(clouded, 130, 40)).subjectShadow).toBe('')
  }
  const below = examplePlan({ spot: { stop: { ...plan.spot.stop, elevation: 20 } } })
  expect(picture(below, withSun(below, 130, 40)).subjectShadow).toBe('')
})

test('the landmark’s shadow is drawn where it stands on the ground that is drawn, and nowhere else', () => {
  const at = { lat: -41.2, lon: 12.4 }
  const level = examplePlan({ at, landmark: { ...bridgeAt(at, 40, 200), baseElevation: 12 } })
  expect(picture(level, withSun(level, 220, 30)).landmarkShadow).not.toBe('')
  const sunk = examplePlan({ at, landmark: { ...bridgeAt(at, 40, 200), baseElevation: 0 } })
  expect(picture(sunk, withSun(sunk, 220, 30)).landmarkShadow).toBe('')
})

test('the one-step way into the camera is the long way', () => {
  const plan = examplePlan()
  const { view } = assess(plan)
  if (view === null) throw new Error('framed')
  fc.assert(
    fc.property(
      fc.tuple(...[360, 90, 9000].map((max) => fc.double({ min: 0, max, noNaN: true }))),
      fc.tuple(...[300, 300, 80].map((max) => fc.double({ min: -max, max, noNaN: true }))),
      ([bearing = 0, heading = 0, distance = 0], [ahead = 0, right = 0, up = 0]) => {
        const frame = localFrame(destination(plan.spot.standpoint.at, bearing, distance), 40)
        const turned = subjectPoint(heading, ahead, right, up)
        const earth = toEarth(frame, turned.east, turned.north, turned.up)
        const long = toCamera(view, apparent(view.frame, earth, view.refraction))
        const short = seer(view, frame, heading)({ east: right, north: ahead, up })
        for (const axis of ['right', 'up', 'depth'] as const) expect(short[axis]).toBeCloseTo(long[axis], 5)
      },
    ),
  )
})
