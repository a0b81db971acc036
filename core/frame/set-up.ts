/** The camera set up: aim and focus that belong together, for one image distance and for one focal length. */
import type { LocalFrame, LocalPoint } from '#core/geo/local-frame.ts'
import { bestFocus } from '#core/optics/depth-of-field.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { type Aim, aimAt } from './aim.ts'
import { type Along, narrow } from './bracketed-root.ts'
import { zeroCrossings } from './zero-crossings.ts'
import { type FillWish, imageSize, sideOf } from './fill.ts'
import { type Extent, extentOf } from './framing.ts'
import { type Axes, NEAREST_DEPTH, type View, imageDistance, makeView } from './projection.ts'

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

/** Where the camera looks, and on what it is focused, for the subject's centre to lie as placed at one image distance. */
export interface FocusedLook extends Axes, Aim {
  /** Millimetres. */
  readonly imageDistance: number
  /** Metres along the axis from the lens to the plane of focus. */
  readonly focusDistance: number
  /** Metres along the axis to the subject's nearest part. */
  readonly near: number
}

/**
 * The look for an image distance: aim and focus follow from it alone, whatever the focal length. Null where there is no such aim. A part
 * of the subject may lie beside or behind the lens: `spareOf` tells.
 */
export function lookAt(scene: Scene, setting: Setting, image: number): FocusedLook | null {
  const { placement, frameWidth, frameHeight } = setting
  const aim = aimAt(scene.centre, placement.across * frameWidth, placement.up * frameHeight, image)
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
  const { on } = setting.focus
  const focusDistance =
    on === 'near'
      ? near
      : on === 'far'
        ? far
        : on === 'best'
          ? bestFocus(near, far)
          : depthAlong(sinBearing, cosBearing, sinPitch, cosPitch, on === 'feature' ? scene.feature : scene.centre)
  const { bearing: toward, pitch: above } = aim
  return {
    bearing: toward,
    pitch: above,
    sinBearing,
    cosBearing,
    sinPitch,
    cosPitch,
    imageDistance: image,
    focusDistance,
    near,
  }
}

/** As `toCamera`'s depth alone: the searches look along dozens of axes a frame. */
function depthAlong(
  sinBearing: number,
  cosBearing: number,
  sinPitch: number,
  cosPitch: number,
  point: LocalPoint,
): number {
  return cosPitch * (sinBearing * point.east + cosBearing * point.north) + sinPitch * point.up
}

/** Aim and focus are each other's cause: rounds until the image distance stands still, else every distance is looked at. */
const ROUNDS = 12
const STANDS_STILL = 1e-14
/** Of the logarithm, from one image distance looked at to the next. */
const STEP = 0.02
/** Relative miss of the focal length at which that ends; and which is taken for none. */
const SOUGHT = 1e-14
const HELD = 1e-11

/**
 * Null when the subject is not wholly before the lens, or too near for any image. `like` is a set-up of the same scene from whose
 * focus the search starts: it saves rounds and changes nothing else.
 */
export function setUp(scene: Scene, setting: Setting, focalLength: number, like: SetUp | null = null): SetUp | null {
  const focal = focalLength / 1000
  let image =
    like === null || like.focusDistance <= 2 * focal ? focalLength : imageDistance(focalLength, like.focusDistance)
  for (let round = 0; round < ROUNDS; round++) {
    const look = lookAt(scene, setting, image)
    if (look === null || !canFocus(look, focal)) break
    const next = imageDistance(focalLength, look.focusDistance)
    if (Math.abs(next - image) <= STANDS_STILL * next) return madeOf(scene, setting, focalLength, look)
    image = next
  }
  return setUpByLooking(scene, setting, focalLength)
}

/**
 * The same where the rounds lead nowhere: right beside the subject each may turn the axis too far back. Nothing is shown larger than
 * life, so the image lies between one focal length behind the lens and two. Of several such the one from which a longer lens has its
 * image farther back, as everywhere else.
 */
function setUpByLooking(scene: Scene, setting: Setting, focalLength: number): SetUp | null {
  const miss: Along = (log) => {
    const look = lookAt(scene, setting, Math.exp(log))
    return look === null || look.near < NEAREST_DEPTH ? null : Math.log((1000 * focalOf(look)) / focalLength)
  }
  const spare: Along = (log) => {
    const look = lookAt(scene, setting, Math.exp(log))
    return look === null ? null : look.near - NEAREST_DEPTH
  }
  const from = Math.log(focalLength)
  let otherwise: SetUp | null = null
  for (const [short, long] of zeroCrossings({ at: miss, spare }, from, from + Math.LN2, () => STEP)) {
    const image = Math.exp(narrow((log) => miss(log) ?? Number.NaN, short, long, SOUGHT))
    const look = lookAt(scene, setting, image)
    if (look === null || !canFocus(look, focalLength / 1000)) continue
    if (Math.abs((1000 * focalOf(look)) / focalLength - 1) > HELD) continue
    const made = madeOf(scene, setting, focalLength, look)
    if (long.value > short.value) return made
    otherwise ??= made
  }
  return otherwise
}

/** Metres: the focal length of the thin lens that has a look's image, 1 / f = 1 / u + 1 / v. */
function focalOf({ imageDistance: image, focusDistance }: FocusedLook): number {
  return (image * focusDistance) / (image + 1000 * focusDistance)
}

/**
 * Metres that the subject could come nearer for a focal length, in metres, to image the whole of it. Nearer than twice the focal length
 * the image is larger than life: no lens of ours, and no answer.
 */
function spareFor({ near, focusDistance }: FocusedLook, focal: number): number {
  return Math.min(near - NEAREST_DEPTH, near - focal, focusDistance - 2 * focal)
}

function canFocus(look: FocusedLook, focal: number): boolean {
  return spareFor(look, focal) > 0
}

/** The same with the lens that has the look; below 0 where none has. */
export function spareOf(look: FocusedLook): number {
  const spare = Math.min(look.near - NEAREST_DEPTH, look.focusDistance - look.imageDistance / 1000)
  return look.focusDistance > 0 ? Math.min(spare, look.near - focalOf(look)) : spare
}

function madeOf(scene: Scene, setting: Setting, focalLength: number, look: FocusedLook): SetUp | null {
  const { frame, refraction } = scene
  const { frameWidth, frameHeight } = setting
  const { bearing, pitch, imageDistance: image, focusDistance } = look
  const view = makeView({ frame, bearing, pitch, imageDistance: image, frameWidth, frameHeight, refraction })
  const subject = extentOf(view, scene.corners)
  return subject === null ? null : { view, focalLength, focusDistance, subject }
}

/** Millimetres of the lens that has a look; null where none does. */
export function focalLengthOf(look: FocusedLook): number | null {
  return spareOf(look) > 0 ? focalOf(look) * 1000 : null
}

/** Share of the frame that the subject takes in a set-up. */
export function subjectShare(made: SetUp, axis: FillWish['axis']): number {
  return imageSize(made.subject, axis) / sideOf(made.view, axis)
}
