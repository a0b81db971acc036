/** Hours of light on the sides of a landmark: by the geometry of equinox and polar day, and means of the very days given. */
import { describe, expect, it } from 'vitest'
import { skyLight } from '#core/light/alignment.ts'
import { bestDays, nextDays } from '#core/light/best-days.ts'
import { sunDirection } from '#core/light/incidence.ts'
import { faceDays, faceYears } from '#core/light/side-hours.ts'
import { type CivilDay, civilDay } from '#core/time/civil.ts'

const HOUR = 3_600_000

function dayOf(date: string): CivilDay {
  const day = civilDay(date, 'UTC')
  if (!day.ok) throw new Error(day.fault.message)
  return day.value
}

const QUARTERS = [0, 90, 180, 270].map((bearing) => ({ id: String(bearing), normal: sunDirection(bearing, 0) }))
const ROOF = { id: 'roof', normal: { east: 0, north: 0, up: 1 } }

describe('the sides of a house', () => {
  // At the equinox the sun goes along the celestial equator: at the equator through the zenith, from due east to due west.
  const EQUINOX = dayOf('2026-03-20')

  it('at the equator at the equinox are lit from sunrise to noon and from noon to sunset', () => {
    const found = faceDays({ lat: 0, lon: 0 }, QUARTERS, EQUINOX)
    const hours = found.map(({ spans }) => spans.reduce((sum, { from, until }) => sum + until - from, 0) / HOUR)
    // Twelve hours of day and some minutes for air and disc; the equation of time moves noon by minutes.
    expect(hours[1]).toBeCloseTo(6.06, 1)
    expect(hours[3]).toBeCloseTo(6.06, 1)
    const noon = found[1]?.spans[0]?.until ?? 0
    expect(Math.abs(noon - (EQUINOX.start + 12 * HOUR + 7.5 * 60_000))).toBeLessThan(60_000)
    expect(found[3]?.spans[0]?.from).toBeCloseTo(noon, -4)
    expect(found.map(({ id }) => id)).toEqual(['0', '90', '180', '270'])
  })

  it('at the pole in summer are lit half the day each, and the roof all of it', () => {
    const found = faceYears({ lat: 90, lon: 0 }, [...QUARTERS, ROOF], [dayOf('2026-06-21')])
    for (const { total } of found.slice(0, 4)) expect(total).toBeCloseTo(12, 1)
    expect(found[4]?.total).toBeCloseTo(24, 6)
  })

  it('at the pole in winter are not lit, and behind a high skyline neither', () => {
    const none = faceYears({ lat: 90, lon: 0 }, QUARTERS, [dayOf('2026-12-21')])
    expect(none.map(({ total }) => total)).toEqual([0, 0, 0, 0])
    const high = { step: 90, altitudes: new Float32Array(4).fill(30) }
    const behind = faceYears({ lat: 90, lon: 0 }, QUARTERS, [dayOf('2026-06-21')], high)
    expect(behind.map(({ total }) => total)).toEqual([0, 0, 0, 0])
    // The sun stands 23.4 degrees high all the day: over a skyline of 20 it is as without.
    const low = { step: 90, altitudes: new Float32Array(4).fill(20) }
    for (const { total } of faceYears({ lat: 90, lon: 0 }, QUARTERS, [dayOf('2026-06-21')], low))
      expect(total).toBeCloseTo(12, 1)
  })

  it('over months are the means of the days given, and none of months without', () => {
    const at = { lat: 47, lon: 8 }
    const dates = ['2026-02-03', '2026-02-20', '2026-12-30']
    const year = faceYears(at, [ROOF], dates.map(dayOf))
    const hours = dates.map((date) => faceYears(at, [ROOF], [dayOf(date)])[0]?.total ?? Number.NaN)
    const [early, late, winter] = hours
    const { months, total, id } = year[0] ?? { months: [], total: 0, id: '' }
    expect(id).toBe('roof')
    expect(months).toHaveLength(12)
    expect(months[1]).toBeCloseTo(((early ?? 0) + (late ?? 0)) / 2, 9)
    expect(months[11]).toBeCloseTo(winter ?? 0, 9)
    expect(months.filter((month) => month === null)).toHaveLength(10)
    expect(total).toBeCloseTo((early ?? 0) + (late ?? 0) + (winter ?? 0), 9)
    // Day lengths at 47 degrees north: about 9.9, 10.7 and 8.4 hours (almanacs).
    expect([early, late, winter]).toEqual([expect.closeTo(9.9, 0), expect.closeTo(10.7, 0), expect.closeTo(8.4, 0)])
  })
})

describe('the light of the sky', () => {
  it('changes with the almanacs’ sunset and at the end of each twilight', () => {
    const all = [10, -0.83, -50 / 60, -5.9, -6, -11.9, -12, -17.9, -18, -40].map(skyLight)
    const wanted = ['day', 'day', 'civil', 'civil', 'nautical', 'nautical', 'astronomical', 'astronomical']
    expect(all).toEqual([...wanted, 'night', 'night'])
  })
})

describe('the best days', () => {
  const MINUTE = 60_000
  /** As many minutes on each day in a row. */
  const days = (minutes: readonly number[]) =>
    minutes.map((count, index) => ({
      date: new Date(Date.UTC(2026, 0, 1 + index)).toISOString().slice(0, 10),
      total: count * MINUTE,
    }))
  const row = (length: number, minutes: Readonly<Record<number, number>>) =>
    days(Array.from({ length }, (_, index) => minutes[index] ?? 0))

  it('are a fortnight apart, the better taken, told by the calendar', () => {
    const all = row(60, { 3: 10, 16: 30, 17: 20, 29: 25, 30: 24, 50: 5 })
    expect(bestDays(all, 10).map(({ date }) => date)).toEqual(['2026-01-17', '2026-01-31', '2026-02-20'])
    const apart = row(60, { 2: 10, 16: 30 })
    expect(bestDays(apart, 10)).toHaveLength(2)
    expect(bestDays(row(60, { 3: 10, 16: 30 }), 10)).toHaveLength(1)
  })

  it('are no more than asked for, and the earliest of equals though seconds differ', () => {
    const all = row(80, { 0: 5, 20: 9, 40: 7, 60: 8 })
    expect(bestDays(all, 2).map(({ total }) => total / MINUTE)).toEqual([9, 8])
    const equal = row(10, { 1: 5, 6: 5.9 })
    expect(bestDays(equal, 3).map(({ date }) => date)).toEqual(['2026-01-02'])
    expect(bestDays(row(10, { 4: 0.99 }), 3)).toEqual([])
    expect(bestDays(row(10, { 4: 1 }), 3)).toHaveLength(1)
  })

  it('to come are from the day asked about on', () => {
    const all = row(10, { 1: 5, 4: 0.99, 5: 1, 7: 3, 9: 2 })
    expect(nextDays(all, '2026-01-02', 2).map(({ date }) => date)).toEqual(['2026-01-02', '2026-01-06'])
    expect(nextDays(all, '2026-01-03', 9).map(({ date }) => date)).toEqual(['2026-01-06', '2026-01-08', '2026-01-10'])
  })
})
