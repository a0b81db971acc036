/** The camera set up: aim and focus that belong together for one focal length, and the focal length for a wished fill. */
import type { LocalFrame, LocalPoint } from '#core/geo/local-frame.ts'
import { bestFocus } from '#core/optics/depth-of-field.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { aimAt } from './aim.ts'
import { type FillWish, imageSize, sideOf } from './fill.ts'
import { type Extent, extentOf } from './framing.ts'
import { type View, imageDistance, makeView } from './projection.ts'

export const FOCUS_ON = ['near', 'middle', 'far', 'feature', 'best'] as const

/** Where the focus is set; `feature` is `behindFront` metres behind the subject's front end, on its centre line. */
export interface FocusChoice {
  readonly on: (typeof FOCUS_ON)[number]
  readonly behindFront: number
}

/** The aim, told by where the subject's centre is placed in the frame: shares of the full frame from its middle. */
export interface Placement {
  /** -0.5..0.5 of the width, right positive. */
  readonly across: number
  /** -0.5..0.5 of the height, up positive. */
  readonly up: number
}

/** The things before the lens, in the lens's own frame, as they appear there (metres). */
export interface Scene {
  readonly frame: LocalFrame
  readonly corners: readonly LocalPoint[]
  readonly centre: LocalPoint
  /** The point of the subject that `feature` focuses on. */
  readonly feature: LocalPoint
  readonly refraction: number
}

/** What is set on the camera, but for the focal length. */
export interface Setting {
  readonly frameWidth: number
  readonly frameHeight: number
  readonly placement: Placement
  readonly focus: FocusChoice
}

export interface SetUp {
  readonly view: View
  readonly focalLength: number
  /** Metres along the axis from the lens to the plane of focus. */
  readonly focusDistance: number
  /** Bounds of the subject on the sensor, its nearest and farthest depth. */
  readonly subject: Extent
}

/** Aim and focus are each other's cause: rounds until the image distance stands still. */
const ROUNDS = 12
const STANDS_STILL = 1e-14

/** As `toCamera`'s depth, without a view: the search looks along dozens of axes a frame, and a view is much to throw away. */
function depthAlong(
  sinBearing: number,
  cosBearing: number,
  sinPitch: number,
  cosPitch: number,
  point: LocalPoint,
): number {
  return cosPitch * (sinBearing * point.east + cosBearing * point.north) + sinPitch * point.up
}

/**
 * Null when the subject is not wholly before the lens, or too near for any image. `like` is a set-up of the same scene from whose
 * focus the search starts: it saves rounds and changes nothing else.
 */
export function setUp(scene: Scene, setting: Setting, focalLength: number, like: SetUp | null = null): SetUp | null {
  const x = setting.placement.across * setting.frameWidth
  const y = setting.placement.up * setting.frameHeight
  const focal = focalLength / 1000
  let image =
    like === null || like.focusDistance <= 2 * focal ? focalLength : imageDistance(focalLength, like.focusDistance)
  for (let round = 0; round < ROUNDS; round++) {
    const aim = aimAt(scene.centre, x, y, image)
    if (aim === null) return null
    const bearing = aim.bearing * RADIANS_PER_DEGREE
    const pitch = aim.pitch * RADIANS_PER_DEGREE
    const sinBearing = Math.sin(bearing)
    const cosBearing = Math.cos(bearing)
    const sinPitch = Math.sin(pitch)
    const cosPitch = Math.cos(pitch)
    let near = Infinity
    let far = -Infinity
    for (const corner of scene.corners) {
      const depth = depthAlong(sinBearing, cosBearing, sinPitch, cosPitch, corner)
      if (depth < near) near = depth
      if (depth > far) far = depth
    }
    if (near <= focal) return null
    const { on } = setting.focus
    const focusDistance =
      on === 'near'
        ? near
        : on === 'far'
          ? far
          : on === 'best'
            ? bestFocus(near, far)
            : depthAlong(sinBearing, cosBearing, sinPitch, cosPitch, on === 'feature' ? scene.feature : scene.centre)
    // Nearer than twice the focal length the image is larger than life: no lens of ours, and no answer.
    if (focusDistance <= 2 * focal) return null
    const next = imageDistance(focalLength, focusDistance)
    if (Math.abs(next - image) <= STANDS_STILL * next || round === ROUNDS - 1) {
      const { frame, refraction } = scene
      const { frameWidth, frameHeight } = setting
      const view = makeView({ frame, ...aim, imageDistance: image, frameWidth, frameHeight, refraction })
      const subject = extentOf(view, scene.corners)
      return subject === null ? null : { view, focalLength, focusDistance, subject }
    }
    image = next
  }
  return null
}

/** Share of the frame that the subject takes in a set-up. */
export function subjectShare(made: SetUp, axis: FillWish['axis']): number {
  return imageSize(made.subject, axis) / sideOf(made.view, axis)
}

const SOLVER_ROUNDS = 60
/** Relative miss of the share at which the search ends; and at which its best is still an answer when it stalls. */
const SOLVED = 1e-13
const ANSWERED = 1e-10
/** Millimetres between which a focal length is looked for. */
const SHORTEST = 1e-2
const LONGEST = 1e6

/**
 * The set-up whose subject takes the wished share; null when no focal length does it. Secant over logarithms (the share grows
 * nearly in proportion to the focal length) kept within a bracket; a focal length too long to focus so near bounds it above.
 */
export function setUpForFill(scene: Scene, setting: Setting, wish: FillWish): SetUp | null {
  const distance = Math.hypot(scene.centre.east, scene.centre.north, scene.centre.up)
  let low = Math.log(SHORTEST)
  let high = Math.log(LONGEST)
  let log = Math.log(Math.min(50, Math.max(SHORTEST * 2, distance * 100)))
  let previous: { log: number; miss: number } | null = null
  let best: SetUp | null = null
  let bestMiss = Infinity
  for (let round = 0; round < SOLVER_ROUNDS && high - low > 1e-15; round++) {
    const made = setUp(scene, setting, Math.exp(log), best)
    if (made === null) {
      high = log
      previous = null
      log = low + (log - low) * (best === null ? 0.7 : 0.5)
      continue
    }
    const miss = Math.log(subjectShare(made, wish.axis) / wish.share)
    if (Math.abs(miss) < bestMiss) {
      best = made
      bestMiss = Math.abs(miss)
    }
    if (Math.abs(miss) < SOLVED) break
    if (miss > 0) high = log
    else low = log
    const slope: number = previous === null || log === previous.log ? 1 : (miss - previous.miss) / (log - previous.log)
    previous = { log, miss }
    const next: number = log - miss / (slope > 1e-3 ? slope : 1)
    log = next > low && next < high ? next : (low + high) / 2
  }
  return bestMiss < ANSWERED ? best : null
}
