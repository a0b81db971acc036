/** How sharp: the aperture that holds the subject front to back, the field it gives, and how soft the landmark turns. */
import { type FStop, exactAperture, nextThirdStop } from './aperture.ts'
import { type FieldLimits, apertureToHold, blurDisc, fieldLimits } from './depth-of-field.ts'
import { airyDisc, diffractionSetsIn } from './diffraction.ts'
import { type Lens, widestAt } from './lens.ts'

export interface SharpnessQuestion {
  readonly focalLength: number
  /** Millimetres. */
  readonly imageDistance: number
  readonly confusion: number
  readonly frameWidth: number
  /** Metres along the axis. */
  readonly focusDistance: number
  readonly near: number
  readonly far: number
  /** Metres along the axis to the landmark; null when there is none before the lens. */
  readonly landmark: number | null
  readonly lens: Lens | null
  /** f-number set by hand, as marked; null takes what is needed. */
  readonly chosen: number | null
}

export interface Softness {
  /** Millimetres on the sensor. */
  readonly disc: number
  /** The disc as a share of the frame's width. */
  readonly share: number
  /** Metres at the landmark: details smaller than this dissolve. */
  readonly dissolves: number
}

export interface Sharpness {
  /** Metres of depth between the subject's nearest and farthest point. */
  readonly span: number
  readonly near: number
  readonly far: number
  readonly focusDistance: number
  /** f-number at which both ends just hold. */
  readonly needed: number
  /** The next third stop; null when beyond f/64. */
  readonly neededStop: FStop | null
  /** True when even the lens's maximum aperture is more than is needed; false without a lens. */
  readonly anyStop: boolean
  /** f-number used for the limits and the softness, as marked and exact. */
  readonly used: FStop
  readonly limits: FieldLimits
  /** Whether both ends are inside the limits. */
  readonly endToEnd: boolean
  /** Why the needed stop isn't used: the lens doesn't open so wide, doesn't close so far, or another was chosen. */
  readonly held: 'as-needed' | 'widest' | 'smallest' | 'chosen'
  /** True when the chosen f-number lies outside what the lens has. */
  readonly outsideLens: boolean
  readonly landmark: Softness | null
  /** f-number at which diffraction reaches the circle of confusion. */
  readonly diffractionFrom: number
  /** Millimetres of the Airy disc at the used f-number. */
  readonly airy: number
  readonly diffracted: boolean
  readonly confusion: number
}

/** A rounding's worth of slack when asking whether a limit holds an end. */
const SLACK = 1e-9

function usedStop(
  question: SharpnessQuestion,
  neededStop: FStop | null,
): Pick<Sharpness, 'used' | 'held' | 'outsideLens'> {
  const { lens, focalLength, chosen } = question
  const widest = lens === null ? 0 : exactAperture(widestAt(lens, focalLength))
  const smallest = lens === null ? Infinity : exactAperture(lens.smallest)
  const markedWidest = lens === null ? 0 : widestAt(lens, focalLength)
  if (chosen !== null) {
    const exact = exactAperture(chosen)
    const outsideLens = exact < widest * (1 - 0.01) || exact > smallest * (1 + 0.01)
    return { used: { mark: chosen, exact }, held: 'chosen', outsideLens }
  }
  const wanted = neededStop ?? { mark: 64, exact: 64 }
  if (wanted.exact < widest) return { used: { mark: markedWidest, exact: widest }, held: 'widest', outsideLens: false }
  if (lens !== null && wanted.exact > smallest * (1 + SLACK)) {
    return { used: { mark: lens.smallest, exact: smallest }, held: 'smallest', outsideLens: false }
  }
  return { used: wanted, held: 'as-needed', outsideLens: false }
}

export function sharpness(question: SharpnessQuestion): Sharpness {
  const { focalLength, confusion, focusDistance, near, far, landmark, imageDistance, frameWidth } = question
  const needed = apertureToHold(focalLength, confusion, focusDistance, near, far)
  const neededStop = nextThirdStop(needed)
  const chosen = usedStop(question, neededStop)
  const aperture = chosen.used.exact
  const limits = fieldLimits(focalLength, aperture, confusion, focusDistance)
  const disc = landmark === null ? null : blurDisc(focalLength, aperture, focusDistance, landmark)
  return {
    span: far - near,
    near,
    far,
    focusDistance,
    needed,
    neededStop,
    anyStop: question.lens !== null && needed <= exactAperture(widestAt(question.lens, focalLength)),
    ...chosen,
    limits,
    endToEnd: limits.near <= near * (1 + SLACK) && (limits.far === null || limits.far >= far * (1 - SLACK)),
    landmark:
      disc === null || landmark === null
        ? null
        : { disc, share: disc / frameWidth, dissolves: (disc / imageDistance) * landmark },
    diffractionFrom: diffractionSetsIn(confusion),
    airy: airyDisc(aperture),
    diffracted: airyDisc(aperture) > confusion,
    confusion,
  }
}
