/** Angles in degrees: conversions (which neither fold nor clamp), and the wraps as functions of their own. */

export const RADIANS_PER_DEGREE = Math.PI / 180

export function degrees(angleRadians: number): number {
  return angleRadians / RADIANS_PER_DEGREE
}

/** Wraps any finite bearing into [0, 360): clockwise from true north. */
export function wrapBearing(bearing: number): number {
  const wrapped = bearing % 360
  if (wrapped === 0) return 0
  // A tiny negative remainder plus 360 rounds to 360 itself, which is 0.
  return wrapped < 0 ? (wrapped + 360 === 360 ? 0 : wrapped + 360) : wrapped
}

/** Smallest turn from one bearing to another, in [-180, 180); clockwise is positive. */
export function turnBetween(from: number, to: number): number {
  return wrapBearing(to - from + 180) - 180
}
