/** What the page asks of the ground's worker, and the answers that come bit by bit. */
import type { SunOverGrid } from '#core/ground/hill-shadow.ts'
import type { ReliefLight } from '#core/ground/relief.ts'
import type { ViewshedRequest } from '#core/ground/viewshed-request.ts'
import type { FromWorker, ToWorker } from '#renderer/job/messages.ts'
import type { SentRing } from '#renderer/job/sent-rings.ts'
import type { Cells, ContourDrawing } from './contour-drawing.ts'
import type { Masks } from './masks.ts'
import type { ReliefPictures } from './relief-pictures.ts'
import type { Seas } from './water.ts'

/** A window of elevations that was handed to the worker before, by its number. */
interface OnGround {
  readonly ground: number
}

/** What a point sees, each cell by its own line. */
export interface ExactJob extends OnGround {
  readonly kind: 'exact'
  readonly request: ViewshedRequest
}

/** The same in a single pass, a few cells in a hundred wrong: only for while something moves. */
export interface PreviewJob extends OnGround {
  readonly kind: 'preview'
  readonly request: ViewshedRequest
}

/** The hills' shadow. */
export interface ShadeJob extends OnGround {
  readonly kind: 'shade'
  readonly sun: SunOverGrid
  readonly refraction: number
}

export interface ReliefJob extends OnGround {
  readonly kind: 'relief'
  readonly light: ReliefLight
  readonly seas: Seas
  readonly palette: 'light' | 'dark'
}

export interface ContoursJob extends OnGround {
  readonly kind: 'contours'
  readonly cells: Cells
  readonly zoom: number
  readonly seas: Seas
}

export type GroundJob = ExactJob | PreviewJob | ShadeJob | ReliefJob | ContoursJob
/** Jobs that end in masks over the map. */
export type AreaJob = ExactJob | PreviewJob | ShadeJob

/** Null until the last step. */
export interface AreaUpdate {
  readonly kind: AreaJob['kind']
  readonly masks: Masks | null
}

export interface ReliefUpdate {
  readonly kind: 'relief'
  /** Null until the last step. */
  readonly pictures: ReliefPictures | null
}

export interface ContoursUpdate {
  readonly kind: 'contours'
  /** Null on level or unknown ground. */
  readonly drawing: ContourDrawing | null
}

export type GroundUpdate =
  | (AreaUpdate & { readonly kind: 'exact' })
  | (AreaUpdate & { readonly kind: 'preview' })
  | (AreaUpdate & { readonly kind: 'shade' })
  | ReliefUpdate
  | ContoursUpdate

/** Windows that the worker keeps: those handed over last. Page and worker count alike. */
export const WINDOWS_KEPT = 2

/** A window is handed over before the first job on it. */
export interface GroundTold {
  readonly say: 'ground'
  readonly ground: number
  readonly rings: readonly SentRing[]
}

export type ToGroundWorker = ToWorker<GroundJob> | GroundTold
export type FromGroundWorker = FromWorker<GroundJob, GroundUpdate>
