/** Owns the way from a GeoTIFF's unpacked bytes to heights: predictor, byte order, no data, scale. */
import { type HeightTally, isPossible, tallyTooHigh } from './possible-height.ts'

export type SampleKind = 'int16' | 'uint16' | 'int32' | 'uint32' | 'float32' | 'float64'

export interface ValueRules {
  readonly kind: SampleKind
  readonly littleEndian: boolean
  /** TIFF's own numbers: 1 none, 2 differences, 3 differences of a float's bytes. */
  readonly predictor: number
  /** As the file tells it; null when it tells none. */
  readonly noData: number | null
  readonly scale: number
  readonly offset: number
}

const KINDS: Readonly<Record<string, SampleKind>> = {
  '1/16': 'uint16',
  '1/32': 'uint32',
  '2/16': 'int16',
  '2/32': 'int32',
  '3/32': 'float32',
  '3/64': 'float64',
}

/** By TIFF's SampleFormat and bits; null for what can't be elevations, such as shades of grey in 8 bits. */
export function sampleKind(format: number, bits: number): SampleKind | null {
  return KINDS[`${format}/${bits}`] ?? null
}

export function bytesOf(kind: SampleKind): number {
  return kind === 'float64' ? 8 : kind.endsWith('16') ? 2 : 4
}

/** GDAL's no-data text: a number, or "nan"; null when there is none. */
export function noDataOf(text: string | null): number | null {
  const plain = (text ?? '').replaceAll('\0', '').trim()
  if (plain === '') return null
  if (/^[+-]?nan$/i.test(plain)) return Number.NaN
  const value = /^([+-]?)inf/i.test(plain)
    ? plain.startsWith('-')
      ? Number.NEGATIVE_INFINITY
      : Number.POSITIVE_INFINITY
    : Number(plain)
  return Number.isNaN(value) ? null : value
}

/** Marks gaps in many a file that does not say so; no sea floor is surveyed at just that depth. */
const USUAL_MARK = -9999

/** Rows of `width` samples. What stands beyond all heights is a gap, and counted. */
export function heightsFrom(bytes: Uint8Array, width: number, rules: ValueRules, tally: HeightTally): Float32Array {
  const raw = typedSamples(bytes, width, rules)
  const { noData, scale, offset } = rules
  // The text has more digits than a 32-bit float can hold: compared as the file's own kind of number.
  const mark = noData === null ? USUAL_MARK : rules.kind === 'float32' ? Math.fround(noData) : noData
  const heights = new Float32Array(raw.length)
  for (let sample = 0; sample < raw.length; sample++) {
    const value = raw[sample] ?? Number.NaN
    const height = value * scale + offset
    const known = value !== mark && isPossible(height)
    heights[sample] = known ? height : Number.NaN
    if (known) tally.known += 1
    else if (value !== mark) tallyTooHigh(tally, height)
  }
  return heights
}

type Samples = Int16Array | Uint16Array | Int32Array | Uint32Array | Float32Array | Float64Array

function typedSamples(bytes: Uint8Array, width: number, { kind, littleEndian, predictor }: ValueRules): Samples {
  const size = bytesOf(kind)
  const whole = new Uint8Array(new ArrayBuffer(Math.floor(bytes.length / size) * size))
  whole.set(bytes.subarray(0, whole.length))
  // The third predictor stores a float's bytes highest first in files of either order.
  if (predictor === 3) undoFloatDifferences(whole, width, size)
  else if (!littleEndian) swap(whole, size)
  const samples = new ARRAYS[kind](whole.buffer)
  if (predictor === 2) undoDifferences(whole.buffer, width, size)
  return samples
}

const ARRAYS = {
  int16: Int16Array,
  uint16: Uint16Array,
  int32: Int32Array,
  uint32: Uint32Array,
  float32: Float32Array,
  float64: Float64Array,
} as const satisfies Record<SampleKind, unknown>

function swap(bytes: Uint8Array<ArrayBuffer>, size: number): void {
  const buffer = Buffer.from(bytes.buffer)
  if (size === 2) buffer.swap16()
  else if (size === 4) buffer.swap32()
  else buffer.swap64()
}

/** Each sample was stored as its difference from the one before it in the row, as whole numbers of its own width. */
function undoDifferences(buffer: ArrayBuffer, width: number, size: number): void {
  if (size === 8) return undoLongDifferences(new BigUint64Array(buffer), width)
  const numbers = size === 2 ? new Uint16Array(buffer) : new Uint32Array(buffer)
  for (let start = 0; start < numbers.length; start += width) {
    const end = Math.min(start + width, numbers.length)
    for (let at = start + 1; at < end; at++) numbers[at] = (numbers[at] ?? 0) + (numbers[at - 1] ?? 0)
  }
}

function undoLongDifferences(numbers: BigUint64Array, width: number): void {
  for (let start = 0; start < numbers.length; start += width) {
    const end = Math.min(start + width, numbers.length)
    for (let at = start + 1; at < end; at++) numbers[at] = (numbers[at] ?? 0n) + (numbers[at - 1] ?? 0n)
  }
}

/** Within a row all highest bytes come first, then all second ones, each as the difference from the byte before it. */
function undoFloatDifferences(bytes: Uint8Array, width: number, size: number): void {
  const rowBytes = width * size
  for (let start = 0; start + rowBytes <= bytes.length; start += rowBytes) {
    const row = bytes.subarray(start, start + rowBytes)
    for (let at = 1; at < rowBytes; at++) row[at] = (row[at] ?? 0) + (row[at - 1] ?? 0)
    const summed = row.slice()
    for (let sample = 0; sample < width; sample++) {
      for (let byte = 0; byte < size; byte++)
        row[sample * size + byte] = summed[(size - 1 - byte) * width + sample] ?? 0
    }
  }
}
