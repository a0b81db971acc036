/** Direct light over a skyline, against a walk through the day in steps of ten seconds. */
import { skylineAt } from '#core/ground/skyline.ts'
import { describe, expect, it } from 'vitest'
import { SUN_RISE_ALTITUDE } from '#core/light/day-events.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { LOOK_OVER_GROUND_EVERY, behindGround, directLight, overSkyline } from '#core/light/over-skyline.ts'
import { rememberingSun } from '#core/light/wish-margin.ts'
import { SUN_RADIUS, sunAt } from '#core/light/sky.ts'
import { civilDayOf } from '#core/time/civil.ts'
import { generator } from '#test/help/generator.ts'

const STEP = 10_000

/** Hills of a few degrees, the same for the same number; `rise` lifts them all. */
function hills(number: number, rise: number) {
  const random = generator(number)
  const waves = Array.from({ length: 5 }, () => ({
    high: 3 * random(),
    often: 1 + Math.floor(9 * random()),
    at: 7 * random(),
  }))
  const altitudes = Float32Array.from({ length: 1440 }, (_, index) => {
    const turn = (index / 1440) * 2 * Math.PI
    return rise + waves.reduce((sum, { high, often, at }) => sum + high * Math.sin(often * turn + at), 0)
  })
  return { step: 0.25, altitudes }
}

describe('direct light', () => {
  it.each([
    [46.9, 8.2, Date.UTC(2026, 5, 14, 12), 1, 4],
    [46.9, 8.2, Date.UTC(2026, 11, 21, 12), 2, 6],
    [-41.2, 172.4, Date.UTC(2026, 2, 3, 0), 3, 3],
    [63.1, 15, Date.UTC(2026, 5, 20, 12), 4, 5],
    [69.65, 18.96, Date.UTC(2026, 5, 21, 12), 5, 2],
    [12.5, -70, Date.UTC(2026, 8, 9, 16), 6, 8],
  ])('at %d, %d is what a walk through the day finds', (lat, lon, instant, number, rise) => {
    const skyline = hills(number, rise)
    const at = { lat, lon }
    const day = civilDayOf(instant, 'UTC')
    const shines = (when: number): boolean => {
      const { azimuth, altitude } = sunAt(at, when)
      return apparentAltitude(altitude) + SUN_RADIUS >= (skylineAt(skyline, azimuth) ?? -90)
    }
    const spans = directLight(rememberingSun(at), skyline, day)
    let [told, missed] = [0, 0]
    for (let when = day.start; when < day.end; when += STEP) {
      const within = spans.some(({ from, until }) => when >= from && when <= until)
      const near = spans.some(({ from, until }) => Math.abs(when - from) < 1000 || Math.abs(when - until) < 1000)
      if (within) told += 1
      if (within !== shines(when) && !near) missed += 1
    }
    expect(told).toBeGreaterThan(100)
    // A gap between hills shorter than two looks may be missed, and no more than one of them is here.
    expect(missed * STEP).toBeLessThan(LOOK_OVER_GROUND_EVERY)
  })

  it('over a level skyline is the almanacs’ day, but for the air’s own refraction at the horizon', () => {
    const level = { step: 0.25, altitudes: new Float32Array(1440) }
    const sun = { azimuth: 90, altitude: SUN_RISE_ALTITUDE }
    expect(overSkyline(null, sun)).toBe(0)
    expect(Math.abs(overSkyline(level, sun))).toBeLessThan(0.15)
  })

  it.each([-0.8, -0.2, 0, 0.3, 1, 4])(
    'over ground at %d degrees ends when the disc is said to be behind it',
    (rise) => {
      const skyline = { step: 90, altitudes: new Float32Array(4).fill(rise) }
      for (let altitude = rise - 2; altitude < rise + 2; altitude += 0.001) {
        const disc = { azimuth: 120, altitude, radius: SUN_RADIUS }
        expect([altitude, behindGround(skyline, disc) === 'behind']).toEqual([
          altitude,
          overSkyline(skyline, disc) <= 0,
        ])
        // The lower edge is lifted by itself, too: it clears the ground when an upper edge at its place would.
        const lower = { azimuth: 120, altitude: altitude - 2 * SUN_RADIUS }
        expect([altitude, behindGround(skyline, disc) === 'clear']).toEqual([
          altitude,
          overSkyline(skyline, lower) >= 0,
        ])
      }
    },
  )

  it('reads a skyline straight between its azimuths, round north too, and unknown ground as unknown', () => {
    const altitudes = new Float32Array(1440)
    altitudes[0] = 2
    altitudes[1439] = 4
    altitudes[10] = Number.NaN
    const skyline = { step: 0.25, altitudes }
    expect(skylineAt(skyline, 359.875)).toBeCloseTo(3, 5)
    expect(skylineAt(skyline, 0)).toBe(2)
    expect(skylineAt(skyline, 2.5)).toBeNull()
    expect(skylineAt(skyline, 2.26)).toBe(0)
  })
})
