/** The pen of the sketch map: a canvas with its view, and the drawing of world lines and areas on it. */
import type { PaintContext } from './canvas-context.ts'
import { clipRing } from './curve.ts'
import { type SketchFeature, type SketchIndex, STRETCH, type SketchPart } from './sketch-index.ts'
import type { SketchPalette } from './sketch-palette.ts'
import { type WorldBox, boxesMeet, grown } from './world.ts'

export interface SketchPen {
  readonly context: PaintContext
  readonly palette: SketchPalette
  readonly zoom: number
  /** CSS pixels across the world. */
  readonly scale: number
  /** World pixels of the canvas's corner. */
  readonly left: number
  readonly top: number
  /** CSS pixels. */
  readonly width: number
  readonly height: number
  readonly pixelRatio: number
}

/** The world rectangle that the canvas shows, with a margin of CSS pixels. */
export function shownBox(pen: SketchPen, margin: number): WorldBox {
  const box = {
    west: pen.left / pen.scale,
    north: pen.top / pen.scale,
    east: (pen.left + pen.width) / pen.scale,
    south: (pen.top + pen.height) / pen.scale,
  }
  return grown(box, margin / pen.scale)
}

/** A value that grows with the zoom: pairs of zoom and value, straight between them, level beyond. */
export function byZoom(zoom: number, ...stops: readonly (readonly [number, number])[]): number {
  let before = stops[0] ?? [0, 0]
  for (const stop of stops) {
    if (zoom <= stop[0]) {
      const span = stop[0] - before[0]
      return span <= 0 ? stop[1] : before[1] + ((zoom - before[0]) / span) * (stop[1] - before[1])
    }
    before = stop
  }
  return before[1]
}

/** Adds the stretch of points from..to (counted in points, both drawn) to the path. */
function run(pen: SketchPen, points: Float64Array, from: number, to: number): void {
  const { context, scale, left, top } = pen
  context.moveTo((points[from * 2] ?? 0) * scale - left, (points[from * 2 + 1] ?? 0) * scale - top)
  for (let place = from + 1; place <= to; place++) {
    context.lineTo((points[place * 2] ?? 0) * scale - left, (points[place * 2 + 1] ?? 0) * scale - top)
  }
}

/** Adds the parts of lines that come near the canvas to the current path. */
export function traceLines(pen: SketchPen, parts: readonly SketchPart[], margin: number): void {
  const box = shownBox(pen, margin)
  for (const { points, stretches } of parts) {
    const last = points.length / 2 - 1
    for (let first = 0; first < stretches.length; first++) {
      if (!near(stretches[first], box)) continue
      let end = first
      while (end + 1 < stretches.length && near(stretches[end + 1], box)) end++
      run(pen, points, first * STRETCH, Math.min(last, (end + 1) * STRETCH))
      first = end
    }
  }
}

function near(stretch: WorldBox | undefined, box: WorldBox): boolean {
  return stretch !== undefined && boxesMeet(stretch, box)
}

/** Strokes dashed lines; the dashes keep their places from tile to tile since each run starts at its own distance. */
export function strokeDashed(
  pen: SketchPen,
  parts: readonly SketchPart[],
  dash: readonly [number, number],
  margin: number,
): void {
  const { context, scale } = pen
  const box = shownBox(pen, margin)
  context.setLineDash([...dash])
  for (const { points, stretches } of parts) {
    const last = points.length / 2 - 1
    let gone = 0
    for (let stretch = 0; stretch < stretches.length; stretch++) {
      const from = stretch * STRETCH
      const to = Math.min(last, from + STRETCH)
      if (near(stretches[stretch], box)) {
        context.lineDashOffset = (gone * scale) % (dash[0] + dash[1])
        context.beginPath()
        run(pen, points, from, to)
        context.stroke()
      }
      gone += lengthOf(points, from, to)
    }
  }
  context.setLineDash([])
}

function lengthOf(points: Float64Array, from: number, to: number): number {
  let length = 0
  for (let place = from; place < to; place++) {
    const east = (points[place * 2 + 2] ?? 0) - (points[place * 2] ?? 0)
    const south = (points[place * 2 + 3] ?? 0) - (points[place * 2 + 1] ?? 0)
    length += Math.sqrt(east * east + south * south)
  }
  return length
}

/** Adds areas to the current path, cut to a little more than the canvas. */
export function traceAreas(
  pen: SketchPen,
  features: readonly SketchFeature[],
  index: SketchIndex,
  margin: number,
): void {
  const box = shownBox(pen, margin)
  for (const feature of features) {
    for (const { points } of index.shape(feature, pen.zoom)) {
      const ring = pen.zoom >= 14 && points.length > 80 ? clipRing(points, box) : points
      if (ring.length < 6) continue
      run(pen, ring, 0, ring.length / 2 - 1)
      pen.context.closePath()
    }
  }
}

export function fillAreas(pen: SketchPen, index: SketchIndex, kind: string, colour: string): readonly SketchFeature[] {
  const features = index.within(kind, shownBox(pen, 8))
  if (features.length === 0) return features
  pen.context.beginPath()
  traceAreas(pen, features, index, 16)
  pen.context.fillStyle = colour
  pen.context.fill()
  return features
}

/** Strokes lines or the outlines of areas. */
export function strokeFeatures(
  pen: SketchPen,
  index: SketchIndex,
  features: readonly SketchFeature[],
  colour: string,
  width: number,
): void {
  if (features.length === 0) return
  pen.context.beginPath()
  for (const feature of features) traceLines(pen, index.shape(feature, pen.zoom), width + 2)
  pen.context.strokeStyle = colour
  pen.context.lineWidth = width
  pen.context.stroke()
}
