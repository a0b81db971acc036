/** Ways of being off: each moves one thing, in its own direction, by its own length, and takes measured levels along the ground. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { geodesicLine } from '#core/geo/geodesic.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type PlaceMove, PLACE_MOVES, moveLine, movedBy, reachOf } from '#core/tolerance/moves.ts'
import { turnBetween } from '#core/units/angle.ts'
import { examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'

function lineOf(plan: Plan) {
  const line = moveLine(plan)
  if (line === null) throw new Error('camera and subject are at one place')
  return line
}

/** The turn in degrees from the camera's look at the subject to the way a thing went: 0 away from the camera, 90 to its right. */
const WAYS: Readonly<Partial<Record<PlaceMove, readonly ['stop' | 'standpoint', number]>>> = {
  'subject-farther': ['stop', 0],
  'subject-right': ['stop', 90],
  'subject-nearer': ['stop', 180],
  'subject-left': ['stop', -90],
  'camera-nearer': ['standpoint', 0],
  'camera-right': ['standpoint', 90],
  'camera-farther': ['standpoint', 180],
  'camera-left': ['standpoint', -90],
}

describe('a move', () => {
  test('goes its own way by the length told, left and right as the camera sees them', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...PLACE_MOVES.filter((move) => move in WAYS)),
        fc.double({ min: 0, max: 359, noNaN: true }),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        (move, bearing, offset) => {
          const plan = examplePlan({ bearing, distance: 30 })
          const [thing, turn] = WAYS[move] ?? ['stop', 0]
          const after = movedBy(plan, move, offset, lineOf(plan))
          const went = geodesicLine(plan.spot[thing].at, after.spot[thing].at)
          expect(went.distance).toBeCloseTo(offset, 6)
          expect(Math.abs(turnBetween(bearing + turn, went.bearing ?? Number.NaN))).toBeLessThan(0.01)
          const other = thing === 'stop' ? 'standpoint' : 'stop'
          expect(after.spot[other]).toEqual(plan.spot[other])
        },
      ),
    )
  })

  test('turns the subject, and lifts the lens no lower than the ground', () => {
    const plan = examplePlan()
    const line = lineOf(plan)
    const heading = (move: PlaceMove) => movedBy(plan, move, 12, line).spot.stop.heading
    expect(turnBetween(plan.spot.stop.heading, heading('subject-clockwise'))).toBeCloseTo(12, 9)
    expect(turnBetween(plan.spot.stop.heading, heading('subject-counter-clockwise'))).toBeCloseTo(-12, 9)
    expect(movedBy(plan, 'lens-higher', 0.3, line).spot.standpoint.lensHeight).toBeCloseTo(1.5, 9)
    expect(reachOf('lens-lower', line, plan).limit).toBe(1.2)
    expect(movedBy(plan, 'lens-lower', 1.2, line).spot.standpoint.lensHeight).toBe(0)
  })

  test('takes a measured level along by as much as the elevations rise or fall', () => {
    const flat = examplePlan({ bearing: 0, distance: 30 })
    const slope = groundOf(101, 10, (_east, north) => 100 + north * 0.2, flat.spot.standpoint.at)
    const plan = { ...flat, terrain: slope }
    const line = lineOf(plan)
    // Both are measured at 12 m, wherever the elevations are.
    expect(movedBy(plan, 'subject-farther', 10, line).spot.stop.elevation).toBeCloseTo(14, 3)
    expect(movedBy(plan, 'camera-farther', 10, line).spot.standpoint.elevation).toBeCloseTo(10, 3)
    expect(movedBy(flat, 'subject-farther', 10, line).spot.stop.elevation).toBe(12)
    const unmeasured = examplePlan({ spot: { stop: { ...plan.spot.stop, elevation: null } } })
    expect(movedBy({ ...unmeasured, terrain: slope }, 'subject-left', 5, line).spot.stop.elevation).toBeNull()
  })

  test('nearer ends where the two meet; camera and subject at one place have no sightline', () => {
    const plan = examplePlan({ distance: 7 })
    expect(reachOf('subject-nearer', lineOf(plan), plan).limit).toBeCloseTo(7, 6)
    expect(reachOf('subject-farther', lineOf(plan), plan).limit).toBe(50)
    expect(moveLine(examplePlan({ distance: 0 }))).toBeNull()
  })
})
