/** Scan wishes: what the picture should be at any place of the stopping ground, each a must or a wish with a weight. */
import type { FrameAxis } from '#core/frame/fill.ts'
import type { Hours } from '#core/light/light-wish.ts'

/** A must is never traded away. The weight says how much the demand counts in the score, musts by how well they are met. */
export interface Demand {
  readonly must: boolean
  /** 1..5. */
  readonly weight: number
}

/** From the least to the most that is wished, both included. */
export interface Band {
  readonly least: number
  readonly most: number
}

export const LANDMARK_PLACES = ['left', 'behind', 'right', 'beside'] as const
/** Where the landmark stands in the frame as seen against the subject; `beside` is left or right. */
export type LandmarkPlace = (typeof LANDMARK_PLACES)[number]

/** Null where nothing is wished. */
export interface ScanWishes {
  /** Shares 0..1 of the frame's side. */
  readonly subjectFill: (Demand & Band & { readonly axis: FrameAxis }) | null
  readonly landmarkFill: (Demand & Band & { readonly axis: FrameAxis }) | null
  /** Whole within the frame; with `crops` within every crop of the shoot too, in the spot's orientation. */
  readonly landmarkWhole: (Demand & { readonly crops: boolean }) | null
  /** `gap`: share of the frame's width that stays clear between the two; of no meaning for `behind`. */
  readonly landmarkPlace: (Demand & { readonly where: LandmarkPlace; readonly gap: number }) | null
  /** Degrees 0..180 between the subject's front and the way to the camera: 0 head on, 90 side on, 180 from behind. */
  readonly subjectView: (Demand & Band) | null
  /** Least share of the landmark's height that the ground lets the camera see, 0..1. */
  readonly landmarkShown: (Demand & { readonly least: number }) | null
  /** The landmark's blur as a share of the frame's width, at the aperture that the spot's shot asks for. */
  readonly softness: (Demand & Band) | null
  /** The light wishes of the shoot, all of them. */
  readonly light: Demand | null
  /** Metres from where the subject stops to the nearest parking point of the shoot's spots. */
  readonly parking: (Demand & { readonly within: number }) | null
  /** Metres above the ground at which the lens may be. */
  readonly lensHeight: Band
  /** Days by the calendar of the place, YYYY-MM-DD, both included; null for the day of the spot. */
  readonly days: { readonly from: string; readonly until: string } | null
  /** Hours by the clock of the place; null for the whole day. */
  readonly hours: Hours | null
}

export const SCAN_WISH_KINDS = [
  'subjectFill',
  'landmarkFill',
  'landmarkWhole',
  'landmarkPlace',
  'subjectView',
  'landmarkShown',
  'softness',
  'light',
  'parking',
] as const
export type ScanWishKind = (typeof SCAN_WISH_KINDS)[number]

const MUST = { must: true, weight: 3 } as const
const WISH = { must: false, weight: 3 } as const

/** A beginning that gives an answer at once: both in the frame, the landmark whole and not hidden. */
export const USUAL_SCAN_WISHES = {
  subjectFill: { ...MUST, axis: 'width', least: 0.3, most: 0.6 },
  landmarkFill: { ...WISH, axis: 'height', least: 0.2, most: 0.6 },
  landmarkWhole: { ...MUST, crops: false },
  landmarkPlace: null,
  subjectView: null,
  landmarkShown: { ...MUST, least: 0.8 },
  softness: null,
  light: { ...WISH },
  parking: null,
  lensHeight: { least: 0.8, most: 1.6 },
  days: null,
  hours: null,
} satisfies ScanWishes

/** Nothing demanded of a picture. */
export const NO_DEMANDS: { readonly [Kind in ScanWishKind]: null } = {
  subjectFill: null,
  landmarkFill: null,
  landmarkWhole: null,
  landmarkPlace: null,
  subjectView: null,
  landmarkShown: null,
  softness: null,
  light: null,
  parking: null,
}

/** The wishes made, in their order. */
export function scanWishesMade(wishes: ScanWishes): ScanWishKind[] {
  return SCAN_WISH_KINDS.filter((kind) => wishes[kind] !== null)
}
