/** The one projection: from a point in the world to its place in the frame. Fills, crops, preview, wedge and solver all use it. */
import { type EarthPoint, type LocalFrame, type LocalPoint, toLocal } from '#core/geo/local-frame.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'

/** Mean radius of the earth in metres (IUGG), for the lift of refraction alone; curvature is in the earth-centred frame itself. */
const MEAN_EARTH_RADIUS = 6_371_008.8

/** Nearer than this to the lens's plane, metres, a point has no usable image. */
export const NEAREST_DEPTH = 0.01

/** The camera's axes in the lens's own east, north, up. */
export interface Axes {
  readonly sinBearing: number
  readonly cosBearing: number
  readonly sinPitch: number
  readonly cosPitch: number
}

/** The camera as the projection needs it. */
export interface View extends Axes {
  /** East, north, up at the lens. */
  readonly frame: LocalFrame
  /** Degrees clockwise from true north, 0..360. */
  readonly bearing: number
  /** Degrees above the level horizon. */
  readonly pitch: number
  /** Millimetres from the rear nodal point to the sensor at the set focus. */
  readonly imageDistance: number
  /** Millimetres of the frame as held. */
  readonly frameWidth: number
  readonly frameHeight: number
  /** Refraction coefficient k. */
  readonly refraction: number
}

/** Metres to the right, up and along the optical axis. */
export interface CameraPoint {
  readonly right: number
  readonly up: number
  readonly depth: number
}

/** Place in the frame: shares of the full width and height from the middle, right and up positive; depth in metres. */
export interface FramePoint {
  readonly x: number
  readonly y: number
  readonly depth: number
}

export function makeView(
  parts: Pick<View, 'frame' | 'bearing' | 'pitch' | 'imageDistance' | 'frameWidth' | 'frameHeight' | 'refraction'>,
): View {
  const bearing = parts.bearing * RADIANS_PER_DEGREE
  const pitch = parts.pitch * RADIANS_PER_DEGREE
  return {
    frame: parts.frame,
    bearing: parts.bearing,
    pitch: parts.pitch,
    sinBearing: Math.sin(bearing),
    cosBearing: Math.cos(bearing),
    sinPitch: Math.sin(pitch),
    cosPitch: Math.cos(pitch),
    imageDistance: parts.imageDistance,
    frameWidth: parts.frameWidth,
    frameHeight: parts.frameHeight,
    refraction: parts.refraction,
  }
}

/** A point in the lens's east, north, up as it appears there: lifted by refraction, k d^2 / 2R. */
export function lifted(point: LocalPoint, refraction: number): LocalPoint {
  const level = point.east * point.east + point.north * point.north
  return { east: point.east, north: point.north, up: point.up + (refraction * level) / (2 * MEAN_EARTH_RADIUS) }
}

/** An earth-centred point as it appears at the lens. */
export function apparent(frame: LocalFrame, point: EarthPoint, refraction: number): LocalPoint {
  return lifted(toLocal(frame, point), refraction)
}

export function toCamera(view: Axes, point: LocalPoint): CameraPoint {
  const ahead = view.sinBearing * point.east + view.cosBearing * point.north
  return {
    right: view.cosBearing * point.east - view.sinBearing * point.north,
    up: view.cosPitch * point.up - view.sinPitch * ahead,
    depth: view.cosPitch * ahead + view.sinPitch * point.up,
  }
}

/** Place in the frame of a point seen from the lens; null when it lies behind the lens or too close to its plane. */
export function projectLocal(view: View, point: LocalPoint): FramePoint | null {
  const { right, up, depth } = toCamera(view, point)
  if (depth < NEAREST_DEPTH) return null
  const scale = view.imageDistance / depth
  return { x: (right * scale) / view.frameWidth, y: (up * scale) / view.frameHeight, depth }
}

/** The same for an earth-centred point. */
export function projectEarth(view: View, point: EarthPoint): FramePoint | null {
  return projectLocal(view, apparent(view.frame, point, view.refraction))
}

/** Millimetres behind a thin lens at which an object `focusDistance` metres before it is sharp: v = f u / (u - f). */
export function imageDistance(focalLength: number, focusDistance: number): number {
  const focal = focalLength / 1000
  return (focalLength * focusDistance) / (focusDistance - focal)
}
