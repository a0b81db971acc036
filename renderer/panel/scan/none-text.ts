/** Why a scan found nothing, in words: what rules out how much, and what the smallest changes would be. */
import { exhaustive } from '#core/exhaustive.ts'
import { SCAN_WISH_KINDS, type ScanWishKind } from '#core/record/scan-wishes.ts'
import type { Excluded, Relaxation } from '#core/scan/scan-found.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { degreesText, metres, millimetres, percentText } from '#renderer/text/figure.ts'
import { scanFoundWords } from '#renderer/words/en-scan-found.ts'
import type { DemandNames } from './demand-names.ts'
import { onlyAsWish } from './relax.ts'

const { none: say } = scanFoundWords

function isDemand(by: Excluded['by']): by is ScanWishKind {
  return SCAN_WISH_KINDS.some((kind) => kind === by)
}

export function excludedName(by: Excluded['by'], names: DemandNames): string {
  return isDemand(by) ? names[by] : say.limits[by]
}

/** A part of all: 96 %, under 1 %; never all or nothing unless it is. */
export function partText(count: number, looked: number): string {
  if (looked === 0 || count === 0) return percentText(0)
  if (count === looked) return percentText(1)
  const percent = (count / looked) * 100
  if (percent < 1) return say.under(percentText(0.01))
  return percent > 99 ? say.over(percentText(0.99)) : percentText(count / looked, 0)
}

function inUnit(of: ScanWishKind, value: number, units: UnitSystem): string {
  if (of === 'subjectView') return degreesText(value, 0)
  if (of === 'parking') return metres(value, units)
  return percentText(value)
}

function isLens(of: Relaxation['of']): of is 'lens-long' | 'lens-short' | 'lens-height' {
  return of.startsWith('lens-')
}

/** The change that would help, without how much it helps. */
export function relaxationText(relaxation: Relaxation, names: DemandNames, units: UnitSystem): string {
  const { of, now, to, end } = relaxation
  if (!isLens(of) && onlyAsWish(relaxation)) return say.dropped(names[of])
  switch (of) {
    case 'lens-long':
      return say.lensLong(millimetres(to), millimetres(now))
    case 'lens-short':
      return say.lensShort(millimetres(to), millimetres(now))
    case 'lens-height':
      return say.lensHeight(end ?? 'most', metres(to, units), metres(now, units))
    case 'subjectFill':
    case 'landmarkFill':
    case 'subjectView':
    case 'softness':
      return say.band(names[of], end ?? 'most', inUnit(of, to, units), inUnit(of, now, units))
    case 'landmarkWhole':
    case 'landmarkPlace':
    case 'landmarkShown':
    case 'light':
    case 'parking':
      return say.figure(names[of], inUnit(of, to, units), inUnit(of, now, units))
    default:
      return exhaustive(of)
  }
}
