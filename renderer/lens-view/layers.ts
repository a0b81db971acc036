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

function figure(value: number): number {
  return Math.round(value * 100) / 100
}

/** A closed outline as path text, always turning clockwise, so that overlapping outlines of one path unite. */
export function outlinePath(points: readonly ImagePoint[], sheet: Sheet, turning: 1 | -1 = 1): string {
  const kept = clipToBounds(points, sheet.bounds)
  if (kept.length < 3) return ''
  const inOrder = turningArea(kept) * turning < 0 ? kept.toReversed() : kept
  let path = ''
  for (const { x, y } of inOrder) path += `${path === '' ? 'M' : 'L'}${figure(x)} ${figure(y)}`
  return `${path}Z`
}

function rodPoint(sheet: Sheet, point: CameraPoint, width: number): RodPoint {
  const half = Math.max(sheet.thinnest, (width * sheet.scale) / point.depth) / 2
  return { ...toSheet(sheet, point), half }
}

function rodPath(rod: SeenRod, sheet: Sheet): string {
  const { points, widths, closed } = rod
  if (closed && points.every((point) => point.depth >= NEAR)) {
    const ring = ringOutline(points.map((point, index) => rodPoint(sheet, point, widths[index] ?? 0)))
    if (ring !== null) {
      const outerIsFirst = Math.abs(turningArea(ring[0])) > Math.abs(turningArea(ring[1]))
      return outlinePath(ring[0], sheet, outerIsFirst ? 1 : -1) + outlinePath(ring[1], sheet, outerIsFirst ? -1 : 1)
    }
  }
  let path = ''
  for (let index = closed ? 0 : 1; index < points.length; index++) {
    const before = (index + points.length - 1) % points.length
    const [from, to] = [points[before], points[index]]
    if (from === undefined || to === undefined) continue
    const kept = clipStretch(from, to)
    if (kept === null) continue
    const outline = stretchOutline(
      rodPoint(sheet, kept[0], widths[before] ?? 0),
      rodPoint(sheet, kept[1], widths[index] ?? 0),
    )
    path += outlinePath(outline, sheet)
  }
  return path
}

function itemPath(item: SeenItem, sheet: Sheet): string {
  if (item.kind === 'rod') return rodPath(item, sheet)
  if (item.kind === 'face')
    return outlinePath(
      clipNear(item.points).map((point) => toSheet(sheet, point)),
      sheet,
    )
  if (item.centre.depth < NEAR) return ''
  const { x, y } = toSheet(sheet, item.centre)
  const radius = (item.radius * sheet.scale) / item.centre.depth
  const circle = Array.from({ length: 28 }, (_, index) => {
    const turn = (index / 28) * 2 * Math.PI
    return { x: x + radius * Math.cos(turn), y: y + radius * Math.sin(turn) }
  })
  return outlinePath(circle, sheet)
}

/** Rods and balls are round and have one tone; glass and rubber look the same from every side. */
function toneOf(item: SeenItem): string {
  const plain = item.kind !== 'face' || item.material === 'glass' || item.material === 'dark'
  return plain ? item.material : `${item.material}-${item.shade}`
}

/** Neighbours in the order that share a tone become one path. */
export function layersOf(parts: readonly SeenPart[], sheet: Sheet): Layer[] {
  const layers: { tone: string; path: string }[] = []
  for (const { items } of parts) {
    for (const item of items) {
      const path = itemPath(item, sheet)
      if (path === '') continue
      const tone = toneOf(item)
      const last = layers.at(-1)
      if (last?.tone === tone) last.path += path
      else layers.push({ tone, path })
    }
  }
  return layers
}
