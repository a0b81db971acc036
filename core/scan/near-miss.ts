/** A near miss: a picture that misses one must alone, and to what that must would have to be changed for it. */
import { type MeasuredDemand, reachIn } from './demands.ts'
import type { LightMet } from './light-demand.ts'
import type { Taken } from './picture.ts'
import type { ScanTable } from './scan-table.ts'
import { meets } from './score.ts'
import type { Beyond } from './why-tries.ts'

/** Down and up to steps that a user may type: the changed must holds the picture with a little to spare. */
function downTo(step: number, value: number): number {
  return Math.floor(value / step + 1e-9) * step
}

function upTo(step: number, value: number): number {
  return Math.ceil(value / step - 1e-9) * step
}

/** Free of the last digits that steps of a hundredth leave behind. */
function plain(value: number): number {
  return Number(value.toFixed(6))
}

function ofBand(
  of: 'landmarkFill' | 'subjectView' | 'softness',
  { least, most }: { readonly least: number; readonly most: number },
  value: number,
  step: number,
  pain: number,
): Beyond | null {
  if (value < least) return { of, now: least, to: Math.max(0, plain(downTo(step, value))), end: 'least', pain }
  if (value > most) return { of, now: most, to: plain(upTo(step, value)), end: 'most', pain }
  return null
}

/**
 * What change of the one must that a picture misses would let it pass; null where no change of its figures does. For landmarkWhole
 * and, where it is below 0, for landmarkPlace the figure tells how much is cut or overlaps: such a must can only be made a wish.
 */
export function nearMiss({ wishes }: ScanTable, missed: MeasuredDemand, { frame }: Taken): Beyond | null {
  const { kind, value, margin } = missed
  if (value === null) return null
  const pain = -margin
  const shows = frame.landmark !== null && meets(reachIn(frame.landmark))
  if (kind === 'landmarkFill' && wishes.landmarkFill !== null)
    return shows ? ofBand(kind, wishes.landmarkFill, value, 0.01, pain) : null
  if (kind === 'subjectView' && wishes.subjectView !== null) return ofBand(kind, wishes.subjectView, value, 1, pain)
  if (kind === 'softness' && wishes.softness !== null) return ofBand(kind, wishes.softness, value, 0.001, pain)
  if (kind === 'landmarkWhole') return { of: kind, now: 0, to: plain(downTo(0.01, value)), end: null, pain }
  if (kind === 'landmarkPlace' && wishes.landmarkPlace !== null)
    return shows ? { of: kind, now: wishes.landmarkPlace.gap, to: plain(downTo(0.01, value)), end: null, pain } : null
  if (kind === 'landmarkShown' && wishes.landmarkShown !== null)
    return { of: kind, now: wishes.landmarkShown.least, to: plain(downTo(0.01, value)), end: 'least', pain }
  if (kind === 'parking' && wishes.parking !== null)
    return { of: kind, now: wishes.parking.within, to: upTo(10, value), end: 'most', pain }
  return null
}

/** The light as the one must missed: how many of its wishes hold, of how many; it can only be made a wish, or some of them dropped. */
export function nearLight(light: LightMet, made: number): Beyond {
  return { of: 'light', now: made, to: light.value, end: null, pain: made - light.value + Math.min(1, -light.margin) }
}
