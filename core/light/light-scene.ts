/** The light scene: what of a plan the light depends on, as plain data that goes to a worker: the place, the seen sides, the frame. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { LocalPoint } from '#core/geo/local-frame.ts'

/** A side that the camera sees. */
export interface SeenSide {
  /** Unit, outward, in the scene's own frame. */
  readonly normal: LocalPoint
  /** Its part of all the sides seen of its thing, 0..1; the parts of a thing sum to 1. */
  readonly part: number
}

/** The picture's borders, for telling whether a body stands within. */
export interface FrameBorders {
  /** Unit normals, pointing inward, of the four planes through the lens and the frame's sides: left, right, bottom, top. */
  readonly borders: readonly LocalPoint[]
}

/** How high the ground stands against the sky, by azimuth from true north in equal steps: degrees, NaN where unknown. */
export interface LightSkyline {
  readonly step: number
  readonly altitudes: Float32Array
  /** Metres to the nearest unknown ground that could stand higher, by azimuth; NaN where none could. Absent: none anywhere. */
  readonly unknown?: Float32Array
}

/** The skylines around the things that light falls on or into; null where there are no elevations and the horizon counts as level. */
export interface PlanSkylines {
  readonly subject: LightSkyline | null
  readonly landmark: LightSkyline | null
  readonly lens: LightSkyline | null
}

export const LEVEL_HORIZON: PlanSkylines = { subject: null, landmark: null, lens: null }

export interface LightScene {
  /** Where the subject stops; all directions are east, north and up there. */
  readonly at: LatLon
  /** Bearing from the camera to the subject; null when they are at one place. */
  readonly toSubject: number | null
  /** Upright sides in the frame, largest first; none when nothing of the thing is in the frame. */
  readonly subject: readonly SeenSide[]
  readonly landmark: readonly SeenSide[]
  /** Null when nothing can be framed. */
  readonly frame: FrameBorders | null
  readonly skylines: PlanSkylines
}
