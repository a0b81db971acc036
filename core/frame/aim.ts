/** The aim: which way the optical axis points so that a thing falls on a wished place in the frame. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { degrees, wrapBearing } from '#core/units/angle.ts'

export interface Aim {
  /** Degrees clockwise from true north, 0..360. */
  readonly bearing: number
  /** Degrees above the level horizon, -90..90. */
  readonly pitch: number
}

/**
 * The axis for which `point` (metres from the lens) is imaged `x`, `y` millimetres right of and above the frame's middle,
 * at `imageDistance` millimetres, without roll. Null when no pitch can do it (a thing overhead wished far below the middle).
 */
export function aimAt(point: LocalPoint, x: number, y: number, imageDistance: number): Aim | null {
  // Plain roots: Math.hypot guards against overflow that metres and millimetres can't reach, at ten times the price.
  const length = Math.sqrt(point.east * point.east + point.north * point.north + point.up * point.up)
  if (length === 0) return null
  // Direction of the wished image place in the camera's own axes (right, up, depth), of unit length.
  const norm = Math.sqrt(x * x + y * y + imageDistance * imageDistance)
  const right = x / norm
  const up = y / norm
  const depth = imageDistance / norm
  // Pitching turns (up, depth) so that its upward part equals the direction's: up cos p + depth sin p = sin(altitude).
  const reach = Math.sqrt(up * up + depth * depth)
  const upward = point.up / length / reach
  if (Math.abs(upward) > 1) return null
  const pitch = Math.asin(upward) - Math.atan2(up, depth)
  const ahead = depth * Math.cos(pitch) - up * Math.sin(pitch)
  const bearing = Math.atan2(point.east, point.north) - Math.atan2(right, ahead)
  return { bearing: wrapBearing(degrees(bearing)), pitch: degrees(pitch) }
}
