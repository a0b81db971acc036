/** The canvas pen: strokes for the screen, in a worker or out of it. */
import { colourText } from './colour.ts'
import type { Paint, Stroke, StrokeGroup, Strokes } from './stroke.ts'

type Context = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D

function paintFor(context: Context, paint: Paint): string | CanvasGradient {
  if (paint.kind === 'even') return colourText(paint.colour)
  const gradient =
    paint.kind === 'down'
      ? context.createLinearGradient(0, paint.from, 0, paint.to)
      : context.createRadialGradient(paint.x, paint.y, 0, paint.x, paint.y, paint.radius)
  for (const { at, colour } of paint.stops) gradient.addColorStop(at, colourText(colour))
  return gradient
}

function drawStroke(context: Context, { path, fill, line }: Stroke): void {
  const outline = new Path2D(path)
  if (fill !== null) {
    context.fillStyle = paintFor(context, fill)
    // oxlint-disable-next-line unicorn/no-array-fill-with-reference-type -- a canvas's own fill
    context.fill(outline)
  }
  if (line === null) return
  context.strokeStyle = paintFor(context, line.paint)
  context.lineWidth = line.width
  context.lineCap = line.round ? 'round' : 'butt'
  context.setLineDash(line.dashes === null ? [] : [...line.dashes])
  context.stroke(outline)
}

/** A second sheet on which what is soft is drawn sharp, to be laid down blurred as one. */
export interface SpareSheet {
  readonly canvas: OffscreenCanvas
  readonly context: OffscreenCanvasRenderingContext2D
}

/** Of `width` by `height` device pixels. Null where there is no such canvas. */
export function spareSheet(width: number, height: number): SpareSheet | null {
  const canvas = new OffscreenCanvas(width, height)
  const context = canvas.getContext('2d')
  return context === null ? null : { canvas, context }
}

/**
 * Draws the strokes at so many device pixels a unit over all of the canvas. `spare` is as large as the canvas with a margin of `margin`
 * device pixels on each side, so that a blur at the edge has something to draw on.
 */
export function drawStrokes(
  context: Context,
  strokes: Strokes,
  pixelRatio: number,
  spare: SpareSheet,
  margin: number,
): void {
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0)
  for (const group of strokes.groups) {
    if (group.deviation === 0) drawSharp(context, group)
    else drawSoft(context, group, pixelRatio, spare, margin)
  }
}

function drawSharp(context: Context, { within, strokes }: StrokeGroup): void {
  if (within === null) {
    for (const stroke of strokes) drawStroke(context, stroke)
    return
  }
  context.save()
  context.clip(new Path2D(within))
  for (const stroke of strokes) drawStroke(context, stroke)
  context.restore()
}

function drawSoft(context: Context, group: StrokeGroup, pixelRatio: number, spare: SpareSheet, margin: number): void {
  const { canvas, context: other } = spare
  other.setTransform(1, 0, 0, 1, 0, 0)
  other.clearRect(0, 0, canvas.width, canvas.height)
  other.setTransform(pixelRatio, 0, 0, pixelRatio, margin, margin)
  drawSharp(other, group)
  context.save()
  context.setTransform(1, 0, 0, 1, 0, 0)
  // A canvas measures its blur in its own pixels.
  context.filter = `blur(${(group.deviation * pixelRatio).toFixed(2)}px)`
  context.drawImage(canvas, -margin, -margin)
  context.restore()
}

/** Device pixels by which a picture's softest group reaches beyond its edge. */
export function softReach({ groups }: Strokes, pixelRatio: number): number {
  return Math.ceil(Math.max(0, ...groups.map(({ deviation }) => deviation)) * 3 * pixelRatio)
}
