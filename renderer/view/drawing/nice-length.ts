/** Lengths that a scale bar may show: 1, 2 or 5 times a power of ten of the reader's own unit. */
import { METRES_PER_FOOT, METRES_PER_MILE, type UnitSystem } from '#core/units/length.ts'

/** The longest such length that is at most `most` metres; metres in, metres out. */
export function niceLength(most: number, units: UnitSystem): number {
  const unit = units === 'metric' ? 1 : most >= METRES_PER_MILE / 2 ? METRES_PER_MILE : METRES_PER_FOOT
  const size = most / unit
  const power = 10 ** Math.floor(Math.log10(size))
  const step = [5, 2, 1].find((candidate) => candidate * power <= size * (1 + 1e-9)) ?? 1
  return step * power * unit
}
