/** Windows by brackets against a walk through every minute with the same margins: nothing missed, nothing added, in many places. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Span } from '#core/light/crossing.ts'
import type { LightScene } from '#core/light/light-scene.ts'
import { commonByDay, dayWindows, daysFrom, totalOf } from '#core/light/light-window.ts'
import { type LightWishes, NO_WISHES, wishesMade } from '#core/light/light-wish.ts'
import { wishDays } from '#core/light/wish-days.ts'
import { lookAtSun, wishMargin } from '#core/light/wish-margin.ts'
import { assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { type CivilDay, addDays, civilDay, civilTime } from '#core/time/civil.ts'
import { type PlanParts, bridgeAt, examplePlan } from '#test/help/plans.ts'

const MINUTE = 60_000

function daysIn(zone: string, ...dates: string[]): CivilDay[] {
  return dates.map((date) => {
    const day = civilDay(date, zone)
    if (!day.ok) throw new Error(day.fault.message)
    return day.value
  })
}

function sceneAt(at: LatLon, parts: PlanParts = {}): LightScene {
  const plan = examplePlan({ at, ...parts })
  return lightSceneOf(plan, assess(plan))
}

/** Whether all wishes hold, by the clock of the place and the sky alone. */
function holds(scene: LightScene, wishes: LightWishes, zone: string, instant: number): boolean {
  const sun = lookAtSun(scene.at, instant)
  return wishesMade(wishes).every((kind) => {
    if (kind !== 'hours') return wishMargin(kind, wishes, scene, instant, sun) >= 0
    if (wishes.hours === null) return true
    const { hour, minute } = civilTime(instant, zone)
    const { from, until } = wishes.hours
    const now = hour * 60 + minute
    return from < until ? now >= from && now < until : now >= from || now < until
  })
}

interface Met {
  /** Minutes at which the walk and the windows disagree, farther than two seconds from any window's edge. */
  readonly disagree: string[]
  readonly inside: number
}

function walk(scene: LightScene, wishes: LightWishes, zone: string, day: CivilDay, spans: readonly Span[]): Met {
  const disagree: string[] = []
  let inside = 0
  for (let instant = day.start; instant < day.end; instant += MINUTE) {
    const here = holds(scene, wishes, zone, instant)
    if (here) inside++
    const near = spans.some(({ from, until }) => Math.min(Math.abs(instant - from), Math.abs(instant - until)) <= 2000)
    const within = spans.some(({ from, until }) => instant >= from && instant <= until)
    if (here !== within && !near) disagree.push(new Date(instant).toISOString())
  }
  return { disagree, inside }
}

const DAY_LONG: LightWishes = { ...NO_WISHES, subject: 'lit', landmark: 'lit', sun: 'out-of-frame' }
const CASES: readonly [string, string, LatLon, PlanParts, LightWishes, string[]][] = [
  [
    'six wishes in Central Europe, clock changes and all',
    'Europe/Berlin',
    { lat: 51.2, lon: 12.4 },
    {},
    { ...DAY_LONG, altitude: { least: 3, most: 45 }, moonUp: true, hours: { from: 360, until: 1260 } },
    ['2026-03-29', '2026-06-21', '2026-10-25', '2026-12-21', '2027-04-02'],
  ],
  [
    'back-lit and raked in the south',
    'Australia/Hobart',
    { lat: -42.9, lon: 147.3 },
    { bearing: 300, landmark: bridgeAt({ lat: -42.9, lon: 147.3 }, 300, 600, 35) },
    { ...NO_WISHES, subject: 'back-lit', landmark: 'raking', altitude: { least: 0, most: 60 } },
    ['2026-01-10', '2026-04-05', '2026-08-01', '2026-10-04'],
  ],
  [
    'the sun in the frame at its setting',
    'America/St_Johns',
    { lat: 47.6, lon: -52.7 },
    { bearing: 262 },
    { ...NO_WISHES, sun: 'in-frame' },
    ['2026-02-20', '2026-03-10', '2026-09-28', '2026-10-20'],
  ],
  [
    'soft light and shade past midnight in the far north',
    'Europe/Oslo',
    { lat: 69.6, lon: 18.9 },
    { bearing: 10 },
    { ...NO_WISHES, soft: 'either', hours: { from: 1200, until: 300 } },
    ['2026-01-15', '2026-05-17', '2026-05-19', '2026-08-01'],
  ],
  [
    'shade of both on the equator',
    'Asia/Singapore',
    { lat: 1.3, lon: 103.8 },
    { bearing: 90 },
    { ...NO_WISHES, subject: 'in-shade', landmark: 'in-shade', moonUp: true },
    ['2026-03-20', '2026-06-21', '2026-12-21'],
  ],
  [
    'the day of 23 hours at the other end of the world',
    'Pacific/Auckland',
    { lat: -36.8, lon: 174.8 },
    { bearing: 180 },
    { ...DAY_LONG, soft: null, moonUp: true },
    ['2026-09-27', '2026-04-05', '2026-07-01'],
  ],
]

describe('common windows against every minute', () => {
  test.each(CASES)('%s', (_name, zone, at, parts, wishes, dates) => {
    const scene = sceneAt(at, parts)
    const days = daysIn(zone, ...dates)
    const { common, total } = commonByDay(scene, wishes, days, zone)
    let inside = 0
    days.forEach((day, index) => {
      const spans = common[index] ?? []
      const met = walk(scene, wishes, zone, day, spans)
      expect(met.disagree).toEqual([])
      inside += met.inside
      // No window but touches a minute, or is shorter than one.
      expect(Math.abs(totalOf(spans) / MINUTE - met.inside)).toBeLessThanOrEqual(spans.length)
      expect(total[index]).toBe(totalOf(spans))
      const whole = dayWindows(scene, wishes, day, zone).common
      expect(whole).toHaveLength(spans.length)
      whole.forEach((span, place) => {
        expect(Math.abs(span.from - (spans[place]?.from ?? 0))).toBeLessThanOrEqual(1000)
        expect(Math.abs(span.until - (spans[place]?.until ?? 0))).toBeLessThanOrEqual(1000)
      })
    })
    // A case in which nothing ever holds would prove little.
    expect(inside).toBeGreaterThan(0)
  })
})

/** Wishes of every kind in any mixture, by which two or three are made at once. */
const anyWishes: fc.Arbitrary<LightWishes> = fc
  .record({
    subject: fc.constantFrom('lit', 'in-shade', 'back-lit', null),
    landmark: fc.constantFrom('lit', 'raking', 'in-shade', null),
    sun: fc.constantFrom('in-frame', 'out-of-frame', null),
    moonUp: fc.boolean(),
    low: fc.boolean(),
  })
  .map(({ low, ...made }) => ({ ...NO_WISHES, ...made, altitude: low ? { least: -1, most: 25 } : null }))
  .filter((wishes) => wishesMade(wishes).length > 0)

test('any wishes anywhere hold when every minute says so', () => {
  const law = fc.property(
    anyWishes,
    fc.record({ lat: fc.integer({ min: -65, max: 65 }), lon: fc.integer({ min: -179, max: 179 }) }),
    fc.integer({ min: 0, max: 359 }),
    fc.integer({ min: 0, max: 364 }),
    fc.integer({ min: 10, max: 170 }),
    (wishes, at, bearing, place, turned) => {
      const scene = sceneAt(at, { bearing, landmark: bridgeAt(at, bearing, 600, turned) })
      const days = daysIn('UTC', addDays('2026-01-01', place))
      const { common } = commonByDay(scene, wishes, days, 'UTC')
      days.forEach((day, index) => {
        expect(walk(scene, wishes, 'UTC', day, common[index] ?? []).disagree).toEqual([])
      })
    },
  )
  fc.assert(law, { numRuns: 150, seed: 20_260_101 })
})

describe('why no day will do', () => {
  const zone = 'Europe/Berlin'
  const scene = sceneAt({ lat: 51.2, lon: 12.4 })
  const week = daysFrom('2026-06-01', 7, (date) => {
    const day = civilDay(date, zone)
    return day.ok ? day.value : null
  })

  test('counts the days of each wish and of each pair', () => {
    const wishes: LightWishes = { ...NO_WISHES, subject: 'lit', hours: { from: 0, until: 60 } }
    // The sun does not rise before one o'clock at 51 degrees north; everything else is there each day.
    expect(wishDays(scene, wishes, week, zone)).toEqual({
      looked: 7,
      alone: [
        { kind: 'subject', days: 7 },
        { kind: 'hours', days: 7 },
      ],
      pairs: [{ kinds: ['subject', 'hours'], days: 0 }],
    })
  })

  test('counts pairs that do hold together', () => {
    const wishes: LightWishes = { ...NO_WISHES, subject: 'lit', hours: { from: 240, until: 1320 } }
    expect(wishDays(scene, wishes, week, zone).pairs).toEqual([{ kinds: ['subject', 'hours'], days: 7 }])
  })

  test('a wish that never holds', () => {
    const wishes: LightWishes = { ...NO_WISHES, altitude: { least: 75, most: 80 }, moonUp: true }
    // The highest sun at latitude 51.2 stands at 90 - 51.2 + 23.4 = 62.2 degrees.
    const { alone, pairs } = wishDays(scene, wishes, week, zone)
    expect(alone[0]).toEqual({ kind: 'altitude', days: 0 })
    expect(pairs[0]?.days).toBe(0)
  })
})
