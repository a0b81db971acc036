/** Lines as path text: coordinates to a tenth of a pixel. */

interface PathPoint {
  readonly x: number
  readonly y: number
}

/** Tenths of a pixel are finer than any eye. */
export function figure(pixels: number): string {
  return String(Math.round(pixels * 10) / 10)
}

export function linePath(points: readonly PathPoint[], closed: boolean): string {
  if (points.length === 0) return ''
  return `M${points.map((point) => `${figure(point.x)},${figure(point.y)}`).join('L')}${closed ? 'Z' : ''}`
}
