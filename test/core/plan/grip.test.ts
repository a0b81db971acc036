/** What a drag does to the plan: things go where they are brought, groups and footprints keep their shape. */
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import {
  type Grip,
  gripBroughtTo,
  edgesOf,
  gripName,
  gripPlace,
  moveLandmark,
  readGrip,
  withoutCorner,
} from '#core/plan/grip.ts'
import { gripStepped } from '#renderer/view/hand/step.ts'
import { examplePlan } from '#test/help/plans.ts'

const plan = examplePlan()
const elsewhere = destination(plan.spot.stop.at, 123, 450)

function pointsOf(landmark: Landmark | undefined): readonly { lat: number; lon: number }[] {
  if (landmark === undefined) throw new Error('the landmark is gone')
  return landmarkPoints(landmark)
}

describe('grip names', () => {
  it.each<Grip>([
    { on: 'pair' },
    { on: 'heading' },
    { on: 'corner', index: 12 },
    { on: 'edge', index: 0 },
    { on: 'obstruction', index: 3, end: 1 },
    { on: 'obstruction', index: 0, end: null },
  ])('are read back as they were written: %o', (grip) => expect(readGrip(gripName(grip))).toEqual(grip))

  it('of nothing known are nothing', () => {
    expect(readGrip('elephant')).toBeNull()
  })
})

describe('brought', () => {
  it('moves the standpoint alone', () => {
    const { spot, shoot } = gripBroughtTo(plan, { on: 'standpoint' }, elsewhere)
    expect(spot.standpoint.at).toEqual(elsewhere)
    expect(spot.stop).toEqual(plan.spot.stop)
    expect(shoot).toBe(plan.shoot)
  })

  it('moves subject and standpoint as a pair, their distance and bearing kept', () => {
    const { spot } = gripBroughtTo(plan, { on: 'pair' }, elsewhere)
    const before = geodesicLine(plan.spot.standpoint.at, plan.spot.stop.at)
    const after = geodesicLine(spot.standpoint.at, spot.stop.at)
    expect(after.distance).toBeCloseTo(before.distance, 4)
    expect(after.bearing).toBeCloseTo(before.bearing ?? Number.NaN, 3)
  })

  it('turns the subject toward where the notch is brought', () => {
    const { spot } = gripBroughtTo(plan, { on: 'heading' }, destination(plan.spot.stop.at, 271, 4))
    expect(spot.stop.heading).toBeCloseTo(271, 6)
  })

  it('leaves the heading when the notch is gripBroughtTo onto the subject itself', () => {
    expect(gripBroughtTo(plan, { on: 'heading' }, plan.spot.stop.at).spot.stop.heading).toBe(plan.spot.stop.heading)
  })

  it('changes the landmark in the shoot and lets the spot follow what is held', () => {
    const { shoot, spot } = gripBroughtTo(plan, { on: 'corner', index: 0 }, elsewhere)
    expect(pointsOf(shoot.landmarks[0])[0]).toEqual(elsewhere)
    expect(plan.shoot.landmarks[0]).not.toBe(shoot.landmarks[0])
    expect(spot.standpoint).toEqual(plan.spot.standpoint)
  })

  it('adds a corner after the edge that was taken', () => {
    const { shoot } = gripBroughtTo(plan, { on: 'edge', index: 1 }, elsewhere)
    const before = pointsOf(plan.shoot.landmarks[0])
    const after = pointsOf(shoot.landmarks[0])
    expect(after).toEqual([...before.slice(0, 2), elsewhere, ...before.slice(2)])
  })
})

describe('moveLandmark', () => {
  it('keeps the shape in metres also when it goes far toward the pole', () => {
    const far = { lat: 70, lon: -179.999 }
    const moved = pointsOf(moveLandmark(plan, far).shoot.landmarks[0])
    const before = pointsOf(plan.shoot.landmarks[0])
    const middle = landmarkMiddle(moved)
    expect(middle === null ? null : geodesicDistance(middle, far)).toBeLessThan(0.01)
    for (let index = 1; index < before.length; index++) {
      const [was, last] = [before[index], before[index - 1]]
      const [is, ago] = [moved[index], moved[index - 1]]
      if (was === undefined || last === undefined || is === undefined || ago === undefined) throw new Error('lost one')
      expect(geodesicDistance(is, ago)).toBeCloseTo(geodesicDistance(was, last), 2)
    }
  })
})

describe('withoutCorner', () => {
  it('takes one away, but not the last two of a span', () => {
    const less = withoutCorner(plan, 1)
    expect(pointsOf(less?.shoot.landmarks[0])).toHaveLength(3)
    const [landmark] = plan.shoot.landmarks
    if (landmark?.kind !== 'span') throw new Error('the example has a bridge')
    const short = examplePlan({ landmark: { ...landmark, line: landmark.line.slice(0, 2) } })
    expect(withoutCorner(short, 0)).toBeNull()
  })
})

describe('edgesOf', () => {
  it('a span has one less than its points, a full one none', () => {
    const [landmark] = plan.shoot.landmarks
    if (landmark?.kind !== 'span') throw new Error('the example has a bridge')
    expect(edgesOf(landmark)).toEqual([0, 1, 2])
    const line = Array.from({ length: 200 }, (_, index) => ({ lat: 0, lon: index / 1000 }))
    expect(edgesOf({ ...landmark, line })).toEqual([])
  })
})

describe('gripPlace', () => {
  it('has no place for what the plan has not', () => {
    expect(gripPlace(plan, { on: 'parking' })).toBe(plan.spot.access.parking)
    expect(gripPlace(examplePlan({ landmark: null }), { on: 'landmark' })).toBeNull()
    expect(gripPlace(plan, { on: 'corner', index: 99 })).toBeNull()
  })
})

describe('trees and walls', () => {
  const line = [0, 30, 60].map((metres) => destination(plan.spot.stop.at, 75, 200 + metres))
  const wooded: Plan = {
    ...plan,
    shoot: { ...plan.shoot, obstructions: [0, 1].map((index) => ({ id: `${index}`, name: '', line, height: 8 })) },
  }

  it('are taken by a point, which alone moves', () => {
    const grip: Grip = { on: 'obstruction', index: 1, end: 2 }
    expect(gripPlace(wooded, grip)).toEqual(line[2])
    const { shoot, spot } = gripBroughtTo(wooded, grip, elsewhere)
    expect(shoot.obstructions[1]?.line).toEqual([line[0], line[1], elsewhere])
    expect(shoot.obstructions[0]).toBe(wooded.shoot.obstructions[0])
    expect(spot).toBe(wooded.spot)
  })

  it('are taken whole, their shape kept in metres', () => {
    const { shoot } = gripBroughtTo(wooded, { on: 'obstruction', index: 0, end: null }, elsewhere)
    const moved = shoot.obstructions[0]?.line ?? []
    expect(geodesicDistance(landmarkMiddle(moved) ?? plan.spot.stop.at, elsewhere)).toBeLessThan(0.01)
    const [first = elsewhere, , last = elsewhere] = moved
    expect(geodesicDistance(first, last)).toBeCloseTo(60, 3)
    expect(geodesicLine(first, last).bearing).toBeCloseTo(75, 1)
    expect(shoot.obstructions[0]?.line).not.toEqual(line)
  })

  it('step by the keys like any other thing', () => {
    const step = { kind: 'shift', east: 10, north: 0 } as const
    const end = gripStepped(wooded, { on: 'obstruction', index: 0, end: 0 }, step)?.shoot.obstructions[0]?.line[0]
    expect(geodesicDistance(end ?? elsewhere, line[0] ?? elsewhere)).toBeCloseTo(10, 3)
    expect(gripStepped(wooded, { on: 'obstruction', index: 9, end: 0 }, step)).toBeNull()
  })
})
