/** Why nothing was found, in words, and what a relaxation makes of the wishes. */
import { expect, test } from 'vitest'
import { USUAL_SCAN_WISHES, type ScanWishes } from '#core/record/scan-wishes.ts'
import type { Relaxation } from '#core/scan/scan-found.ts'
import { DEMAND_START } from '#renderer/panel/scan/demand-start.ts'
import { excludedName, partText, relaxationText } from '#renderer/panel/scan/none-text.ts'
import { relaxed } from '#renderer/panel/scan/relax.ts'
import { scanWishWords } from '#renderer/words/en-scan-wishes.ts'

const NAMES = scanWishWords.names('Bicycle', 'Bridge')
const WISHES: ScanWishes = { ...USUAL_SCAN_WISHES, ...DEMAND_START }

test('a part is never told as all or nothing unless it is', () => {
  expect(partText(0, 100)).toBe('0\u{a0}%')
  expect(partText(1, 1_000_000)).toBe('under 1\u{a0}%')
  expect(partText(370, 1_000)).toBe('37\u{a0}%')
  expect(partText(999_999, 1_000_000)).toBe('over 99\u{a0}%')
  expect(partText(5, 5)).toBe('100\u{a0}%')
})

test('musts go by the names of their things, limits by what they are', () => {
  expect(excludedName('landmarkShown', NAMES)).toBe('Bridge not hidden')
  expect(excludedName('closest-focus', NAMES)).toBe('Closer than the lens can focus')
})

const relaxation = (part: Partial<Relaxation>): Relaxation => ({
  of: 'subjectFill',
  now: 0.6,
  to: 0.72,
  end: 'most',
  places: 4,
  ...part,
})

test.each<[Partial<Relaxation>, string]>([
  [{}, 'Bicycle fills: to 72\u{a0}% instead of 60\u{a0}%'],
  [{ of: 'subjectView', now: 25, to: 12, end: 'least' }, 'View of Bicycle: from 12° instead of 25°'],
  [{ of: 'parking', now: 500, to: 1_250, end: 'most' }, 'Near parking: 1.25\u{a0}km instead of 500\u{a0}m'],
  [{ of: 'lens-long', now: 70, to: 85 }, 'with 85\u{a0}mm instead of 70\u{a0}mm at the long end'],
  [{ of: 'lens-height', now: 1.6, to: 2.4 }, 'with the lens up to 2.4\u{a0}m instead of 1.6\u{a0}m'],
  [{ of: 'landmarkShown', now: 0.8, to: 0.41, end: 'least' }, 'Bridge not hidden: 41\u{a0}% instead of 80\u{a0}%'],
  [{ of: 'landmarkPlace', now: 0.02, to: 0.01, end: null }, 'Bridge placed: 1\u{a0}% instead of 2\u{a0}%'],
  [{ of: 'landmarkPlace', now: 0.02, to: -0.05, end: null }, 'Bridge placed: prefer, not must'],
  [{ of: 'landmarkWhole', now: 0, to: -0.2, end: null }, 'Bridge whole: prefer, not must'],
  [{ of: 'light', now: 3, to: 2, end: null }, 'Light: prefer, not must'],
])('%o is told in its own unit', (part, text) => {
  expect(relaxationText(relaxation(part), NAMES, 'metric')).toBe(text)
})

test('a relaxed end is moved and the other left', () => {
  const wishes = relaxed(WISHES, relaxation({}))
  expect(wishes?.subjectFill).toEqual({ ...WISHES.subjectFill, most: 0.72 })
  expect({ ...wishes, subjectFill: WISHES.subjectFill }).toEqual(WISHES)
  expect(relaxed(WISHES, relaxation({ of: 'lens-height', to: 0.3, end: 'least' }))?.lensHeight).toEqual({
    ...WISHES.lensHeight,
    least: 0.3,
  })
  expect(relaxed(WISHES, relaxation({ of: 'landmarkShown', to: 0.4, end: null }))?.landmarkShown?.least).toBe(0.4)
  expect(relaxed(WISHES, relaxation({ of: 'parking', to: 900, end: null }))?.parking?.within).toBe(900)
  expect(relaxed(WISHES, relaxation({ of: 'landmarkPlace', to: 0, end: null }))?.landmarkPlace?.gap).toBe(0)
  const overlaps = relaxed(WISHES, relaxation({ of: 'landmarkPlace', to: -0.1, end: null }))?.landmarkPlace
  expect(overlaps).toEqual({ ...WISHES.landmarkPlace, must: false })
})

test('what knows no degrees is eased to a wish; a lens cannot be applied', () => {
  expect(relaxed(WISHES, relaxation({ of: 'landmarkWhole', end: null }))?.landmarkWhole?.must).toBe(false)
  expect(relaxed(WISHES, relaxation({ of: 'lens-long' }))).toBeNull()
})

test('a demand that is not made any more is not brought back', () => {
  const without = { ...WISHES, parking: null }
  expect(relaxed(without, relaxation({ of: 'parking', end: null }))).toBeNull()
})
