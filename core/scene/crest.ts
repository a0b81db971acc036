/** The landmark's crest: its upper edges in space, and how high they appear in one direction from a lens. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import {
  type EarthPoint,
  type LocalFrame,
  type LocalPoint,
  localFrame,
  toEarth,
  toLocal,
} from '#core/geo/local-frame.ts'
import { RADIANS_PER_DEGREE, degrees } from '#core/units/angle.ts'
import type { Landmark, SpanLandmark } from './landmark.ts'
import { UPRIGHT_TAPER, circlePoints, spanStations } from './bounding-points.ts'

export interface CrestEdge {
  readonly from: EarthPoint
  readonly to: EarthPoint
}

/** An edge is met where the direction passes it by no more than this part of its distance, some hundredth of a degree. */
const BESIDE = 2e-4
/** Metres across the direction below which an edge lies along it. */
const ALONG = 1e-6

function edgesAround(points: readonly EarthPoint[]): CrestEdge[] {
  return points.map((from, index) => ({ from, to: points[(index + 1) % points.length] ?? from }))
}

/** Both sides and, for a look along it, a line across at each point. Where a bridge hangs its deck counts, not its towers. */
function spanEdges(span: SpanLandmark, base: number): CrestEdge[] {
  const top = span.form === 'suspension' ? span.deckHeight : span.height
  const half = span.width / 2
  const stations = spanStations(span, base)
  const [left = [], right = []] = [-half, half].map((aside) =>
    stations.map(({ frame, across }) => toEarth(frame, across[0] * aside, across[1] * aside, top)),
  )
  const across = left.map((from, index) => ({ from, to: right[index] ?? from }))
  return [...edgesAround(left).slice(0, -1), ...edgesAround(right).slice(0, -1), ...across]
}

/** `base` is the foot's height in metres above the ellipsoid. */
export function crestEdges(landmark: Landmark, base: number): CrestEdge[] {
  if (landmark.kind === 'span') return spanEdges(landmark, base)
  if (landmark.kind === 'building')
    return edgesAround(landmark.footprint.map((at) => toEarth(localFrame(at, base), 0, 0, landmark.height)))
  const frame = localFrame(landmark.at, base)
  if (landmark.kind === 'upright')
    return edgesAround(circlePoints(frame, (landmark.width / 2) * UPRIGHT_TAPER, landmark.height))
  // A summit is a cone: its crest as seen from anywhere below is its top.
  const top = toEarth(frame, 0, 0, landmark.height)
  return [{ from: top, to: top }]
}

/** East, north, up from the lens, lifted by refraction, k d² / 2R. */
function seen(frame: LocalFrame, point: EarthPoint, refraction: number): LocalPoint {
  const local = toLocal(frame, point)
  const level = local.east * local.east + local.north * local.north
  return { east: local.east, north: local.north, up: local.up + (refraction * level) / (2 * MEAN_EARTH_RADIUS) }
}

/** Where an edge crosses a bearing before the lens; null when it doesn't. */
function crossingOf(one: LocalPoint, other: LocalPoint, sine: number, cosine: number): LocalPoint | null {
  const right = one.east * cosine - one.north * sine
  const rightOther = other.east * cosine - other.north * sine
  const wide = right - rightOther
  const share = Math.abs(wide) < ALONG ? 0 : Math.min(Math.max(right / wide, 0), 1)
  const east = one.east + share * (other.east - one.east)
  const north = one.north + share * (other.north - one.north)
  const ahead = east * sine + north * cosine
  const aside = east * cosine - north * sine
  if (ahead <= 0 || Math.abs(aside) > ahead * BESIDE) return null
  return { east, north, up: one.up + share * (other.up - one.up) }
}

/** All that a bearing crosses before the lens. */
function crossingsOf(edges: readonly CrestEdge[], frame: LocalFrame, bearing: number, refraction: number) {
  const sine = Math.sin(bearing * RADIANS_PER_DEGREE)
  const cosine = Math.cos(bearing * RADIANS_PER_DEGREE)
  const found: LocalPoint[] = []
  for (const { from, to } of edges) {
    const crossing = crossingOf(seen(frame, from, refraction), seen(frame, to, refraction), sine, cosine)
    if (crossing !== null) found.push(crossing)
  }
  return found
}

const levelOf = ({ east, north }: LocalPoint): number => Math.sqrt(east * east + north * north)

/** Degrees above the level of the highest edge that a bearing crosses before the lens; null when it crosses none. */
export function crestAltitude(
  edges: readonly CrestEdge[],
  frame: LocalFrame,
  bearing: number,
  refraction: number,
): number | null {
  const found = crossingsOf(edges, frame, bearing, refraction)
  return found.length === 0 ? null : Math.max(...found.map((one) => degrees(Math.atan2(one.up, levelOf(one)))))
}

/** Metres from the landmark's middle on the ground to its outline along a bearing; 0 where the outline isn't crossed. */
export function outlineDistance(landmark: Landmark, middle: LatLon, bearing: number): number {
  if (landmark.kind === 'upright' || landmark.kind === 'summit') return landmark.width / 2
  const found = crossingsOf(crestEdges(landmark, 0), localFrame(middle, 0), bearing, 0)
  return Math.max(0, ...found.map(levelOf))
}
