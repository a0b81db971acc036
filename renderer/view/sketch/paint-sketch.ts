/** The whole sketch map on one canvas: the order in which its parts are laid over each other. */
import type { PaintContext } from './canvas-context.ts'
import type { IslandData } from './island-data.ts'
import { fontOf, type LabelStyle } from './label-text.ts'
import { paintContours, paintFieldWalls, paintMarks, paintTints, paintWaters } from './sketch-paint-cover.ts'
import { paintCoast, paintLand, paintRelief, paintWaterlines } from './sketch-paint-ground.ts'
import { paintBuildings, paintQuays } from './sketch-paint-built.ts'
import { paintWays } from './sketch-paint-ways.ts'
import { type Label, placeSketchLabels } from './sketch-labels.ts'
import { paintLabels } from './sketch-paint-labels.ts'
import type { SketchPalette } from './sketch-palette.ts'
import { byZoom, type SketchPen, shownBox } from './sketch-pen.ts'
import { type WorldWindow, worldPixels } from './world.ts'

export interface SketchLook {
  readonly palette: SketchPalette
  readonly pixelRatio: number
  readonly labels: boolean
}

const laidOut = new WeakMap<IslandData, Map<string, readonly Label[]>>()

/** Labels of a zoom, decided once: every tile and every picture of that zoom shares them. */
function labelsFor(island: IslandData, zoom: number, palette: SketchPalette, context: PaintContext): readonly Label[] {
  let layouts = laidOut.get(island)
  if (layouts === undefined) {
    layouts = new Map()
    laidOut.set(island, layouts)
  }
  const key = `${palette.name} ${zoom}`
  let labels = layouts.get(key)
  if (labels === undefined) {
    labels = placeSketchLabels(island.index, zoom, palette, (text: string, style: LabelStyle) => {
      context.font = fontOf(style)
      return context.measureText(text).width
    })
    layouts.set(key, labels)
  }
  return labels
}

/** Draws the map, clear where the sea is; the canvas is `width x height x pixelRatio` device pixels. */
export function paintSketch(context: PaintContext, island: IslandData, window: WorldWindow, look: SketchLook): void {
  const pen: SketchPen = {
    context,
    palette: look.palette,
    scale: worldPixels(window.zoom),
    pixelRatio: look.pixelRatio,
    ...window,
  }
  context.save()
  context.setTransform(look.pixelRatio, 0, 0, look.pixelRatio, 0, 0)
  context.clearRect(0, 0, window.width, window.height)
  paintIsland(pen, island, look.labels)
  context.restore()
}

function paintIsland(pen: SketchPen, island: IslandData, labels: boolean): void {
  const { index, relief } = island
  paintWaterlines(pen, index)
  pen.context.lineJoin = 'round'
  if (paintLand(pen, index)) {
    paintTints(pen, index)
    paintRelief(pen, index, relief)
    paintFieldWalls(pen, index)
    paintContours(pen, index)
    paintWaters(pen, index)
    paintMarks(pen, index)
    paintCoast(pen, index)
  }
  if (index.within('quay', shownBox(pen, 8)).length > 0) paintQuays(pen, index)
  paintWays(pen, index)
  paintBuildings(pen, index)
  if (labels && byZoom(pen.zoom, [8, 0], [8.5, 1]) > 0)
    paintLabels(pen, labelsFor(island, pen.zoom, pen.palette, pen.context))
}
