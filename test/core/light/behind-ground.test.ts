/** What hills do to alignments and to the hours of a landmark's sides, held against a walk through the day in steps of ten seconds. */
import { describe, expect, test } from 'vitest'
import { elevationAt } from '#core/ground/elevation-grid.ts'
import { type Skyline, eyeAbove, skyline } from '#core/ground/skyline.ts'
import { alignments } from '#core/light/alignment.ts'
import { type Body, bodyAt } from '#core/light/body.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { faceDays, faceYears } from '#core/light/side-hours.ts'
import { behindGround } from '#core/light/over-skyline.ts'
import { SUN_RADIUS, sunAt } from '#core/light/sky.ts'
import { civilDay } from '#core/time/civil.ts'
import { mountains } from '#test/help/terrain.ts'

const grid = mountains(241, 40)
const AT = grid.centre
const STEP = 10_000
const DAY = 86_400_000

/** Seen from the valley: of the inner places the lowest. From a crest the sun shows below the level, too. */
function skylineOf(height: number): Skyline {
  let [east, north, lowest] = [0, 0, Infinity]
  for (let x = -1600; x <= 1600; x += 40) {
    for (let y = -1600; y <= 1600; y += 40) {
      const ground = elevationAt(grid, x, y) ?? Infinity
      if (ground < lowest) [east, north, lowest] = [x, y, ground]
    }
  }
  const eye = eyeAbove(grid, east, north, height)
  if (eye === null) throw new Error('the mountains are known')
  return skyline(grid, eye, 0.13)
}

/** The skyline at an azimuth by reading the two values beside it. */
function risesTo({ altitudes, step }: Skyline, azimuth: number): number {
  const at = ((azimuth % 360) + 360) % 360
  const index = Math.floor(at / step)
  const [low, high] = [altitudes[index] ?? 0, altitudes[(index + 1) % altitudes.length] ?? 0]
  return low + (at / step - index) * (high - low)
}

/** Degrees of the disc's lower and upper edge above the skyline. */
function limbs(line: Skyline, body: Body, instant: number): readonly [number, number] {
  const disc = bodyAt(body, AT, instant)
  const over = apparentAltitude(disc.altitude) - risesTo(line, disc.azimuth)
  return [over - disc.radius, over + disc.radius]
}

describe('an alignment', () => {
  const line = skylineOf(1.6)

  test.each(['sun', 'moon'] as const)(
    'of the %s is behind the ground just when the walk through its day says so',
    (body) => {
      const states = new Map<string, number>()
      for (const bearing of [96, 112, 135, 171, 204, 233, 251, 268]) {
        const altitude = risesTo(line, bearing)
        for (const above of [-1.5, -0.4, 0, 0.4, 1.5]) {
          const from = Date.UTC(2026, 0, 1)
          const target = { bearing, altitude: altitude + above }
          const found = alignments({ at: AT, body, target, skyline: line, tolerance: 1, from, until: from + 200 * DAY })
          if (!found.ok) throw new Error(found.fault.message)
          for (const { instant, ground } of found.value) {
            const start = Math.floor(instant / DAY) * DAY
            const step = Math.round((instant - start) / STEP)
            const [lower, upper] = limbs(line, body, start + step * STEP)
            states.set(String(ground), (states.get(String(ground)) ?? 0) + 1)
            // In ten seconds a body moves by 0.05 degrees at the most.
            if (Math.abs(lower) < 0.05 || Math.abs(upper) < 0.05) continue
            expect(ground).toBe(upper <= 0 ? 'behind' : lower < 0 ? 'partly' : 'clear')
          }
        }
      }
      for (const state of ['clear', 'partly', 'behind']) expect(states.get(state) ?? 0).toBeGreaterThan(5)
    },
  )

  test('knows nothing of hills where no ground is known', () => {
    const from = Date.UTC(2026, 5, 1)
    const target = { bearing: 180, altitude: 65 }
    const request = { at: AT, body: 'sun', target, tolerance: 5, from, until: from + 30 * DAY } as const
    const [flat, holed] = [null, { step: 90, altitudes: new Float32Array(4).fill(Number.NaN) }].map((known) =>
      alignments({ ...request, skyline: known }),
    )
    for (const found of [flat, holed]) {
      expect(found?.ok === true && found.value.length > 0).toBe(true)
      if (found?.ok === true) expect(found.value.every(({ ground }) => ground === null)).toBe(true)
    }
    expect(behindGround(null, { azimuth: 180, altitude: 60, radius: 0.27 })).toBeNull()
  })
})

describe('the sides of a landmark', () => {
  const line = skylineOf(20)
  const faces = [0, 60, 120, 180, 240, 300].map((bearing) => {
    const turn = (bearing * Math.PI) / 180
    return { id: String(bearing), normal: { east: Math.sin(turn), north: Math.cos(turn), up: 0 } }
  })

  /** Whether the sun stands above the skyline and before the face. */
  function lit({ east, north }: { east: number; north: number }, instant: number): boolean {
    const { azimuth, altitude } = sunAt(AT, instant)
    const apparent = apparentAltitude(altitude)
    const turn = (azimuth * Math.PI) / 180
    return apparent + SUN_RADIUS >= risesTo(line, azimuth) && east * Math.sin(turn) + north * Math.cos(turn) >= 0
  }

  test.each(['2026-03-25', '2026-05-02', '2026-06-21', '2026-08-20'])(
    'have direct light on %s when the walk has it',
    (date) => {
      const day = civilDay(date, 'Europe/Zurich')
      if (!day.ok) throw new Error(day.fault.message)
      const { start, end } = day.value
      const [found, level] = [line, null].map((known) => faceDays(AT, faces, day.value, known))
      let [behind, litAtAll] = [0, 0]
      faces.forEach(({ normal }, index) => {
        const spans = found?.[index]?.spans ?? []
        let [run, longest, apart] = [0, 0, 0]
        for (let instant = start; instant < end; instant += STEP) {
          const walked = lit(normal, instant)
          const told = spans.some(({ from, until }) => instant >= from && instant <= until)
          run = walked === told ? 0 : run + 1
          longest = Math.max(longest, run)
          apart += walked === told ? 0 : 1
          litAtAll += walked ? 1 : 0
          const flat = level?.[index]?.spans.some(({ from, until }) => instant >= from && instant <= until) === true
          behind += flat && !walked ? 1 : 0
        }
        // Gaps between hills shorter than the looks may be missed, nothing else; an end may fall between two steps.
        expect(longest * STEP).toBeLessThan(120_000)
        expect(apart * STEP).toBeLessThan(240_000)
      })
      // The hills do take some of it.
      expect(litAtAll).toBeGreaterThan(1_000)
      expect(behind).toBeGreaterThan(200)
    },
  )

  test('add up over a year to less than on level ground, month by month', () => {
    const days = Array.from({ length: 36 }, (_, index) => {
      const date = new Date(Date.UTC(2026, 0, 5 + 10 * index)).toISOString().slice(0, 10)
      const day = civilDay(date, 'Europe/Zurich')
      if (!day.ok) throw new Error(day.fault.message)
      return day.value
    })
    const [hilly, level] = [faceYears(AT, faces, days, line), faceYears(AT, faces, days)]
    hilly.forEach(({ months, total }, index) => {
      expect(total).toBeLessThanOrEqual(level[index]?.total ?? 0)
      months.forEach((hours, month) =>
        expect(hours ?? 0).toBeLessThanOrEqual((level[index]?.months[month] ?? 0) + 1e-3),
      )
    })
    expect(hilly.reduce((sum, { total }) => sum + total, 0)).toBeLessThan(
      0.95 * level.reduce((sum, { total }) => sum + total, 0),
    )
  })
})
