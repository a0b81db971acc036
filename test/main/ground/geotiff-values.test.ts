/** From a GeoTIFF's bytes to heights: no data as the file's own kind of number, marks nobody told, predictors by the specification. */
import { describe, expect, test } from 'vitest'
import { heightsFrom, noDataOf, sampleKind, type ValueRules } from '#main/ground/geotiff-values.ts'
import { newTally } from '#main/ground/possible-height.ts'

const RULES: ValueRules = { kind: 'float32', littleEndian: true, predictor: 1, noData: null, scale: 1, offset: 0 }
const bytes = (values: ArrayBufferView): Uint8Array => new Uint8Array(values.buffer.slice(0))

describe('no data', () => {
  test('is compared as the 32-bit float that the file holds', () => {
    const stored = Float32Array.of(1234.1, 1234.2)
    const heights = heightsFrom(bytes(stored), 2, { ...RULES, noData: noDataOf('1234.1\0') }, newTally())
    expect([...heights]).toEqual([Number.NaN, Math.fround(1234.2)])
  })

  test.each([
    ['-9999', -9999],
    ['-3.40282346638529e+38\0', -3.402_823_466_385_29e38],
    [' nan ', Number.NaN],
    ['-inf', Number.NEGATIVE_INFINITY],
    ['', null],
    ['none', null],
    [null, null],
  ])('%j means %s', (text, value) => {
    expect(noDataOf(text)).toEqual(value)
  })

  test('is what no height can be, also where the file does not say so', () => {
    const stored = Float32Array.of(-32_768, -9999, 32_767, Number.NaN, Number.POSITIVE_INFINITY, 0, -430.5, 8848)
    expect([...heightsFrom(bytes(stored), 8, RULES, newTally())]).toEqual([
      ...Array<number>(5).fill(Number.NaN),
      0,
      -430.5,
      8848,
    ])
  })

  test('is told before scale and offset', () => {
    const stored = Int16Array.of(0, 10)
    const heights = heightsFrom(
      bytes(stored),
      2,
      { ...RULES, kind: 'int16', noData: 0, scale: 0.5, offset: 100 },
      newTally(),
    )
    expect([...heights]).toEqual([Number.NaN, 105])
  })
})

test('differences of either byte order add up to the same', () => {
  // TIFF 6.0, section 14: each sample of a row less the one before it.
  const little = Uint8Array.of(100, 0, 5, 0, 0xfe, 0xff, 7, 0, 1, 0, 1, 0)
  const big = Uint8Array.from(little, (_, at) => little[at ^ 1] ?? 0)
  const rules = { ...RULES, kind: 'int16', predictor: 2 } as const
  expect([...heightsFrom(little, 3, rules, newTally())]).toEqual([100, 105, 103, 7, 8, 9])
  expect([...heightsFrom(big, 3, { ...rules, littleEndian: false }, newTally())]).toEqual([100, 105, 103, 7, 8, 9])
})

test.each([
  [1, 8],
  [2, 8],
  [3, 16],
  [4, 32],
  [1, 1],
])('samples of format %i with %i bits are no heights', (format, bits) => {
  expect(sampleKind(format, bits)).toBeNull()
})
