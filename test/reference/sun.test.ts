/** The sun's places, risings, settings and twilights against published figures. */
import { describe, expect, it } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { SUN_RISE_ALTITUDE, sunDay, type SunDay } from '#core/light/day-events.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { SUN_RADIUS, sunAt } from '#core/light/sky.ts'
import { POLE, rightAscension } from '#test/help/celestial.ts'

const MINUTE = 60_000
const HOUR = 60 * MINUTE
const DAY = 24 * HOUR
/** Degrees that suncalc's series for the sun may be off (Meeus, chapter 25, lower accuracy). */
const SERIES = 0.01

const utc = (text: string): number => Date.parse(`${text.replace(' ', 'T')}Z`)

/** The day of a place whose clock is so many hours ahead of UTC. */
function dayOf(at: LatLon, date: string, ahead = 0): SunDay {
  const start = utc(`${date} 00:00`) - ahead * HOUR
  return sunDay(at, start, start + DAY)
}

/** Minutes between what is found and a printed clock time of the day; infinite when there is not exactly one. */
function minutesOff(found: readonly number[], date: string, clock: string, ahead = 0): number {
  const [only] = found
  if (only === undefined || found.length > 1) return Number.POSITIVE_INFINITY
  return Math.abs(only + ahead * HOUR - utc(`${date} ${clock}`)) / MINUTE
}

describe('position', () => {
  // I. Reda and A. Andreas, Solar Position Algorithm, NREL/TP-560-34302, appendix A.5 (seen in pvlib's tests).
  const GOLDEN = { lat: 39.742476, lon: -105.1786 }
  const EXAMPLE = utc('2003-10-17 19:30:30')

  it('the example of the NREL algorithm: azimuth, altitude, zenith distance in its air', () => {
    const { azimuth, altitude } = sunAt(GOLDEN, EXAMPLE)
    expect(Math.abs(azimuth - 194.34024)).toBeLessThan(0.01)
    expect(Math.abs(altitude - 39.872046)).toBeLessThan(0.005)
    const seen = apparentAltitude(altitude, { pressure: 820, temperature: 11 })
    expect(Math.abs(seen - 39.888378)).toBeLessThan(0.005)
    expect(Math.abs(90 - seen - 50.11162)).toBeLessThan(0.01)
  })

  it('its right ascension 202.22741 and declination -9.31434', () => {
    const seen = sunAt(POLE, EXAMPLE)
    expect(Math.abs(rightAscension(seen, EXAMPLE) - 202.22741)).toBeLessThan(SERIES)
    expect(Math.abs(seen.altitude + 9.31434)).toBeLessThan(SERIES)
  })

  it('its equation of time, 14.6415 minutes, to the hundredth of a degree', () => {
    // At the pole the azimuth from south is the hour angle at Greenwich; a quarter of a degree is a minute.
    const mean = ((EXAMPLE - utc('2003-10-17 12:00')) / DAY) * 360
    const minutes = (sunAt(POLE, EXAMPLE).azimuth - 180 - mean) * 4
    expect(Math.abs(minutes - 14.6415)).toBeLessThan(4 * SERIES)
  })

  // Meeus, Astronomical Algorithms, 2nd edition, example 25.a; the complete theory's values, pages 165 and 169.
  it('right ascension and declination of 1992 October 13, 0h of dynamical time', () => {
    const instant = utc('1992-10-13 00:00') - 59_000
    const seen = sunAt(POLE, instant)
    for (const [ascension, declination] of [
      [198.38083, -7.78507],
      [198.378_12, -7.783_82],
    ] as const) {
      expect(Math.abs(rightAscension(seen, instant) - ascension)).toBeLessThan(SERIES)
      expect(Math.abs(seen.altitude - declination)).toBeLessThan(SERIES)
    }
  })

  // JPL Horizons printouts of 2019 (DE431), kept in cosinekitty/astronomy, generate/horizons.
  it.each([
    ['2019-03-19 08:00', 0, 0, 90.7081, 28.0181, 28.0497],
    ['2019-03-19 15:00', 0, 0, 269.2531, 46.9524, 46.9682],
    ['2019-03-19 17:58', 0, 0, 269.5386, 2.4448, 2.7002],
    ['2024-06-19 00:00', 29, -81, 294.5657, null, 4.3112],
  ])('%s at %d, %d stands at azimuth %d, airless %d, refracted %d', (when, lat, lon, azimuth, airless, refracted) => {
    const sun = sunAt({ lat, lon }, utc(when))
    expect(Math.abs(sun.azimuth - azimuth)).toBeLessThan(0.0025)
    if (airless !== null) expect(Math.abs(sun.altitude - airless)).toBeLessThan(0.004)
    expect(Math.abs(apparentAltitude(sun.altitude) - refracted)).toBeLessThan(0.004)
  })

  // Azimuth counts from north, not from south as in Meeus chapter 13, and altitude is without air.
  it('stands in the south at noon north of the tropics, in the east in the morning', () => {
    const noon = dayOf({ lat: 50, lon: 0 }, '2026-03-20').noon ?? Number.NaN
    expect(Math.abs(sunAt({ lat: 50, lon: 0 }, noon).azimuth - 180)).toBeLessThan(0.01)
    expect(Math.abs(sunAt({ lat: 50, lon: 0 }, utc('2026-03-20 06:00')).azimuth - 90)).toBeLessThan(3)
  })
})

describe('rise, set, noon, twilight', () => {
  const ATLANTA = { lat: 33 + 46 / 60, lon: -(84 + 25 / 60) }

  // U.S. Naval Observatory tables, kept in brandon-rhodes/pyephem and cosinekitty/astronomy.
  it.each([
    [ATLANTA, '2007-03-20', -5, '06:42', '18:49'],
    [ATLANTA, '2007-06-21', -5, '05:27', '19:51'],
    [ATLANTA, '2007-12-21', -5, '07:38', '17:33'],
    [{ lat: 60, lon: 0 }, '2019-03-20', 0, '06:03', '18:14'],
    [{ lat: 60, lon: 0 }, '2019-06-21', 0, '02:36', '21:28'],
    [{ lat: 60, lon: 0 }, '2019-12-21', 0, '09:02', '14:54'],
  ])('%o on %s, clock %d: rises %s, sets %s', (at, date, ahead, rise, set) => {
    const day = dayOf(at, date, ahead)
    expect(minutesOff(day.rise, date, rise, ahead)).toBeLessThan(1)
    expect(minutesOff(day.set, date, set, ahead)).toBeLessThan(1)
  })

  // The same; the table prints the set on the UT date of the event, before that day's rise.
  it('29 N 81 W on 2019 July 4 in UT: the set comes before the rise', () => {
    const day = dayOf({ lat: 29, lon: -81 }, '2019-07-04')
    expect(minutesOff(day.rise, '2019-07-04', '10:30')).toBeLessThan(1)
    expect(minutesOff(day.set, '2019-07-04', '00:27')).toBeLessThan(1)
  })

  // USNO, as checked in skyfielders/python-skyfield, test_almanac.py: Defiance, Ohio, 2019 November 8, UT.
  it('all eight events of a day', () => {
    const date = '2019-11-08'
    // The local day: the UT day begins with the end of the evening before.
    const day = dayOf({ lat: 41.281944, lon: -84.362778 }, date, -5)
    expect(minutesOff(day.rise, date, '12:17')).toBeLessThan(1)
    expect(minutesOff(day.set, date, '22:25')).toBeLessThan(1)
    const told = ['10:42', '11:15', '11:48', '22:54', '23:27', '23:59']
    expect(day.twilights.length).toBe(6)
    day.twilights.forEach((one, index) => {
      expect(minutesOff([one.instant], date, told[index] ?? '')).toBeLessThan(1)
    })
    expect(day.twilights.map((one) => one.kind)).toEqual([
      'astronomical',
      'nautical',
      'civil',
      'civil',
      'nautical',
      'astronomical',
    ])
  })

  // USNO, in brandon-rhodes/pyephem, doc/rise-set.rst: Atlanta, 2009 September 6, daylight time.
  it('civil dawn, rise, transit, set, civil dusk', () => {
    const date = '2009-09-06'
    const { rise, noon, set, twilights } = dayOf({ lat: 33.8, lon: -84.4 }, date, -4)
    const civil = twilights.filter((one) => one.kind === 'civil').map((one) => one.instant)
    const found = [civil[0], rise[0], noon, set[0], civil[1]].map((one) => one ?? Number.NaN)
    for (const [index, clock] of ['06:50', '07:15', '13:36', '19:56', '20:21'].entries()) {
      expect(minutesOff(found.slice(index, index + 1), date, clock, -4)).toBeLessThan(1)
    }
  })

  const GOLDEN = { lat: 39.742476, lon: -105.1786 }

  // NREL's page of the algorithm, in pvlib's tests: Golden, Colorado, 2015 January 2; 5 seconds.
  it('rise, transit and set to the second', () => {
    const { rise, noon, set } = dayOf(GOLDEN, '2015-01-02', -7)
    expect(minutesOff(rise, '2015-01-02', '07:21:55', -7) * 60).toBeLessThan(5)
    expect(minutesOff([noon ?? 0], '2015-01-02', '12:04:45', -7) * 60).toBeLessThan(5)
    expect(minutesOff(set, '2015-01-02', '16:47:43', -7) * 60).toBeLessThan(5)
  })

  // The algorithm's example day. It prints 17:20:19 for the set, but folds the set of the day before into the day:
  // the sun of local October 17 sets at 17:18:51. The same slip made 19:13:58 of 19:12:52 on 2015 August 2 (USNO 19:13).
  it('the set is that of the local day, not of the UT day folded', () => {
    const { rise, noon, set } = dayOf(GOLDEN, '2003-10-17', -7)
    expect(minutesOff(rise, '2003-10-17', '06:12:43.46', -7) * 60).toBeLessThan(5)
    expect(minutesOff([noon ?? 0], '2003-10-17', '11:46:04.96', -7) * 60).toBeLessThan(5)
    expect(minutesOff(set, '2003-10-17', '17:18:51', -7) * 60).toBeLessThan(5)
    expect(minutesOff(dayOf(GOLDEN, '2003-10-16', -7).set, '2003-10-16', '17:20:19', -7) * 60).toBeLessThan(5)
    expect(minutesOff(dayOf(GOLDEN, '2015-08-02', -7).set, '2015-08-02', '19:12:52', -7) * 60).toBeLessThan(10)
  })

  // Golden lies 1830 m above the sea. The almanac's times are of the standard 34', whatever the height; a horizon
  // refraction scaled with the thin air would move them by 30 seconds.
  it('takes no notice of the height above the sea', () => {
    const { rise } = dayOf(GOLDEN, '2015-01-02', -7)
    expect(sunAt(GOLDEN, rise[0] ?? 0).altitude).toBeCloseTo(SUN_RISE_ALTITUDE, 3)
  })

  // USNO, 2022: the pole's one rise and one set of the year, in UT.
  it('the North Pole rises once and sets once a year', () => {
    const days = Array.from({ length: 365 }, (_, index) => {
      const start = utc('2022-01-01 00:00') + index * DAY
      return sunDay(POLE, start, start + DAY)
    })
    const rises = days.flatMap((one) => one.rise)
    const sets = days.flatMap((one) => one.set)
    // The sun climbs so slowly there that a thousandth of a degree is four minutes.
    expect(minutesOff(rises, '2022-03-18', '13:02')).toBeLessThan(2)
    expect(minutesOff(sets, '2022-09-25', '04:13')).toBeLessThan(4)
    const states = days.map((one) => one.state)
    expect(states.indexOf('up-all-day')).toBe(states.indexOf('rises-or-sets') + 1)
    expect(states.filter((one) => one === 'up-all-day').length).toBe(190)
    expect(states.filter((one) => one === 'rises-or-sets').length).toBe(2)
  })

  // USNO, 2022.
  it.each([
    ['2022-06-21', 'up-all-day'],
    ['2022-12-21', 'down-all-day'],
  ])('89 N on %s: %s', (date, state) => {
    const day = dayOf({ lat: 89, lon: 0 }, date)
    expect([day.rise, day.set, day.state]).toEqual([[], [], state])
  })
})

// USNO seasons, in cosinekitty/astronomy, generate/seasons. Nothing of ours tells the seasons; the sun has to stand where
// they say: at right ascension 0, 90, 180, 270, at the equator or farthest from it, to the hundredth of a degree of its series.
it.each([
  ['2000-03-20 07:35', '2000-06-21 01:48', '2000-09-22 17:28', '2000-12-21 13:37'],
  ['2024-03-20 03:06', '2024-06-20 20:51', '2024-09-22 12:44', '2024-12-21 09:20'],
  ['2025-03-20 09:01', '2025-06-21 02:42', '2025-09-22 18:19', '2025-12-21 15:03'],
  ['2026-03-20 14:46', '2026-06-21 08:24', '2026-09-23 00:05', '2026-12-21 20:50'],
  ['2027-03-20 20:25', '2027-06-21 14:11', '2027-09-23 06:02', '2027-12-22 02:42'],
])('equinoxes and solstices of %s, %s, %s, %s', (...season) => {
  for (const [quarter, when] of season.entries()) {
    const seen = sunAt(POLE, utc(when))
    const off = rightAscension(seen, utc(when)) - quarter * 90
    expect(Math.abs(((off + 180) % 360) - 180)).toBeLessThan(SERIES)
    const declination = [0, 23.438, 0, -23.438][quarter] ?? Number.NaN
    expect(Math.abs(seen.altitude - declination)).toBeLessThan(SERIES)
  }
})

// The sun's radius at its mean distance, 959.63 seconds of arc: 1.861 mm across behind 200 mm.
it('the image of the sun', () => {
  expect(2 * SUN_RADIUS).toBeCloseTo(0.53313, 4)
  expect(Math.abs(2 * 200 * Math.tan((SUN_RADIUS * Math.PI) / 180) - 1.861)).toBeLessThan(0.001)
})
