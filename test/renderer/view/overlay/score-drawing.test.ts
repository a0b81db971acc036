/** The score as ink: classes by what was found, whole lines without gaps, areas without crowding. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import type { PlaceFound } from '#core/scan/scan-found.ts'
import { levelView } from '#renderer/view/drawing/plan-view.ts'
import { SCORE_CLASSES, drawScores, scoreClass, scoreRange } from '#renderer/view/overlay/score-drawing.ts'

const MIDDLE = { lat: 46.4, lon: -33.6 }
const STEP = 10

function line(scores: readonly (number | null)[], from = 0): PlaceFound[] {
  return scores.map((score, index) => ({
    place: from + index,
    at: destination(MIDDLE, 90, STEP * (index - scores.length / 2)),
    ground: 'track',
    score,
    best: [],
  }))
}

const TRACK = [{ id: 'track', form: 'line' }] as const
const near = levelView(MIDDLE, 1, 800, 600)
const far = levelView(MIDDLE, 0.02, 800, 600)

/** Every stretch of a path as its first and last x. */
function stretches(path: string): [number, number][] {
  return path
    .split('M')
    .slice(1)
    .map((part) => {
      const xs = part.split('L').map((point) => Number(point.split(',')[0]))
      return [xs[0] ?? 0, xs.at(-1) ?? 0]
    })
}

test('nothing found has no range; one score alone is not spread over the classes', () => {
  expect(scoreRange(line([null, null]))).toBeNull()
  const range = scoreRange(line([0.7, null, 0.7]))
  expect(range?.most).toBe(0.7)
  expect(scoreClass(0.7, range ?? { least: 0, most: 1 })).toBe(SCORE_CLASSES - 1)
})

test('a better score is never drawn thinner', () => {
  const score = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(score, score, score, score, (one, other, third, fourth) => {
      const range = scoreRange(line([one, other, third, fourth]))
      if (range === null) return
      const [low, high] = [Math.min(one, other), Math.max(one, other)]
      expect(scoreClass(low, range)).toBeLessThanOrEqual(scoreClass(high, range))
      expect(scoreClass(range.most, range)).toBe(SCORE_CLASSES - 1)
    }),
  )
})

test('a line is drawn from its first place to its last without a gap, each stretch of its own class', () => {
  const { lines, none } = drawScores(line([0.4, 0.9, null, 0.9, 0.4]), TRACK, STEP, near)
  const all = [...lines, none].flatMap(stretches).toSorted((one, other) => one[0] - other[0])
  expect(all.length).toBe(5)
  all.slice(1).forEach(([from], index) => expect(from).toBeCloseTo(all[index]?.[1] ?? NaN, 1))
  expect((all.at(-1)?.[1] ?? 0) - (all[0]?.[0] ?? 0)).toBeCloseTo(4 * STEP, 0)
  expect(stretches(none).length).toBe(1)
  expect(stretches(lines[SCORE_CLASSES - 1] ?? '').length).toBe(2)
  expect(stretches(lines[0] ?? '').length).toBe(2)
})

test('places not looked at yet leave a gap', () => {
  const all = line([0.5, 0.5, 0.5, 0.5, 0.5, 0.5])
  const { lines } = drawScores([all[0]!, all[1]!, all[4]!, all[5]!], TRACK, STEP, near)
  const drawn = lines.flatMap(stretches).toSorted((one, other) => one[0] - other[0])
  const gaps = drawn.slice(1).map(([from], index) => from - (drawn[index]?.[1] ?? 0))
  expect(Math.max(...gaps)).toBeGreaterThan(STEP)
})

test('a stretch left out for a keep-out is not drawn over, though the places are counted on', () => {
  const all = line([0.5, 0.5, 0.5, 0.5, 0.5, 0.5])
  const kept = [all[0]!, all[1]!, all[4]!, all[5]!].map((found, place) => ({ ...found, place }))
  const drawn = drawScores(kept, TRACK, STEP, near)
    .lines.flatMap(stretches)
    .toSorted((one, other) => one[0] - other[0])
  const gaps = drawn.slice(1).map(([from], index) => from - (drawn[index]?.[1] ?? 0))
  expect(Math.max(...gaps)).toBeGreaterThan(STEP)
})

test('seen from afar, places that fall together are told by their best', () => {
  const scores = Array.from({ length: 400 }, (_, index) => (index === 200 ? 0.9 : 0.3))
  const { lines } = drawScores(line(scores), TRACK, STEP, far)
  expect(lines.flatMap(stretches).length).toBeLessThan(60)
  expect(stretches(lines[SCORE_CLASSES - 1] ?? '').length).toBe(1)
})

test('an area is squares by score and dots where nothing passes', () => {
  const field = [{ id: 'track', form: 'area' }] as const
  const { squares, noneDots, lines } = drawScores(line([0.3, null, 0.9]), field, STEP, near)
  expect(lines.join('')).toBe('')
  expect(squares.map((path) => path.split('M').length - 1)).toEqual([1, 0, 0, 1])
  expect(noneDots.split('M').length - 1).toBe(1)
  const side = (path: string | undefined): number => Number(/h([\d.]+)/u.exec(path ?? '')?.[1])
  expect(side(squares[SCORE_CLASSES - 1])).toBeGreaterThan(side(squares[0]))
})
