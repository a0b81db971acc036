/** The eight points of the compass. */
import { expect, test } from 'vitest'
import { compassName } from '#core/units/compass.ts'

test.each([
  [0, 'north'],
  [22.4, 'north'],
  [22.6, 'north-east'],
  [45, 'north-east'],
  [90, 'east'],
  [135, 'south-east'],
  [180, 'south'],
  [225, 'south-west'],
  [270, 'west'],
  [315, 'north-west'],
  [337.4, 'north-west'],
  [337.6, 'north'],
  [359.999, 'north'],
  [360, 'north'],
  [-90, 'west'],
])('%d is %s', (bearing, name) => {
  expect(compassName(bearing)).toBe(name)
})
