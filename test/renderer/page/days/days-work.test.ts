/** The worker's work: a year in steps is the year at once, skipped days are left out, alignments in parts are the whole. */
import { describe, expect, test } from 'vitest'
import { alignments } from '#core/light/alignment.ts'
import { commonByDay, daysFrom } from '#core/light/light-window.ts'
import { type LightWishes, NO_WISHES } from '#core/light/light-wish.ts'
import { faceYears } from '#core/light/side-hours.ts'
import { alignmentTargets } from '#core/plan/alignment-target.ts'
import { assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { type CivilDay, civilDay } from '#core/time/civil.ts'
import type { AlignmentsUpdate, FacesYearUpdate, Job, Update } from '#renderer/page/days/days-job.ts'
import { packSpans, unpackSpans } from '#renderer/page/days/packed-spans.ts'
import { DAYS_BEYOND, buffersOf, daysSteps } from '#renderer/page/days/days-work.ts'
import { NOTHING_YET, daysOf, longestOf, middleOfSpan, whyNoDays, withDays } from '#renderer/page/days/year-found.ts'
import { examplePlan } from '#test/help/plans.ts'

const plan = examplePlan()
const scene = lightSceneOf(plan, assess(plan))
const WISHES: LightWishes = { ...NO_WISHES, subject: 'lit', altitude: { least: 3, most: 30 } }

function updatesOf<Kind extends Update['kind']>(job: Job, _kind: Kind): Extract<Update, { kind: Kind }>[] {
  const found: Update[] = []
  let share = 0
  for (const steps = daysSteps(job); ;) {
    const next = steps.next()
    if (next.done === true) break
    expect(next.value.share).toBeGreaterThan(share)
    ;({ share } = next.value)
    found.push(next.value.update)
  }
  expect(share).toBe(1)
  return found as Extract<Update, { kind: Kind }>[]
}

function daysIn(year: number, zone: string): CivilDay[] {
  return daysFrom(`${year}-01-01`, 366, (date) => {
    const day = date.startsWith(String(year)) ? civilDay(date, zone) : null
    return day?.ok === true ? day.value : null
  })
}

describe('a year', () => {
  test('in steps is the year at once, and some days of the next', () => {
    const zone = 'America/St_Johns'
    const updates = updatesOf({ kind: 'year', scene, wishes: WISHES, zone, year: 2027 }, 'year')
    const found = updates.reduce(withDays, NOTHING_YET)
    const days = daysIn(2027, zone)
    const { common, total } = commonByDay(scene, WISHES, days, zone)
    const own = daysOf(found, 2027)
    expect(own.map(({ date }) => date)).toEqual(days.map(({ date }) => date))
    expect(own.map(({ spans }) => spans)).toEqual(common)
    expect(own.map((day) => day.total)).toEqual([...total])
    expect(found.days).toHaveLength(365 + DAYS_BEYOND)
  })

  // Samoa's 2011 has no 30 December; Kwajalein's 1993 no 21 August.
  test.each([
    ['Pacific/Apia', 2011, '2011-12-30'],
    ['Pacific/Kwajalein', 1993, '1993-08-21'],
  ])('of %s in %i is without %s', (zone, year, gone) => {
    const updates = updatesOf({ kind: 'year', scene, wishes: WISHES, zone, year }, 'year')
    const found = updates.reduce(withDays, NOTHING_YET)
    expect(daysOf(found, year)).toHaveLength(364)
    expect(found.byDate.has(gone)).toBe(false)
  })

  test('at the end of what is computed has no days beyond', () => {
    const updates = updatesOf({ kind: 'year', scene, wishes: WISHES, zone: 'UTC', year: 2100 }, 'year')
    expect(updates.reduce(withDays, NOTHING_YET).days.at(-1)?.date).toBe('2100-12-31')
    const first = updatesOf({ kind: 'year', scene, wishes: WISHES, zone: 'UTC', year: 1900 }, 'year')
    expect(first.reduce(withDays, NOTHING_YET).days[0]?.date).toBe('1900-01-01')
  })

  test('hands its arrays over', () => {
    const [update] = updatesOf({ kind: 'year', scene, wishes: WISHES, zone: 'UTC', year: 2026 }, 'year')
    if (update === undefined) throw new Error('a year has steps')
    expect(buffersOf(update)).toEqual([update.spans.counts.buffer, update.spans.edges.buffer])
  })
})

test('months of sides are those of the whole year', () => {
  const faces = [
    { id: 'north', normal: { east: 0, north: 1, up: 0 } },
    { id: 'west', normal: { east: -1, north: 0, up: 0 } },
  ]
  const updates: FacesYearUpdate[] = updatesOf(
    { kind: 'faces-year', at: scene.at, faces, skyline: null, zone: 'UTC', year: 2026 },
    'faces-year',
  )
  const whole = faceYears(scene.at, faces, daysIn(2026, 'UTC'))
  expect(updates.map(({ month }) => month)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11])
  faces.forEach((_, index) => {
    updates.forEach(({ month, hours }) =>
      expect(hours[index]).toBeCloseTo(whole[index]?.months[month] ?? Number.NaN, 9),
    )
  })
})

test('alignments in parts are the whole, none twice, none between two parts lost', () => {
  const [target] = alignmentTargets(plan)
  if (target === undefined) throw new Error('the plan has a landmark')
  const from = Date.UTC(2026, 0, 1)
  const request = {
    at: plan.spot.standpoint.at,
    body: 'moon',
    target,
    tolerance: 3,
    from,
    until: from + 3 * 365 * 86_400_000,
  } as const
  const updates: AlignmentsUpdate[] = updatesOf({ kind: 'alignments', request }, 'alignments')
  const whole = alignments(request)
  if (!whole.ok) throw new Error(whole.fault.message)
  expect(updates.length).toBeGreaterThan(3)
  expect(whole.value.length).toBeGreaterThan(5)
  expect(updates.flatMap(({ found }) => found)).toHaveLength(whole.value.length)
  updates
    .flatMap(({ found }) => found)
    .forEach(({ instant }, index) =>
      expect(Math.abs(instant - (whole.value[index]?.instant ?? 0))).toBeLessThanOrEqual(1000),
    )
})

test('spans come back from their arrays as they were', () => {
  const days = [
    [{ from: 1, until: 2 }],
    [],
    [
      { from: 3, until: 4.5 },
      { from: 6, until: 7 },
    ],
  ]
  expect(unpackSpans(packSpans(days))).toEqual(days)
})

describe('why no day will do', () => {
  const alone = (subject: number, hours: number) =>
    [
      { kind: 'subject', days: subject },
      { kind: 'hours', days: hours },
    ] as const
  const pair = (days: number) => [{ kinds: ['subject', 'hours'], days }] as const

  test('a wish that never holds comes before pairs, pairs before all at once', () => {
    expect(whyNoDays({ looked: 365, alone: alone(0, 365), pairs: pair(0) })).toEqual([
      { why: 'never', kind: 'subject' },
    ])
    expect(whyNoDays({ looked: 365, alone: alone(9, 365), pairs: pair(0) })).toEqual([
      { why: 'apart', kinds: ['subject', 'hours'] },
    ])
    expect(whyNoDays({ looked: 365, alone: alone(9, 365), pairs: pair(4) })).toEqual([{ why: 'together' }])
  })
})

test('a day is chosen at the middle of its longest window', () => {
  const minute = 60_000
  const spans = [
    { from: 0, until: 10 * minute },
    { from: 20 * minute, until: 41 * minute },
  ]
  const longest = longestOf(spans)
  expect(longest).toEqual(spans[1])
  expect(longestOf([])).toBeNull()
  // The middle of 20 and 41 is half past 30: a whole minute beside it, within the window.
  expect(longest === null ? null : middleOfSpan(longest)).toBe(31 * minute)
  // A window without a whole minute in it keeps its own middle.
  expect(middleOfSpan({ from: 61_000, until: 63_000 })).toBe(62_000)
})
