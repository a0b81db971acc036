/** Framing: where a thing falls in the frame, how much of it the thing fills, and what is cut. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { type Axes, type View, NEAREST_DEPTH, toCamera } from './projection.ts'

/** A thing's bounds in millimetres on the sensor from the frame's middle, and the depths it spans in metres. */
export interface Extent {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
  readonly near: number
  readonly far: number
  /** True when a part of the thing lies behind the lens's plane and isn't counted in the bounds. */
  readonly partlyBehind: boolean
}

/** What a frame or crop of a given size shows of a thing. All shares are of the frame's side; fills may exceed 1. */
export interface Framing {
  readonly widthFill: number
  readonly heightFill: number
  /** Bounds from the frame's middle, -0.5..0.5 within the frame, right and up positive. */
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
  /** Share of the thing's own width or height that falls outside on each side, 0..1. */
  readonly cutLeft: number
  readonly cutRight: number
  readonly cutBottom: number
  readonly cutTop: number
  readonly whole: boolean
  /** False when nothing of it is in the frame. */
  readonly inFrame: boolean
}

/** A cut below this share of a thing is rounding, not a picture. */
export const LEAST_CUT = 0.0005

/** Bounds of points given in the lens's own frame; null when all of them are behind the lens. */
export function extentOf(view: Axes & Pick<View, 'imageDistance'>, points: readonly LocalPoint[]): Extent | null {
  let left = Infinity
  let right = -Infinity
  let bottom = Infinity
  let top = -Infinity
  let near = Infinity
  let far = -Infinity
  let partlyBehind = false
  for (const point of points) {
    const at = toCamera(view, point)
    if (at.depth < NEAREST_DEPTH) {
      partlyBehind = true
      continue
    }
    const scale = view.imageDistance / at.depth
    const x = at.right * scale
    const y = at.up * scale
    if (x < left) left = x
    if (x > right) right = x
    if (y < bottom) bottom = y
    if (y > top) top = y
    if (at.depth < near) near = at.depth
    if (at.depth > far) far = at.depth
  }
  return near === Infinity ? null : { left, right, bottom, top, near, far, partlyBehind }
}

/** Reads an extent against a frame or a centred crop of `width` x `height` millimetres. */
export function framingOf(extent: Extent, width: number, height: number): Framing {
  const wide = extent.right - extent.left
  const high = extent.top - extent.bottom
  const cut = (beyond: number, size: number): number =>
    size > 0 ? Math.min(1, Math.max(0, beyond / size)) : beyond > 0 ? 1 : 0
  const cutLeft = cut(-width / 2 - extent.left, wide)
  const cutRight = cut(extent.right - width / 2, wide)
  const cutBottom = cut(-height / 2 - extent.bottom, high)
  const cutTop = cut(extent.top - height / 2, high)
  return {
    widthFill: wide / width,
    heightFill: high / height,
    left: extent.left / width,
    right: extent.right / width,
    bottom: extent.bottom / height,
    top: extent.top / height,
    cutLeft,
    cutRight,
    cutBottom,
    cutTop,
    whole: !extent.partlyBehind && cutLeft + cutRight + cutBottom + cutTop === 0,
    inFrame:
      extent.left < width / 2 && extent.right > -width / 2 && extent.bottom < height / 2 && extent.top > -height / 2,
  }
}
