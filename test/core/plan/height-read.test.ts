/** Heights read at the places themselves count there, and lead over to the window's beside them without a leap. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { elevationAtPlace, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { assess } from '#core/plan/assess.ts'
import { type PinHeight, heightRead } from '#core/plan/height-read.ts'
import { groundReading } from '#core/plan/ground-reading.ts'
import { levelsOf } from '#core/plan/plan.ts'
import { moveLine, movedBy } from '#core/tolerance/moves.ts'
import { examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'

const CENTRE = { lat: 46.9, lon: 10.3 }
/** Samples 90 m apart, peaked at the middle, as a window of 18 m cells laid beside them cuts it: the peak itself is lost. */
const SOURCE = (east: number, north: number): number => 2_000 - 0.9 * (Math.abs(east - 7) + Math.abs(north + 5))
const grid = { ...groundOf(201, 18, SOURCE, CENTRE), step: 90 }

function pin(east: number, north: number, height = SOURCE(east, north)): PinHeight {
  return { at: placeOnGrid(grid, east, north), height, step: 90, source: 'Hills', sea: false }
}

const peak = pin(7, -5)
const offset = fc.double({ min: -1_500, max: 1_500, noNaN: true })

describe('a height', () => {
  test('is the source’s own at a place that was asked for, with its step and its name', () => {
    expect(elevationAtPlace(grid, peak.at) ?? 0).toBeLessThan(1_995)
    expect(heightRead({ terrain: grid, pins: [pin(500, 300), peak] }, peak.at)).toEqual({
      height: 2_000,
      step: 90,
      source: 'Hills',
      sea: false,
    })
  })

  test('is the window’s own farther than a step from every place asked for, with the window’s step', () => {
    fc.assert(
      fc.property(offset, offset, (east, north) => {
        fc.pre(Math.hypot(east - 7, north + 5) > 90)
        const at = placeOnGrid(grid, east, north)
        const read = heightRead({ terrain: grid, pins: [peak] }, at)
        expect(read).toEqual({ height: elevationAtPlace(grid, at), step: 90, source: null, sea: false })
      }),
    )
  })

  test('never leaps: between places a hand’s breadth apart it differs by no more than the ground and the way over allow', () => {
    const pins = [peak, pin(14, -5, SOURCE(14, -5) + 3), pin(-40, 20, SOURCE(-40, 20) - 4)]
    fc.assert(
      fc.property(
        fc.double({ min: -150, max: 150, noNaN: true }),
        fc.double({ min: -150, max: 150, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (east, north, way) => {
          const [right, up] = [0.05 * Math.sin(way), 0.05 * Math.cos(way)]
          const one = heightRead({ terrain: grid, pins }, placeOnGrid(grid, east, north))?.height ?? Number.NaN
          const other = heightRead({ terrain: grid, pins }, placeOnGrid(grid, east + right, north + up))?.height ?? 0
          // The ground falls 0.9 in 1 each way; ten metres of difference are led over within a few metres at the steepest.
          expect(Math.abs(one - other)).toBeLessThan(0.25)
        },
      ),
      { numRuns: 500 },
    )
    // From the very place asked for as well.
    for (const { at, height } of pins) {
      const beside = { lat: at.lat + 1e-8, lon: at.lon }
      expect(heightRead({ terrain: grid, pins }, beside)?.height).toBeCloseTo(height, 1)
    }
  })

  test('is unknown without a window, whatever was asked for', () => {
    expect(heightRead({ terrain: null, pins: [peak] }, peak.at)).toBeNull()
    expect(heightRead({ terrain: grid, pins: [] }, { lat: 10, lon: 10 })).toBeNull()
  })
})

describe('an arrangement', () => {
  const base = examplePlan({ at: peak.at, landmark: null })
  const { stop, standpoint } = base.spot
  const spot = { ...base.spot, stop: { ...stop, elevation: null }, standpoint: { ...standpoint, elevation: null } }
  const plan = { ...base, spot, terrain: grid, pins: [peak] }

  test('stands at the heights read for its places, and says how fine they are', () => {
    const found = assess(plan)
    expect(found.levels.standpoint).toBe(2_000)
    expect(found.under.standpoint).toMatchObject({ read: 2_000, step: 90, source: 'Hills', from: 'elevations' })
    expect(found.under.stop).toMatchObject({ step: 90, source: null })
  })

  test('does not leap when its camera is off by a finger', () => {
    const line = moveLine(plan)
    if (line === null) throw new Error('camera and subject are apart')
    for (const move of ['camera-nearer', 'camera-farther', 'camera-left', 'camera-right'] as const) {
      const off = levelsOf(movedBy(plan, move, 0.02, line))
      expect(off.standpoint).toBeCloseTo(2_000, 0)
    }
  })

  test('is not buried where the source lies under the window’s cells', () => {
    // A gully that the window's cells don't have: 6 m under them, more than lens and subject are high.
    const gully = {
      ...plan,
      pins: [
        { ...peak, height: 1_980 },
        { ...pin(0, 0), at: stop.at, height: 1_975 },
      ],
    }
    const seen = groundReading(gully, levelsOf(gully))?.toSubject
    expect(levelsOf(gully)).toMatchObject({ standpoint: 1_980, stop: 1_975 })
    const bare = { ...plan, pins: [] }
    expect(seen).toEqual(groundReading(bare, levelsOf(bare))?.toSubject)
    expect(seen?.share).toBeGreaterThan(0.5)
  })
})
