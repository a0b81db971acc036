/** Clipping: polygons and rods against the lens's plane before they are projected, and pictures against a frame around them. */
import type { CameraPoint } from '#core/frame/projection.ts'

/** Nearer than this, metres along the axis, nothing is drawn: the true near limit is smaller but would draw absurd sizes. */
export const NEAR = 0.05

export interface ImagePoint {
  readonly x: number
  readonly y: number
}

export interface ClipBounds {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

function crossing(inside: CameraPoint, outside: CameraPoint, near: number): CameraPoint {
  const share = (inside.depth - near) / (inside.depth - outside.depth)
  return {
    right: inside.right + (outside.right - inside.right) * share,
    up: inside.up + (outside.up - inside.up) * share,
    depth: near,
  }
}

/** The part of a polygon that lies beyond the near plane; empty when none does. (Sutherland and Hodgman.) */
export function clipNear(points: readonly CameraPoint[], near = NEAR): readonly CameraPoint[] {
  if (points.every((point) => point.depth >= near)) return points
  const kept: CameraPoint[] = []
  points.forEach((point, index) => {
    const before = points[index === 0 ? points.length - 1 : index - 1] ?? point
    if (point.depth >= near) {
      if (before.depth < near) kept.push(crossing(point, before, near))
      kept.push(point)
    } else if (before.depth >= near) kept.push(crossing(before, point, near))
  })
  return kept.length < 3 ? [] : kept
}

/** The part of a stretch beyond the near plane; null when none is. */
export function clipStretch(
  from: CameraPoint,
  to: CameraPoint,
  near = NEAR,
): readonly [CameraPoint, CameraPoint] | null {
  if (from.depth >= near && to.depth >= near) return [from, to]
  if (from.depth < near && to.depth < near) return null
  return from.depth >= near ? [from, crossing(from, to, near)] : [crossing(to, from, near), to]
}

type Edge = (point: ImagePoint) => number

/** The part of a picture's polygon within bounds, so that no coordinate grows beyond what a drawing can hold. */
export function clipToBounds(points: readonly ImagePoint[], bounds: ClipBounds): readonly ImagePoint[] {
  const { left, top, right, bottom } = bounds
  if (points.every(({ x, y }) => x >= left && x <= right && y >= top && y <= bottom)) return points
  const edges: Edge[] = [(p) => p.x - left, (p) => right - p.x, (p) => p.y - top, (p) => bottom - p.y]
  let kept = points
  for (const edge of edges) {
    if (kept.length < 3) return []
    kept = clipEdge(kept, edge)
  }
  return kept.length < 3 ? [] : kept
}

function clipEdge(points: readonly ImagePoint[], edge: Edge): ImagePoint[] {
  const kept: ImagePoint[] = []
  let before = points.at(-1)
  for (const point of points) {
    if (before === undefined) break
    const here = edge(point)
    const there = edge(before)
    if (here >= 0 !== there >= 0) {
      const share = here / (here - there)
      kept.push({ x: point.x + (before.x - point.x) * share, y: point.y + (before.y - point.y) * share })
    }
    if (here >= 0) kept.push(point)
    before = point
  }
  return kept
}
