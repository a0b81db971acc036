/** Rise, set and twilight against an independent library: the same events at the same times. */
import { Body } from 'astronomy-engine'
import { describe, expect, test } from 'vitest'
import { SUN_RISE_ALTITUDE, TWILIGHT_ALTITUDE, moonDay, sunDay } from '#core/light/day-events.ts'
import { eventsBy, seenBy } from '#test/help/celestial.ts'
import { generator } from '#test/help/generator.ts'

const HOUR = 3_600_000
const RISEN_MOON = -34 / 60
/** Degrees by which the two libraries may differ on the sky. */
const SKY = 0.011

interface Case {
  readonly what: string
  readonly at: { readonly lat: number; readonly lon: number }
  readonly ours: readonly number[]
  readonly theirs: readonly number[]
  readonly threshold: number
  readonly body: Body
}

function daysBetween(seed: number, lowest: number, highest: number, count: number): Case[] {
  const next = generator(seed)
  return Array.from({ length: count }, () => {
    const at = { lat: (next() < 0.5 ? -1 : 1) * (lowest + next() * (highest - lowest)), lon: next() * 360 - 180 }
    // A civil day with a fixed offset, on the whole hour.
    const start = Math.floor((Date.UTC(2000, 0, 1) + next() * 60 * 365.25 * 24 * HOUR) / HOUR) * HOUR
    return casesOf(at, [start, start + 24 * HOUR])
  }).flat()
}

function casesOf(at: Case['at'], day: readonly [number, number]): Case[] {
  const [sun, moon] = [sunDay(at, ...day), moonDay(at, ...day)]
  const named = `${at.lat.toFixed(3)} ${at.lon.toFixed(3)} ${new Date(day[0]).toISOString()}`
  const [Sun, Moon] = [
    { at, body: Body.Sun, threshold: SUN_RISE_ALTITUDE },
    { at, body: Body.Moon, threshold: RISEN_MOON },
  ]
  return [
    { ...Sun, what: `${named} sunrise`, ours: sun.rise, theirs: eventsBy(Body.Sun, at, 1, day) },
    { ...Sun, what: `${named} sunset`, ours: sun.set, theirs: eventsBy(Body.Sun, at, -1, day) },
    { ...Moon, what: `${named} moonrise`, ours: moon.rise, theirs: eventsBy(Body.Moon, at, 1, day) },
    { ...Moon, what: `${named} moonset`, ours: moon.set, theirs: eventsBy(Body.Moon, at, -1, day) },
    ...(['civil', 'nautical', 'astronomical'] as const).flatMap((kind) =>
      (['dawn', 'dusk'] as const).map((side) => ({
        ...Sun,
        what: `${named} ${kind} ${side}`,
        threshold: TWILIGHT_ALTITUDE[kind],
        ours: sun.twilights.filter((one) => one.kind === kind && one.side === side).map((one) => one.instant),
        theirs: eventsBy(Body.Sun, at, side === 'dawn' ? 1 : -1, day, TWILIGHT_ALTITUDE[kind]),
      })),
    ),
  ]
}

/** Degrees above the height asked for at which the other library sees the body (its limb, of the moon). */
function heightBy(one: Case, instant: number): number {
  const { altitude, distance } = seenBy(one.body, one.at, instant)
  const limb = one.body === Body.Moon ? (Math.asin(1737.4 / distance) * 180) / Math.PI : 0
  return altitude + limb - one.threshold
}

/** Degrees an hour at which a body moves up or down at an instant. */
const climb = (one: Case, instant: number): number =>
  Math.abs(seenBy(one.body, one.at, instant + 30_000).altitude - seenBy(one.body, one.at, instant - 30_000).altitude) *
  60

/** Seconds between two events of a day that both know. */
const secondsApart = (one: Case): number[] =>
  one.ours.map((instant, index) => Math.abs(instant - (one.theirs[index] ?? Number.NaN)) / 1000)

const unlike = (cases: readonly Case[]): string[] =>
  cases.filter((one) => one.ours.length !== one.theirs.length).map((one) => one.what)

/** Degrees an hour: a body that moves up or down more slowly grazes, and takes a minute and more for a hundredth of a degree. */
const GRAZING = 0.7

describe('the same events exist, at the same time', () => {
  test.each([
    [1, 0, 60, 600, 10],
    [2, 60, 75, 600, 60],
  ])(
    'seed %i: latitudes %i to %i, %i days: within %i seconds unless the body grazes',
    (seed, low, high, count, seconds) => {
      const cases = daysBetween(seed, low, high, count)
      expect(unlike(cases)).toEqual([])
      let events = 0
      for (const one of cases) {
        for (const [index, apart] of secondsApart(one).entries()) {
          const theirs = one.theirs[index] ?? Number.NaN
          if (apart > seconds) expect(climb(one, theirs), `${one.what}: ${apart} s`).toBeLessThan(GRAZING)
          events++
        }
      }
      expect(events).toBeGreaterThan(count * 5)
    },
  )

  test('up to 85 degrees, and at each event of ours the body stands where the event has it', () => {
    const cases = daysBetween(3, 75, 85, 1200)
    expect(unlike(cases)).toEqual([])
    for (const one of cases) {
      for (const instant of one.ours) expect(Math.abs(heightBy(one, instant)), one.what).toBeLessThan(SKY)
    }
  })
})

/**
 * Among 40,000 random days (400,000 kinds of event) at latitudes 60 to 85 the two libraries told of different events on
 * thirteen; these are the ones on which they still do with the place rounded to a thousandth of a degree. The body comes
 * within a hundredth of a degree of the height asked for and turns: by one library it passes it for some minutes, by the
 * other not at all. Or it passes within seconds of the day's bound.
 */
const GRAZING_DAYS: readonly (readonly [lat: number, lon: number, start: string, what: RegExp])[] = [
  [76.681, 59.099, '2030-10-31T07:00:00Z', /sunrise|sunset/],
  [80.875, 146.235, '2036-03-18T11:00:00Z', /civil dusk/],
  [62.622, 13.498, '2025-07-04T21:00:00Z', /sunset/],
  [-82.228, 162.127, '2046-08-26T01:00:00Z', /astronomical dawn|astronomical dusk/],
  [65.791, 131.929, '2019-06-25T02:00:00Z', /sunrise|sunset/],
  [-68.344, 105.236, '2018-11-25T04:00:00Z', /sunrise|sunset/],
  [69.805, 169.956, '2019-11-26T19:00:00Z', /sunrise|sunset/],
  [70.658, -9.461, '2012-08-16T15:00:00Z', /civil dawn|civil dusk/],
  [-76.172, -117.42, '2027-04-08T00:00:00Z', /sunset/],
  [-81.995, -152.217, '2045-08-14T15:00:00Z', /civil dawn|civil dusk/],
  [-66.394, 128.723, '2055-01-02T17:00:00Z', /sunrise|sunset/],
]

/** The events of one library that the other does not have within two minutes. */
const without = (some: readonly number[], others: readonly number[]): number[] =>
  some.filter((instant) => !others.some((other) => Math.abs(other - instant) < 120_000))

test.each(GRAZING_DAYS)('a grazing day, %d %d from %s: they differ by no more than the sky', (lat, lon, from, what) => {
  const start = Date.parse(from)
  const end = start + 24 * HOUR
  let alone = 0
  for (const one of casesOf({ lat, lon }, [start, end])) {
    for (const instant of [...without(one.ours, one.theirs), ...without(one.theirs, one.ours)]) {
      alone++
      expect(one.what).toMatch(what)
      if (Math.min(instant - start, end - instant) < 15_000) continue
      expect(Math.abs(heightBy(one, instant)), one.what).toBeLessThan(SKY)
      expect(climb(one, instant), one.what).toBeLessThan(GRAZING)
    }
  }
  expect(alone).toBeGreaterThan(0)
})
