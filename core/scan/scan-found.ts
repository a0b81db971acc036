/** What a scan finds: for each place its score and its best arrangements, and for each must how much it excludes. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ScanWishKind } from '#core/record/scan-wishes.ts'

/** How well one demand is met. */
export interface DemandMet {
  readonly kind: ScanWishKind
  readonly must: boolean
  readonly weight: number
  /** 0..1; see score.ts. */
  readonly degree: number
  /** What it is about, as assess() tells it, in the demand's own unit; null when unknown. */
  readonly value: number | null
}

/** One arrangement that meets all musts. */
export interface Candidate {
  /** Index of its place among the scan's places. */
  readonly place: number
  /** Id of its stopping ground. */
  readonly ground: string
  /** Where the subject stops. */
  readonly at: LatLon
  readonly heading: number
  readonly standpoint: LatLon
  /** Metres above the ground. */
  readonly lensHeight: number
  /** Millimetres. */
  readonly focalLength: number
  readonly lensId: string
  /** Where the subject's centre lies across and up the frame, shares from its middle. */
  readonly across: number
  readonly up: number
  readonly instant: number
  /** 0..1. */
  readonly score: number
  readonly met: readonly DemandMet[]
}

/** What was found at one place; what is found at others changes nothing here. */
export interface PlaceFound {
  readonly place: number
  readonly at: LatLon
  /** Id of its stopping ground. */
  readonly ground: string
  /** Of its best arrangement; null where none meets all musts. */
  readonly score: number | null
  /** Best first; apart from one another in bearing or time. */
  readonly best: readonly Candidate[]
}

/** Reasons beside the stated musts for which a candidate is left out. */
export const SCAN_LIMITS = ['keep-out', 'lens', 'closest-focus', 'framing', 'hours'] as const
export type ScanLimit = (typeof SCAN_LIMITS)[number]

/** How many of the combinations looked at a must or a limit leaves out, and how many it alone does. */
export interface Excluded {
  readonly by: ScanWishKind | ScanLimit
  readonly count: number
  readonly alone: number
}

/**
 * The smallest change of one thing after which something is found. Of landmarkWhole, of landmarkPlace below 0 and of light the figures
 * tell how much the frame cuts, how far the two overlap, how many of the light wishes hold: such a must can only be made a wish.
 */
export interface Relaxation {
  readonly of: ScanWishKind | 'lens-long' | 'lens-short' | 'lens-height'
  /** What stands now and what it would have to be, in the demand's own unit (millimetres for lenses, metres for heights). */
  readonly now: number
  readonly to: number
  /** Which end of a band: null where there is one value alone. */
  readonly end: 'least' | 'most' | null
  /** Places at which something is then found. */
  readonly places: number
}

export interface WhyNone {
  /** Combinations looked at. */
  readonly looked: number
  readonly excluded: readonly Excluded[]
  /** The least painful first; empty when no change of one thing gives a result. */
  readonly relaxations: readonly Relaxation[]
}

/** Known before the start. */
export interface ScanCost {
  /** Metres of line and square metres of area. */
  readonly length: number
  readonly area: number
  readonly places: number
  /** Combinations of place, heading, way, lens, fill, height and placement: what takes the time. */
  readonly pictures: number
  /** Combinations of these and of instants. */
  readonly combinations: number
}
