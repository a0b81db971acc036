/** The island over what a canvas shows already, as on coasts and ground: painted apart, since it clears what it paints on. */
import { type PaintCanvas, contextOf, freshCanvas } from './canvas-context.ts'
import type { IslandData } from './island-data.ts'
import { homeTurn } from './island-box.ts'
import { type SketchLook, paintSketch } from './paint-sketch.ts'
import type { WorldWindow } from './world.ts'

/** `apart` gives the canvas it is painted on first. */
export function layIsland(
  over: PaintCanvas,
  island: IslandData,
  window: WorldWindow,
  look: SketchLook,
  apart: (width: number, height: number) => PaintCanvas = freshCanvas,
): void {
  const canvas = apart(over.width, over.height)
  paintSketch(contextOf(canvas), island, homeTurn(window), look)
  const context = contextOf(over)
  context.setTransform(1, 0, 0, 1, 0, 0)
  context.drawImage(canvas, 0, 0)
}
