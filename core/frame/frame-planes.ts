/** The frame as four planes through the lens: which directions lie within it. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { View } from './projection.ts'

/** Unit inward normals of the planes through the lens and the frame's borders, in the lens's east, north and up. */
export function framePlanes(view: View): readonly LocalPoint[] {
  const { imageDistance, frameWidth, frameHeight } = view
  // A point at (right, up, depth) is left of the right border when right < depth (W / 2) / v.
  const camera = (right: number, up: number, depth: number): LocalPoint => {
    const length = Math.hypot(right, up, depth)
    const ahead = (view.cosPitch * depth - view.sinPitch * up) / length
    const aside = right / length
    return {
      east: view.sinBearing * ahead + view.cosBearing * aside,
      north: view.cosBearing * ahead - view.sinBearing * aside,
      up: (view.sinPitch * depth + view.cosPitch * up) / length,
    }
  }
  return [
    camera(imageDistance, 0, frameWidth / 2),
    camera(-imageDistance, 0, frameWidth / 2),
    camera(0, imageDistance, frameHeight / 2),
    camera(0, -imageDistance, frameHeight / 2),
  ]
}
