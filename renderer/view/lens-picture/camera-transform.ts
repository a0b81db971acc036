/** From the metres of a thing's own frame to the camera's, in one step: all turns and shifts on the way are put together first. */
import { type CameraPoint, type View, lifted, toCamera } from '#core/frame/projection.ts'
import { type LocalFrame, type LocalPoint, between } from '#core/geo/local-frame.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'

export type See = (point: LocalPoint) => CameraPoint

/**
 * For a thing told in `frame`, turned clockwise by `heading` (its north is then its front, its east its right). The same as
 * turning, telling in earth-centred metres, then in the lens's, then lifting and projecting point by point, but for rounding:
 * all but the lift is one affine map.
 */
export function seer(view: View, frame: LocalFrame, heading = 0): See {
  const turn = heading * RADIANS_PER_DEGREE
  const [sin, cos] = [Math.sin(turn), Math.cos(turn)]
  const foot = between(frame, view.frame, 0, 0, 0)
  const along = (east: number, north: number, up: number): LocalPoint => {
    // A kilometre off, so that rounding of earth-centred metres is spread thin.
    const tip = between(frame, view.frame, east * 1000, north * 1000, up * 1000)
    return {
      east: (tip.east - foot.east) / 1000,
      north: (tip.north - foot.north) / 1000,
      up: (tip.up - foot.up) / 1000,
    }
  }
  const e = along(cos, -sin, 0)
  const n = along(sin, cos, 0)
  const u = along(0, 0, 1)
  return (point) => {
    const east = foot.east + e.east * point.east + n.east * point.north + u.east * point.up
    const north = foot.north + e.north * point.east + n.north * point.north + u.north * point.up
    const up = foot.up + e.up * point.east + n.up * point.north + u.up * point.up
    return toCamera(view, lifted({ east, north, up }, view.refraction))
  }
}
