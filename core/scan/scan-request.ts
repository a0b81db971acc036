/** What a scan is asked: the shoot with its stopping ground and wishes, the spot whose shot it starts from, and how finely to look. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { PinHeight } from '#core/plan/height-read.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import type { Zone } from '#core/time/civil.ts'

/** How far apart the samples lie. */
export interface ScanSteps {
  /** Metres along a line and across an area. */
  readonly place: number
  /** Degrees between headings where the subject turns freely. */
  readonly heading: number
  /** Degrees between the ways from the subject to the camera. */
  readonly bearing: number
  /** Focal lengths tried on each zoom, evenly by ratio, both ends among them. */
  readonly focalLengths: number
  /** Fills of the subject tried within the wished band, both ends among them. */
  readonly fills: number
  /** Lens heights tried within the wished band. */
  readonly heights: number
  /** Days tried at most, evenly over the wished ones, the first and the last among them. */
  readonly days: number
  /** Minutes between two looks at the light. */
  readonly minutes: number
}

export const USUAL_STEPS: ScanSteps = {
  place: 10,
  heading: 30,
  bearing: 10,
  focalLengths: 4,
  fills: 2,
  heights: 2,
  days: 12,
  minutes: 15,
}

/** Plain data: it goes to a worker. */
export interface ScanRequest {
  readonly shoot: Shoot
  /** Its shot (orientation, placement, focus, aperture), its landmark and its instant are where the scan starts from. */
  readonly spot: Spot
  readonly terrain: ElevationGrid | null
  /** Heights read exactly, the landmark's above all. */
  readonly pins: readonly PinHeight[]
  readonly zone: Zone
  /** Parking points of the shoot's spots. */
  readonly parkings: readonly LatLon[]
  readonly steps: ScanSteps
}
