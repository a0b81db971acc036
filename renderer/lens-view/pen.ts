/** The pen: outlines as path text, clipped, rounded and turned one way so that those of one path unite. */
import type { CameraPoint } from '#core/frame/projection.ts'
import { type Bounds, type ImagePoint, clipNear, clipToBounds } from './clip.ts'
import { turningArea } from './outline.ts'

/** From camera metres to the drawing's units: its middle, and units per metre at one metre's depth. */
export interface Sheet {
  readonly middleX: number
  readonly middleY: number
  readonly scale: number
  /** What is drawn reaches a little beyond the frame, so that a blur at its edge has something to draw on. */
  readonly bounds: Bounds
  /** No rod is drawn thinner than this, in units: a far cable keeps a trace. */
  readonly thinnest: number
}

export function toSheet(sheet: Sheet, point: CameraPoint): ImagePoint {
  const scale = sheet.scale / point.depth
  return { x: sheet.middleX + point.right * scale, y: sheet.middleY - point.up * scale }
}

/** The extent of a path in the drawing's units. */
export interface Box {
  left: number
  top: number
  right: number
  bottom: number
}

/** Path text under way, and how far it reaches. */
export interface Pen extends Box {
  path: string
}

export function newPen(): Pen {
  return { path: '', left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity }
}

/** Steps per unit to which coordinates are rounded: a tenth, but a hundredth where the shape itself is a hair. */
export const COARSE = 10
export const FINE = 100

/** Adds a closed outline, turning clockwise (or the other way for a hole), so that overlapping outlines of one path unite. */
export function addOutline(
  pen: Pen,
  points: readonly ImagePoint[],
  sheet: Sheet,
  steps: number,
  turning: 1 | -1 = 1,
): void {
  const kept = clipToBounds(points, sheet.bounds)
  if (kept.length < 3) return
  const inOrder = turningArea(kept) * turning < 0 ? kept.toReversed() : kept
  let verb = 'M'
  for (const { x, y } of inOrder) {
    pen.path += `${verb}${Math.round(x * steps) / steps} ${Math.round(y * steps) / steps}`
    verb = 'L'
    if (x < pen.left) pen.left = x
    if (x > pen.right) pen.right = x
    if (y < pen.top) pen.top = y
    if (y > pen.bottom) pen.bottom = y
  }
  pen.path += 'Z'
}

/** One closed outline as path text, to a hundredth of a unit: for things of a few units. */
export function finePath(points: readonly ImagePoint[], sheet: Sheet): string {
  const pen = newPen()
  addOutline(pen, points, sheet, FINE)
  return pen.path
}

/** Areas given in the camera's metres, clipped before the lens and united in one path. */
export function areasPath(areas: readonly (readonly CameraPoint[])[], sheet: Sheet): string {
  const pen = newPen()
  for (const area of areas) {
    const points = clipNear(area).map((point) => toSheet(sheet, point))
    addOutline(pen, points, sheet, COARSE)
  }
  return pen.path
}
