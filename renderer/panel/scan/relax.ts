/** A relaxation as an edit: the wishes with that one demand, or the lens's heights, as far apart as it says. */
import { exhaustive } from '#core/exhaustive.ts'
import type { ScanWishes } from '#core/record/scan-wishes.ts'
import type { Relaxation } from '#core/scan/scan-found.ts'

/**
 * Whether a must can only be eased by being a wish: what is whole or not, the light, and a landmark that overlaps the subject have no
 * figure that could be lowered.
 */
export function onlyAsWish({ of, to }: Relaxation): boolean {
  return of === 'landmarkWhole' || of === 'light' || (of === 'landmarkPlace' && to < 0)
}

/** Null for a change of the lens: that takes another lens in the bag. */
export function relaxed(wishes: ScanWishes, relaxation: Relaxation): ScanWishes | null {
  const { of, to, end } = relaxation
  switch (of) {
    case 'lens-long':
    case 'lens-short':
      return null
    case 'lens-height':
      return end === null ? null : { ...wishes, lensHeight: { ...wishes.lensHeight, [end]: to } }
    case 'subjectFill':
    case 'landmarkFill':
    case 'subjectView':
    case 'softness': {
      const demand = wishes[of]
      return demand === null || end === null ? null : { ...wishes, [of]: { ...demand, [end]: to } }
    }
    case 'landmarkShown':
      return wishes.landmarkShown && { ...wishes, landmarkShown: { ...wishes.landmarkShown, least: to } }
    case 'parking':
      return wishes.parking && { ...wishes, parking: { ...wishes.parking, within: to } }
    case 'landmarkPlace': {
      const demand = wishes.landmarkPlace
      if (demand === null) return null
      const eased = onlyAsWish(relaxation) || demand.where === 'behind' ? { must: false } : { gap: to }
      return { ...wishes, landmarkPlace: { ...demand, ...eased } }
    }
    case 'landmarkWhole':
    case 'light': {
      const demand = wishes[of]
      return demand && { ...wishes, [of]: { ...demand, must: false } }
    }
    default:
      return exhaustive(of)
  }
}
