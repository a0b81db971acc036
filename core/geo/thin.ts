/** Lines with fewer points: what lies nearer to the line that stays than a tolerance is dropped (Douglas and Peucker 1973). */
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { unwrapNear } from './bounds.ts'
import type { LatLon } from './lat-lon.ts'

/** Metres in a degree of latitude: of a sphere, near enough for a tolerance. */
const METRES_PER_DEGREE = 111_195

/** Which points stay, 1 for each; points are x, y, x, y, the tolerance in their unit. Both ends stay. */
function staying(points: Float64Array, tolerance: number): Uint8Array {
  const last = points.length / 2 - 1
  const keep = new Uint8Array(last + 1).fill(last < 2 ? 1 : 0)
  if (last < 2) return keep
  keep[0] = 1
  keep[last] = 1
  const open: number[] = [0, last]
  while (open.length > 0) {
    const to = open.pop() ?? 0
    const from = open.pop() ?? 0
    const place = farthest(points, from, to, tolerance)
    if (place < 0) continue
    keep[place] = 1
    open.push(from, place, place, to)
  }
  return keep
}

/** Drops points within `tolerance` of the line that stays. Rings keep their farthest point. */
export function thinned(points: Float64Array, tolerance: number): Float64Array {
  const keep = staying(points, tolerance)
  return points.filter((_, place) => keep[place >> 1] === 1)
}

/** Places of a line that stay when those within so many metres of it are dropped; those that stay are the very same. */
export function thinnedPlaces(places: readonly LatLon[], metres: number): readonly LatLon[] {
  const [first] = places
  if (first === undefined) return places
  const squeeze = Math.cos(first.lat * RADIANS_PER_DEGREE)
  const flat = Float64Array.from(
    places.flatMap((at) => [unwrapNear(at.lon, first.lon) * squeeze * METRES_PER_DEGREE, at.lat * METRES_PER_DEGREE]),
  )
  const keep = staying(flat, metres)
  return places.filter((_, index) => keep[index] === 1)
}

/** The point between two others that lies farthest from their line, or -1 when none lies beyond the tolerance. */
function farthest(points: Float64Array, from: number, to: number, tolerance: number): number {
  const [startX, startY] = [points[from * 2] ?? 0, points[from * 2 + 1] ?? 0]
  const runX = (points[to * 2] ?? 0) - startX
  const runY = (points[to * 2 + 1] ?? 0) - startY
  const length = Math.hypot(runX, runY)
  let most = tolerance
  let found = -1
  for (let place = from + 1; place < to; place++) {
    const x = (points[place * 2] ?? 0) - startX
    const y = (points[place * 2 + 1] ?? 0) - startY
    const off = length === 0 ? Math.hypot(x, y) : Math.abs(x * runY - y * runX) / length
    if (off > most) {
      most = off
      found = place
    }
  }
  return found
}
