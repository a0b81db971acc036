/** Alignments against stepping through every minute, against published places of the sun, and against bad questions. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type Alignment, alignments, skyLight } from '#core/light/alignment.ts'
import { type AlignmentRequest, LATEST, LONGEST_SEARCH } from '#core/light/alignment-request.ts'
import { type Body, type DiscPoint, CENTRE, LEFT_LIMB, LOWER_LIMB, RIGHT_LIMB, bodyAt } from '#core/light/body.ts'
import { apparentAltitude, trueAltitude } from '#core/light/refraction.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { generator } from '#test/help/generator.ts'

const MINUTE = 60_000
const DAY = 24 * 60 * MINUTE

function found(request: AlignmentRequest): readonly Alignment[] {
  const result = alignments(request)
  if (!result.ok) throw new Error(result.fault.message)
  return result.value
}

/** Separation by the haversine; limbs by moving the target, where the search moves the disc. */
function separation({ at, body, target }: AlignmentRequest, instant: number): number {
  const disc = bodyAt(body, at, instant)
  const point: DiscPoint = target.point ?? { across: 0, up: 0 }
  const seen = apparentAltitude(disc.altitude + point.up * disc.radius) * RADIANS_PER_DEGREE
  const aimed = target.altitude * RADIANS_PER_DEGREE
  const aside = (point.across * disc.radius * RADIANS_PER_DEGREE) / Math.cos(disc.altitude * RADIANS_PER_DEGREE)
  const turn = (disc.azimuth - target.bearing) * RADIANS_PER_DEGREE + aside
  const half = Math.sin((seen - aimed) / 2) ** 2 + Math.cos(seen) * Math.cos(aimed) * Math.sin(turn / 2) ** 2
  return (2 * Math.asin(Math.sqrt(half))) / RADIANS_PER_DEGREE
}

/** Lowest separation about a minute, by thirds. */
function lowest(request: AlignmentRequest, from: number, until: number): number {
  let [low, high] = [from, until]
  while (high - low > 1) {
    const [left, right] = [low + (high - low) / 3, high - (high - low) / 3]
    if (separation(request, left) < separation(request, right)) high = right
    else low = left
  }
  return (low + high) / 2
}

/**
 * Every approach within the tolerance, by looking at each minute that can be near one. The sky turns by a quarter of a degree in a
 * minute, so as long as the separation is many degrees no minute of as many half degrees can be near: those are not looked at.
 */
function byMinutes(request: AlignmentRequest): number[] {
  const instants: number[] = []
  for (let minute = 0; minute < (request.until - request.from) / MINUTE + 1; minute++) {
    const instant = request.from + minute * MINUTE
    const here = separation(request, instant)
    if (here >= request.tolerance + 0.3) {
      minute += Math.max(0, Math.floor((here - request.tolerance - 0.3) / 0.5) - 1)
      continue
    }
    if (here > separation(request, instant - MINUTE) || here >= separation(request, instant + MINUTE)) continue
    const closest = lowest(request, instant - MINUTE, instant + MINUTE)
    if (closest >= request.from && closest < request.until && separation(request, closest) <= request.tolerance)
      instants.push(closest)
  }
  return instants
}

function expectSame(request: AlignmentRequest): number {
  const expected = byMinutes(request)
  const all = found(request)
  expect(all.length, JSON.stringify(request)).toBe(expected.length)
  all.forEach((one, index) => {
    expect(Math.abs(one.instant - (expected[index] ?? Number.NaN)), JSON.stringify(request)).toBeLessThan(1000)
    expect(Math.abs(one.separation - separation(request, one.instant))).toBeLessThan(1e-4)
  })
  return all.length
}

/** A question about a direction in which the body does stand at some time within the days, a little aside of it. */
function question(body: Body, days: number, lats: readonly [number, number], random: () => number): AlignmentRequest {
  const at = { lat: lats[0] + (lats[1] - lats[0]) * random(), lon: 360 * random() - 180 }
  const from = Math.floor(Date.UTC(1960, 0, 1) + random() * 36_500 * DAY)
  const tolerance = [0.1, 0.3, 0.5, 1, 3][Math.floor(5 * random())] ?? 1
  const point = [CENTRE, CENTRE, LEFT_LIMB, RIGHT_LIMB, LOWER_LIMB][Math.floor(5 * random())] ?? CENTRE
  let seen = bodyAt(body, at, from + random() * days * DAY)
  for (let tries = 0; tries < 300 && !(seen.altitude > 0 && seen.altitude < 70); tries++)
    seen = bodyAt(body, at, from + random() * days * DAY)
  const aside = (2 * random() - 1) * tolerance
  const target = { bearing: seen.azimuth, altitude: Math.max(0, apparentAltitude(seen.altitude) + aside), point }
  return { at, body, target, tolerance, from, until: from + days * DAY }
}

describe('nothing is missed and nothing added against looking at every minute', () => {
  test.each([
    ['sun', 365, 4],
    ['moon', 365, 4],
    ['sun', 60, 10],
    ['moon', 60, 10],
  ] as const)('%s over %d days, %d places from 65 south to 81 north', { timeout: 120_000 }, (body, days, runs) => {
    let hits = 0
    const random = generator(runs + body.length)
    for (let run = 0; run < runs; run++) hits += expectSame(question(body, days, [-65, 81], random))
    expect(hits).toBeGreaterThan(runs)
  })

  test.each(['sun', 'moon'] as const)('%s near the poles, and at them', { timeout: 120_000 }, (body) => {
    let hits = 0
    const random = generator(body.length)
    const bands: readonly (readonly [number, number])[] = [
      [89, 90],
      [-90, -89],
      [90, 90],
      [-90, -90],
    ]
    for (const band of [...bands, ...bands]) hits += expectSame(question(body, 30, band, random))
    expect(hits).toBeGreaterThan(8)
  })

  test.each([
    ['sun', 23.2, 90],
    ['sun', 0, 89.8],
    ['moon', -18.5, 88],
    ['moon', 12, 90],
  ] as const)('%s at latitude %d, target %d degrees high', { timeout: 120_000 }, (body, lat, altitude) => {
    const from = Date.UTC(2025, 0, 1)
    const at = { lat, lon: 33 }
    const request: AlignmentRequest = {
      at,
      body,
      target: { bearing: 77, altitude },
      tolerance: 1.5,
      from,
      until: from + 120 * DAY,
    }
    expectSame(request)
    expectSame({ ...request, from: from + 110 * DAY, until: from + 230 * DAY })
    expect(found({ ...request, until: from + 365 * DAY }).length).toBeGreaterThan(0)
  })
})

test('the widest tolerance, high over the horizon and at it, while the sun comes down day by day', () => {
  const from = Date.UTC(2025, 8, 1)
  for (const [lat, altitude] of [
    [90, 2],
    [70, 0],
    [0, 60],
  ] as const) {
    const target = { bearing: 250, altitude }
    const span = { from, until: from + 100 * DAY }
    expect(expectSame({ at: { lat, lon: 20 }, body: 'sun', target, tolerance: 5, ...span })).toBeGreaterThan(10)
  }
})

describe('the published place of the sun is found again at its instant', () => {
  // JPL Horizons (DE431) printouts: azimuth and refracted altitude. A hundredth of a degree is 2.4 seconds of the sun's way.
  test.each([
    ['equinox morning', { lat: 0, lon: 0 }, Date.UTC(2019, 2, 19, 8), 90.7081, 28.0497],
    ['equinox afternoon', { lat: 0, lon: 0 }, Date.UTC(2019, 2, 19, 15), 269.2531, 46.9682],
    ['equinox near the horizon', { lat: 0, lon: 0 }, Date.UTC(2019, 2, 19, 17, 58), 269.5386, 2.7002],
    ['summer evening in the north-west', { lat: 29, lon: -81 }, Date.UTC(2024, 5, 19), 294.5657, 4.3112],
  ])('%s', (_, at, instant, bearing, altitude) => {
    const target = { bearing, altitude }
    const all = found({ at, body: 'sun', target, tolerance: 0.02, from: instant - DAY / 2, until: instant + DAY / 2 })
    expect(all.map((one) => Math.abs(one.instant - instant) < 4000)).toEqual([true])
    expect(all[0]?.azimuth).toBeCloseTo(bearing, 1)
    expect(all[0]?.altitude).toBeCloseTo(altitude, 1)
  })
})

/** A valley at a middle latitude; any numbers would do. */
const AT: LatLon = { lat: 46.9, lon: 9.3 }
const ASK: AlignmentRequest = {
  at: AT,
  body: 'moon',
  target: { bearing: 120, altitude: 5 },
  tolerance: 0.5,
  from: Date.UTC(2025, 0, 1),
  until: Date.UTC(2026, 0, 1),
}

describe('an alignment tells', () => {
  test('the stretch within the tolerance: at its ends the separation is the tolerance itself', () => {
    for (const body of ['sun', 'moon'] as const) {
      const request = { ...ASK, body, tolerance: 1.5 }
      const all = found(request)
      expect(all.length).toBeGreaterThan(5)
      for (const { from, instant, until } of all) {
        expect(from).toBeLessThanOrEqual(instant)
        expect(until).toBeGreaterThanOrEqual(instant)
        expect(separation(request, from - 1000)).toBeGreaterThan(1.5)
        expect(separation(request, from + 1000)).toBeLessThan(1.5)
        expect(separation(request, until - 1000)).toBeLessThan(1.5)
        expect(separation(request, until + 1000)).toBeGreaterThan(1.5)
      }
    }
  })

  test('the same whether years are searched at once or day by day', () => {
    const whole = found({ ...ASK, tolerance: 1 }).map(({ instant }) => instant)
    const parts: number[] = []
    for (let from = ASK.from; from < ASK.until; from += DAY)
      parts.push(...found({ ...ASK, tolerance: 1, from, until: from + DAY }).map(({ instant }) => instant))
    expect(whole.length).toBeGreaterThan(5)
    expect(parts.length).toBe(whole.length)
    parts.forEach((instant, index) => expect(Math.abs(instant - (whole[index] ?? 0))).toBeLessThan(100))
  })

  test('the same in a search of ten seconds about it', () => {
    const all = found({ ...ASK, tolerance: 3 })
    expect(all.length).toBeGreaterThan(20)
    for (const { instant } of all) {
      const [one, ...more] = found({ ...ASK, tolerance: 3, from: instant - 5000, until: instant + 5000 })
      expect(Math.abs((one?.instant ?? 0) - instant)).toBeLessThan(100)
      expect(more).toEqual([])
    }
  })

  test('the moon’s phase and the light of the sky, which go together', () => {
    for (const one of found({ ...ASK, until: ASK.from + LONGEST_SEARCH })) {
      expect(one.sky).toBe(skyLight(one.sunAltitude))
      // A moon opposite to the sun is full; beside it, new.
      if (one.sunAltitude < -30) expect(one.lit).toBeGreaterThan(0.1)
      expect(typeof one.waxing).toBe('boolean')
    }
    for (const one of found({ ...ASK, body: 'sun' })) {
      expect([one.lit, one.waxing, one.sky]).toEqual([null, null, 'day'])
      expect(apparentAltitude(one.sunAltitude)).toBe(one.altitude)
    }
  })

  // USNO: rising and setting at -0°50′, twilights at -6, -12, -18 degrees of the sun's centre.
  test.each([
    [-0.83, 'day'],
    [-0.84, 'civil'],
    [-5.99, 'civil'],
    [-6.01, 'nautical'],
    [-11.99, 'nautical'],
    [-12.01, 'astronomical'],
    [-17.99, 'astronomical'],
    [-18.01, 'night'],
  ] as const)('with the sun at %d the sky of %s', (altitude, sky) => {
    expect(skyLight(altitude)).toBe(sky)
  })

  test('the limb asked for: the centre then stands a radius aside of the target', () => {
    const request: AlignmentRequest = { ...ASK, body: 'sun', tolerance: 0.1 }
    for (const one of found({ ...request, target: { ...request.target, point: LOWER_LIMB } }))
      expect(Math.abs(one.altitude - 5 - 959.63 / 3600)).toBeLessThan(0.11)
    for (const one of found({ ...request, target: { ...request.target, point: LEFT_LIMB } }))
      expect(Math.abs(one.azimuth - 120 - 959.63 / 3600)).toBeLessThan(0.11)
  })
})

describe('a question that cannot be answered is refused with a sentence', () => {
  test.each([
    ['no-place', { at: { lat: 91, lon: 0 } }],
    ['no-place', { at: { lat: 0, lon: Number.NaN } }],
    ['no-direction', { target: { bearing: 0, altitude: 90.1 } }],
    ['no-direction', { target: { bearing: Number.NaN, altitude: 5 } }],
    ['no-direction', { target: { bearing: 0, altitude: Number.NaN } }],
    ['tolerance', { tolerance: 0 }],
    ['tolerance', { tolerance: -1 }],
    ['tolerance', { tolerance: 5.1 }],
    ['tolerance', { tolerance: Number.NaN }],
    ['no-dates', { from: Date.UTC(1899, 11, 31) }],
    ['no-dates', { until: LATEST + 1 }],
    ['no-dates', { from: Number.NaN }],
    ['reversed', { until: ASK.from - 1 }],
    ['reversed', { until: ASK.from }],
    ['too-long', { until: ASK.from + LONGEST_SEARCH + 1 }],
  ] as const)('%s', (reason, change) => {
    const result = alignments({ ...ASK, ...change })
    expect(result.ok ? null : result.fault.reason).toBe(reason)
    expect(result.ok ? '' : result.fault.message).toMatch(/^[A-Z].+\.$/u)
  })
})

test('a true altitude is the one that appears so', () => {
  fc.assert(
    fc.property(fc.double({ min: -90, max: 90, noNaN: true }), (altitude) => {
      expect(Math.abs(trueAltitude(apparentAltitude(altitude)) - altitude)).toBeLessThan(1e-9)
    }),
  )
})
