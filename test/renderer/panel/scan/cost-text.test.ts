/** The cost of a scan in words: counts, times, and how long is left. */
import { expect, test } from 'vitest'
import {
  costText,
  countText,
  measure,
  measuredRate,
  secondsLeft,
  takesText,
  timeText,
} from '#renderer/panel/scan/cost-text.ts'
import { coarserStep, roundStep } from '#renderer/panel/scan/fineness.ts'

test.each([
  [0, '0'],
  [1_240, '1,240'],
  [999_499, '999,499'],
  [999_500, '1 million'],
  [3_140_000, '3.1 million'],
  [2_400_000_000, '2.4 billion'],
])('%d is read as %s', (count, text) => expect(countText(count)).toBe(text))

test.each([
  [0.1, 'a moment'],
  [0.8, '1 s'],
  [4.2, '4 s'],
  [23, '25 s'],
  [57.4, '55 s'],
  [59, '1 min'],
  [150, '3 min'],
  [3_590, '1 h'],
  [4_200, '1 h 10 min'],
])('%d seconds are %s', (seconds, text) => expect(timeText(seconds)).toBe(text))

test('one of each is said in the singular', () => {
  const cost = { length: 0, area: 0, places: 1, pictures: 1, combinations: 1 }
  expect(costText(cost)).toBe('1 position, 1 combination')
  expect(costText({ ...cost, places: 1_240, combinations: 3_100_000 })).toBe(
    '1,240 positions, 3.1 million combinations',
  )
})

test('a scan of a blink tells nothing of the rate', () => {
  measure({ length: 0, area: 0, places: 1, pictures: 4, combinations: 40 }, 20)
  expect(measuredRate.value).toBeNull()
})

test('before any scan a range is told, afterwards what was measured', () => {
  expect(takesText({ pictures: 3_000_000 }, measuredRate.value)).toMatch(/^perhaps .+ to .+ on this computer$/u)
  measure({ length: 0, area: 0, places: 10, pictures: 100_000, combinations: 1_000_000 }, 2_000)
  expect(takesText({ pictures: 300_000 }, measuredRate.value)).toBe('about 6 s on this computer')
})

test('the time left goes by what is done, once that tells anything', () => {
  expect(secondsLeft(0.01, 5_000)).toBeNull()
  expect(secondsLeft(0.5, 100)).toBeNull()
  expect(secondsLeft(0.25, 2_000)).toBeCloseTo(6)
})

test('few places need no coarser step; many get the next round one that makes few of them', () => {
  expect(coarserStep(10, 1_240, 0)).toBeNull()
  // 100 km of line at 10 m: 10,000 places.
  const step = coarserStep(10, 10_000, 0)
  expect(step).not.toBeNull()
  expect(100_000 / (step ?? 0)).toBeLessThanOrEqual(3_000)
  // An area thins out with the square of the step.
  expect(coarserStep(10, 10_000, 1)).toBeLessThan(step ?? 0)
})

test('a step is rounded up to one that people use', () => {
  expect([10, 10.2, 33.75, 1_000].map(roundStep)).toEqual([10, 15, 40, 1_000])
})
