/** What the page asks of the worker, and the answers that come bit by bit. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Alignment } from '#core/light/alignment.ts'
import type { AlignmentRequest } from '#core/light/alignment-request.ts'
import type { Span } from '#core/light/crossing.ts'
import type { LightScene, LightSkyline } from '#core/light/light-scene.ts'
import type { LightWishes } from '#core/light/light-wish.ts'
import type { FaceDay, SidedFace } from '#core/light/side-hours.ts'
import type { WishDays } from '#core/light/wish-days.ts'
import type { CivilDay, Zone } from '#core/time/civil.ts'
import type { WithKind } from '#renderer/job/messages.ts'
import type { PackedSpans } from './packed-spans.ts'

/** Which days of a year the wishes leave some light. */
export interface YearJob {
  readonly kind: 'year'
  readonly scene: LightScene
  readonly wishes: LightWishes
  readonly zone: Zone
  readonly year: number
}

/** Why no day of a year will do. */
export interface ReasonJob {
  readonly kind: 'reason'
  readonly scene: LightScene
  readonly wishes: LightWishes
  readonly zone: Zone
  readonly year: number
}

export interface FacesDayJob {
  readonly kind: 'faces-day'
  readonly at: LatLon
  readonly faces: readonly SidedFace[]
  /** The landmark's skyline; null where no ground is known. */
  readonly skyline: LightSkyline | null
  readonly day: CivilDay
}

export interface FacesYearJob {
  readonly kind: 'faces-year'
  readonly at: LatLon
  readonly faces: readonly SidedFace[]
  readonly skyline: LightSkyline | null
  readonly zone: Zone
  readonly year: number
}

export interface AlignmentsJob {
  readonly kind: 'alignments'
  readonly request: AlignmentRequest
}

export type Job = YearJob | ReasonJob | FacesDayJob | FacesYearJob | AlignmentsJob
export type JobKind = Job['kind']

/** Days in order, each beginning where the last update ended. */
export interface YearUpdate {
  readonly kind: 'year'
  readonly dates: readonly string[]
  readonly spans: PackedSpans
}

export interface ReasonUpdate {
  readonly kind: 'reason'
  /** Of the days of this update alone. */
  readonly found: WishDays
}

export interface FacesDayUpdate {
  readonly kind: 'faces-day'
  /** When any of the sun is above the horizon. */
  readonly sunUp: readonly Span[]
  readonly faces: readonly FaceDay[]
}

export interface FacesYearUpdate {
  readonly kind: 'faces-year'
  /** 0..11. */
  readonly month: number
  /** Mean hours a day of direct light, by face; null for a month that has no day. */
  readonly hours: readonly (number | null)[]
}

export interface AlignmentsUpdate {
  readonly kind: 'alignments'
  readonly found: readonly Alignment[]
}

export type Update = YearUpdate | ReasonUpdate | FacesDayUpdate | FacesYearUpdate | AlignmentsUpdate
export type UpdateOf<Kind extends JobKind> = WithKind<Update, Kind>
export type JobOf<Kind extends JobKind> = WithKind<Job, Kind>
