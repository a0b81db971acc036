/** The bench's gate: what is worse by more than the noise is said, and accepting keeps what was not measured. */
import { describe, expect, test } from 'vitest'
import { acceptedWith, gateFindings } from '#test/bench/gate.ts'

const LESS = { better: 'less', noise: 0.15 } as const
const MORE = { better: 'more', noise: 0.15 } as const

describe('the gate', () => {
  const accepted = { drag: 3, times: 800 }

  test('is silent within the noise, and about what it does not hold', () => {
    expect(gateFindings([{ name: 'drag', ratio: 3.4, gate: LESS }], accepted)).toEqual([])
    expect(gateFindings([{ name: 'drag', ratio: 1, gate: LESS }], accepted)).toEqual([])
    expect(gateFindings([{ name: 'drag', ratio: 30 }], accepted)).toEqual([])
  })

  test('says by how much a ratio is worse, either way round', () => {
    expect(gateFindings([{ name: 'drag', ratio: 3.6, gate: LESS }], accepted)).toEqual([
      'drag: 3.600, accepted was 3.000: 20 % worse, of which 15 % may be noise.',
    ])
    expect(gateFindings([{ name: 'times', ratio: 400, gate: MORE }], accepted)).toEqual([
      'times: 400.000, accepted was 800.000: 100 % worse, of which 15 % may be noise.',
    ])
  })

  test('says what could not be measured and what nobody accepted', () => {
    expect(gateFindings([{ name: 'drag', ratio: Number.NaN, gate: LESS }], accepted)[0]).toContain('not be measured')
    expect(gateFindings([{ name: 'new', ratio: 1, gate: LESS }], accepted)[0]).toContain('nothing was accepted')
  })

  test('accepts what was measured and keeps the rest', () => {
    const rows = [
      { name: 'drag', ratio: 2.00049, gate: LESS },
      { name: 'free', ratio: 9 },
      { name: 'broken', ratio: Number.NaN, gate: LESS },
    ]
    expect(acceptedWith(rows, accepted)).toEqual({ drag: 2, times: 800 })
  })
})
