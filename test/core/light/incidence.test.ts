/** The angle of light on a face, and the word for it. */
import { assert, property } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { incidence, strikeOf, sunDirection } from '#core/light/incidence.ts'
import { number } from '#test/help/arbitrary.ts'

describe('direction', () => {
  test.each([
    [0, 0, { east: 0, north: 1, up: 0 }],
    [90, 0, { east: 1, north: 0, up: 0 }],
    [180, 0, { east: 0, north: -1, up: 0 }],
    [270, 30, { east: -Math.sqrt(3) / 2, north: 0, up: 0.5 }],
    [123, 90, { east: 0, north: 0, up: 1 }],
  ])('azimuth %d, altitude %d', (azimuth, altitude, expected) => {
    const found = sunDirection(azimuth, altitude)
    expect(found.east).toBeCloseTo(expected.east, 12)
    expect(found.north).toBeCloseTo(expected.north, 12)
    expect(found.up).toBeCloseTo(expected.up, 12)
  })
})

describe('incidence', () => {
  test('is the turn of azimuth where both are level, and 180 apart from behind', () => {
    assert(
      property(number(0, 360), number(-180, 180), (facing, turn) => {
        const found = incidence(sunDirection(facing, 0), sunDirection(facing + turn, 0))
        expect(Math.abs(found - Math.abs(turn))).toBeLessThan(1e-9)
      }),
    )
  })

  test('is the same both ways, and the rest to 180 for the face behind', () => {
    assert(
      property(number(0, 360), number(-90, 90), number(0, 360), number(-90, 90), (a, b, c, d) => {
        const normal = sunDirection(a, b)
        const light = sunDirection(c, d)
        const found = incidence(normal, light)
        expect(Math.abs(found - incidence(light, normal))).toBeLessThan(1e-9)
        const behind = { east: -normal.east, north: -normal.north, up: -normal.up }
        expect(Math.abs(found + incidence(behind, light) - 180)).toBeLessThan(1e-9)
      }),
    )
  })
})

describe('the word', () => {
  // Common practice, no source.
  test.each([
    [0, 'square-on'],
    [29.999, 'square-on'],
    [30, 'slanting'],
    [59.999, 'slanting'],
    [60, 'raking'],
    [89.999, 'raking'],
    [90, 'in-shade'],
    [180, 'in-shade'],
  ])('%d degrees: %s', (angle, word) => {
    expect(strikeOf(angle)).toBe(word)
  })
})
