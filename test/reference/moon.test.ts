/** The moon's places, phases, risings and settings against published figures. */
import { describe, expect, it } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { crossings } from '#core/light/crossing.ts'
import { moonDay, type MoonDay } from '#core/light/day-events.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { moonAt, moonPhase, sunAt } from '#core/light/sky.ts'
import { EQUATOR_RADIUS, POLAR_RADIUS, POLE, ecliptic, rightAscension, siderealTime } from '#test/help/celestial.ts'

const MINUTE = 60_000
const HOUR = 60 * MINUTE
const DAY = 24 * HOUR
const RADIANS = Math.PI / 180
const ARC_SECOND = 1 / 3600

const utc = (text: string): number => Date.parse(`${text.replace(' ', 'T')}Z`)

interface FromMiddle {
  readonly ascension: number
  readonly declination: number
  readonly distance: number
}

/** The moon as seen from the earth's middle, worked back from what is seen at the pole. */
function fromMiddle(instant: number): FromMiddle {
  const seen = moonAt(POLE, instant)
  const up = seen.distance * Math.sin(seen.altitude * RADIANS) + POLAR_RADIUS
  const level = seen.distance * Math.cos(seen.altitude * RADIANS)
  return {
    ascension: rightAscension(seen, instant),
    declination: Math.atan2(up, level) / RADIANS,
    distance: Math.hypot(up, level),
  }
}

describe('position', () => {
  // J. Meeus, Astronomical Algorithms, 2nd edition, examples 47.a and 48.a: 1992 April 12, 0h of dynamical time.
  const EXAMPLE = utc('1992-04-12 00:00') - 59_000

  it("longitude, latitude, distance and parallax from the earth's middle", () => {
    const { ascension, declination, distance } = fromMiddle(EXAMPLE)
    const { lon, lat } = ecliptic(ascension, declination, 23.440636)
    expect(Math.abs(lon - 133.167265)).toBeLessThan(10 * ARC_SECOND)
    expect(Math.abs(lat + 3.229126)).toBeLessThan(10 * ARC_SECOND)
    expect(Math.abs(distance - 368_409.7)).toBeLessThan(1)
    expect(Math.abs(Math.asin(6378.14 / distance) / RADIANS - 0.99199)).toBeLessThan(1e-5)
  })

  it('apparent right ascension and declination', () => {
    const { ascension, declination } = fromMiddle(EXAMPLE)
    expect(Math.abs(ascension - 134.68847)).toBeLessThan(10 * ARC_SECOND)
    expect(Math.abs(declination - 13.768368)).toBeLessThan(10 * ARC_SECOND)
  })

  it('phase angle 69.0756, lit part 0.6786, bright limb at 285.0', () => {
    // At the pole straight up is the celestial pole, so the tilt is the position angle, counted the other way.
    const { lit, tilt, waxing } = moonPhase(POLE, EXAMPLE)
    expect(Math.abs(lit - 0.6786)).toBeLessThan(1e-4)
    expect(Math.abs(Math.acos(2 * lit - 1) / RADIANS - 69.0756)).toBeLessThan(0.003)
    expect(Math.abs(360 - tilt - 285)).toBeLessThan(0.05)
    expect(waxing).toBe(true)
  })

  // USNO, in brandon-rhodes/pyephem, ephem/tests/usno/apptopo_moon: 2008 July 1, 0h UT1.
  it('place and distance as seen from Atlanta', () => {
    const at = { lat: 33 + 45 / 60 + 36 / 3600, lon: -(84 + 24 / 60 + 36 / 3600) }
    const instant = utc('2008-07-01 00:00')
    const { azimuth, altitude, distance } = moonAt(at, instant)
    const [a, h, p] = [azimuth * RADIANS, altitude * RADIANS, at.lat * RADIANS]
    const declination = Math.asin(Math.sin(p) * Math.sin(h) + Math.cos(p) * Math.cos(h) * Math.cos(a)) / RADIANS
    const west = Math.atan2(
      -Math.sin(a) * Math.cos(h),
      Math.cos(p) * Math.sin(h) - Math.sin(p) * Math.cos(h) * Math.cos(a),
    )
    const ascension = (siderealTime(instant) + at.lon - west / RADIANS + 720) % 360
    const published = { ascension: (4 + 27 / 60 + 8.925 / 3600) * 15, declination: 25 + 59 / 60 + 7.67 / 3600 }
    expect(Math.abs(declination - published.declination)).toBeLessThan(10 * ARC_SECOND)
    expect(Math.abs(ascension - published.ascension)).toBeLessThan(12 * ARC_SECOND)
    expect(Math.abs(distance - 361_552.827)).toBeLessThan(20)
  })

  // JPL Horizons (DE431), in cosinekitty/astronomy, generate/horizons/Moon_N29_W081. The distance is from the place,
  // 373394 km, not from the earth's middle, 378520 km.
  it('refracted azimuth and altitude, and the distance from the place itself', () => {
    const { azimuth, altitude, distance } = moonAt({ lat: 29, lon: -81 }, utc('2018-12-02 12:00'))
    expect(Math.abs(azimuth - 139.3479)).toBeLessThan(0.005)
    expect(Math.abs(apparentAltitude(altitude) - 53.0131)).toBeLessThan(0.005)
    expect(Math.abs(distance - 373_394)).toBeLessThan(20)
  })
})

describe('rise and set', () => {
  function dayOf(at: LatLon, date: string, ahead: number): MoonDay {
    const start = utc(`${date} 00:00`) - ahead * HOUR
    return moonDay(at, start, start + DAY)
  }

  const BOSTON = { lat: 42 + 19 / 60, lon: -(71 + 5 / 60) }
  const FLORIDA = { lat: 29, lon: -81 }

  // USNO tables: Boston 1984 in brandon-rhodes/pyephem, 29 N 81 W 2019 in cosinekitty/astronomy.
  it.each([
    [BOSTON, '1984-01-15', -5, '13:40', '04:13'],
    [BOSTON, '1984-01-11', -5, '11:38', null],
    [BOSTON, '1984-01-24', -5, null, '10:52'],
    [FLORIDA, '2019-01-01', 0, '08:12', '19:34'],
    [FLORIDA, '2019-01-07', 0, '13:27', null],
  ])('%o on %s, clock %d: rises %s, sets %s', (at, date, ahead, rise, set) => {
    const day = dayOf(at, date, ahead)
    for (const [found, clock] of [
      [day.rise, rise],
      [day.set, set],
    ] as const) {
      const published = clock === null ? [] : [utc(`${date} ${clock}`) - ahead * HOUR]
      expect(found.length).toBe(published.length)
      found.forEach((instant, index) => {
        expect(Math.abs(instant - (published[index] ?? Number.NaN)) / MINUTE).toBeLessThan(1)
      })
    }
  })

  // USNO, in brandon-rhodes/pyephem, risettran_moon: above the horizon all day, lowest at 2 to 3 degrees in the north.
  it.each(['2006-06-24', '2006-06-25', '2006-06-26'])('Fairbanks on %s: up all day', (date) => {
    const fairbanks = { lat: 64.81, lon: -147.75 }
    const day = dayOf(fairbanks, date, -8)
    expect([day.rise, day.set, day.state]).toEqual([[], [], 'up-all-day'])
    const start = utc(`${date} 00:00`) + 8 * HOUR
    const looks = Array.from({ length: 24 * 12 }, (_, index) => moonAt(fairbanks, start + index * 5 * MINUTE))
    const lowest = looks.reduce((least, one) => (one.altitude < least.altitude ? one : least))
    expect(apparentAltitude(lowest.altitude)).toBeGreaterThan(1.5)
    expect(apparentAltitude(lowest.altitude)).toBeLessThan(3.5)
    expect(Math.cos(lowest.azimuth * RADIANS)).toBeGreaterThan(0.99)
  })
})

describe('phases', () => {
  // USNO, in cosinekitty/astronomy, generate/moonphase.
  const PUBLISHED = [
    ['first quarter', 90, '2020-01-03 04:45'],
    ['full moon', 180, '2020-01-10 19:21'],
    ['last quarter', 270, '2020-01-17 12:58'],
    ['new moon', 0, '2020-01-24 21:42'],
  ] as const

  it.each(PUBLISHED)('%s: the moon is %i degrees ahead of the sun at %s', (_name, ahead, when) => {
    const turn = (instant: number): number => {
      const sun = sunAt(POLE, instant)
      const moon = fromMiddle(instant)
      const [to, from] = [
        ecliptic(moon.ascension, moon.declination).lon,
        // The sun's own parallax is taken off again.
        ecliptic(rightAscension(sun, instant), sun.altitude + 8.794 * ARC_SECOND).lon,
      ]
      return ((to - from - ahead + 540) % 360) - 180
    }
    const found = crossings(turn, utc(when) - 2 * DAY, utc(when) + 2 * DAY, HOUR)
    expect(found.length).toBe(1)
    expect(Math.abs((found[0]?.instant ?? 0) - utc(when)) / MINUTE).toBeLessThan(2)
  })

  it('is half lit at the quarters, and fullest and darkest between', () => {
    const [first, full, last, dark] = PUBLISHED.map(([, , when]) => moonPhase(POLE, utc(when)))
    expect(first?.lit).toBeCloseTo(0.5, 2)
    expect([first?.waxing, last?.waxing]).toEqual([true, false])
    expect(last?.lit).toBeCloseTo(0.5, 2)
    expect(first?.cycle).toBeCloseTo(0.25, 2)
    expect(last?.cycle).toBeCloseTo(0.75, 2)
    expect(full?.lit).toBeGreaterThan(0.997)
    expect(dark?.lit).toBeLessThan(0.003)
  })

  // USNO, as checked in skyfielders/python-skyfield, test_almanac.py: 5h UT of 2018 September 9 to 18.
  it.each([0, 0, 0.03, 0.08, 0.15, 0.24, 0.33, 0.43, 0.52, 0.62].map((lit, index) => [9 + index, lit] as const))(
    '2018 September %i: lit %d',
    (day, lit) => {
      expect(Math.abs(moonPhase(POLE, Date.UTC(2018, 8, day, 5)).lit - lit)).toBeLessThan(0.01)
    },
  )

  // JPL Horizons, in cosinekitty/astronomy, generate/magnitude/Moon: the angle at the moon between sun and earth.
  it.each([
    ['2010-01-01 00:00', 2.8785],
    ['2010-01-23 00:00', 95.1594],
  ])('%s: phase angle %d', (when, angle) => {
    const { lit } = moonPhase(POLE, utc(when))
    expect(Math.abs(Math.acos(2 * lit - 1) / RADIANS - angle)).toBeLessThan(0.02)
  })
})

describe('size', () => {
  // Meeus, chapter 55: 358473400 seconds of arc over the kilometres, 973.03 at 368409.7. It takes a radius 0.03 percent
  // larger than the mean 1737.4 km that is ours.
  it('the semidiameter', () => {
    const instant = utc('1992-04-12 00:00') - 59_000
    const { radius, distance } = moonAt({ lat: 0, lon: 0 }, instant)
    expect(Math.abs((radius * 3600 * distance) / 368_409.7 - 973.03)).toBeLessThan(0.35)
    expect(Math.abs(Math.sin(radius * RADIANS) * distance - 1737.4)).toBeLessThan(1e-6)
  })

  // cosinekitty/astronomy, generate/apsides/moon.txt.
  it('perigee of 2025 November 5, 22:29 UT at 356833 km', () => {
    const published = utc('2025-11-05 22:29')
    const approach = (instant: number): number =>
      fromMiddle(instant + 30 * MINUTE).distance - fromMiddle(instant - 30 * MINUTE).distance
    const [turn] = crossings(approach, published - 3 * DAY, published + 3 * DAY, HOUR)
    expect(Math.abs((turn?.instant ?? 0) - published) / MINUTE).toBeLessThan(5)
    expect(Math.abs(fromMiddle(published).distance - 356_833)).toBeLessThan(20)
  })

  // A radius of 1737.4 km at 384400 km: 0.51793 degrees, 3.616 mm across behind 400 mm.
  it('the image at the mean distance', () => {
    const at = { lat: 0, lon: 0 }
    const start = utc('2026-01-01 00:00')
    const [passing] = crossings((instant) => moonAt(at, instant).distance - 384_400, start, start + 30 * DAY, HOUR)
    const { radius } = moonAt(at, passing?.instant ?? Number.NaN)
    expect(2 * radius).toBeCloseTo(0.51793, 4)
    expect(Math.abs(2 * 400 * Math.tan(radius * RADIANS) - 3.616)).toBeLessThan(0.001)
  })

  it('is larger overhead than at the horizon, by the radius of the earth', () => {
    const at = { lat: 0, lon: 0 }
    const start = utc('2026-01-01 00:00')
    const looks = Array.from({ length: 24 * 29 }, (_, hour) => moonAt(at, start + hour * HOUR))
    const nearest = Math.min(...looks.map((one) => one.distance))
    expect(nearest).toBeLessThan(356_400 + EQUATOR_RADIUS)
    for (const { distance, radius } of looks) expect(Math.abs(radius * distance * RADIANS - 1737.4)).toBeLessThan(0.02)
  })
})
