/** Sea, land and relief of the sketch map. */
import { type SketchPen, byZoom, fillAreas, shownBox, strokeFeatures, traceAreas, traceLines } from './sketch-pen.ts'
import type { SketchIndex } from './sketch-index.ts'
import type { Relief } from './relief.ts'
import { drawRelief } from './relief-shade.ts'

/** Distances in CSS pixels at which lines follow the coast out at sea, and how strong each is. */
const WATERLINES = [
  [24, 0.3],
  [15, 0.45],
  [8.5, 0.65],
  [4, 0.85],
] as const

/** Lines parallel to the coast, fading seaward, as engraved maps have them; the canvas must be bare below. */
export function paintWaterlines(pen: SketchPen, index: SketchIndex): void {
  const { context } = pen
  const reach = byZoom(pen.zoom, [9, 0.35], [12, 0.6], [15, 1], [18, 1.4])
  const margin = 26 * reach + 4
  const land = index.within('land', shownBox(pen, margin))
  if (land.length === 0) return
  context.save()
  context.lineJoin = 'round'
  context.lineCap = 'round'
  context.beginPath()
  for (const feature of land) traceLines(pen, index.shape(feature, pen.zoom), margin)
  for (const [distance, strength] of WATERLINES) {
    context.globalAlpha = strength
    context.globalCompositeOperation = 'source-over'
    context.strokeStyle = pen.palette.waterline
    context.lineWidth = distance * reach * 2 + 1
    context.stroke()
    context.globalAlpha = 1
    context.globalCompositeOperation = 'destination-out'
    context.lineWidth = distance * reach * 2 - 0.8
    context.stroke()
  }
  context.restore()
}

export function paintLand(pen: SketchPen, index: SketchIndex): boolean {
  return fillAreas(pen, index, 'land', pen.palette.land).length > 0
}

/** Close up a whole screen lies on one slope: full shading would only dull it. */
export function reliefStrength(zoom: number): number {
  return byZoom(zoom, [15.5, 1], [18, 0.6], [20, 0.45])
}

/** Shades the land by its slopes. */
export function paintRelief(pen: SketchPen, index: SketchIndex, relief: Relief): void {
  const { context } = pen
  context.save()
  context.beginPath()
  traceAreas(pen, index.within('land', shownBox(pen, 8)), index, 16)
  context.clip()
  context.globalAlpha = reliefStrength(pen.zoom)
  drawRelief(pen, relief)
  context.restore()
}

/** Pixels. */
export function coastWidth(zoom: number): number {
  return byZoom(zoom, [9, 0.6], [12, 0.9], [15, 1.2], [19, 1.8])
}

export function paintCoast(pen: SketchPen, index: SketchIndex): void {
  strokeFeatures(pen, index, index.within('land', shownBox(pen, 4)), pen.palette.coast, coastWidth(pen.zoom))
}
