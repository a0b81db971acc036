/** The shapes of the day's sky: height, twilight steps, when sun and moon are up. */
import { describe, expect, test } from 'vitest'
import { moonDay, sunDay } from '#core/light/day-events.ts'
import { sunAt } from '#core/light/sky.ts'
import { type CivilDay, civilDay } from '#core/time/civil.ts'
import { litPath } from '#renderer/panel/day-strip/moon-disc.tsx'
import {
  BOX,
  bandPath,
  highest,
  samples,
  skySteps,
  sunSamples,
  topAltitude,
} from '#renderer/panel/day-strip/sky-curve.ts'
import { upSpans } from '#core/light/day-events.ts'
import { upText } from '#renderer/panel/day-strip/up-times.ts'

function dayOf(date: string, zone: string): CivilDay {
  const day = civilDay(date, zone)
  if (!day.ok) throw new Error(day.fault.message)
  return day.value
}

const LONDON = { lat: 51.5, lon: -0.1 }
const TROMSO = { lat: 69.65, lon: 18.96 }

function steps(at: typeof LONDON, date: string, zone: string) {
  const day = dayOf(date, zone)
  return { day, steps: skySteps(at, day, sunDay(at, day.start, day.end)) }
}

describe('twilight steps', () => {
  test('cover the day without gap, from night to day and back through every twilight', () => {
    const { day, steps: found } = steps(LONDON, '2026-03-20', 'Europe/London')
    expect(found.map(({ level }) => level)).toEqual([0, 1, 2, 3, 4, 3, 2, 1, 0])
    expect(found[0]?.from).toBe(day.start)
    expect(found.at(-1)?.until).toBe(day.end)
    for (const [index, { from }] of found.slice(1).entries()) expect(found[index]?.until).toBe(from)
  })

  test('know no night at London in June (the sun stays above -18)', () => {
    expect(steps(LONDON, '2026-06-21', 'Europe/London').steps.map(({ level }) => level)).not.toContain(0)
  })

  test('are one step on a polar day', () => {
    expect(steps(TROMSO, '2026-06-21', 'Europe/Oslo').steps.map(({ level }) => level)).toEqual([4])
  })
})

describe('the height', () => {
  const day = dayOf('2026-03-20', 'Europe/London')

  test('stands on the horizon at its ends and in the box between', () => {
    const numbers = [...bandPath(day, sunSamples(LONDON, day), topAltitude(51.5)).matchAll(/[ML]([\d.]+) ([\d.]+)/g)]
    const heights = numbers.map(([, , y]) => Number(y))
    expect(heights[0]).toBe(BOX.height)
    expect(heights.at(-1)).toBe(BOX.height)
    // Half of the equinox day lies between the crossings.
    const across = numbers.map(([, x]) => Number(x))
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(BOX.width / 2, -1.5)
    expect(Math.min(...heights)).toBeGreaterThan(0)
  })

  test('is drawn in two parts when the sun sets and rises within the day', () => {
    const heights = samples(
      day,
      (instant) => Math.cos(((instant - day.start) / (day.end - day.start)) * 2 * Math.PI) * 30,
    )
    expect(bandPath(day, heights, 90).match(/M/g)).toHaveLength(2)
  })

  test('is nothing on a polar night', () => {
    const night = dayOf('2026-12-15', 'Europe/Oslo')
    const heights = sunSamples(TROMSO, night)
    expect(bandPath(night, heights, topAltitude(69.65))).toBe('')
    expect(highest(heights)).toBeNull()
  })

  test('fits its box at every latitude on the longest days', () => {
    for (const lat of [-90, -66, -30, 0, 23.44, 45, 80, 90]) {
      for (const date of ['2026-06-21', '2026-12-21']) {
        const day = dayOf(date, 'UTC')
        const top = Math.max(
          ...samples(day, (instant) => sunAt({ lat, lon: 0 }, instant).altitude).map(({ altitude }) => altitude),
        )
        expect(top).toBeLessThanOrEqual(topAltitude(lat))
      }
    }
  })
})

describe('up in words', () => {
  const words = (at: typeof LONDON, date: string, zone: string): string => {
    const day = dayOf(date, zone)
    return upText(sunDay(at, day.start, day.end), day, zone)
  }

  test('sunrise and sunset as astronomy-engine has them, 04:43 and 21:21 on 21 June 2026 at London', () => {
    expect(words(LONDON, '2026-06-21', 'Europe/London')).toBe('up 04:43–21:21')
  })

  test('a polar day and a polar night (Tromsø)', () => {
    expect(words(TROMSO, '2026-06-21', 'Europe/Oslo')).toBe('up all day')
    expect(words(TROMSO, '2026-12-15', 'Europe/Oslo')).toBe('down all day')
  })

  test('a sunset after midnight and none before: Reykjavík, 17 June 2026, sunset at 00:01:07 (astronomy-engine)', () => {
    expect(words({ lat: 64.15, lon: -21.94 }, '2026-06-17', 'Atlantic/Reykjavik')).toMatch(
      /^up until 00:01, from 02:5\d$/,
    )
  })

  test('every stretch lies within the day, and the moon has one or two', () => {
    for (let date = 1; date <= 28; date++) {
      const day = dayOf(`2026-02-${String(date).padStart(2, '0')}`, 'Asia/Tokyo')
      const spans = upSpans(moonDay({ lat: 35.68, lon: 139.77 }, day.start, day.end), day)
      expect([1, 2]).toContain(spans.length)
      for (const { from, until } of spans) {
        expect(from).toBeGreaterThanOrEqual(day.start)
        expect(until).toBeLessThanOrEqual(day.end)
        expect(until).toBeGreaterThan(from)
      }
    }
  })
})

test('the moon’s lit part: nothing when new, the half at a quarter, the disc when full', () => {
  expect(litPath(0)).toContain('A1 1.000 0 0 0 -1 0')
  expect(litPath(0.5)).toContain('A1 0.000')
  expect(litPath(1)).toContain('A1 1.000 0 0 1 -1 0')
})
