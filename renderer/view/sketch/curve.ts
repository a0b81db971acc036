/** Lines of the sketch map made finer or cut to a window: corner cutting, clipping. Points are x, y, x, y. */
import type { WorldBox } from './world.ts'

/** Cuts each corner at a quarter and three quarters of its sides (Chaikin 1974); in the limit a quadratic B-spline. */
export function cutCorners(points: Float64Array, closed: boolean): Float64Array {
  const count = points.length / 2
  if (count < 3) return points
  const sides = count - 1
  const cut = new Float64Array(sides * 4 + (closed ? 2 : 0))
  for (let side = 0; side < sides; side++) {
    const [x, y] = [points[side * 2] ?? 0, points[side * 2 + 1] ?? 0]
    const [nextX, nextY] = [points[side * 2 + 2] ?? 0, points[side * 2 + 3] ?? 0]
    cut.set(
      [x * 0.75 + nextX * 0.25, y * 0.75 + nextY * 0.25, x * 0.25 + nextX * 0.75, y * 0.25 + nextY * 0.75],
      side * 4,
    )
  }
  if (closed) cut.set([cut[0] ?? 0, cut[1] ?? 0], sides * 4)
  else {
    cut.set([points[0] ?? 0, points[1] ?? 0], 0)
    cut.set([points[count * 2 - 2] ?? 0, points[count * 2 - 1] ?? 0], sides * 4 - 2)
  }
  return cut
}

/** A closed ring cut to a box (Sutherland and Hodgman 1974); what runs along the box lies outside what is shown. */
export function clipRing(ring: Float64Array, box: WorldBox): Float64Array {
  let points = ring
  for (let side = 0; side < 4 && points.length > 0; side++) points = clipSide(points, side, box)
  return points
}

function clipSide(points: Float64Array, side: number, box: WorldBox): Float64Array {
  const axis = side < 2 ? 0 : 1
  const limit = [box.west, box.east, box.north, box.south][side] ?? 0
  const sign = side % 2 === 0 ? 1 : -1
  const kept: number[] = []
  const count = points.length / 2
  for (let place = 0; place < count; place++) {
    const before = ((place + count - 1) % count) * 2
    const [x, y] = [points[place * 2] ?? 0, points[place * 2 + 1] ?? 0]
    const [lastX, lastY] = [points[before] ?? 0, points[before + 1] ?? 0]
    const within = ((axis === 0 ? x : y) - limit) * sign
    const lastWithin = ((axis === 0 ? lastX : lastY) - limit) * sign
    if (within >= 0 !== lastWithin >= 0) {
      const share = lastWithin / (lastWithin - within)
      kept.push(lastX + (x - lastX) * share, lastY + (y - lastY) * share)
    }
    if (within >= 0) kept.push(x, y)
  }
  return Float64Array.from(kept)
}
