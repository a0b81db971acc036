/** Thins out a run of points in the picture: corners that lie as good as on the straight line between their neighbours. */
import type { ImagePoint } from './clip.ts'

/** Units by which a corner may lie off the straight line between its neighbours and be left out. */
const STRAIGHT = 0.04

export function withoutStraight(points: readonly ImagePoint[]): ImagePoint[] {
  const kept: ImagePoint[] = []
  for (const [index, point] of points.entries()) {
    const [from, to] = [kept.at(-1), points[index + 1]]
    if (from !== undefined && to !== undefined && to.x > from.x) {
      const level = from.y + ((to.y - from.y) * (point.x - from.x)) / (to.x - from.x)
      if (Math.abs(level - point.y) < STRAIGHT) continue
    }
    kept.push(point)
  }
  return kept
}
