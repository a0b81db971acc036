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
export function simplified(points: Float64Array, tolerance: number): Float64Array {
  const keep = staying(points, tolerance)
  return points.filter((_, place) => keep[place >> 1] === 1)
}

/** Places of a line that stay when those within so many metres of it are dropped; those that stay are the very same. */
export function simplifiedPlaces(places: readonly LatLon[], metres: number): readonly LatLon[] {
  const keep = staying(flattened(places), metres)
  return places.filter((_, index) => keep[index] === 1)
}

/** Metres on a plane, x, y, x, y. */
function flattened(places: readonly LatLon[]): Float64Array {
  const flat = new Float64Array(places.length * 2)
  const [first] = places
  const squeeze = Math.cos((first?.lat ?? 0) * RADIANS_PER_DEGREE)
  for (const [index, at] of places.entries()) {
    flat[index * 2] = unwrapNear(at.lon, first?.lon ?? 0) * squeeze * METRES_PER_DEGREE
    flat[index * 2 + 1] = at.lat * METRES_PER_DEGREE
  }
  return flat
}

/** Metres of the first try to thin a line of too many points; each further try doubles it. */
const FIRST_TRY = 0.1
/** Points that are thinned at once: a comb of a hundred thousand teeth would else be walked along for each of them. */
const PIECE = 1_000

/**
 * At most so many places of a line, and the metres within which of the line that stays all others lie (the least of 0.1, 0.2, 0.4
 * and so on that does; 0 when all stay). Those that stay are the very same.
 */
export function simplifiedTo(
  places: readonly LatLon[],
  most: number,
): { readonly places: readonly LatLon[]; readonly metres: number } {
  if (places.length <= most) return { places, metres: 0 }
  const worth = worthOf(flattened(places))
  let metres = FIRST_TRY
  const stay = (): readonly LatLon[] => places.filter((_, index) => (worth[index] ?? 0) > metres)
  let left = stay()
  // No two places on the earth are farther apart.
  while (left.length > most && metres < 1e8) {
    metres *= 2
    left = stay()
  }
  return { places: left, metres }
}

/**
 * Of each point the largest tolerance with which it stays: which point is farthest hangs on no tolerance, so one walk tells all
 * of them. Long lines are walked along in pieces, whose ends stay whatever the tolerance.
 */
function worthOf(points: Float64Array): Float64Array {
  const last = points.length / 2 - 1
  const worth = new Float64Array(last + 1)
  const open: (readonly [from: number, to: number, worth: number])[] = []
  for (let from = 0; from < last; from += PIECE) open.push([from, Math.min(last, from + PIECE), Infinity])
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const [from, to, above] = next
    if (worth[from] === 0) worth[from] = above
    if (worth[to] === 0) worth[to] = above
    const place = farthest(points, from, to, 0)
    if (place < 0) continue
    // It can stay only where those stay whose line it strays from.
    const own = Math.min(above, distanceFrom(points, from, to, place))
    worth[place] = own
    open.push([from, place, own], [place, to, own])
  }
  return worth
}

function distanceFrom(points: Float64Array, from: number, to: number, place: number): number {
  const [startX, startY] = [points[from * 2] ?? 0, points[from * 2 + 1] ?? 0]
  const runX = (points[to * 2] ?? 0) - startX
  const runY = (points[to * 2 + 1] ?? 0) - startY
  const length = Math.hypot(runX, runY)
  const [x, y] = [(points[place * 2] ?? 0) - startX, (points[place * 2 + 1] ?? 0) - startY]
  return length === 0 ? Math.hypot(x, y) : Math.abs(x * runY - y * runX) / length
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
