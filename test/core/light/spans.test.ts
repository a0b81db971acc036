/** Stretches of time: what two lists share, point by point; how long they are; and the hours of the clock as stretches of a day. */
import { array, assert, integer, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Doubt, Span } from '#core/light/crossing.ts'
import { commonSpans, daysFrom, hoursSpans, totalOf } from '#core/light/light-window.ts'
import { type CivilDay, civilDay } from '#core/time/civil.ts'

/** Sorted stretches without overlaps: gaps and lengths in turn, from so far on. */
const spans = array(integer({ min: 1, max: 9 }), { maxLength: 12 }).map((steps) => {
  const found: Span[] = []
  let at = 0
  for (let index = 0; index + 1 < steps.length; index += 2) {
    const from = at + (steps[index] ?? 1)
    at = from + (steps[index + 1] ?? 1)
    found.push({ from, until: at })
  }
  return found
})

const holds = (list: readonly Span[], instant: number) =>
  list.some(({ from, until }) => instant > from && instant < until)

describe('common stretches', () => {
  it('hold what both hold, in order, none of them empty', () => {
    assert(
      property(spans, spans, (ones, others) => {
        const common = commonSpans(ones, others)
        for (let instant = 0.5; instant < 120; instant++)
          expect(holds(common, instant)).toBe(holds(ones, instant) && holds(others, instant))
        for (const { from, until } of common) expect(until).toBeGreaterThan(from)
        common.slice(1).forEach(({ from }, index) => expect(from).toBeGreaterThanOrEqual(common[index]?.until ?? NaN))
        expect(commonSpans(others, ones)).toEqual(common)
      }),
      { numRuns: 500 },
    )
  })

  it('are none where ends but touch', () => {
    expect(commonSpans([{ from: 0, until: 5 }], [{ from: 5, until: 9 }])).toEqual([])
  })

  it('keep the doubt of the very end that each has', () => {
    const doubt = (metres: number, way: Doubt['way']): Doubt => ({ metres, way })
    const long = { from: 0, until: 10, fromDoubt: doubt(1, 'earliest'), untilDoubt: doubt(2, 'latest') }
    const late = { from: 4, until: 20, fromDoubt: doubt(3, 'earliest'), untilDoubt: doubt(4, 'latest') }
    const both = { from: 4, until: 10, fromDoubt: doubt(3, 'earliest'), untilDoubt: doubt(2, 'latest') }
    expect(commonSpans([long], [late])).toEqual([both])
    expect(commonSpans([late], [long])).toEqual([both])
    expect(commonSpans([long], [{ from: 4, until: 20 }])).toEqual([
      { from: 4, until: 10, untilDoubt: doubt(2, 'latest') },
    ])
    expect(commonSpans([{ from: 0, until: 10 }], [late])).toEqual([
      { from: 4, until: 10, fromDoubt: doubt(3, 'earliest') },
    ])
    const [sure] = commonSpans([long], [{ from: 4, until: 6 }])
    expect(Object.keys(sure ?? {}).toSorted()).toEqual(['from', 'until'])
  })

  it('are as long as all of them together', () => {
    expect(totalOf([])).toBe(0)
    expect(
      totalOf([
        { from: 2, until: 5 },
        { from: 7, until: 17 },
      ]),
    ).toBe(13)
  })
})

const HOUR = 3_600_000
const ZONE = 'Europe/Berlin'

function dayOf(date: string): CivilDay {
  const day = civilDay(date, ZONE)
  if (!day.ok) throw new Error(day.fault.message)
  return day.value
}

describe('hours of the clock', () => {
  const day = dayOf('2026-06-14')
  const at = (hour: number) => day.start + hour * HOUR

  it('are one stretch of the day, or two where they run past midnight', () => {
    expect(hoursSpans({ from: 480, until: 840 }, day, ZONE)).toEqual([{ from: at(8), until: at(14) }])
    expect(hoursSpans({ from: 1320, until: 300 }, day, ZONE)).toEqual([
      { from: day.start, until: at(5) },
      { from: at(22), until: day.end },
    ])
  })

  it('reach to the day’s own ends', () => {
    expect(hoursSpans({ from: 0, until: 1440 }, day, ZONE)).toEqual([{ from: day.start, until: day.end }])
    expect(hoursSpans({ from: 600, until: 1440 }, day, ZONE)).toEqual([{ from: at(10), until: day.end }])
    expect(hoursSpans({ from: 0, until: 60 }, day, ZONE)).toEqual([{ from: day.start, until: at(1) }])
    // Past midnight to midnight: the part after it is empty, and none.
    expect(hoursSpans({ from: 1320, until: 0 }, day, ZONE)).toEqual([{ from: at(22), until: day.end }])
  })

  it('are an hour less or more on the days on which the clock changes', () => {
    const length = (date: string, from: number, until: number) =>
      totalOf(hoursSpans({ from, until }, dayOf(date), ZONE))
    // Clocks go from 2 to 3 on 29 March 2026 and back from 3 to 2 on 25 October (the rule of the European Union).
    expect(length('2026-03-29', 60, 300)).toBe(3 * HOUR)
    expect(length('2026-10-25', 60, 300)).toBe(5 * HOUR)
    expect(length('2026-03-29', 0, 1440)).toBe(23 * HOUR)
    expect(length('2026-10-25', 0, 1440)).toBe(25 * HOUR)
    expect(length('2026-03-29', 1320, 300)).toBe(6 * HOUR)
  })
})

describe('days in a row', () => {
  it('are those of the calendar, but for one that the zone left out', () => {
    const days = daysFrom('2026-02-27', 4, (date) => (date === '2026-02-28' ? null : dayOf(date)))
    expect(days.map(({ date }) => date)).toEqual(['2026-02-27', '2026-03-01', '2026-03-02'])
    expect(daysFrom('2026-02-27', 0, dayOf)).toEqual([])
  })
})
