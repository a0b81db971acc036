/** When two arrangements count as two: by the clock whatever the day, by the bearing round north, by the metres between. */
import { assert, double, integer, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import { apartInBearing, apartInTime, areDistinct, wayToCamera } from '#core/scan/apart.ts'
import type { Candidate } from '#core/scan/scan-found.ts'
import { CENTRE } from '#test/help/scans.ts'

const MINUTE = 60_000
const MORNING = Date.UTC(2026, 5, 14, 9, 17)

describe('apart in time', () => {
  it.each([
    [0, false],
    [119, false],
    [120, true],
    [720, true],
    [1440 - 120, true],
    [1440 - 119, false],
    [1440, false],
    [5 * 1440 + 119, false],
    [5 * 1440 + 120, true],
  ])('by %d minutes: %s, either way', (minutes, apart) => {
    expect(apartInTime(MORNING, MORNING + minutes * MINUTE)).toBe(apart)
    expect(apartInTime(MORNING + minutes * MINUTE, MORNING)).toBe(apart)
  })
})

describe('apart in bearing', () => {
  it('from 20 degrees on, either way and round north', () => {
    assert(
      property(integer({ min: 0, max: 359 }), double({ min: -180, max: 180, noNaN: true }), (from, turn) => {
        if (Math.abs(Math.abs(turn) - 20) < 1e-6) return
        expect(apartInBearing(from, (from + turn + 360) % 360)).toBe(Math.abs(turn) > 20)
      }),
    )
    expect([apartInBearing(10, 30), apartInBearing(350, 10), apartInBearing(10, 350)]).toEqual([true, true, true])
  })
})

describe('two candidates', () => {
  const candidate = (metres: number, way: number, minutes: number) => {
    const at = destination(CENTRE, 90, metres)
    return { at, standpoint: destination(at, way, 8), instant: MORNING + minutes * MINUTE } as Candidate
  }
  const one = candidate(0, 100, 0)

  it('have their way from the subject to the camera', () => {
    expect(wayToCamera(one)).toBeCloseTo(100, 3)
    expect(wayToCamera({ at: CENTRE, standpoint: CENTRE })).toBe(0)
  })

  it('are distinct by any of the three, and by nothing less', () => {
    expect(areDistinct(one, candidate(24, 115, 60), 25)).toBe(false)
    expect(areDistinct(one, candidate(26, 115, 60), 25)).toBe(true)
    const other = candidate(30, 115, 60)
    expect(areDistinct(one, other, geodesicDistance(one.at, other.at))).toBe(false)
    expect(areDistinct(one, candidate(24, 125, 60), 25)).toBe(true)
    expect(areDistinct(one, candidate(24, 115, 130), 25)).toBe(true)
  })
})
