/** The island over what a canvas shows already, as on coasts and ground: painted apart, since it clears what it paints on. */
import { type PaintCanvas, contextOf, freshCanvas } from './canvas-context.ts'
import type { IslandData } from './island-data.ts'
import { type SketchLook, type SketchWindow, paintSketch, showsIsland } from './paint-sketch.ts'
import { worldPixels } from './world.ts'

/** On the turn of the world on which the island lies, or nearest to it. */
function homeTurn(window: SketchWindow): SketchWindow {
  const scale = worldPixels(window.zoom)
  const turn = Math.floor((window.left + window.width / 2) / scale)
  return { ...window, left: window.left - turn * scale }
}

/** Whether any of it was to be seen. `apart` gives the canvas it is painted on first. */
export function layIsland(
  over: PaintCanvas,
  island: IslandData,
  window: SketchWindow,
  look: SketchLook,
  apart: (width: number, height: number) => PaintCanvas = freshCanvas,
): boolean {
  const home = homeTurn(window)
  if (!showsIsland(island, home)) return false
  const canvas = apart(over.width, over.height)
  paintSketch(contextOf(canvas), island, home, look)
  const context = contextOf(over)
  context.setTransform(1, 0, 0, 1, 0, 0)
  context.drawImage(canvas, 0, 0)
  return true
}
