/** The legend says what is shown of what, and never calls a preview exact. */
import { expect, test } from 'vitest'
import { type AreaState, NO_AREA, type WantedArea } from '#renderer/view/ground/keep-area.ts'
import { landmarkWords, shareWords, stateWords } from '#renderer/view/map/legend-words.ts'
import { groundMapWords } from '#renderer/words/en-ground-map.ts'
import { examplePlan } from '#test/help/plans.ts'

const masks = {
  raster: { west: 0, north: 0, pixel: 1, columns: 1, rows: 1 },
  veiled: new Uint8ClampedArray(1),
  unknown: null,
}
const sight: WantedArea = {
  kind: 'exact',
  ground: 1,
  request: { east: 0, north: 0, height: 1, targetHeight: 0, refraction: 0.13, radius: null },
}
const shade: WantedArea = { kind: 'shade', ground: 1, sun: { azimuth: 90, altitude: 5 }, refraction: 0.13 }

function state(of: WantedArea, preview: boolean, share: number | null = null): AreaState {
  return { shown: { of, masks, preview }, share, fault: null }
}

test('shares are told as people say them', () => {
  expect([0.01, 0.25, 0.5, 0.75, 1].map(shareWords)).toEqual([
    'anything',
    'at least 25\u{a0}%',
    'at least 50\u{a0}%',
    'at least 75\u{a0}%',
    'all',
  ])
})

test('a long landmark is told by its middle, a summit by its top, a tower as it is', () => {
  const plan = examplePlan()
  expect(landmarkWords(plan)).toBe('Bridge’s middle')
  const at = plan.spot.stop.at
  const tower = {
    id: 'tower',
    name: 'Tower',
    kind: 'upright',
    at,
    height: 30,
    width: 5,
    baseElevation: null,
    baseSlope: null,
    baseAspect: null,
  } as const
  expect(landmarkWords({ ...plan, landmark: tower })).toBe('Tower')
  expect(landmarkWords({ ...plan, landmark: { ...tower, kind: 'summit' } })).toBe('Tower’s top')
  expect(landmarkWords({ ...plan, landmark: { ...tower, name: '' } })).toBe('the landmark')
})

test('only what is exact is called so', () => {
  expect(stateWords(state(sight, false))).toBe('final')
  expect(stateWords(state(sight, true))).toBe('preview while it moves')
  expect(stateWords(state(sight, true, 0.426))).toBe('preview; the final one is 42\u{a0}% done')
  expect(stateWords({ ...NO_AREA, share: 0.97 })).toBe('working, 97\u{a0}% done')
  expect(stateWords(state(shade, false))).toBe(groundMapWords.shadeDone)
  expect(stateWords(state(shade, false, 0))).toBe('working, 0\u{a0}% done')
  expect(stateWords({ ...NO_AREA, fault: 'the worker is lost' })).toContain('the worker is lost')
})
