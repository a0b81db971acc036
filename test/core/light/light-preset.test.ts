/** Golden and blue hour are conditions that exist anyway: set, seen to be set, cleared, and never both at once. */
import { expect, test } from 'vitest'
import { lightPresetOf, withLightPreset } from '#core/light/light-preset.ts'
import { NO_WISHES, contradictions, wishesMade } from '#core/light/light-wish.ts'

test('golden hour is the sun 0 to 6 degrees up', () => {
  const golden = withLightPreset(NO_WISHES, 'golden')
  expect(golden).toEqual({ ...NO_WISHES, altitude: { least: 0, most: 6 } })
  expect(lightPresetOf(golden)).toBe('golden')
})

test('blue hour is twilight of morning and evening, and any of the two alone counts as it', () => {
  const blue = withLightPreset(NO_WISHES, 'blue')
  expect(blue).toEqual({ ...NO_WISHES, soft: 'either' })
  expect(lightPresetOf(blue)).toBe('blue')
  expect(lightPresetOf({ ...NO_WISHES, soft: 'evening' })).toBe('blue')
})

test('one takes the place of the other and of other heights, and what else is asked stays', () => {
  const asked = { ...NO_WISHES, moonUp: true, altitude: { least: 10, most: 40 } }
  const blue = withLightPreset(withLightPreset(asked, 'golden'), 'blue')
  expect(wishesMade(blue)).toEqual(['soft', 'moonUp'])
  expect(contradictions(blue)).toEqual([])
})

test('set a second time it is cleared', () => {
  const asked = { ...NO_WISHES, moonUp: true }
  expect(withLightPreset(withLightPreset(asked, 'golden'), 'golden')).toEqual(asked)
  expect(withLightPreset({ ...asked, soft: 'morning' }, 'blue')).toEqual(asked)
})

test('other heights are no preset', () => {
  expect(lightPresetOf({ ...NO_WISHES, altitude: { least: 0, most: 7 } })).toBeNull()
  expect(lightPresetOf(NO_WISHES)).toBeNull()
})
