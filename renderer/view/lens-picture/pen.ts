/** The pen: outlines as path text, clipped, rounded and turned one way so that those of one path unite. */
import type { CameraPoint } from '#core/frame/projection.ts'
import { type ClipBounds, type ImagePoint, clipNear, clipToBounds } from './clip.ts'
import { turningArea } from './outline.ts'

/** From camera metres to the drawing's units: its middle, and units per metre at one metre's depth. */
export interface Sheet {
  readonly middleX: number
  readonly middleY: number
  readonly scale: number
  /** What is drawn reaches a little beyond the frame, so that a blur at its edge has something to draw on. */
  readonly bounds: ClipBounds
  /** No rod is drawn thinner than this, in units: a far cable keeps a trace. */
  readonly thinnest: number
}

export function toSheet(sheet: Sheet, point: CameraPoint): ImagePoint {
  const scale = sheet.scale / point.depth
  return { x: sheet.middleX + point.right * scale, y: sheet.middleY - point.up * scale }
}

/** The extent of a path in the drawing's units. */
export interface PenBox {
  left: number
  top: number
  right: number
  bottom: number
}

/** Path text under way, and how far it reaches. */
export interface Pen extends PenBox {
  path: string
}

export function newPen(): Pen {
  return { path: '', left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity }
}

/** Steps per unit to which coordinates are rounded: a tenth, but a hundredth where the shape itself is a hair. */
export const COARSE_GRID = 10
export const FINE = 100

/** Figures of up to so many steps are written once and kept: most are short ways from corner to corner. */
const KEPT = 6000
const coarse = Array.from({ length: 2 * KEPT + 1 }, () => '')
const fine = coarse.slice()

function figure(inSteps: number, steps: number): string {
  const kept = steps === FINE ? fine : coarse
  const known = kept[inSteps + KEPT]
  if (known === undefined || known === '') {
    const text = String(inSteps / steps)
    if (known === '') kept[inSteps + KEPT] = text
    return text
  }
  return known
}

/** Grows a box around points. */
function extend(box: PenBox, points: readonly ImagePoint[]): void {
  for (const { x, y } of points) {
    if (x < box.left) box.left = x
    if (x > box.right) box.right = x
    if (y < box.top) box.top = y
    if (y > box.bottom) box.bottom = y
  }
}

/**
 * Adds a closed outline, turning clockwise (or the other way for a hole), so that overlapping outlines of one path unite: a first
 * corner, then the way from each to the next.
 */
export function addOutline(
  pen: Pen,
  points: readonly ImagePoint[],
  sheet: Sheet,
  steps: number,
  turning: 1 | -1 = 1,
): void {
  const kept = clipToBounds(points, sheet.bounds)
  const count = kept.length
  if (count < 3) return
  const backward = turningArea(kept) * turning < 0
  extend(pen, kept)
  let text = ''
  let [fromX, fromY] = [0, 0]
  for (let index = 0; index < count; index++) {
    const point = kept[backward ? count - 1 - index : index]
    if (point === undefined) break
    const x = Math.round(point.x * steps)
    const y = Math.round(point.y * steps)
    const sign = index === 0 ? 'M' : index === 1 ? 'l' : ' '
    text += `${sign}${figure(x - fromX, steps)} ${figure(y - fromY, steps)}`
    fromX = x
    fromY = y
  }
  pen.path += `${text}Z`
}

/** One closed outline as path text, to a hundredth of a unit: for things of a few units. */
export function finePath(points: readonly ImagePoint[], sheet: Sheet): string {
  const pen = newPen()
  addOutline(pen, points, sheet, FINE)
  return pen.path
}

/** The same to a tenth of a unit. */
export function outlinePath(points: readonly ImagePoint[], sheet: Sheet): string {
  const pen = newPen()
  addOutline(pen, points, sheet, COARSE_GRID)
  return pen.path
}

/** Areas given in the camera's metres, clipped before the lens and united in one path. */
export function areasPath(areas: readonly (readonly CameraPoint[])[], sheet: Sheet): string {
  const pen = newPen()
  for (const area of areas) {
    const points = clipNear(area).map((point) => toSheet(sheet, point))
    addOutline(pen, points, sheet, COARSE_GRID)
  }
  return pen.path
}
