/**
 * Outlines that the map draws: the wedge that the lens sees, rings, rectangles to scale. Their points are set out on the
 * ellipsoid: turf's own circles and sectors stand on a sphere and are up to 0.56 % too long or short, which is 17 cm in 30 m.
 */
import { degrees } from '#core/units/angle.ts'
import { destination } from './geodesic.ts'
import type { LatLon } from './lat-lon.ts'

/** Degrees between the points of an arc: a chord then strays from it by less than a thousandth of the radius. */
const ARC_STEP = 5

/** Points in order, not closed: the first is not repeated. */
export type Ring = readonly LatLon[]

/**
 * What a lens sees of the ground: apex, then the arc from left to right. `angle` is the horizontal angle of view in degrees,
 * `range` the radius in metres; an angle of 360 or more is the whole circle.
 */
export function viewWedge(apex: LatLon, bearing: number, angle: number, range: number): Ring {
  if (angle >= 360) return circleRing(apex, range)
  const steps = Math.max(1, Math.ceil(angle / ARC_STEP))
  const arc = Array.from({ length: steps + 1 }, (_, at) =>
    destination(apex, bearing - angle / 2 + (angle * at) / steps, range),
  )
  return [apex, ...arc]
}

/** Clockwise from north. */
export function circleRing(centre: LatLon, radius: number, points = 72): Ring {
  return Array.from({ length: points }, (_, at) => destination(centre, (360 * at) / points, radius))
}

/**
 * The four corners of a thing of given length and width in metres whose front looks along `heading`: front left, front right,
 * rear right, rear left.
 */
export function rectangleFootprint(centre: LatLon, heading: number, length: number, width: number): Ring {
  return [
    offsetPlace(centre, heading, length / 2, -width / 2),
    offsetPlace(centre, heading, length / 2, width / 2),
    offsetPlace(centre, heading, -length / 2, width / 2),
    offsetPlace(centre, heading, -length / 2, -width / 2),
  ]
}

/** The place so many metres ahead along a heading and to the right of it (negative: behind, left). */
export function offsetPlace(from: LatLon, heading: number, ahead: number, right: number): LatLon {
  return destination(from, heading + degrees(Math.atan2(right, ahead)), Math.hypot(ahead, right))
}
