/** How well a demand is met, in words: by its degree, and its value in the demand's own unit. */
import { exhaustive } from '#core/exhaustive.ts'
import { wishesMade } from '#core/light/light-wish.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { DemandMet } from '#core/scan/scan-found.ts'
import { DEGREE_AT_EDGE } from '#core/scan/score.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { degreesText, metres, share } from '#renderer/text/figure.ts'
import { scanFoundWords } from '#renderer/words/en-scan-found.ts'

const { met: say, values } = scanFoundWords

/** A degree is 0.8 at the edge of what is demanded and 1 in its middle. */
export function metWord(degree: number): string {
  if (degree >= 0.95) return say.fully
  if (degree >= DEGREE_AT_EDGE - 1e-6) return say.well
  if (degree >= 0.5) return say.nearly
  return degree > 0.05 ? say.partly : say.not
}

/** The value as people read it. */
export function metValue({ kind, value }: Pick<DemandMet, 'kind' | 'value'>, shoot: Shoot, units: UnitSystem): string {
  if (value === null) return values.unknown
  switch (kind) {
    case 'subjectFill':
    case 'landmarkFill':
      return share(value)
    case 'landmarkWhole':
      return value >= 0 ? values.clear(share(value)) : values.cut(share(-value))
    case 'landmarkPlace':
      if (shoot.scanWishes.landmarkPlace?.where === 'behind') return values.offCentre(share(Math.abs(value)))
      return value >= 0 ? values.apart(share(value)) : values.overlap(share(-value))
    case 'subjectView':
      return values.offFront(degreesText(value, 0))
    case 'landmarkShown':
      return values.seen(share(value))
    case 'softness':
      return share(value)
    case 'light':
      return values.light(value, wishesMade(shoot.light).length)
    case 'parking':
      return metres(value, units)
    default:
      return exhaustive(kind)
  }
}
