/** Direct light over a skyline, against a walk through the day in steps of ten seconds. */
import { skylineAt } from '#core/ground/skyline.ts'
import { describe, expect, it } from 'vitest'
import { SUN_RISE_ALTITUDE } from '#core/light/day-events.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import {
  LOOK_OVER_GROUND_EVERY,
  behindGround,
  directLight,
  nearestUnknown,
  overGround,
  overSkyline,
  unknownAt,
  unknownBefore,
  withDoubts,
} from '#core/light/over-skyline.ts'
import { rememberingSun } from '#core/light/wish-margin.ts'
import { type BodyPlace, SUN_RADIUS, sunAt } from '#core/light/sky.ts'
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

describe('unknown ground that could stand higher', () => {
  const NONE = Number.NaN
  const around = (...unknown: number[]) => ({
    step: 90,
    altitudes: new Float32Array(4),
    unknown: Float32Array.from(unknown),
  })

  it('is the nearer of the two azimuths beside a direction, round north too', () => {
    const line = around(100, 200, NONE, 400)
    // Between north and east, east and south, south and west, west and north again.
    expect([10, 80, 100, 200, 300, 359.9].map((azimuth) => unknownAt(line, azimuth))).toEqual([
      100, 100, 200, 400, 100, 100,
    ])
    expect(unknownAt(line, -10)).toBe(100)
    expect(unknownAt(line, 370)).toBe(100)
    expect(unknownAt(around(NONE, 50, NONE, 70), 10)).toBe(50)
    expect(unknownAt(around(300, 50, NONE, NONE), 10)).toBe(50)
  })

  it('is none where neither has any, and where all is known', () => {
    expect(unknownAt(around(100, NONE, NONE, 70), 120)).toBeNull()
    expect(unknownAt({ step: 90, altitudes: new Float32Array(4) }, 120)).toBeNull()
  })

  it('is nearest in whichever direction it lies', () => {
    expect(nearestUnknown(around(NONE, 300, 80, 200))).toBe(80)
    expect(nearestUnknown(around(80, 300, NONE, 200))).toBe(80)
    expect(nearestUnknown(around(NONE, NONE, NONE, NONE))).toBeNull()
    expect(nearestUnknown({ step: 90, altitudes: new Float32Array(4) })).toBeNull()
  })

  // A sun that goes round at one height, a degree each minute, before a level skyline of which the east may hide more.
  const MINUTE = 60_000
  const day = { start: 0, end: 360 * MINUTE }
  const line = around(NONE, 500, NONE, NONE)
  const atHeight =
    (altitude: number) =>
    (instant: number): BodyPlace => ({ azimuth: instant / MINUTE, altitude })
  /** The airless altitude at which the upper edge stands on this skyline. */
  const onEdge = (() => {
    let [low, high] = [-3, 3]
    for (let round = 0; round < 60; round++) {
      const middle = (low + high) / 2
      if (overSkyline(line, { azimuth: 0, altitude: middle }) < 0) low = middle
      else high = middle
    }
    return high
  })()
  const span = (from: number, until: number) => ({ from: from * MINUTE, until: until * MINUTE })

  it('makes an end that the skyline makes doubtful, and no other', () => {
    const told = withDoubts([span(90, 200), span(210, 100), span(60, 300)], line, atHeight(onEdge), day)
    expect(told).toEqual([
      { ...span(90, 200), fromDoubt: { metres: 500, way: 'earliest' } },
      { ...span(210, 100), untilDoubt: { metres: 500, way: 'latest' } },
      { ...span(60, 300), fromDoubt: { metres: 500, way: 'earliest' } },
    ])
  })

  it('makes the ends of darkness doubtful the other way', () => {
    expect(withDoubts([span(100, 120)], line, atHeight(onEdge), day, false)).toEqual([
      { ...span(100, 120), fromDoubt: { metres: 500, way: 'latest' }, untilDoubt: { metres: 500, way: 'earliest' } },
    ])
  })

  it('is of no account where the end is not the skyline’s: the sun stands above or below it', () => {
    for (const off of [-0.1, 0.1]) {
      expect(withDoubts([span(90, 120)], line, atHeight(onEdge + off), day)).toEqual([span(90, 120)])
    }
    // A crossing is within a quarter of a second, in which the sun climbs a thousandth of a degree.
    for (const off of [-0.001, 0.001]) {
      expect(withDoubts([span(90, 200)], line, atHeight(onEdge + off), day)[0]?.fromDoubt).toBeDefined()
    }
  })

  it('is of no account at the day’s own ends', () => {
    const all = around(1, 2, 3, 4)
    const within = { start: 90 * MINUTE, end: 100 * MINUTE }
    expect(withDoubts([span(90, 100)], all, atHeight(onEdge), within)).toEqual([span(90, 100)])
    expect(withDoubts([span(89, 101)], all, atHeight(onEdge), within)).toEqual([span(89, 101)])
    const inner = withDoubts([span(91, 99)], all, atHeight(onEdge), within)[0]
    expect([inner?.fromDoubt, inner?.untilDoubt].every((doubt) => doubt !== undefined)).toBe(true)
  })

  it('leaves spans alone where there is no skyline, or nothing unknown about it', () => {
    const spans = [span(90, 120)]
    for (const sure of [null, { step: 90, altitudes: new Float32Array(4) }, around(NONE, NONE, NONE, NONE)]) {
      expect(withDoubts(spans, sure, atHeight(onEdge), day)).toBe(spans)
    }
  })

  it('comes with direct light', () => {
    const at = { lat: 46.9, lon: 8.2 }
    const civil = civilDayOf(Date.UTC(2026, 2, 20, 12), 'UTC')
    // At the equinox the sun rises in the east: between the azimuths of 0, 90 and 180 degrees.
    const [lit] = directLight((instant) => sunAt(at, instant), line, civil)
    expect(lit?.fromDoubt).toEqual({ metres: 500, way: 'earliest' })
    expect(lit?.untilDoubt).toBeUndefined()
  })
})

describe('the sun over ground', () => {
  it('of unknown height is over the level by the almanacs’ convention', () => {
    expect(overGround(null, { azimuth: 0, altitude: 5 })).toBeCloseTo(5 + 50 / 60, 12)
    const holed = { step: 90, altitudes: new Float32Array(4).fill(Number.NaN) }
    expect(overSkyline(holed, { azimuth: 0, altitude: 5 })).toBeCloseTo(5 + 50 / 60, 12)
  })

  it('far up is its upper edge less the ground, but for the air', () => {
    // At 45 degrees the air lifts by a minute of arc (any almanac).
    expect(overGround(20, { azimuth: 0, altitude: 45 })).toBeCloseTo(25 + 16 / 60 + 1 / 60, 2)
  })

  it('sets over the sea’s horizon from a summit when the tables of navigators say', () => {
    // Bowditch: from a height the sea's horizon dips by 1.76 minutes of arc by the root of the metres and lies 2.12 miles off by it, each of
    // them a minute of arc by which the sun stands lower when it sets. Almanacs take 34 minutes for the air, the formula has 29.
    for (const metres of [100, 1000, 3000]) {
      const dip = (1.76 * Math.sqrt(metres)) / 60
      const altitude = -50 / 60 - (2.12 * Math.sqrt(metres)) / 60
      expect(Math.abs(overGround(-dip, { azimuth: 0, altitude }))).toBeLessThan(0.1)
    }
  })

  it('rises without a leap as the ground passes the level', () => {
    const sun = { azimuth: 0, altitude: 0.5 }
    const [below, level, above] = [-1e-6, 0, 1e-6].map((ground) => overGround(ground, sun))
    expect(Math.abs((below ?? 0) - (level ?? 1))).toBeLessThan(1e-5)
    expect(Math.abs((above ?? 0) - (level ?? 1))).toBeLessThan(1e-5)
    expect(below).toBeGreaterThan(above ?? 0)
  })
})

describe('unknown ground before a disc', () => {
  /** All round the same. */
  const unknownFrom = (metres: number) => ({
    step: 90,
    altitudes: new Float32Array(4),
    unknown: new Float32Array(4).fill(metres),
  })
  const disc = (altitude: number) => ({ azimuth: 200, altitude })

  it('counts where the highest land there is could stand before it', () => {
    // The highest summit, 8,849 m, seen from a shore 430 m below the sea (the lowest there is), 9,279 m over 20 km: 24.9 degrees.
    expect(unknownBefore(unknownFrom(20_000), disc(24))).toBe(20_000)
    expect(unknownBefore(unknownFrom(400), disc(66))).toBe(400)
    expect(unknownBefore(unknownFrom(140_000), disc(3))).toBe(140_000)
  })

  it('does not where no land is as high', () => {
    // From that shore the summit reaches 4.2 degrees at 125 km, 42.9 at 10 km.
    expect(unknownBefore(unknownFrom(125_000), disc(8))).toBeNull()
    expect(unknownBefore(unknownFrom(10_000), disc(66))).toBeNull()
    expect(unknownBefore(unknownFrom(Number.NaN), disc(1))).toBeNull()
  })
})
