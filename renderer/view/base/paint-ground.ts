/** The ground by its elevations on one canvas: land and water, the light on slopes, contours and their heights, in the sketch map's hand. */
import type { PaintCanvas, PaintContext } from '#renderer/view/sketch/canvas-context.ts'
import type { ContourDrawing, PackedLines } from '#renderer/view/ground/contour-drawing.ts'
import type { MapRaster } from '#renderer/view/ground/map-raster.ts'
import { setTurned } from '#renderer/view/sketch/label-place.ts'
import { contourStyle, fontOf } from '#renderer/view/sketch/label-text.ts'
import { type SketchPart, stretchesOf } from '#renderer/view/sketch/sketch-index.ts'
import type { Label } from '#renderer/view/sketch/sketch-labels.ts'
import { contourWidths } from '#renderer/view/sketch/sketch-paint-cover.ts'
import { coastWidth, reliefStrength } from '#renderer/view/sketch/sketch-paint-ground.ts'
import { paintLabels } from '#renderer/view/sketch/sketch-paint-labels.ts'
import type { SketchPalette } from '#renderer/view/sketch/sketch-palette.ts'
import { type SketchPen, traceLines } from '#renderer/view/sketch/sketch-pen.ts'
import { worldPixels } from '#renderer/view/sketch/world.ts'
import type { WorldWindow } from '#renderer/view/sketch/world.ts'
import { drawRaster } from './raster-picture.ts'

export interface GroundRelief {
  readonly raster: MapRaster
  readonly ground: PaintCanvas
  readonly light: PaintCanvas
}

export interface GroundContours {
  readonly drawing: ContourDrawing
  readonly fine: readonly SketchPart[]
  readonly strong: readonly SketchPart[]
  readonly shore: readonly SketchPart[]
}

function partsOf({ points, ends }: PackedLines): SketchPart[] {
  const parts: SketchPart[] = []
  let start = 0
  for (const end of ends) {
    const line = points.subarray(start, end)
    parts.push({ points: line, stretches: stretchesOf(line) })
    start = end
  }
  return parts
}

export function groundContours(drawing: ContourDrawing): GroundContours {
  return {
    drawing,
    fine: partsOf(drawing.fine),
    strong: partsOf(drawing.strong),
    shore: partsOf(drawing.shore),
  }
}

export interface GroundPainting {
  readonly relief: GroundRelief
  readonly contours: GroundContours | null
  readonly palette: SketchPalette
}

/** Paints over what is there, on the turn of the world nearest to the window. */
export function paintGround(
  context: PaintContext,
  window: WorldWindow,
  pixelRatio: number,
  { relief, contours, palette }: GroundPainting,
): void {
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0)
  const scale = worldPixels(window.zoom)
  const { raster } = relief
  const middle = raster.west + (raster.columns * raster.pixel) / 2
  const turn = Math.round((window.left + window.width / 2) / scale - middle)
  const pen: SketchPen = { context, palette, scale, pixelRatio, ...window, left: window.left - turn * scale }
  paintRelief(pen, relief)
  if (contours !== null) paintLines(pen, contours)
}

function paintRelief(pen: SketchPen, { raster, ground, light }: GroundRelief): void {
  const { context, scale, left, top, width, height } = pen
  const box = { left: 0, top: 0, right: width, bottom: height }
  const on = { size: scale, left, top }
  drawRaster(context, ground, raster, on, box)
  context.globalAlpha = reliefStrength(pen.zoom)
  drawRaster(context, light, raster, on, box)
  context.globalAlpha = 1
}

function paintLines(pen: SketchPen, { drawing, fine, strong, shore }: GroundContours): void {
  const { palette, zoom, context } = pen
  const widths = contourWidths(zoom)
  context.lineJoin = 'round'
  context.lineCap = 'round'
  stroke(pen, fine, palette.contour, widths.fine)
  stroke(pen, strong, palette.majorContour, widths.strong)
  stroke(pen, shore, palette.coast, coastWidth(zoom))
  paintLabels(pen, labelsOf(pen, drawing))
}

function stroke(pen: SketchPen, parts: readonly SketchPart[], colour: string, width: number): void {
  pen.context.beginPath()
  traceLines(pen, parts, width + 2)
  pen.context.strokeStyle = colour
  pen.context.lineWidth = width
  pen.context.stroke()
}

function labelsOf(pen: SketchPen, { labels }: ContourDrawing): Label[] {
  const { context, palette, scale, left, top, width, height } = pen
  const style = contourStyle(palette)
  const measure = (text: string): number => {
    context.font = fontOf(style)
    return context.measureText(text).width
  }
  return labels.flatMap(({ level, x, y, turn }) => {
    const at = { x: x * scale, y: y * scale, turn: (turn * Math.PI) / 180 }
    const near = at.x > left - 40 && at.x < left + width + 40 && at.y > top - 40 && at.y < top + height + 40
    return near ? [{ style, peak: null, ...setTurned(String(level), at, style.size, measure) }] : []
  })
}
