/** The ring of hours: the clock's hours with the sun up, each where the sun stands, larger when it is higher, named without crowding. */
import { assert, constantFrom, integer, property, record } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { sunAt } from '#core/light/sky.ts'
import { type CivilDay, civilDay, civilTime } from '#core/time/civil.ts'
import {
  type HourBead,
  beadBoxes,
  beadRadius,
  clockHours,
  hourBeads,
  placeBeads,
  placeHourLabels,
  ringRadius,
} from '#renderer/view/drawing/hour-ring.ts'
import type { Box } from '#renderer/view/drawing/plan-view.ts'
import { boxAround, overlap, textWidth } from '#renderer/view/drawing/pixel-lines.ts'
import { number } from '#test/help/arbitrary.ts'

const MIDDLE = { x: 400, y: 300 }
const WINDOW: Box = { left: 0, top: 0, right: 800, bottom: 600 }

function dayOf(date: string, zone: string): CivilDay {
  const found = civilDay(date, zone)
  if (!found.ok) throw new Error(found.fault.message)
  return found.value
}

function hoursOf(date: string, zone: string): number[] {
  return clockHours(dayOf(date, zone), zone).map(({ hour }) => hour)
}

const USUAL = Array.from({ length: 24 }, (_, hour) => hour)

describe('the hours of a day are the clock’s', () => {
  test('24 on a usual day', () => {
    expect(hoursOf('2026-06-14', 'Europe/Berlin')).toEqual(USUAL)
  })

  // Directive 2000/84/EC: at 01:00 UTC on the last Sundays of March and October, which is 02:00 and 03:00 in Berlin.
  test('without the one that is skipped, with both of one shown twice', () => {
    expect(hoursOf('2026-03-29', 'Europe/Berlin')).toEqual(USUAL.filter((hour) => hour !== 2))
    expect(hoursOf('2026-10-25', 'Europe/Berlin')).toEqual([0, 1, 2, 2, ...USUAL.slice(3)])
  })

  test('in zones off by a part of an hour, and on days that do not begin at 00:00', () => {
    // tz database: Nepal is at UTC+5:45.
    const [first] = clockHours(dayOf('2026-06-14', 'Asia/Kathmandu'), 'Asia/Kathmandu')
    expect(first?.instant).toBe(Date.UTC(2026, 5, 13, 18, 15))
    // tz database: Brazil put its clocks forward at midnight in 2018.
    expect(hoursOf('2018-11-04', 'America/Sao_Paulo')).toEqual(USUAL.slice(1))
  })

  test('each is a full hour within the day, in order', () => {
    const zones = constantFrom(
      'Pacific/Auckland',
      'America/St_Johns',
      'Australia/Lord_Howe',
      'Africa/Casablanca',
      'UTC',
    )
    assert(
      property(zones, integer({ min: 0, max: 20_000 }), (zone, days) => {
        const date = new Date(Date.UTC(1990, 0, 1) + days * 86_400_000).toISOString().slice(0, 10)
        const day = dayOf(date, zone)
        const hours = clockHours(day, zone)
        for (const { hour, instant } of hours) {
          const clock = civilTime(instant, zone)
          expect([clock.hour, clock.minute, clock.second]).toEqual([hour, 0, 0])
          expect(instant >= day.start && instant < day.end).toBe(true)
        }
        expect(hours.every(({ instant }, index) => index === 0 || instant > (hours[index - 1]?.instant ?? 0))).toBe(
          true,
        )
        expect(hours.length).toBeGreaterThanOrEqual(22)
      }),
      { numRuns: 60 },
    )
  })
})

describe('a bead', () => {
  const place = record({ lat: number(-90, 90), lon: number(-180, 180) })
  const date = integer({ min: Date.UTC(1950, 0, 1) / 86_400_000, max: Date.UTC(2060, 0, 1) / 86_400_000 })

  test('lies at the sun’s bearing from the subject, on the ring', () => {
    assert(
      property(place, date, (at, day) => {
        const hours = USUAL.map((hour) => ({ hour, instant: (day * 24 + hour) * 3_600_000 }))
        for (const bead of placeBeads(hourBeads(at, hours), MIDDLE, 110)) {
          const { azimuth } = sunAt(at, bead.instant)
          const [dx, dy] = [bead.at.x - MIDDLE.x, bead.at.y - MIDDLE.y]
          expect(Math.hypot(dx, dy)).toBeCloseTo(110, 9)
          const off = (Math.atan2(dx, -dy) * 180) / Math.PI - azimuth
          expect(Math.abs(Math.sin((off * Math.PI) / 180))).toBeLessThan(1e-9)
          expect(Math.cos((off * Math.PI) / 180)).toBeGreaterThan(0)
          expect(Number.isFinite(bead.radius) && bead.radius > 0).toBe(true)
        }
      }),
      { numRuns: 200 },
    )
  })

  test('grows with the sun’s height', () => {
    assert(
      property(number(0, 90), number(0, 90), (one, other) => {
        if (Math.abs(one - other) < 0.01) return
        expect(beadRadius(one) < beadRadius(other)).toBe(one < other)
      }),
    )
  })

  // 78 degrees north lies beyond the polar circle (66 degrees 34 minutes): Longyearbyen, 78.22 N 15.65 E.
  test('is there all round in polar day, and not at all in polar night', () => {
    const at = { lat: 78.22, lon: 15.65 }
    const zone = 'Arctic/Longyearbyen'
    expect(hourBeads(at, clockHours(dayOf('2026-06-21', zone), zone))).toHaveLength(24)
    expect(hourBeads(at, clockHours(dayOf('2026-12-21', zone), zone))).toHaveLength(0)
  })
})

describe('the hours’ names', () => {
  function labelled(beads: readonly HourBead[], ring: number, clear: readonly Box[] = []) {
    const placed = placeBeads(beads, MIDDLE, ring)
    const labels = placeHourLabels(placed, MIDDLE, ring, WINDOW, clear)
    return { placed, labels, boxes: labels.map(({ text, at }) => boxAround(at, textWidth(text, 12), 14)) }
  }

  test('keep clear of each other, of the beads and of what must be seen', () => {
    const where = record({ lat: number(-90, 90), lon: number(-180, 180) })
    const covers = record({ x: number(250, 550), y: number(150, 450) })
    assert(
      property(where, integer({ min: 0, max: 40_000 }), number(60, 130), covers, (at, day, ring, cover) => {
        const hours = USUAL.map((hour) => ({ hour, instant: (day * 24 + hour) * 3_600_000 }))
        const clear = boxAround(cover, 110, 21)
        const { placed, boxes } = labelled(hourBeads(at, hours), ring, [clear])
        boxes.forEach((box, index) => {
          expect(overlap(box, clear)).toBe(false)
          expect(boxes.slice(index + 1).some((other) => overlap(box, other))).toBe(false)
          expect(beadBoxes(placed).some((bead) => overlap(box, bead))).toBe(false)
        })
      }),
      { numRuns: 200 },
    )
  })

  test('name every second hour where there is room', () => {
    // 50 degrees north at the solstice: the sun turns quickly.
    const hours = USUAL.map((hour) => ({ hour, instant: Date.UTC(2026, 5, 21, hour) }))
    const { labels } = labelled(hourBeads({ lat: 50, lon: 0 }, hours), 120)
    expect(labels.map(({ text }) => text)).toEqual(['4', '6', '8', '10', '12', '14', '16', '18', '20'])
  })

  test('name hours that lie on each other as one', () => {
    // On the equator at an equinox the sun climbs straight up from due east and sinks due west.
    const hours = USUAL.map((hour) => ({ hour, instant: Date.UTC(2026, 2, 20, hour) }))
    const { labels } = labelled(hourBeads({ lat: 0, lon: 0 }, hours), 110)
    const [morning, afternoon] = labels
    expect(morning?.text).toBe('7–12')
    expect(afternoon?.text).toBe('13–18')
    expect(morning?.at.x).toBeGreaterThan(MIDDLE.x + 110)
    expect(afternoon?.at.x).toBeLessThan(MIDDLE.x - 110)
  })
})

describe('the ring’s radius', () => {
  test('suits the window, keeps out of a large subject, and is none on a map of countries', () => {
    expect(ringRadius({ ...WINDOW, bottom: 680 }, 0.5, 3)).toBeGreaterThan(105)
    expect(ringRadius({ ...WINDOW, bottom: 300 }, 0.5, 3)).toBeLessThan(70)
    expect(ringRadius(WINDOW, 40, 500)).toBeGreaterThan(250)
    expect(ringRadius(WINDOW, 0.001, 0)).toBeNull()
  })
})
