/** The first failure along an offset: found to the closeness asked for, the nearer of several, and none where nothing fails. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type WalkReach, firstFailure } from '#core/tolerance/offset-walk.ts'

const REACH: WalkReach = { limit: 50, close: 0.01, first: 0.05, most: 1 }

describe('the first failure', () => {
  test('lies within the closeness asked for beyond the offset told, wherever it is', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 49.9, noNaN: true }), (edge) => {
        const { offset, failure } = firstFailure((by) => (by > edge ? 'gone' : null), REACH)
        expect(failure).toBe('gone')
        expect(offset).toBeLessThanOrEqual(edge)
        expect(offset).toBeGreaterThanOrEqual(edge - 0.01)
      }),
    )
  })

  test('is none when nothing fails up to the limit, and the limit itself is looked at', () => {
    expect(firstFailure(() => null, REACH)).toEqual({ offset: null, failure: null })
    expect(firstFailure((by) => (by >= 50 ? 'at the limit' : null), REACH).failure).toBe('at the limit')
    expect(firstFailure(() => 'anything', { ...REACH, limit: 0 }).offset).toBeNull()
  })

  test('is the nearer of two stretches that fail, when the nearer is as wide as a step there', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 30, noNaN: true }), (from) => {
        const wide = Math.max(0.05, Math.min(1, from * 0.3), from * 0.1) * 1.01
        const { offset } = firstFailure((by) => ((by > from && by < from + wide) || by > 40 ? true : null), REACH)
        expect(offset).toBeGreaterThanOrEqual(from - 0.01)
        expect(offset).toBeLessThanOrEqual(from)
      }),
    )
  })

  test('tells what fails at the edge, not what the walk met first beyond it', () => {
    const { failure } = firstFailure((by) => (by > 3.2 ? 'later' : by > 3 ? 'first' : null), REACH)
    expect(failure).toBe('first')
  })
})
