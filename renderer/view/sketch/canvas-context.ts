/** A canvas to paint on, in the page or in a worker, and a fresh one of either kind. */

export type PaintContext = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D
export type PaintCanvas = HTMLCanvasElement | OffscreenCanvas

/** A clear canvas; the page's own kind where there is no other. Sizes are device pixels, at least 1. */
export function freshCanvas(width: number, height: number): PaintCanvas {
  if (typeof OffscreenCanvas === 'function') return new OffscreenCanvas(width, height)
  const canvas = document.createElement('canvas')
  canvas.width = width
  canvas.height = height
  return canvas
}

export function contextOf(canvas: PaintCanvas): PaintContext {
  const context: PaintContext | null = canvas.getContext('2d')
  if (context === null) throw new Error('there is no canvas to paint on')
  return context
}
