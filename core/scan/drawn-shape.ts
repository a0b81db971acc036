/** Drawn lines and areas in metres on the plane that touches the ground at a place: insides, distances, crossings. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type LocalFrame, localFrame, placeUnder, toEarth, toLocal } from '#core/geo/local-frame.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'

/** Metres east and north of the place at which the plane touches. */
export interface PlanePoint {
  readonly east: number
  readonly north: number
}

export type PlaneShape = readonly PlanePoint[]

/** The plane at a place. */
export function planeAt(at: LatLon): LocalFrame {
  return localFrame(at, 0)
}

export function onPlane(plane: LocalFrame, at: LatLon): PlanePoint {
  const { east, north } = toLocal(plane, localFrame(at, 0).origin)
  return { east, north }
}

/** The place under a point of the plane; within a centimetre some kilometres from where it touches. */
export function offPlane(plane: LocalFrame, east: number, north: number): LatLon {
  return placeUnder(toEarth(plane, east, north, -(east * east + north * north) / (2 * MEAN_EARTH_RADIUS)))
}

/** The place so many metres from where the plane touches, toward a bearing. */
export function awayFrom(plane: LocalFrame, bearing: number, distance: number): LatLon {
  const turn = bearing * RADIANS_PER_DEGREE
  return offPlane(plane, Math.sin(turn) * distance, Math.cos(turn) * distance)
}

/** Calls with both ends of each side of a line, or of a ring, which is closed. */
function someSide(shape: PlaneShape, closed: boolean, test: (from: PlanePoint, to: PlanePoint) => boolean): boolean {
  const count = closed ? shape.length : shape.length - 1
  for (let index = 0; index < count; index++) {
    const from = shape[index]
    const to = shape[(index + 1) % shape.length]
    if (from !== undefined && to !== undefined && test(from, to)) return true
  }
  return false
}

/** Whether a ring holds a point, by the even-odd rule. */
export function holds(ring: PlaneShape, { east, north }: PlanePoint): boolean {
  let inside = false
  someSide(ring, true, (from, to) => {
    if (from.north > north !== to.north > north) {
      const share = (north - from.north) / (to.north - from.north)
      if (east < from.east + share * (to.east - from.east)) inside = !inside
    }
    return false
  })
  return inside
}

function squaredDistance(point: PlanePoint, from: PlanePoint, to: PlanePoint): number {
  const [east, north] = [to.east - from.east, to.north - from.north]
  const squared = east * east + north * north
  const along = squared > 0 ? ((point.east - from.east) * east + (point.north - from.north) * north) / squared : 0
  const share = Math.min(1, Math.max(0, along))
  const [offEast, offNorth] = [from.east + share * east - point.east, from.north + share * north - point.north]
  return offEast * offEast + offNorth * offNorth
}

/** Whether a point lies within so many metres of a line. */
export function within(line: PlaneShape, point: PlanePoint, metres: number): boolean {
  return someSide(line, false, (from, to) => squaredDistance(point, from, to) <= metres * metres)
}

function turn(one: PlanePoint, other: PlanePoint, third: PlanePoint): number {
  return (other.east - one.east) * (third.north - one.north) - (other.north - one.north) * (third.east - one.east)
}

/** Whether two straight stretches meet. */
function meet(a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): boolean {
  const [first, second] = [turn(a, b, c), turn(a, b, d)]
  const [third, fourth] = [turn(c, d, a), turn(c, d, b)]
  if (first === 0 && second === 0)
    return [c, d].some((end) => squaredDistance(end, a, b) === 0) || squaredDistance(a, c, d) === 0
  return first * second <= 0 && third * fourth <= 0
}

/** Whether the way between two points meets a line or a ring's outline. */
export function crosses(shape: PlaneShape, closed: boolean, one: PlanePoint, other: PlanePoint): boolean {
  return someSide(shape, closed, (from, to) => meet(one, other, from, to))
}

/** Square metres. */
export function areaOf(ring: PlaneShape): number {
  let twice = 0
  someSide(ring, true, (from, to) => {
    twice += from.east * to.north - to.east * from.north
    return false
  })
  return Math.abs(twice) / 2
}

export interface PlaneBox {
  readonly west: number
  readonly east: number
  readonly south: number
  readonly north: number
}

/** The box around points, wider by a margin all round. */
export function planeBoxAround(shape: PlaneShape, margin = 0): PlaneBox {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const point of shape) {
    west = Math.min(west, point.east - margin)
    east = Math.max(east, point.east + margin)
    south = Math.min(south, point.north - margin)
    north = Math.max(north, point.north + margin)
  }
  return { west, east, south, north }
}
