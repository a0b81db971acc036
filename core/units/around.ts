/** Values told all round a point in equal steps of azimuth, from north clockwise, read at any azimuth. */
import { wrapBearing } from './angle.ts'

/** Straight between the two next to it; where one of them is unknown (NaN) the nearer counts, null when that is the unknown one. */
export function valueAround(values: Float32Array, step: number, azimuth: number): number | null {
  const at = wrapBearing(azimuth) / step
  const before = Math.floor(at) % values.length
  const low = values[before] ?? Number.NaN
  const high = values[(before + 1) % values.length] ?? Number.NaN
  const part = at - Math.floor(at)
  if (Number.isNaN(low) || Number.isNaN(high)) {
    const nearer = part < 0.5 ? low : high
    return Number.isNaN(nearer) ? null : nearer
  }
  return low + part * (high - low)
}
