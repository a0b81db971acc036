/** Fill: the share of the frame's width or height that a thing takes, as read and as wished. */
import type { Extent } from './framing.ts'

export const FRAME_AXES = ['width', 'height'] as const
export type FrameAxis = (typeof FRAME_AXES)[number]

/** The largest share that may be wished. */
export const MOST_SHARE = 20

/** A wished share of the frame, greater than 0, of the given side. */
export interface FillWish {
  readonly share: number
  readonly axis: FrameAxis
}

/** Millimetres that a thing takes on the sensor along one side of the frame. */
export function imageSize(extent: Extent, axis: FrameAxis): number {
  return axis === 'width' ? extent.right - extent.left : extent.top - extent.bottom
}

/** Millimetres of the frame's side. */
export function sideOf(frame: { readonly frameWidth: number; readonly frameHeight: number }, axis: FrameAxis): number {
  return axis === 'width' ? frame.frameWidth : frame.frameHeight
}
