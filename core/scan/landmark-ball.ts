/** The landmark as a ball: what tells at a glance that no part of it can be in a frame, or that it can't fill enough of it. */
import { framePlanes } from '#core/frame/frame-planes.ts'
import type { View } from '#core/frame/projection.ts'
import type { Setting } from '#core/frame/set-up.ts'
import { type EarthPoint, type LocalFrame, toLocal } from '#core/geo/local-frame.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import type { StandingLandmark } from './scan-table.ts'

export interface LandmarkBall {
  readonly centre: EarthPoint
  /** Metres; holds every bounding point. */
  readonly radius: number
}

export function landmarkBall({ boundingPoints }: StandingLandmark): LandmarkBall {
  const mean = (axis: keyof EarthPoint): number =>
    boundingPoints.reduce((sum, point) => sum + point[axis], 0) / boundingPoints.length
  const centre = { x: mean('x'), y: mean('y'), z: mean('z') }
  const radius = boundingPoints.reduce(
    (most, { x, y, z }) => Math.max(most, Math.hypot(x - centre.x, y - centre.y, z - centre.z)),
    0,
  )
  return { centre, radius }
}

/** Metres east, north and up of a place at which the ball's middle stands. */
export interface BallFrom {
  readonly east: number
  readonly north: number
  readonly up: number
  readonly radius: number
}

export function ballFrom(plane: LocalFrame, { centre, radius }: LandmarkBall): BallFrom {
  return { ...toLocal(plane, centre), radius }
}

/** Radians from the optical axis to the frame's corner, and to where the subject is placed; the lens focused at infinity. */
function spread({ frameWidth, frameHeight, placement }: Setting, focalLength: number): number {
  const corner = Math.hypot(frameWidth, frameHeight) / 2
  const aside = Math.hypot(placement.across * frameWidth, placement.up * frameHeight)
  return Math.atan(corner / focalLength) + Math.atan(aside / focalLength)
}

/**
 * Whether the ball could be in the frame of a camera that looks at the subject from a bearing, about so far off: false only if it
 * can't. Told by directions alone: from the subject's to the landmark's it is no farther than the frame is wide.
 */
export function couldShow(
  ball: BallFrom,
  setting: Setting,
  focalLength: number,
  bearing: number,
  distance: number,
  slack: number,
): boolean {
  const turn = bearing * RADIANS_PER_DEGREE
  const [sine, cosine] = [Math.sin(turn), Math.cos(turn)]
  const east = ball.east - sine * distance
  const north = ball.north - cosine * distance
  const level = Math.hypot(east, north)
  const far = Math.hypot(level, ball.up)
  // So near that its direction says nothing.
  if (far <= 2 * ball.radius + 4 * slack) return true
  // The camera looks back along the bearing.
  const ahead = -(east * sine + north * cosine) / far
  const aside = Math.sqrt(Math.max(0, 1 - ahead * ahead - (ball.up / far) ** 2))
  // At least so far from any direction of the subject's bearing, whatever its altitude.
  const apart =
    ahead > 0 ? Math.asin(Math.min(1, aside)) : Math.PI / 2 - Math.asin(Math.min(1, Math.abs(ball.up) / far))
  // A box around the landmark's image reaches beyond the ball's by its corners.
  const reach = Math.SQRT2 * Math.asin(ball.radius / far) + slack / far + 0.02
  return apart <= spread(setting, focalLength) + reach
}

/** Whether the ball could be in a view, `slack` radians being the doubt about the view: false only if it can't. */
export function inView(ball: LandmarkBall, view: View, slack: number): boolean {
  const { east, north, up } = toLocal(view.frame, ball.centre)
  const far = Math.hypot(east, north, up)
  const room = ball.radius + slack * far
  return framePlanes(view).every((plane) => plane.east * east + plane.north * north + plane.up * up >= -room)
}

/**
 * The largest share of a side that the ball could take while a part of it is in the frame, from at least so many metres. With the
 * image of one point within the frame, another's lies off it by no more than their distance, stretched by the frame's own angle.
 */
export function mostShare(
  radius: number,
  far: number,
  { frameWidth, frameHeight }: Setting,
  focalLength: number,
  side: number,
): number {
  const tangent = Math.hypot(frameWidth, frameHeight) / 2 / focalLength
  const angle = Math.atan(tangent) + 2 * Math.asin(Math.min(1, radius / far))
  if (far <= radius || angle >= Math.PI / 2) return Infinity
  const nearestDepth = (far - radius) * Math.cos(angle)
  // Nearer than life size nothing is set up: the image lies at most twice the focal length behind the lens.
  const image = 2 * focalLength
  return (image * 2 * radius * (1 + tangent)) / nearestDepth / side
}
