/** The landmark: what stands behind the subject, one of four kinds, each with its own measure. */
import type { LatLon } from '#core/geo/lat-lon.ts'

export const LANDMARK_KINDS = ['upright', 'span', 'summit', 'building'] as const
export type LandmarkKind = (typeof LANDMARK_KINDS)[number]

export const SPAN_FORMS = ['suspension', 'arches', 'girder', 'wall'] as const
export type SpanForm = (typeof SPAN_FORMS)[number]

/** Bridges carry a deck under their tops; of a wall and a row of arches nobody measures but the height. */
export function hasDeck(form: SpanForm): form is 'suspension' | 'girder' {
  return form === 'suspension' || form === 'girder'
}

interface LandmarkCommon {
  readonly id: string
  readonly name: string
  /** Metres from the foot to the top; greater than 0. */
  readonly height: number
  /** Metres above the sea of the foot; null when unknown, never 0 for unknown. */
  readonly baseElevation: number | null
  /** Degrees 0..90 by which the ground under it leans, as measured; null when it was not. */
  readonly baseSlope: number | null
  /** Bearing 0..360 toward which that ground falls, as measured; null when it was not. */
  readonly baseAspect: number | null
}

/** A tower, mast or lighthouse: round, tapering a little. */
export interface Upright extends LandmarkCommon {
  readonly kind: 'upright'
  readonly at: LatLon
  /** Metres, diameter at the foot. */
  readonly width: number
}

/** A bridge, wall or row of arches along two or more points; the inner points carry piers or towers. */
export interface SpanLandmark extends LandmarkCommon {
  readonly kind: 'span'
  readonly form: SpanForm
  readonly line: readonly LatLon[]
  /** Metres above the foot at which the deck lies, 0..height; kept, and of no account, while the form has none. */
  readonly deckHeight: number
  /** Metres across the deck. */
  readonly width: number
}

export interface Summit extends LandmarkCommon {
  readonly kind: 'summit'
  readonly at: LatLon
  /** Metres across at the foot from which `height` is counted. */
  readonly width: number
}

export interface Building extends LandmarkCommon {
  readonly kind: 'building'
  /** Corners in order, three or more, not closed. */
  readonly footprint: readonly LatLon[]
}

export type Landmark = Upright | SpanLandmark | Summit | Building

/** The points by which the landmark is placed and dragged, in their order. */
export function landmarkPoints(landmark: Landmark): readonly LatLon[] {
  if (landmark.kind === 'span') return landmark.line
  if (landmark.kind === 'building') return landmark.footprint
  return [landmark.at]
}

/** The same span in another form. A deck that was out of sight comes back as it was, no higher than the top has become meanwhile. */
export function inForm(span: SpanLandmark, form: SpanForm): SpanLandmark {
  return { ...span, form, deckHeight: hasDeck(form) ? Math.min(span.deckHeight, span.height) : span.deckHeight }
}

/** The same landmark with its points replaced; the number of points may change for spans and buildings. */
export function withLandmarkPoints(landmark: Landmark, points: readonly LatLon[]): Landmark {
  if (landmark.kind === 'span') return { ...landmark, line: points }
  if (landmark.kind === 'building') return { ...landmark, footprint: points }
  const [at] = points
  return at === undefined ? landmark : { ...landmark, at }
}
