/** Layers: what the painter ordered, projected and merged into as few filled paths as the order allows. */
import type { CameraPoint } from '#core/frame/projection.ts'
import type { Material } from '#core/scene/solid.ts'
import { type ImagePoint, clipNear, clipStretch, NEAR } from './clip.ts'
import { type RodPoint, ringOutline, stretchOutline, turningArea } from './outline.ts'
import type { SeenItem, SeenPart, SeenRod } from './painter.ts'
import { type PenBox, COARSE_GRID, FINE, type Pen, type Sheet, addOutline, newPen, toSheet } from './pen.ts'

/** How a layer looks. */
interface Tone {
  readonly material: Material
  /** Of brightness, 0 the brightest; null for what looks the same from every side. */
  readonly step: number | null
  /** Whether the seams between its faces are to be closed. */
  readonly seam: boolean
}

/** One filled path. */
export interface Layer extends Tone {
  readonly path: string
}

interface Drawn {
  readonly path: string
  readonly box: PenBox
  /** The convex outline, where it has one: boxes of slanting things overlap where the things don't. */
  readonly outline: readonly ImagePoint[] | null
}

function rodPoint(sheet: Sheet, point: CameraPoint, width: number): RodPoint {
  const half = Math.max(sheet.thinnest, (width * sheet.scale) / point.depth) / 2
  return { ...toSheet(sheet, point), half }
}

/** Draws a rod; gives its outline when it is but one stretch. */
function drawRod(pen: Pen, rod: SeenRod, sheet: Sheet): readonly ImagePoint[] | null {
  const { points, widths, closed } = rod
  if (closed && points.every((point) => point.depth >= NEAR)) {
    const ring = ringOutline(points.map((point, index) => rodPoint(sheet, point, widths[index] ?? 0)))
    if (ring !== null) {
      const outerIsFirst = Math.abs(turningArea(ring[0])) > Math.abs(turningArea(ring[1]))
      addOutline(pen, ring[0], sheet, COARSE_GRID, outerIsFirst ? 1 : -1)
      addOutline(pen, ring[1], sheet, COARSE_GRID, outerIsFirst ? -1 : 1)
      return null
    }
  }
  let outline: readonly ImagePoint[] | null = null
  for (let index = closed ? 0 : 1; index < points.length; index++) {
    const before = (index + points.length - 1) % points.length
    const [from, to] = [points[before], points[index]]
    if (from === undefined || to === undefined) continue
    const kept = clipStretch(from, to)
    if (kept === null) continue
    const start = rodPoint(sheet, kept[0], widths[before] ?? 0)
    const end = rodPoint(sheet, kept[1], widths[index] ?? 0)
    outline = stretchOutline(start, end)
    addOutline(pen, outline, sheet, start.half < 1 || end.half < 1 ? FINE : COARSE_GRID)
  }
  return points.length === 2 ? outline : null
}

function drawItem(item: SeenItem, sheet: Sheet): Drawn | null {
  const pen = newPen()
  let outline: readonly ImagePoint[] | null = null
  if (item.kind === 'rod') outline = drawRod(pen, item, sheet)
  else if (item.kind === 'face') {
    outline = clipNear(item.points).map((point) => toSheet(sheet, point))
    addOutline(pen, outline, sheet, COARSE_GRID)
  } else if (item.centre.depth >= NEAR) {
    const { x, y } = toSheet(sheet, item.centre)
    const radius = (item.radius * sheet.scale) / item.centre.depth
    addOutline(pen, circle(x, y, radius), sheet, COARSE_GRID)
  }
  const { path, left, top, right, bottom } = pen
  return path === '' ? null : { path, box: { left, top, right, bottom }, outline }
}

function circle(x: number, y: number, radius: number): ImagePoint[] {
  return Array.from({ length: 28 }, (_, index) => {
    const turn = (index / 28) * 2 * Math.PI
    return { x: x + radius * Math.cos(turn), y: y + radius * Math.sin(turn) }
  })
}

/** Glass and rubber look the same from every side. Only faces have seams to be closed. */
function toneOf({ material, shade, kind }: SeenItem): Tone {
  if (material === 'glass' || material === 'dark') return { material, step: null, seam: false }
  return { material, step: shade, seam: kind === 'face' }
}

function sameTone(one: Tone, other: Tone): boolean {
  return one.material === other.material && one.step === other.step && one.seam === other.seam
}

/** How many layers back a later item may slip under, to join one of its tone. */
const LOOK_BACK = 24

function overlap(one: PenBox, other: PenBox, slack: number): boolean {
  return (
    one.left < other.right - slack &&
    other.left < one.right - slack &&
    one.top < other.bottom - slack &&
    other.top < one.bottom - slack
  )
}

interface GrowingLayer {
  readonly tone: Tone
  path: string
  /** Around all its items. */
  readonly box: PenBox
  readonly items: Drawn[]
}

/**
 * Whether the line of an edge parts the outlines, but for `slack`. One that isn't convex parts by such edges alone as have all of
 * it on their inner side.
 */
function edgeParts(one: readonly ImagePoint[], other: readonly ImagePoint[], slack: number): boolean {
  const turn = turningArea(one) < 0 ? -1 : 1
  let from = one.at(-1)
  for (const to of one) {
    if (from === undefined) return false
    const [dx, dy] = [(to.x - from.x) * turn, (to.y - from.y) * turn]
    const length = Math.hypot(dx, dy)
    const { x, y } = from
    const inward = (point: ImagePoint): number => (dx * (point.y - y) - dy * (point.x - x)) / length
    if (length > 0 && other.every((point) => inward(point) < slack) && one.every((point) => inward(point) > -slack / 2))
      return true
    from = to
  }
  return false
}

function apart(one: Drawn, other: Drawn, slack: number): boolean {
  if (!overlap(one.box, other.box, slack)) return true
  if (slack <= 0 || one.outline === null || other.outline === null) return false
  return edgeParts(one.outline, other.outline, slack) || edgeParts(other.outline, one.outline, slack)
}

function touches(layer: GrowingLayer, item: Drawn, slack: number): boolean {
  return overlap(layer.box, item.box, slack) && layer.items.some((one) => !apart(one, item, slack))
}

/** The layer an item can join without changing what covers what; null when it needs one of its own. */
function layerFor(layers: readonly GrowingLayer[], tone: Tone, item: Drawn, slack: number): GrowingLayer | null {
  for (let index = layers.length - 1; index >= Math.max(0, layers.length - LOOK_BACK); index--) {
    const layer = layers[index]
    if (layer === undefined) return null
    if (sameTone(layer.tone, tone)) return layer
    if (touches(layer, item, slack)) return null
  }
  return null
}

function grow(box: PenBox, other: PenBox): void {
  box.left = Math.min(box.left, other.left)
  box.top = Math.min(box.top, other.top)
  box.right = Math.max(box.right, other.right)
  box.bottom = Math.max(box.bottom, other.bottom)
}

/** A hair of room for the strokes that close the seams. */
const ROOM = -1

/**
 * Items of one tone become one path where nothing that lies between them in the order touches the later one. With a `slack`
 * of some units, what overlaps by less counts as apart: a soft thing needs far fewer paths, and shows no difference.
 */
export function layersOf(parts: readonly SeenPart[], sheet: Sheet, slack = ROOM): Layer[] {
  const layers: GrowingLayer[] = []
  for (const { items } of parts) {
    for (const item of items) {
      const drawn = drawItem(item, sheet)
      if (drawn === null) continue
      const tone = toneOf(item)
      const { path, box } = drawn
      const layer = layerFor(layers, tone, drawn, slack)
      if (layer === null) layers.push({ tone, path, box: { ...box }, items: [drawn] })
      else {
        layer.path += path
        layer.items.push(drawn)
        grow(layer.box, box)
      }
    }
  }
  return layers.map(({ tone, path }) => ({ ...tone, path }))
}
