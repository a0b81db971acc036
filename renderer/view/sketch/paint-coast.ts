/** Sea, land and borders of the whole world on one canvas, in the sketch map's colours. */
import type { PaintContext } from './canvas-context.ts'
import type { CoastData, CoastPiece } from './coast-shapes.ts'
import { clipRing } from './curve.ts'
import type { WorldWindow } from './world.ts'
import type { SketchPalette } from './sketch-palette.ts'
import { byZoom } from './sketch-pen.ts'
import { boxesMeet, type WorldBox, grown, worldPixels } from './world.ts'

interface CoastPen {
  readonly context: PaintContext
  readonly scale: number
  readonly left: number
  readonly top: number
  /** The canvas in world coordinates with a margin. */
  readonly box: WorldBox
}

/** Draws the world, turn by turn: pieces that cross the antimeridian reach into the next turn, so one more is drawn each way. */
export function paintCoastMap(
  context: PaintContext,
  coast: CoastData,
  window: WorldWindow,
  palette: SketchPalette,
  pixelRatio: number,
): void {
  const scale = worldPixels(window.zoom)
  context.save()
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0)
  context.fillStyle = palette.sea
  context.fillRect(0, 0, window.width, window.height)
  context.lineJoin = 'round'
  const firstTurn = Math.floor((window.left - 32) / scale) - 1
  const lastTurn = Math.floor((window.left + window.width + 32) / scale) + 1
  for (let turn = firstTurn; turn <= lastTurn; turn++) {
    const left = window.left - turn * scale
    const shown = {
      west: left / scale,
      north: window.top / scale,
      east: (left + window.width) / scale,
      south: (window.top + window.height) / scale,
    }
    paintTurn({ context, scale, left, top: window.top, box: grown(shown, 32 / scale) }, coast, palette, window.zoom)
  }
  context.restore()
}

function paintTurn(pen: CoastPen, coast: CoastData, palette: SketchPalette, zoom: number): void {
  const { context } = pen
  tracePieces(pen, coast.shores)
  context.strokeStyle = palette.waterline
  for (const [width, strength] of [
    [11, 0.3],
    [5.5, 0.55],
  ] as const) {
    context.globalAlpha = strength
    context.lineWidth = width * byZoom(zoom, [2, 0.4], [6, 1])
    context.stroke()
  }
  context.globalAlpha = 1
  context.beginPath()
  for (const { box, rings } of coast.land) {
    if (!boxesMeet(box, pen.box)) continue
    for (const ring of rings) trace(pen, zoom > 2 ? clipRing(ring, pen.box) : ring)
  }
  context.fillStyle = palette.land
  context.fill('evenodd')
  tracePieces(pen, coast.borders)
  context.strokeStyle = palette.border
  context.lineWidth = byZoom(zoom, [2, 0.4], [6, 0.9])
  context.setLineDash(zoom >= 5 ? [5, 3] : [])
  context.stroke()
  context.setLineDash([])
  tracePieces(pen, coast.shores)
  context.strokeStyle = palette.coast
  context.lineWidth = byZoom(zoom, [2, 0.5], [6, 0.9], [10, 1.1])
  context.stroke()
}

function tracePieces(pen: CoastPen, pieces: readonly CoastPiece[]): void {
  pen.context.beginPath()
  for (const { box, points } of pieces) if (boxesMeet(box, pen.box)) trace(pen, points)
}

function trace(pen: CoastPen, points: Float64Array): void {
  const { context, scale, left, top } = pen
  for (let place = 0; place < points.length; place += 2) {
    const x = (points[place] ?? 0) * scale - left
    const y = (points[place + 1] ?? 0) * scale - top
    if (place === 0) context.moveTo(x, y)
    else context.lineTo(x, y)
  }
}
