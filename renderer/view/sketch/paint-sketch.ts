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
import { boxesMeet, worldPixels, worldX, worldY } from './world.ts'

/** What a canvas shows: world pixels of its corner at a zoom, or the place at its middle. CSS pixels throughout. */
export interface SketchWindow {
  readonly zoom: number
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

export function windowAround(
  centre: { readonly lat: number; readonly lon: number },
  zoom: number,
  width: number,
  height: number,
): SketchWindow {
  const scale = worldPixels(zoom)
  return {
    zoom,
    left: worldX(centre.lon) * scale - width / 2,
    top: worldY(centre.lat) * scale - height / 2,
    width,
    height,
  }
}

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

/** True when the window shows any of the island or its waterlines. */
export function showsIsland(island: IslandData, window: SketchWindow): boolean {
  const scale = worldPixels(window.zoom)
  const { box } = island.index
  const reach = 60
  return boxesMeet(
    {
      west: box.west * scale - reach,
      north: box.north * scale - reach,
      east: box.east * scale + reach,
      south: box.south * scale + reach,
    },
    { west: window.left, north: window.top, east: window.left + window.width, south: window.top + window.height },
  )
}

/** Draws the map, clear where the sea is; the canvas is `width x height x pixelRatio` device pixels. */
export function paintSketch(context: PaintContext, island: IslandData, window: SketchWindow, look: SketchLook): void {
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
  if (showsIsland(island, window)) paintIsland(pen, island, look.labels)
  context.restore()
}

function paintIsland(pen: SketchPen, island: IslandData, labels: boolean): void {
  const { index, relief } = island
  if (pen.zoom < 8) return
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
