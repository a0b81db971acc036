/** Keys move and turn by what they promise: 1 m and 10 m on the map, a tenth of it in the close plan, degrees by brackets. */
import { describe, expect, it } from 'vitest'
import { geodesicLine } from '#core/geo/geodesic.ts'
import { type Key, keyStepOf, gripStepped } from '#renderer/view/hand/step.ts'
import { examplePlan } from '#test/help/plans.ts'

const plan = examplePlan()

function key(name: string, parts: Partial<Key> = {}): Key {
  return { key: name, code: '', shiftKey: false, ctrlKey: false, altKey: false, metaKey: false, ...parts }
}

describe('stepOf', () => {
  it.each([
    ['ArrowUp', 0, 1],
    ['ArrowDown', 0, -1],
    ['ArrowLeft', -1, 0],
    ['ArrowRight', 1, 0],
  ] as const)('%s', (name, east, north) => {
    expect(keyStepOf(key(name), 1)).toEqual({ kind: 'shift', east, north })
    expect(keyStepOf(key(name, { shiftKey: true }), 1)).toEqual({ kind: 'shift', east: east * 10, north: north * 10 })
  })

  it('turns by brackets, with Shift ten times as far, on layouts with AltGr too', () => {
    expect(keyStepOf(key(']'), 1)).toEqual({ kind: 'turn', by: 1 })
    expect(keyStepOf(key('{', { shiftKey: true, code: 'BracketLeft' }), 1)).toEqual({ kind: 'turn', by: -10 })
    expect(keyStepOf(key('[', { ctrlKey: true, altKey: true, code: 'Digit8' }), 1)).toEqual({ kind: 'turn', by: -1 })
  })

  it('leaves the keys of others alone', () => {
    expect(keyStepOf(key('z', { ctrlKey: true }), 1)).toBeNull()
    expect(keyStepOf(key('ArrowUp', { metaKey: true }), 1)).toBeNull()
    expect(keyStepOf(key('a'), 1)).toBeNull()
  })
})

describe('stepped', () => {
  it('moves the standpoint a decimetre to the north', () => {
    const moved = gripStepped(plan, { on: 'standpoint' }, { kind: 'shift', east: 0, north: 0.1 })
    if (moved === null) throw new Error('it did not move')
    const line = geodesicLine(plan.spot.standpoint.at, moved.spot.standpoint.at)
    expect(line.distance).toBeCloseTo(0.1, 6)
    expect(line.bearing).toBeCloseTo(0, 3)
  })

  it('moves the landmark ten metres to the east', () => {
    const moved = gripStepped(plan, { on: 'landmark' }, { kind: 'shift', east: 10, north: 0 })
    const [before] = plan.shoot.landmarks
    const after = moved?.shoot.landmarks[0]
    if (before?.kind !== 'span' || after?.kind !== 'span') throw new Error('the example has a bridge')
    const [was] = before.line
    const [is] = after.line
    if (was === undefined || is === undefined) throw new Error('a bridge without points')
    expect(geodesicLine(was, is).distance).toBeCloseTo(10, 3)
  })

  it('turns the subject past north', () => {
    const north = { ...plan, spot: { ...plan.spot, stop: { ...plan.spot.stop, heading: 355 } } }
    expect(gripStepped(north, { on: 'subject' }, { kind: 'turn', by: 10 })?.spot.stop.heading).toBe(5)
  })

  it('does not turn what has no front', () => {
    expect(gripStepped(plan, { on: 'standpoint' }, { kind: 'turn', by: 1 })).toBeNull()
  })
})
