/** How the ground leans in words: which way it falls, whether that was measured, what the elevations say beside it. */
import { describe, expect, it } from 'vitest'
import type { GroundUnder, TiltFigure } from '#core/plan/ground-under.ts'
import { aspectHint, slopeHint, slopeText, tiltSourceAgainst, tiltSourceText } from '#renderer/text/tilt-text.ts'
import { words } from '#renderer/words/en.ts'
import { groundWords } from '#renderer/words/en-ground.ts'

const say = groundWords.under
const UNKNOWN: TiltFigure = { value: null, from: null, read: null }
const read = (value: number): TiltFigure => ({ value, from: 'elevations', read: value })
const measured = (value: number, against: number | null = null): TiltFigure => ({
  value,
  from: 'measured',
  read: against,
})

function under(slope: TiltFigure, aspect: TiltFigure): GroundUnder {
  return { elevation: 90, from: 'elevations', read: 90, step: 20, source: null, sea: false, top: null, slope, aspect }
}

describe('the slope', () => {
  it('is told with the way the ground falls, and as level where it hardly leans', () => {
    expect(slopeText(under(read(12.4), read(135)))).toBe('12° to the south-east')
    expect(slopeText(under(read(0.4), read(135)))).toBe(say.level)
    expect(slopeText(under(measured(0), UNKNOWN))).toBe(say.level)
  })

  it('is told in part where only one of the two is known, and not at all where neither is', () => {
    expect(slopeText(under(measured(7), UNKNOWN))).toBe('7°')
    expect(slopeText(under(UNKNOWN, measured(180)))).toBe('falls to the south')
    expect(slopeText(under(UNKNOWN, UNKNOWN))).toBeNull()
  })
})

describe('its source', () => {
  it('is one for both, or named apart', () => {
    expect(tiltSourceText(under(read(12), read(135)))).toBe('from elevation data')
    expect(tiltSourceText(under(measured(12, 9), measured(135)))).toBe('entered by you')
    expect(tiltSourceText(under(measured(12, 9), read(135)))).toBe(say.aspectRead)
    expect(tiltSourceText(under(read(12), measured(100, 135)))).toBe(say.aspectMeasured)
    expect(tiltSourceText(under(measured(12), UNKNOWN))).toBe('entered by you')
    expect(tiltSourceText(under(UNKNOWN, UNKNOWN))).toBeNull()
  })

  it('tells what the elevations say once something else was measured', () => {
    expect(tiltSourceAgainst(under(measured(12, 9), measured(90, 135)))).toBe(
      'entered by you; elevation data: 9° to the south-east',
    )
    expect(tiltSourceAgainst(under(read(12), read(135)))).toBe('from elevation data')
    expect(tiltSourceAgainst(under(measured(12), UNKNOWN))).toBe('entered by you')
  })
})

describe('under the fields', () => {
  it('stands what the elevations say, or that nobody knows', () => {
    expect(slopeHint(under(read(12.44), read(135)))).toBe('Elevation data: 12.4°')
    expect(aspectHint(under(read(12.44), read(35)))).toBe('Elevation data: 035.0°')
    expect(slopeHint(under(measured(3, 12.44), read(35)))).toContain('Elevation data: 12.4°. Clear the field')
    expect(aspectHint(under(read(0), UNKNOWN))).toBe(words.answers.where.unknownHint)
    expect(slopeHint(null)).toBe(words.answers.where.unknownHint)
  })
})
