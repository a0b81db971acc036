/** Which tolerances are tightest: by what one is easily off, each condition told once. */
import { expect, test } from 'vitest'
import type { Failing } from '#core/tolerance/condition.ts'
import { MOVES, type Move } from '#core/tolerance/moves.ts'
import { type Tolerance, type Tolerances, tightFirst, tightest, tightness } from '#core/tolerance/tolerance.ts'

const CUT: Failing = { kind: 'landmark-whole', how: 'cut-top' }
const SHADE: Failing = { kind: 'subject-light', how: 'in-shade' }
const FILL: Failing = { kind: 'subjectFill', how: 'too-much' }

function off(parts: Partial<Record<Move, readonly [number, Failing]>>): Tolerances {
  return Object.fromEntries(
    MOVES.map((move): [Move, Tolerance] => {
      const [offset, fails] = parts[move] ?? [null, null]
      return [move, { offset, limit: 50, fails }]
    }),
  ) as unknown as Tolerances
}

test('half a minute is tighter than a hand’s breadth of the lens, that tighter than 2 degrees, those than a metre', () => {
  const found = tightFirst(
    off({ 'camera-left': [1, CUT], 'subject-clockwise': [2, CUT], 'lens-lower': [0.05, CUT], later: [30, SHADE] }),
  )
  expect(found.map(({ move }) => move)).toEqual(['later', 'lens-lower', 'subject-clockwise', 'camera-left'])
  expect(found.map(tightness)).toEqual([0.05, 0.25, 0.4, 1])
})

test('what fails nowhere is none of them; a condition is told once, by its tightest', () => {
  const all = off({
    'camera-left': [0.8, CUT],
    'camera-right': [0.7, { ...CUT, how: 'cut-left' }],
    later: [900, SHADE],
    'camera-nearer': [3, FILL],
  })
  expect(tightest(all, 3).map(({ move }) => move)).toEqual(['camera-right', 'later', 'camera-nearer'])
  expect(tightest(all, 1)).toHaveLength(1)
  expect(tightest(off({}), 3)).toEqual([])
})
