/** A relaxation as an edit: the wishes with that one demand, or the lens's heights, as far apart as it says. */
import type { ScanWishes } from '#core/plan/scan-wishes.ts'
import type { Relaxation } from '#core/scan/scan-found.ts'

/** Null for a change of the lens: that takes another lens in the bag. */
export function relaxed(wishes: ScanWishes, { of, then, end }: Relaxation): ScanWishes | null {
  switch (of) {
    case 'lens-long':
    case 'lens-short':
      return null
    case 'lens-height':
      return end === null ? null : { ...wishes, lensHeight: { ...wishes.lensHeight, [end]: then } }
    case 'subjectFill':
    case 'landmarkFill':
    case 'subjectView':
    case 'softness': {
      const demand = wishes[of]
      return demand === null || end === null ? null : { ...wishes, [of]: { ...demand, [end]: then } }
    }
    case 'landmarkPlace':
      return wishes.landmarkPlace && { ...wishes, landmarkPlace: { ...wishes.landmarkPlace, gap: then } }
    case 'landmarkShown':
      return wishes.landmarkShown && { ...wishes, landmarkShown: { ...wishes.landmarkShown, least: then } }
    case 'parking':
      return wishes.parking && { ...wishes, parking: { ...wishes.parking, within: then } }
    default: {
      // What knows no degrees (whole or not, the light) is eased by being a wish instead of a must.
      const demand = wishes[of]
      return demand && { ...wishes, [of]: { ...demand, must: false } }
    }
  }
}
