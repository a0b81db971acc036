/** Points of drawn ground under the hand: brought, added, taken away; what a hand may not leave behind. */
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import { newKeepOut, newStoppingGround } from '#core/record/drawn-ground.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type Grip, gripBroughtTo, gripName, gripPlace, readGrip } from '#core/plan/grip.ts'
import { drawnFault, withoutDrawnPoint } from '#core/plan/drawn-grip.ts'
import { gripStepped } from '#renderer/view/hand/step.ts'
import { examplePlan } from '#test/help/plans.ts'

const base = examplePlan()
const here = base.spot.stop.at
const line = [here, destination(here, 90, 50), destination(here, 90, 100)]
const square = [0, 90, 180, 270].map((bearing) => destination(here, bearing, 80))
const plan: Plan = {
  ...base,
  shoot: {
    ...base.shoot,
    stoppingGround: [newStoppingGround('a', '', { form: 'line', points: line })],
    keepOuts: [
      newKeepOut('a', '', 'crops', { form: 'area', points: square }),
      newKeepOut('b', '', 'rail', { form: 'line', points: line }),
    ],
  },
}
const elsewhere = destination(here, 10, 30)

const corner = (at: number): Grip & { readonly sort: 'keep-out' } => ({
  on: 'drawn-point',
  sort: 'keep-out',
  index: 0,
  at,
})

describe('a grip on drawn ground', () => {
  it.each<Grip>([
    { on: 'drawn-point', sort: 'stopping', index: 0, at: 2 },
    { on: 'drawn-leg', sort: 'keep-out', index: 14, at: 0 },
  ])('has a name that is read back: %o', (grip) => expect(readGrip(gripName(grip))).toEqual(grip))

  it('brings one point alone', () => {
    const { shoot, spot } = gripBroughtTo(plan, { on: 'drawn-point', sort: 'stopping', index: 0, at: 1 }, elsewhere)
    expect(shoot.stoppingGround[0]?.points).toEqual([line[0], elsewhere, line[2]])
    expect(shoot.keepOuts).toBe(plan.shoot.keepOuts)
    expect(spot).toBe(plan.spot)
  })

  it('on a leg makes a new point there, also on the leg that closes an area', () => {
    const leg: Grip = { on: 'drawn-leg', sort: 'keep-out', index: 0, at: 3 }
    const place = gripPlace(plan, leg)
    if (place === null || square[3] === undefined || square[0] === undefined) throw new Error('the area is closed')
    expect(geodesicDistance(place, square[3])).toBeCloseTo(geodesicDistance(place, square[0]), 3)
    expect(gripBroughtTo(plan, leg, elsewhere).shoot.keepOuts[0]?.points).toEqual([...square, elsewhere])
  })

  it('is moved by keys', () => {
    const grip: Grip = { on: 'drawn-point', sort: 'keep-out', index: 1, at: 2 }
    const moved = gripStepped(plan, grip, { kind: 'shift', east: 3, north: 4 })?.shoot.keepOuts[1]?.points[2]
    if (moved === undefined || line[2] === undefined) throw new Error('the point is gone')
    expect(geodesicDistance(moved, line[2])).toBeCloseTo(5, 3)
  })

  it('takes a point away while the shape can spare it', () => {
    const left = withoutDrawnPoint(plan.shoot, { on: 'drawn-point', sort: 'stopping', index: 0, at: 0 })
    expect('shoot' in left ? left.shoot.stoppingGround[0]?.points : null).toEqual(line.slice(1))
    if ('needed' in left) throw new Error('a line of three can spare one')
    const none = withoutDrawnPoint(left.shoot, { on: 'drawn-point', sort: 'stopping', index: 0, at: 0 })
    expect('needed' in none ? none.needed : '').toBe('line')
  })
})

describe('what a hand leaves behind', () => {
  it('is refused when an outline crosses itself, and only then', () => {
    const crossed = gripBroughtTo(plan, corner(0), destination(here, 135, 200)).shoot
    expect(drawnFault(plan.shoot, crossed)).toEqual({ fault: 'crosses-itself', form: 'area' })
    expect(drawnFault(plan.shoot, gripBroughtTo(plan, corner(0), destination(here, 0, 200)).shoot)).toBeNull()
    expect(drawnFault(plan.shoot, plan.shoot)).toBeNull()
  })

  it('is refused when a line has shrunk to a point', () => {
    const short = {
      ...plan.shoot,
      stoppingGround: [newStoppingGround('a', '', { form: 'line', points: line.slice(0, 2) })],
    }
    const grip: Grip = { on: 'drawn-point', sort: 'stopping', index: 0, at: 1 }
    expect(drawnFault(short, gripBroughtTo({ ...plan, shoot: short }, grip, here).shoot)).toEqual({
      fault: 'too-few',
      form: 'line',
    })
  })

  it('is not asked of what was there before, however it came in', () => {
    const crossed = gripBroughtTo(plan, corner(0), destination(here, 135, 200)).shoot
    const renamed = { ...crossed, name: 'Another' }
    expect(drawnFault(crossed, renamed)).toBeNull()
  })
})
