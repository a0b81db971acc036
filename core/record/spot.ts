/** A spot: one candidate arrangement within a shoot, and all that is noted about getting and standing there. */
import type { FillWish } from '#core/frame/fill.ts'
import type { FocusChoice, Placement } from '#core/frame/set-up.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'

export const SPOT_STATUSES = ['idea', 'to-visit', 'visited', 'chosen', 'dropped'] as const
export type SpotStatus = (typeof SPOT_STATUSES)[number]

export const PERMISSION_STATES = ['not-needed', 'to-ask', 'asked', 'granted', 'refused'] as const
export type PermissionState = (typeof PERMISSION_STATES)[number]

export const HAZARDS = ['traffic', 'rail', 'water', 'edge', 'livestock', 'other'] as const
export type Hazard = (typeof HAZARDS)[number]

export const HOLDS = ['standpoint', 'focal-length', 'proportion'] as const
/** What stays as it is while the others follow. */
export type Hold = (typeof HOLDS)[number]

/** Where the camera stands. */
export interface Standpoint {
  readonly at: LatLon
  /** Metres of the lens above the ground; 0.3 lying down, 1.6 at the eye. */
  readonly lensHeight: number
  /** Metres above the sea of the ground; null when unknown. */
  readonly elevation: number | null
  /** Degrees 0..90 by which the ground leans, as measured; null when it was not. */
  readonly slope: number | null
  /** Bearing 0..360 toward which the ground falls, as measured; null when it was not. */
  readonly aspect: number | null
}

/** Where the subject stops. */
export interface Stop {
  readonly at: LatLon
  /** Bearing toward which its front points. */
  readonly heading: number
  /** Metres above the sea of the ground; null when unknown: then taken level with the standpoint. */
  readonly elevation: number | null
  /** Degrees 0..90 by which the ground leans, as measured; null when it was not. */
  readonly slope: number | null
  /** Bearing 0..360 toward which the ground falls, as measured; null when it was not. */
  readonly aspect: number | null
}

export interface Shot {
  readonly orientation: 'lying' | 'upright'
  /** Millimetres: the setting when the focal length is held, else the last one solved. */
  readonly focalLength: number
  /** Lens of the bag; null lets the program choose. */
  readonly lensId: string | null
  /** f-number set by hand; null takes what is needed end to end. */
  readonly aperture: number | null
  readonly focus: FocusChoice
  readonly placement: Placement
  readonly subjectFill: FillWish
  readonly landmarkFill: FillWish
}

export interface Access {
  readonly parking: LatLon | null
  readonly walkMinutes: number | null
  readonly surface: string
}

export interface Permission {
  readonly state: PermissionState
  readonly whom: string
  /** Calendar day YYYY-MM-DD until which it holds; null when open. */
  readonly until: string | null
}

export interface Spot {
  readonly id: string
  readonly shootId: string
  readonly revision: number
  readonly name: string
  readonly notes: string
  /** 0..5. */
  readonly stars: number
  readonly status: SpotStatus
  /** Order on the shelf, small first. */
  readonly rank: number
  readonly stop: Stop
  readonly standpoint: Standpoint
  /** Landmark of the shoot that this spot looks at; null when it has none yet. */
  readonly landmarkId: string | null
  readonly hold: Hold
  /** Instant the frame is planned for, epoch milliseconds. */
  readonly when: number
  readonly shot: Shot
  readonly access: Access
  readonly permission: Permission
  readonly hazards: readonly Hazard[]
  /** What the hazard `other` stands for, in the user's words. */
  readonly hazardNote: string
}
