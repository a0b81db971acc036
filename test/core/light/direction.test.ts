/** Where the light comes from, as the photographer sees it. */
import { assert, property } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { lightFrom } from '#core/light/direction.ts'
import { number } from '#test/help/arbitrary.ts'

// The bounds are common practice, no source.
describe('the photographer looks north', () => {
  test.each([
    ['the sun at their back', 180, 'front', null, 0],
    ['the sun over the right shoulder', 150, 'front', 'right', 30],
    ['the sun over the left shoulder', 210, 'front', 'left', 30],
    ['the sun square from the right', 90, 'side', 'right', 90],
    ['the sun square from the left', 270, 'side', 'left', 90],
    ['the sun ahead and to the right', 30, 'behind', 'right', 150],
    ['the sun ahead and to the left', 320, 'behind', 'left', 140],
    ['the sun straight ahead', 0, 'behind', null, 180],
    ['the last of the front', 135.001, 'front', 'right', 44.999],
    ['the first of the side', 134.999, 'side', 'right', 45.001],
    ['the last of the side', 45.001, 'side', 'right', 134.999],
    ['the first of behind', 44.999, 'behind', 'right', 135.001],
  ])('%s', (_, azimuth, side, hand, angle) => {
    const found = lightFrom(azimuth, 0)
    expect(found).toMatchObject({ side, hand })
    expect(found.angle).toBeCloseTo(angle, 9)
  })
})

test('only the turn between them counts, and mirrors change hands alone', () => {
  assert(
    property(number(0, 360), number(-180, 180), number(0, 65), (bearing, turn, altitude) => {
      const found = lightFrom(bearing + turn, bearing, altitude)
      const mirrored = lightFrom(bearing - turn, bearing, altitude)
      expect(Math.abs(found.angle - (180 - Math.abs(turn)))).toBeLessThan(1e-9)
      expect(Math.abs(found.angle - mirrored.angle)).toBeLessThan(1e-9)
      if (found.hand === null) return
      expect(found.hand).toBe(turn > 0 ? 'right' : 'left')
      expect(mirrored.hand).toBe(turn > 0 ? 'left' : 'right')
    }),
  )
})

test('a steep sun is above, on neither hand', () => {
  expect(lightFrom(90, 0, 65).side).toBe('side')
  expect(lightFrom(90, 0, 65.01)).toMatchObject({ side: 'above', hand: null, angle: 90 })
})
