/** Outlines in the picture of rods seen in perspective: polygons of their true thickness, tapering with distance. */
import type { ImagePoint } from './clip.ts'

/** A point of a rod in the picture and half its thickness there, in the drawing's units. */
export interface RodPoint extends ImagePoint {
  readonly half: number
}

/** Corners of a round end by its size: a hair needs none, a thick tube several. */
function capCorners(half: number): number {
  return half < 0.7 ? 0 : half < 2 ? 2 : half < 8 ? 4 : 8
}

function addCap(outline: ImagePoint[], at: RodPoint, from: number): void {
  const corners = capCorners(at.half)
  for (let corner = 0; corner <= corners + 1; corner++) {
    const turn = from + (corner / (corners + 1)) * Math.PI
    outline.push({ x: at.x + at.half * Math.cos(turn), y: at.y + at.half * Math.sin(turn) })
  }
}

/** One stretch with round ends. */
export function stretchOutline(from: RodPoint, to: RodPoint): ImagePoint[] {
  const heading = Math.atan2(to.y - from.y, to.x - from.x)
  const outline: ImagePoint[] = []
  addCap(outline, from, heading + Math.PI / 2)
  addCap(outline, to, heading - Math.PI / 2)
  return outline
}

/** The two edges of a closed rod, the outer and the inner; null when it is seen so nearly edge on that they would cross. */
export function ringOutline(points: readonly RodPoint[]): readonly [ImagePoint[], ImagePoint[]] | null {
  if (isThin(points)) return null
  const count = points.length
  const outer: ImagePoint[] = []
  const inner: ImagePoint[] = []
  for (let index = 0; index < count; index++) {
    const point = points[index]
    const next = points[(index + 1) % count]
    const before = points[(index + count - 1) % count]
    if (point === undefined || next === undefined || before === undefined) return null
    const dx = next.x - before.x
    const dy = next.y - before.y
    const length = Math.hypot(dx, dy)
    if (length === 0) return null
    const x = (dy / length) * point.half
    const y = (-dx / length) * point.half
    outer.push({ x: point.x + x, y: point.y + y })
    inner.push({ x: point.x - x, y: point.y - y })
  }
  return [outer, inner]
}

/** Twice the enclosed area; positive when the corners run clockwise in a picture whose y grows downward. */
export function turningArea(points: readonly ImagePoint[]): number {
  let area = 0
  let before = points.at(-1)
  for (const point of points) {
    if (before === undefined) break
    area += before.x * point.y - point.x * before.y
    before = point
  }
  return area
}

/** A ring whose mean breadth is less than four times its own thickness. */
function isThin(points: readonly RodPoint[]): boolean {
  let round = 0
  let thick = 0
  points.forEach((point, index) => {
    const next = points[(index + 1) % points.length] ?? point
    round += Math.hypot(next.x - point.x, next.y - point.y)
    thick += (2 * point.half) / points.length
  })
  return round === 0 || Math.abs(turningArea(points)) / round < thick * 2
}
