/** What is kept of the last look answers the same question alone. */
import { expect, test } from 'vitest'
import { lastInstant, lastLook } from '#core/light/last-look.ts'

test('looks again at another place and another instant, and not at the same', () => {
  const asked: string[] = []
  const look = lastLook(({ lat, lon }, instant) => {
    asked.push(`${lat} ${lon} ${instant}`)
    return lat + lon + instant
  })
  expect(look({ lat: 1, lon: 2 }, 3)).toBe(6)
  expect(look({ lat: 1, lon: 2 }, 3)).toBe(6)
  expect(look({ lat: 1, lon: 3 }, 3)).toBe(7)
  expect(look({ lat: 2, lon: 3 }, 3)).toBe(8)
  expect(look({ lat: 2, lon: 3 }, 4)).toBe(9)
  expect(look({ lat: 1, lon: 2 }, 3)).toBe(6)
  expect(asked).toEqual(['1 2 3', '1 3 3', '2 3 3', '2 3 4', '1 2 3'])
})

test('keeps an instant alone where all places see the same', () => {
  let looks = 0
  const look = lastInstant((instant) => {
    looks += 1
    return -instant
  })
  expect([look(5), look(5), look(6), look(5)]).toEqual([-5, -5, -6, -5])
  expect(looks).toBe(3)
})
