/** What a day at a place has: the right civil day, none, one or two of each, and nothing invented. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { SUN_RISE_ALTITUDE, TWILIGHT_ALTITUDE, moonDay, sunDay, type SunDay, upSpans } from '#core/light/day-events.ts'
import { sunkHorizon } from '#core/light/dip.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { moonAt, sunAt } from '#core/light/sky.ts'

const HOUR = 3_600_000
const DAY = 24 * HOUR

/** A civil day whose clock is so many hours ahead of UTC. */
function civilDay(date: string, ahead: number): readonly [number, number] {
  const start = Date.parse(`${date}T00:00:00Z`) - ahead * HOUR
  return [start, start + DAY]
}

/** Seconds between instants found and published, the most of them; infinite when there are not as many. */
function secondsOff(found: readonly number[], published: readonly string[]): number {
  if (found.length !== published.length) return Number.POSITIVE_INFINITY
  return Math.max(0, ...found.map((instant, index) => Math.abs(instant - Date.parse(published[index] ?? '')) / 1000))
}

describe('events belong to the civil day asked for', () => {
  // Reports: mourner/suncalc 11, 161, 174. Times by astronomy-engine.
  test('a summer day of London is not the day before', () => {
    const day = sunDay({ lat: 51.5, lon: -0.1 }, ...civilDay('2026-06-21', 1))
    expect(secondsOff(day.rise, ['2026-06-21T03:43:04Z'])).toBeLessThan(10)
    expect(secondsOff(day.set, ['2026-06-21T20:21:22Z'])).toBeLessThan(10)
  })

  // Reports: mourner/suncalc 147, 163, 109.
  test("the moon rises in Tokyo's own day", () => {
    const day = moonDay({ lat: 35.68, lon: 139.77 }, ...civilDay('2026-01-01', 9))
    expect(secondsOff(day.rise, ['2026-01-01T05:02:00Z'])).toBeLessThan(60)
  })

  // Reports: udivankin/sunrise-sunset-js 19, mourner/suncalc 174. Times by astronomy-engine.
  test.each([
    ['2026-06-14', ['2026-06-14T23:58:45Z']],
    ['2026-06-15', []],
    ['2026-06-16', ['2026-06-16T00:00:01Z']],
    ['2026-06-17', ['2026-06-17T00:01:07Z']],
    ['2026-06-21', ['2026-06-21T00:03:44Z']],
  ])('a sunset after midnight stands on the date on which it falls: Reykjavik, %s', (date, expected) => {
    expect(secondsOff(sunDay({ lat: 64.15, lon: -21.94 }, ...civilDay(date, 0)).set, expected)).toBeLessThan(20)
  })

  test('a day can have two sunsets', () => {
    // The sunset comes later by a minute a day, so a day with one just past each midnight lies between the two above.
    const [first, second] = [Date.parse('2026-06-16T00:00:00Z'), Date.parse('2026-06-17T00:02:00Z')]
    const day = sunDay({ lat: 64.15, lon: -21.94 }, first, second)
    expect(secondsOff(day.set, ['2026-06-16T00:00:01Z', '2026-06-17T00:01:07Z'])).toBeLessThan(20)
    expect(day.rise.length).toBe(1)
  })
})

test('a sunrise in the last millisecond is of the day that ends, not of none and not of the next', () => {
  const at = { lat: 51.5, lon: -0.1 }
  const up = (instant: number): boolean => sunAt(at, instant).altitude >= SUN_RISE_ALTITUDE
  let [dark, light] = [Date.parse('2026-03-20T05:00:00Z'), Date.parse('2026-03-20T07:00:00Z')]
  while (light - dark > 1) {
    const middle = Math.floor((dark + light) / 2)
    if (up(middle)) light = middle
    else dark = middle
  }
  expect(sunDay(at, light - DAY, light).rise.filter((one) => one > light - HOUR)).toEqual([light - 1])
  expect(sunDay(at, light, light + DAY).rise.filter((one) => one < light + HOUR)).toEqual([])
})

describe('days without an event', () => {
  const TROMSO = { lat: 69.65, lon: 18.96 }

  // Reports: mourner/suncalc 146, 70, 45.
  test('are told in words: up all day', () => {
    const day = sunDay(TROMSO, ...civilDay('2026-06-21', 2))
    expect({ ...day, noon: day.noon !== null }).toEqual({
      rise: [],
      set: [],
      twilights: [],
      noon: true,
      state: 'up-all-day',
    })
  })

  test('are told in words: down all day, with the twilights that there are', () => {
    const day = sunDay(TROMSO, ...civilDay('2026-12-15', 1))
    expect([day.rise, day.set, day.state]).toEqual([[], [], 'down-all-day'])
    expect(day.twilights.filter((one) => one.kind === 'civil').map((one) => one.side)).toEqual(['dawn', 'dusk'])
  })

  test('the last day of the sun has its two hours, and the sun stays low in them', () => {
    const day = sunDay(TROMSO, ...civilDay('2026-11-26', 1))
    expect(secondsOff(day.rise, ['2026-11-26T09:57:00Z'])).toBeLessThan(120)
    expect(secondsOff(day.set, ['2026-11-26T11:05:00Z'])).toBeLessThan(120)
    expect(sunAt(TROMSO, day.noon ?? Number.NaN).altitude).toBeLessThan(6)
  })

  test('the poles', () => {
    for (const lat of [90, -90]) {
      const day = sunDay({ lat, lon: 0 }, ...civilDay('2026-06-21', 0))
      expect(day.state).toBe(lat > 0 ? 'up-all-day' : 'down-all-day')
      expect([day.rise, day.set, day.twilights]).toEqual([[], [], []])
    }
  })

  test('a moon that skips its transit has none', () => {
    const [start] = civilDay('2026-01-01', 0)
    const transits = Array.from({ length: 59 }, (_, index) =>
      moonDay(TROMSO, start + index * DAY, start + (index + 1) * DAY),
    )
    // Two months of 29.53 days: each skips one.
    expect(transits.filter((one) => one.transit === null).length).toBe(2)
  })
})

describe('a short dip next to the polar season', () => {
  const AT = { lat: 65.8, lon: 18.96 }

  // Report: mourner/suncalc 70, 45. Times by astronomy-engine; the sun grazes, so minutes.
  test('is seen', () => {
    const day = sunDay(AT, Date.parse('2026-06-25T12:00:00Z'), Date.parse('2026-06-26T12:00:00Z'))
    expect(secondsOff(day.set, ['2026-06-25T22:40:36Z'])).toBeLessThan(180)
    expect(secondsOff(day.rise, ['2026-06-25T22:53:22Z'])).toBeLessThan(180)
    expect(day.state).toBe('rises-or-sets')
  })

  test('is seen wherever the day begins, also within it', () => {
    const whole = sunDay(AT, Date.parse('2026-06-25T12:00:00Z'), Date.parse('2026-06-26T12:00:00Z'))
    for (let minute = 0; minute < 120; minute += 1) {
      const cut = Date.parse('2026-06-25T21:47:13Z') + minute * 60_000
      const before = sunDay(AT, cut - DAY, cut)
      const after = sunDay(AT, cut, cut + DAY)
      const near = (found: readonly number[]): number[] => found.filter((one) => Math.abs(one - cut) < 3 * HOUR)
      expect(near([...before.set, ...after.set]).length, `cut ${minute}`).toBe(1)
      expect(near([...before.rise, ...after.rise]).length, `cut ${minute}`).toBe(1)
      expect(Math.abs((near([...before.set, ...after.set])[0] ?? 0) - (whole.set[0] ?? 0))).toBeLessThan(1000)
    }
  })
})

// Report: brandon-rhodes/pyephem 155; USNO: twilights are of the sun's centre, without refraction.
test('twilights are of the airless sun', () => {
  const at = { lat: 51.5, lon: -0.1 }
  const day = sunDay(at, ...civilDay('2026-03-20', 0))
  expect(day.twilights.map((one) => `${one.kind} ${one.side}`)).toEqual([
    'astronomical dawn',
    'nautical dawn',
    'civil dawn',
    'civil dusk',
    'nautical dusk',
    'astronomical dusk',
  ])
  for (const { kind, instant } of day.twilights) {
    expect(sunAt(at, instant).altitude).toBeCloseTo(TWILIGHT_ALTITUDE[kind], 3)
    expect(apparentAltitude(sunAt(at, instant).altitude)).toBeCloseTo(TWILIGHT_ALTITUDE[kind], 3)
  }
})

// Reports: cosinekitty/astronomy 279, brandon-rhodes/pyephem 102. Times by astronomy-engine.
describe('height', () => {
  const AT = { lat: 51.5, lon: -0.1 }
  const [start, end] = civilDay('2026-03-20', 0)

  test('above the sea alone changes nothing: a plateau', () => {
    expect(secondsOff(sunDay(AT, start, end).rise, ['2026-03-20T06:03:17Z'])).toBeLessThan(10)
  })

  test('above the visible horizon makes the sun rise earlier: a summit', () => {
    expect(secondsOff(sunDay(AT, start, end, { aboveHorizon: 1000 }).rise, ['2026-03-20T05:56:08Z'])).toBeLessThan(10)
  })

  test('below the visible horizon is no height', () => {
    expect(sunDay(AT, start, end, { aboveHorizon: -200 })).toEqual(sunDay(AT, start, end))
    expect(sunkHorizon(-200)).toBe(0)
  })

  test('does not move twilights or noon, and moves the moon too', () => {
    const [level, high] = [sunDay(AT, start, end), sunDay(AT, start, end, { aboveHorizon: 1000 })]
    expect([high.twilights, high.noon]).toEqual([level.twilights, level.noon])
    const [moon, moonHigh] = [moonDay(AT, start, end), moonDay(AT, start, end, { aboveHorizon: 1000 })]
    expect((moon.rise[0] ?? 0) - (moonHigh.rise[0] ?? 0)).toBeGreaterThan(5 * 60_000)
  })

  // Bowditch: the distance of the horizon is 2.12 nautical miles by the root of the metres; 10 m gives 6.70, as many minutes of arc.
  test('sinks the horizon by a minute of arc for each nautical mile to it', () => {
    expect(Math.abs(sunkHorizon(10) * 60 - 6.7)).toBeLessThan(0.02)
  })
})

const PLACE = fc.record({
  lat: fc.double({ min: -90, max: 90, noNaN: true }),
  lon: fc.double({ min: -180, max: 180, noNaN: true }),
})
const START = fc.integer({ min: Date.UTC(1900, 0, 1), max: Date.UTC(2100, 0, 1) })
/** Days are 22 to 26 hours long, 23.5 among them. */
const LENGTH = fc.integer({ min: 44, max: 52 }).map((halves) => halves * (HOUR / 2))

const MOON_HEIGHT = (at: { lat: number; lon: number }, instant: number): number => {
  const { altitude, radius } = moonAt(at, instant)
  return altitude + radius + 34 / 60
}

describe.each([
  ['sun', sunDay, (at, instant) => sunAt(at, instant).altitude - SUN_RISE_ALTITUDE],
  ['moon', moonDay, MOON_HEIGHT],
] as const satisfies readonly (readonly [
  string,
  typeof sunDay | typeof moonDay,
  (at: { lat: number; lon: number }, instant: number) => number,
])[])('any day of the %s', (_name, dayOf, height) => {
  test('its events lie within it, rise and set take turns, and the body is up between them', () => {
    fc.assert(
      fc.property(PLACE, START, LENGTH, (at, start, length) => {
        const end = start + length
        const { rise, set, state } = dayOf(at, start, end)
        const events = [
          ...rise.map((instant) => ({ instant, up: true })),
          ...set.map((instant) => ({ instant, up: false })),
        ]
        events.sort((one, other) => one.instant - other.instant || Number(one.up) - Number(other.up))
        expect(state === 'rises-or-sets').toBe(events.length > 0)
        let up = height(at, start) >= 0
        if (state !== 'rises-or-sets') expect(up).toBe(state === 'up-all-day')
        let from = start
        for (const event of [...events, { instant: end, up: !up }]) {
          expect(Number.isInteger(event.instant)).toBe(true)
          expect(event.instant).toBeGreaterThanOrEqual(start)
          expect(event.instant).toBeLessThanOrEqual(event.instant === end ? end : end - 1)
          // Away from the event itself by the second to which it is known.
          for (let share = 0.001; share < 1; share += 0.083) {
            const instant = from + (event.instant - from) * share
            if (Math.min(instant - from, event.instant - instant) > 1000) expect(height(at, instant) >= 0).toBe(up)
          }
          if (event.instant < end) expect(event.up).toBe(!up)
          up = event.up
          from = event.instant
        }
      }),
      { numRuns: 300 },
    )
  })

  test('each event is of one day alone, wherever the day is cut', () => {
    fc.assert(
      fc.property(PLACE, START, fc.integer({ min: 6 * HOUR, max: 18 * HOUR }), (at, start, cut) => {
        const whole = dayOf(at, start, start + DAY)
        const parts = [dayOf(at, start, start + cut), dayOf(at, start + cut, start + DAY)]
        for (const kind of ['rise', 'set'] as const) {
          const joined = parts.flatMap((part) => part[kind])
          expect(joined.length).toBe(whole[kind].length)
          joined.forEach((instant, index) => expect(Math.abs(instant - (whole[kind][index] ?? 0))).toBeLessThan(1000))
        }
      }),
      { numRuns: 200 },
    )
  })
})

describe('the stretches of a day with the sun up', () => {
  const HOUR = 3_600_000
  const day = { start: 0, end: 24 * HOUR }
  const up = (rise: number[], set: number[], state: SunDay['state'] = 'rises-or-sets') =>
    upSpans({ rise, set, state }, day)

  test('run from rise to set, also where it sets before it rises, or does neither', () => {
    expect(up([4 * HOUR], [20 * HOUR])).toEqual([{ from: 4 * HOUR, until: 20 * HOUR }])
    expect(up([3 * HOUR], [HOUR])).toEqual([
      { from: day.start, until: HOUR },
      { from: 3 * HOUR, until: day.end },
    ])
    expect(up([], [], 'up-all-day')).toEqual([{ from: day.start, until: day.end }])
    expect(up([], [], 'down-all-day')).toEqual([])
  })

  test('begin or end with the day where it only sets or only rises', () => {
    expect(up([], [20 * HOUR])).toEqual([{ from: day.start, until: 20 * HOUR }])
    expect(up([4 * HOUR], [])).toEqual([{ from: 4 * HOUR, until: day.end }])
  })

  test('are as many as there are rises, in order, whatever the lists hold', () => {
    // Past a polar day: up at the start, down and up again twice.
    expect(up([3 * HOUR, 12 * HOUR], [2 * HOUR, 11 * HOUR])).toEqual([
      { from: day.start, until: 2 * HOUR },
      { from: 3 * HOUR, until: 11 * HOUR },
      { from: 12 * HOUR, until: day.end },
    ])
    expect(up([HOUR, 10 * HOUR], [2 * HOUR, 12 * HOUR])).toEqual([
      { from: HOUR, until: 2 * HOUR },
      { from: 10 * HOUR, until: 12 * HOUR },
    ])
  })
})
