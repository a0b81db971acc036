/** Tolerances in words: never more than holds, in the units wished, and a sentence for every way to fail. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { ConditionKind, How } from '#core/tolerance/condition.ts'
import { METRES_PER_FOOT, METRES_PER_INCH } from '#core/units/length.ts'
import { failingText, failureText, offsetText, toleranceText } from '#renderer/text/tolerance-text.ts'
import { toleranceWords } from '#renderer/words/en-tolerance.ts'
import { examplePlan } from '#test/help/plans.ts'

/** What a text says, in metres. */
function metresOf(text: string): number {
  if (text === toleranceWords.atOnce) return 0
  const [figure = '', unit = ''] = text.split('\u{a0}')
  const metres = { m: 1, cm: 0.01, ft: METRES_PER_FOOT, in: METRES_PER_INCH }[unit]
  if (metres === undefined) throw new Error(`no length: ${text}`)
  return Number(figure) * metres
}

describe('an offset', () => {
  test('is never told longer than it is, and shorter by no more than the last digit shown', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.constantFrom('metric', 'imperial'),
        (offset, units) => {
          const told = metresOf(offsetText('camera-left', offset, units))
          expect(told).toBeLessThanOrEqual(offset + 1e-7)
          expect(told).toBeGreaterThan(offset - (units === 'metric' ? 0.1 : offset < 30 ? 0.031 : 0.305))
        },
      ),
      { numRuns: 1000 },
    )
  })

  test('is of its move’s own unit', () => {
    expect(offsetText('subject-clockwise', 12.37, 'metric')).toBe('12.3°')
    expect(offsetText('later', 95.7, 'metric')).toBe('95 s')
    expect(offsetText('later', 3599, 'metric')).toBe('59 min')
    expect(offsetText('earlier', 3600 + 25 * 60 + 59, 'metric')).toBe('1 h 25 min')
    expect(offsetText('later', 0, 'metric')).toBe(toleranceWords.atOnce)
    expect(offsetText('lens-lower', 0.004, 'metric')).toBe(toleranceWords.atOnce)
  })

  test('beyond the limit is told as more than that; of the lens as all its height', () => {
    const free = (limit: number) => ({ offset: null, limit, fails: null })
    expect(toleranceText('camera-left', free(50), 'metric')).toBe(toleranceWords.over('50\u{a0}m'))
    expect(toleranceText('camera-left', free(50), 'imperial')).toBe(toleranceWords.over('164\u{a0}ft'))
    expect(toleranceText('subject-clockwise', free(90), 'metric')).toBe(toleranceWords.over('90°'))
    expect(toleranceText('lens-lower', free(1.2), 'metric')).toBe(toleranceWords.all('1.2\u{a0}m'))
    expect(toleranceText('later', free(6 * 3600), 'metric')).toBe(toleranceWords.over('6 h'))
    expect(toleranceText('later', free(4000), 'metric')).toBe(toleranceWords.over('1 h 6 min'))
    expect(toleranceText('later', { offset: 600, limit: 4000, fails: null }, 'metric')).toBe('10 min')
  })
})

describe('a failure', () => {
  const plan = examplePlan()
  const of = (kind: ConditionKind, how: How): string => failureText(plan, { kind, how })

  test('names the thing that it is of', () => {
    expect(of('subject-whole', 'cut-top')).toBe(toleranceWords.cut('Cargo bicycle', ['top']))
    expect(of('landmark-whole', 'cut-top')).toBe(toleranceWords.cut('Bridge', ['top']))
    expect(of('landmark-whole', 'cut-left-right')).toBe('Bridge is cut at the left and right')
    expect(of('subject-whole', 'cut-left-right-bottom')).toBe('Cargo bicycle is cut at the left, right and bottom')
    expect(of('landmarkWhole', 'cut-left')).toContain('crop')
    expect(of('subject-light', 'in-shade')).toContain('Cargo bicycle')
    expect(of('landmark-light', 'in-shade')).toContain('Bridge')
    expect(of('subjectView', 'too-little')).toBe(toleranceWords.fromFront('Cargo bicycle'))
    expect(of('landmarkFill', 'too-much')).toBe(toleranceWords.fillsTooMuch('Bridge'))
    expect(of('softness', 'too-little')).toBe(toleranceWords.tooSharp('Bridge'))
  })

  test('of now is told in one sentence; none is none', () => {
    expect(failingText(plan, [])).toBeNull()
    const text = failingText(plan, [
      { kind: 'sharp', how: 'not-sharp' },
      { kind: 'moonUp', how: 'moon-down' },
    ])
    expect(text).toContain(toleranceWords.notSharp('Cargo bicycle'))
    expect(text).toContain(toleranceWords.moonDown)
  })
})
