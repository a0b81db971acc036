/** What of the sketch map lies under a place and can be taken over as drawn ground: a stretch of a way, or an area. */
import { type LatLon, latLon } from '#core/geo/lat-lon.ts'
import { simplifiedPlaces } from '#core/geo/simplify.ts'
import { type DrawnShape, type DrawnSort, shapeFault, withoutRepeats } from '#core/record/drawn-ground.ts'
import type { KeepOutKind } from '#core/record/keep-out.ts'
import type { SketchFeature, SketchIndex } from './sketch-index.ts'
import { type WorldBox, boxesMeet, grown, latitudeAt, worldX, worldY } from './world.ts'

/** Kinds on which a subject can stop, and what the others keep out as; ways are met before areas. */
const STOPPING: readonly string[] = ['road', 'minor', 'track', 'path', 'bridge', 'quay']
const KEEPING_OUT: Readonly<Record<string, KeepOutKind>> = {
  road: 'carriageway',
  minor: 'carriageway',
  bridge: 'carriageway',
  track: 'other',
  path: 'other',
  stream: 'water',
  lake: 'water',
  field: 'crops',
  building: 'other',
}
/** Ways that meet at junctions. */
const WAYS: readonly string[] = ['road', 'minor', 'track', 'path', 'bridge']

/** The zoom whose shape is taken: finer is not drawn again. */
const SHAPE_ZOOM = 17
/** Segments within which a press lies at a junction itself: then the stretches on both sides of it are meant. */
const AT_ONE = 1e-6
/** Metres that the points left out may lie beside the way. */
const OFF = 0.25

export interface WayUnder {
  /** The sketch map's own word for what it is. */
  readonly feature: string
  readonly kind: KeepOutKind
  /** Its name on the map; empty when it has none. */
  readonly name: string
  readonly shape: DrawnShape
}

interface Spotted {
  readonly segment: number
  /** Along the segment, 0 to 1. */
  readonly share: number
  readonly distance: number
}

function at(points: Float64Array, index: number): readonly [number, number] {
  return [points[index * 2] ?? 0, points[index * 2 + 1] ?? 0]
}

function nearestOn(points: Float64Array, x: number, y: number): Spotted {
  let best: Spotted = { segment: 0, share: 0, distance: Infinity }
  for (let segment = 0; segment < points.length / 2 - 1; segment++) {
    const [fromX, fromY] = at(points, segment)
    const [toX, toY] = at(points, segment + 1)
    const [runX, runY] = [toX - fromX, toY - fromY]
    const square = runX * runX + runY * runY
    const along = square === 0 ? 0 : ((x - fromX) * runX + (y - fromY) * runY) / square
    const share = Math.max(0, Math.min(1, along))
    const distance = Math.hypot(fromX + runX * share - x, fromY + runY * share - y)
    if (distance < best.distance) best = { segment, share, distance }
  }
  return best
}

function holdsPoint(ring: Float64Array, x: number, y: number): boolean {
  let inside = false
  const count = ring.length / 2
  for (let place = 0; place < count; place++) {
    const [fromX, fromY] = at(ring, place)
    const [toX, toY] = at(ring, (place + 1) % count)
    if (fromY > y !== toY > y && x < fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX)) inside = !inside
  }
  return inside
}

/** Positions along a way, in segments, at which another way meets it. */
function junctions(index: SketchIndex, way: SketchFeature, drawn: Float64Array): number[] {
  const others = WAYS.flatMap((kind) => index.within(kind, way.box)).filter((other) => other !== way)
  const met = new Set<string>()
  for (const { raw } of others)
    for (const line of raw) for (let n = 0; n < line.length; n += 2) met.add(corner(line, n))
  const [line] = way.raw
  if (line === undefined) return []
  const found: number[] = []
  for (let n = 0; n < line.length; n += 2) {
    if (!met.has(corner(line, n))) continue
    const { segment, share } = nearestOn(drawn, line[n] ?? 0, line[n + 1] ?? 0)
    found.push(segment + share)
  }
  return found
}

/** Ways that meet share a corner in the data: the same to some centimetres. */
function corner(line: Float64Array, n: number): string {
  return `${Math.round((line[n] ?? 0) * 1e9)},${Math.round((line[n + 1] ?? 0) * 1e9)}`
}

function between(points: Float64Array, position: number): readonly [number, number] {
  const segment = Math.min(Math.floor(position), points.length / 2 - 2)
  const share = position - segment
  const [fromX, fromY] = at(points, segment)
  const [toX, toY] = at(points, segment + 1)
  return [fromX + (toX - fromX) * share, fromY + (toY - fromY) * share]
}

/** The farthest position from `start` toward an end at which the way is still in the window. */
function farthestSeen(points: Float64Array, start: number, step: 1 | -1, window: WorldBox): number {
  const last = points.length / 2 - 1
  let position = start
  const inWindow = ([x, y]: readonly [number, number]): boolean =>
    boxesMeet({ west: x, east: x, north: y, south: y }, window)
  while (position !== (step === 1 ? last : 0)) {
    const next = step === 1 ? Math.floor(position) + 1 : Math.ceil(position) - 1
    if (!inWindow(at(points, next))) return lastSeen(points, position, next, (point) => inWindow(point))
    position = next
  }
  return position
}

/** Halved until a pixel's fraction: the edge of the window between a position in it and one beyond it. */
function lastSeen(
  points: Float64Array,
  inside: number,
  beyond: number,
  seen: (point: readonly [number, number]) => boolean,
): number {
  let [near, far] = [inside, beyond]
  for (let round = 0; round < 20; round++) {
    const middle = (near + far) / 2
    if (seen(between(points, middle))) near = middle
    else far = middle
  }
  return near
}

function placesOf(positions: readonly (readonly [number, number])[]): LatLon[] {
  return positions.map(([x, y]) => latLon(latitudeAt(y), (x - 0.5) * 360))
}

function stretch(points: Float64Array, spotted: Spotted, cuts: readonly number[], window: WorldBox): LatLon[] {
  const here = spotted.segment + spotted.share
  const from = Math.max(farthestSeen(points, here, -1, window), ...cuts.filter((cut) => cut < here - AT_ONE))
  const to = Math.min(farthestSeen(points, here, 1, window), ...cuts.filter((cut) => cut > here + AT_ONE))
  const inner: (readonly [number, number])[] = []
  for (let place = Math.floor(from) + 1; place < to; place++) inner.push(at(points, place))
  return placesOf([between(points, from), ...inner, between(points, to)])
}

/**
 * The way or area under a place, as a sort of drawn ground; null when nothing there can be taken over. `reach` and `window`
 * are in world coordinates. Of a way to stop on it is the stretch between the junctions about the place, of one that keeps
 * out all of it; either only as far as the window shows it.
 */
export function wayUnder(
  index: SketchIndex,
  sort: DrawnSort,
  place: LatLon,
  reach: number,
  window: WorldBox,
): WayUnder | null {
  const [x, y] = [worldX(place.lon), worldY(place.lat)]
  const around = grown({ west: x, east: x, north: y, south: y }, reach)
  const kinds = sort === 'stopping' ? STOPPING : Object.keys(KEEPING_OUT)
  const features = kinds.flatMap((kind) => index.within(kind, around))
  const drawn = (feature: SketchFeature): Float64Array =>
    index.shape(feature, SHAPE_ZOOM)[0]?.points ?? new Float64Array()
  const ways = features
    .filter(({ area }) => !area)
    .map((feature) => ({ feature, spotted: nearestOn(drawn(feature), x, y) }))
    .filter(({ spotted }) => spotted.distance <= reach)
    .toSorted((one, other) => one.spotted.distance - other.spotted.distance)
  const [way] = ways
  if (way !== undefined) {
    const line = drawn(way.feature)
    const cuts = sort === 'stopping' ? junctions(index, way.feature, line) : []
    return wayTaken(way.feature, { form: 'line', points: stretch(line, way.spotted, cuts, window) })
  }
  const inside = features.find((feature) => feature.area && holdsPoint(drawn(feature), x, y))
  if (inside === undefined) return null
  const ring = drawn(inside)
  return wayTaken(inside, {
    form: 'area',
    points: placesOf(Array.from({ length: ring.length / 2 }, (_, n) => at(ring, n))),
  })
}

function wayTaken(feature: SketchFeature, whole: DrawnShape): WayUnder | null {
  const shape = { form: whole.form, points: simplifiedPlaces(withoutRepeats(whole), OFF) }
  if (shapeFault(shape) !== null) return null
  const name = feature.properties['name']
  return {
    feature: feature.kind,
    kind: KEEPING_OUT[feature.kind] ?? 'other',
    name: typeof name === 'string' ? name : '',
    shape,
  }
}
