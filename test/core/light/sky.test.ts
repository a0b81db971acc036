/** Sun and moon against an independent library, and what is undone of the library that we stand on. */
import { Body, Illumination, MoonPhase, SearchMoonPhase } from 'astronomy-engine'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { SUN_RADIUS, airless, moonAhead, moonAt, moonPhase, sunAt } from '#core/light/sky.ts'
import { apart, seenBy } from '#test/help/celestial.ts'
import { generator } from '#test/help/generator.ts'

const DAY = 86_400_000
const RADIANS = Math.PI / 180
const next = generator(20_260_321)
const SOMEWHERE = Array.from({ length: 20_000 }, () => ({
  at: { lat: next() * 140 - 70, lon: next() * 360 - 180 },
  instant: Math.floor(Date.UTC(2000, 0, 1) + next() * 60 * 365.25 * DAY),
}))

describe('against astronomy-engine, 20,000 instants and places', () => {
  test('the sun stands within a hundredth of a degree', () => {
    const worst = Math.max(
      ...SOMEWHERE.map(({ at, instant }) => apart(sunAt(at, instant), seenBy(Body.Sun, at, instant))),
    )
    expect(worst).toBeLessThan(0.0105)
  })

  test('the moon stands within five thousandths, seen from the place itself, and as far', () => {
    let [worst, farthest] = [0, 0]
    for (const { at, instant } of SOMEWHERE) {
      const [ours, theirs] = [moonAt(at, instant), seenBy(Body.Moon, at, instant)]
      worst = Math.max(worst, apart(ours, theirs))
      farthest = Math.max(farthest, Math.abs(ours.distance - theirs.distance))
    }
    expect(worst).toBeLessThan(0.005)
    expect(farthest).toBeLessThan(30)
  })

  test('the moon is as full, as far in its cycle, and waxes when it does', () => {
    for (const { at, instant } of SOMEWHERE.slice(0, 4000)) {
      const { lit, waxing, cycle } = moonPhase(at, instant)
      expect(Math.abs(lit - Illumination(Body.Moon, new Date(instant)).phase_fraction)).toBeLessThan(0.001)
      // The moon gains half a degree an hour on the sun: a hundredth is 1.2 minutes.
      const longitude = MoonPhase(new Date(instant))
      const off = Math.abs(cycle * 360 - longitude)
      expect(Math.min(off, 360 - off)).toBeLessThan(0.015)
      if (Math.min(longitude, Math.abs(longitude - 180), 360 - longitude) > 0.015) expect(waxing).toBe(longitude < 180)
    }
  })
})

describe('new and full moon, 1950 to 2060', () => {
  const HERE = { lat: 47, lon: 8 }
  const MINUTE = 60_000

  /** Minutes from astronomy-engine's own turn to ours, and what is told on each side of it. */
  function turns(ahead: 0 | 180): { off: number; before: boolean; after: boolean }[] {
    const found: { off: number; before: boolean; after: boolean }[] = []
    let from = new Date(Date.UTC(1950, 0, 1))
    while (from.getTime() < Date.UTC(2060, 0, 1)) {
      const turn = SearchMoonPhase(ahead, from, 40)
      if (turn === null) throw new Error('no such phase')
      const instant = turn.date.getTime()
      // The moon's gain is even within a quarter of an hour.
      const gone = ((moonAhead(instant) - ahead + 540) % 360) - 180
      const perMinute = (((moonAhead(instant + MINUTE) - moonAhead(instant - MINUTE) + 540) % 360) - 180) / 2
      found.push({
        off: Math.abs(gone / perMinute),
        before: moonPhase(HERE, instant - 4 * MINUTE).waxing,
        after: moonPhase(HERE, instant + 4 * MINUTE).waxing,
      })
      from = new Date(instant + 20 * DAY)
    }
    return found
  }

  test.each([
    ['new', 0, false],
    ['full', 180, true],
  ] as const)('%s moon comes when astronomy-engine has it, within three minutes', (_name, ahead, waxesBefore) => {
    const all = turns(ahead)
    expect(all.length).toBeGreaterThan(1350)
    expect(Math.max(...all.map(({ off }) => off))).toBeLessThan(3)
    for (const { before, after } of all) expect([before, after]).toEqual([waxesBefore, !waxesBefore])
  })
})

test('the moon turns its lit side to the sun', () => {
  let seen = 0
  for (const { at, instant } of SOMEWHERE.slice(0, 4000)) {
    const [sun, moon, { tilt, lit }] = [sunAt(at, instant), moonAt(at, instant), moonPhase(at, instant)]
    // Where the sun is nearly behind or opposite, or the moon overhead, the direction to it is badly known.
    if (lit < 0.05 || lit > 0.95 || Math.abs(moon.altitude) > 75) continue
    const turn = (sun.azimuth - moon.azimuth) * RADIANS
    const [high, from] = [sun.altitude * RADIANS, moon.altitude * RADIANS]
    const right = Math.cos(high) * Math.sin(turn)
    const up = Math.sin(high) * Math.cos(from) - Math.cos(high) * Math.sin(from) * Math.cos(turn)
    const off = Math.abs(tilt - Math.atan2(right, up) / RADIANS) % 360
    expect(Math.min(off, 360 - off)).toBeLessThan(4)
    seen++
  }
  expect(seen).toBeGreaterThan(2000)
})

test('the added refraction is undone exactly, above and below the horizon', () => {
  // suncalc 2 adds Meeus 16.4 for 1010 hectopascals and 10 degrees to altitudes above 0, and its value at 0 below.
  const added = (altitude: number): number => {
    const height = Math.max(0, altitude * RADIANS)
    return altitude + 0.000_296_7 / Math.tan(height + 0.003_125_36 / (height + 0.089_011_79)) / RADIANS
  }
  fc.assert(
    fc.property(fc.double({ min: -90, max: 90, noNaN: true }), (altitude) => {
      expect(Math.abs(airless(added(altitude)) - altitude)).toBeLessThan(1e-9)
    }),
  )
})

test('places stay in range at poles, date line and equator, from 1900 to 2100', () => {
  const lat = fc.oneof(fc.constantFrom(-90, 90, 0), fc.double({ min: -90, max: 90, noNaN: true }))
  const lon = fc.oneof(fc.constantFrom(-180, 180), fc.double({ min: -180, max: 180, noNaN: true }))
  const when = fc.integer({ min: Date.UTC(1900, 0, 1), max: Date.UTC(2101, 0, 1) })
  fc.assert(
    fc.property(lat, lon, when, (north, east, instant) => {
      const at = { lat: north, lon: east }
      const moon = moonAt(at, instant)
      for (const { azimuth, altitude } of [sunAt(at, instant), moon]) {
        expect(azimuth).toBeGreaterThanOrEqual(0)
        expect(azimuth).toBeLessThan(360)
        expect(Math.abs(altitude)).toBeLessThanOrEqual(90)
      }
      expect(moon.distance).toBeGreaterThan(348_000)
      expect(moon.distance).toBeLessThan(414_000)
      expect(Math.abs(moon.radius / SUN_RADIUS - 1)).toBeLessThan(0.12)
    }),
  )
})
