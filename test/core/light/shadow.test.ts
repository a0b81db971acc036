/** Shadows on level ground. */
import { array, assert, property, record } from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { sunDirection } from '#core/light/incidence.ts'
import { LONGEST_SHADOW, shadowBearing, shadowLength, shadowOf } from '#core/light/shadow.ts'
import { boxCorners } from '#core/scene/box.ts'
import { BICYCLE } from '#test/help/plans.ts'
import { number } from '#test/help/arbitrary.ts'

function outlineOf(corners: readonly LocalPoint[], azimuth: number, altitude: number): readonly LocalPoint[] {
  const outline = shadowOf(corners, sunDirection(azimuth, altitude))
  if (outline === null) throw new Error('casts a shadow')
  return outline
}

/** Twice the area, anticlockwise positive. */
function twice(outline: readonly LocalPoint[]): number {
  return outline.reduce((sum, from, index) => {
    const to = outline[(index + 1) % outline.length] ?? from
    return sum + from.east * to.north - to.east * from.north
  }, 0)
}

describe('a pole', () => {
  test('has the tip of its shadow h / tan(a) away, opposite the azimuth', () => {
    assert(
      property(number(0.1, 20), number(0, 360), number(1, 89.9), (height, azimuth, altitude) => {
        const pole = [
          { east: 3, north: -4, up: 0 },
          { east: 3, north: -4, up: height },
        ]
        const outline = outlineOf(pole, azimuth, altitude)
        const length = height / Math.tan((altitude * Math.PI) / 180)
        const away = (azimuth + 180) * (Math.PI / 180)
        const tip = { east: 3 + Math.sin(away) * length, north: -4 + Math.cos(away) * length }
        const misses = outline.map((point) => Math.hypot(point.east - tip.east, point.north - tip.north))
        expect(Math.min(...misses)).toBeLessThan(1e-9 * (1 + length))
        expect(outline).toHaveLength(2)
        expect(Math.abs((shadowLength(height, altitude) ?? Number.NaN) - length)).toBeLessThan(1e-9 * (1 + length))
        expect(Math.abs(Math.sin((shadowBearing(azimuth) * Math.PI) / 180) - Math.sin(away))).toBeLessThan(1e-9)
      }),
    )
  })

  // E. g. a pole of 1 m under a sun of 45 degrees casts 1 m; under 26.565 (arc tangent of a half), 2 m.
  test.each([
    [1, 45, 1],
    [1, 26.565_051, 2],
    [30, 5.710_593, 300],
    [2, 90, 0],
  ])('%d m at %d degrees: %d m', (height, altitude, length) => {
    expect(shadowLength(height, altitude)).toBeCloseTo(length, 4)
  })
})

describe('the outline', () => {
  test('of a box holds all its points as cast, turns left only, and is as large as ground and swept sides together', () => {
    assert(
      property(number(0, 360), number(0, 360), number(2, 89), (heading, azimuth, altitude) => {
        const outline = outlineOf(boxCorners(BICYCLE, heading), azimuth, altitude)
        const { length, width, height } = BICYCLE
        // A prism's shadow is its foot swept along the shadow: foot plus the sweep of its breadth across the light.
        const off = ((azimuth - heading) * Math.PI) / 180
        const across = Math.abs(Math.sin(off)) * length + Math.abs(Math.cos(off)) * width
        const expected = length * width + (across * height) / Math.tan((altitude * Math.PI) / 180)
        expect(Math.abs(twice(outline) / 2 / expected - 1)).toBeLessThan(1e-9)
        for (const point of outline) expect(point.up).toBe(0)
      }),
    )
  })

  test('is convex and holds every cast point, whatever the points', () => {
    const point = record({ east: number(-50, 50), north: number(-50, 50), up: number(0, 40) })
    assert(
      property(
        array(point, { minLength: 1, maxLength: 12 }),
        number(0, 360),
        number(5, 85),
        (points, azimuth, altitude) => {
          const light = sunDirection(azimuth, altitude)
          const outline = outlineOf(points, azimuth, altitude)
          const cast = points.map(({ east, north, up }) => ({
            east: east - (up * light.east) / light.up,
            north: north - (up * light.north) / light.up,
          }))
          if (outline.length < 3) return
          outline.forEach((from, index) => {
            const to = outline[(index + 1) % outline.length] ?? from
            for (const { east, north } of cast) {
              const left = (to.east - from.east) * (north - from.north) - (to.north - from.north) * (east - from.east)
              expect(left).toBeGreaterThan(-1e-6)
            }
          })
        },
      ),
    )
  })

  test('under a sun straight overhead is the ground that the thing stands on', () => {
    const outline = shadowOf(boxCorners(BICYCLE, 40), { east: 0, north: 0, up: 1 })
    expect(outline).toHaveLength(4)
    expect(twice(outline ?? []) / 2).toBeCloseTo(BICYCLE.length * BICYCLE.width, 9)
  })

  test('of a point below the plane stays where it is', () => {
    expect(outlineOf([{ east: 7, north: 8, up: -3 }], 120, 20)).toEqual([{ east: 7, north: 8, up: 0 }])
  })
})

describe('no shadow is told', () => {
  const pole = [{ east: 0, north: 0, up: 1 }]
  test.each([0.3, 0, -0.5, -90])('with the sun at %d degrees', (altitude) => {
    expect(shadowOf(pole, sunDirection(100, altitude))).toBeNull()
    expect(shadowLength(1, altitude)).toBeNull()
  })

  test('beyond the longest', () => {
    const tall = 100
    const just = (Math.atan(tall / LONGEST_SHADOW) * 180) / Math.PI
    expect(shadowLength(tall, just + 1e-6)).toBeCloseTo(LONGEST_SHADOW, 0)
    expect(shadowLength(tall, just - 1e-6)).toBeNull()
    expect(shadowOf([{ east: 0, north: 0, up: tall }], sunDirection(10, just + 1e-6))).not.toBeNull()
    expect(shadowOf([{ east: 0, north: 0, up: tall }], sunDirection(10, just - 1e-6))).toBeNull()
  })
})
