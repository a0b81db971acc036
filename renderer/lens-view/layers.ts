/** Layers: what the painter ordered, projected and merged into as few filled paths as the order allows. */
import type { CameraPoint } from '#core/frame/projection.ts'
import { type Bounds, type ImagePoint, clipNear, clipStretch, clipToBounds, NEAR } from './clip.ts'
import { type RodPoint, ringOutline, stretchOutline, turningArea } from './outline.ts'
import type { SeenItem, SeenPart, SeenRod } from './painter.ts'

/** One filled path. `tone` names material and shade: "hue-1". */
export interface Layer {
  readonly tone: string
  readonly path: string
}

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
interface Box {
  left: number
  top: number
  right: number
  bottom: number
}

interface Drawn {
  readonly path: string
  readonly box: Box
}

/** Path text under way, and how far it reaches. */
interface Pen extends Box {
  path: string
}

function newPen(): Pen {
  return { path: '', left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity }
}

/** Steps per unit to which coordinates are rounded: a tenth, but a hundredth where the shape itself is a hair. */
const COARSE = 10
const FINE = 100

/** Adds a closed outline, turning clockwise (or the other way for a hole), so that overlapping outlines of one path unite. */
function addOutline(pen: Pen, points: readonly ImagePoint[], sheet: Sheet, steps: number, turning: 1 | -1 = 1): void {
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

/** One closed outline as path text. */
export function outlinePath(points: readonly ImagePoint[], sheet: Sheet): string {
  const pen = newPen()
  addOutline(pen, points, sheet, COARSE)
  return pen.path
}

function rodPoint(sheet: Sheet, point: CameraPoint, width: number): RodPoint {
  const half = Math.max(sheet.thinnest, (width * sheet.scale) / point.depth) / 2
  return { ...toSheet(sheet, point), half }
}

function drawRod(pen: Pen, rod: SeenRod, sheet: Sheet): void {
  const { points, widths, closed } = rod
  if (closed && points.every((point) => point.depth >= NEAR)) {
    const ring = ringOutline(points.map((point, index) => rodPoint(sheet, point, widths[index] ?? 0)))
    if (ring !== null) {
      const outerIsFirst = Math.abs(turningArea(ring[0])) > Math.abs(turningArea(ring[1]))
      addOutline(pen, ring[0], sheet, COARSE, outerIsFirst ? 1 : -1)
      addOutline(pen, ring[1], sheet, COARSE, outerIsFirst ? -1 : 1)
      return
    }
  }
  for (let index = closed ? 0 : 1; index < points.length; index++) {
    const before = (index + points.length - 1) % points.length
    const [from, to] = [points[before], points[index]]
    if (from === undefined || to === undefined) continue
    const kept = clipStretch(from, to)
    if (kept === null) continue
    const start = rodPoint(sheet, kept[0], widths[before] ?? 0)
    const end = rodPoint(sheet, kept[1], widths[index] ?? 0)
    addOutline(pen, stretchOutline(start, end), sheet, start.half < 1 || end.half < 1 ? FINE : COARSE)
  }
}

function drawItem(item: SeenItem, sheet: Sheet): Drawn | null {
  const pen = newPen()
  if (item.kind === 'rod') drawRod(pen, item, sheet)
  else if (item.kind === 'face') {
    const points = clipNear(item.points).map((point) => toSheet(sheet, point))
    addOutline(pen, points, sheet, COARSE)
  } else if (item.centre.depth >= NEAR) {
    const { x, y } = toSheet(sheet, item.centre)
    const radius = (item.radius * sheet.scale) / item.centre.depth
    addOutline(pen, circle(x, y, radius), sheet, COARSE)
  }
  const { path, left, top, right, bottom } = pen
  return path === '' ? null : { path, box: { left, top, right, bottom } }
}

function circle(x: number, y: number, radius: number): ImagePoint[] {
  return Array.from({ length: 28 }, (_, index) => {
    const turn = (index / 28) * 2 * Math.PI
    return { x: x + radius * Math.cos(turn), y: y + radius * Math.sin(turn) }
  })
}

/** Rods and balls are round and have one tone; glass and rubber look the same from every side. */
function toneOf(item: SeenItem): string {
  const plain = item.kind !== 'face' || item.material === 'glass' || item.material === 'dark'
  return plain ? item.material : `${item.material}-${item.shade}`
}

/** How many layers back a later item may slip under, to join one of its tone. */
const LOOK_BACK = 14

function overlap(one: Box, other: Box): boolean {
  // A hair of room for the strokes that close the seams.
  return (
    one.left < other.right + 1 && other.left < one.right + 1 && one.top < other.bottom + 1 && other.top < one.bottom + 1
  )
}

/** The layer an item can join without changing what covers what; null when it needs one of its own. */
function layerFor(layers: readonly GrowingLayer[], tone: string, box: Box): GrowingLayer | null {
  for (let index = layers.length - 1; index >= Math.max(0, layers.length - LOOK_BACK); index--) {
    const layer = layers[index]
    if (layer === undefined) return null
    if (layer.tone === tone) return layer
    if (overlap(layer.box, box)) return null
  }
  return null
}

interface GrowingLayer {
  readonly tone: string
  path: string
  readonly box: Box
}

function grow(box: Box, other: Box): void {
  box.left = Math.min(box.left, other.left)
  box.top = Math.min(box.top, other.top)
  box.right = Math.max(box.right, other.right)
  box.bottom = Math.max(box.bottom, other.bottom)
}

/** Items of one tone become one path where nothing that lies between them in the order touches the later one. */
export function layersOf(parts: readonly SeenPart[], sheet: Sheet): Layer[] {
  const layers: GrowingLayer[] = []
  for (const { items } of parts) {
    for (const item of items) {
      const drawn = drawItem(item, sheet)
      if (drawn === null) continue
      const tone = toneOf(item)
      const layer = layerFor(layers, tone, drawn.box)
      if (layer === null) layers.push({ tone, path: drawn.path, box: drawn.box })
      else {
        layer.path += drawn.path
        grow(layer.box, drawn.box)
      }
    }
  }
  return layers.map(({ tone, path }) => ({ tone, path }))
}
