/** The landmark's bounding points: the points in space that bound it, from which its place and share in the frame are read. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type EarthPoint, type LocalFrame, localFrame, placeUnder, toEarth, toLocal } from '#core/geo/local-frame.ts'
import { keptWith } from '#core/kept-with.ts'
import type { Building, Landmark, SpanLandmark, Summit, Upright } from './landmark.ts'

const RING = 32
/** Diameter of an upright's top as a part of its foot's (common practice, no source: towers and lighthouses taper a little). */
export const UPRIGHT_TAPER = 0.6

/** Unit circle, east then north, shared by every ring. */
const CIRCLE: readonly (readonly [number, number])[] = Array.from({ length: RING }, (_, index) => {
  const turn = (index / RING) * 2 * Math.PI
  return [Math.sin(turn), Math.cos(turn)] as const
})

/** A ring of points around a frame's origin. */
export function circlePoints(frame: LocalFrame, radius: number, up: number): EarthPoint[] {
  return CIRCLE.map(([east, north]) => toEarth(frame, east * radius, north * radius, up))
}

/** Where a span carries piers or towers: its inner points, or its two ends when it has none. */
export function pierIndexes(span: SpanLandmark): number[] {
  if (span.line.length === 2) return [0, 1]
  return span.line.slice(1, -1).map((_, index) => index + 1)
}

/** Height above the foot to which a span rises at each of its points. */
export function spanTops(span: SpanLandmark): number[] {
  if (span.form !== 'suspension') return span.line.map(() => span.height)
  const piers = new Set(pierIndexes(span))
  return span.line.map((_, index) => (piers.has(index) ? span.height : span.deckHeight))
}

/** For each point of a span: its frame at the foot, and the unit vector across the span (east, north), to the right of its direction. */
export function spanStations(
  span: SpanLandmark,
  base: number,
): { frame: LocalFrame; across: readonly [number, number] }[] {
  const frames = span.line.map((at) => localFrame(at, base))
  return frames.map((frame, index) => {
    const next = frames[Math.min(index + 1, frames.length - 1)]
    const previous = frames[Math.max(index - 1, 0)]
    if (next === undefined || previous === undefined) return { frame, across: [1, 0] as const }
    const ahead = toLocal(frame, next.origin)
    const back = toLocal(frame, previous.origin)
    const east = ahead.east - back.east
    const north = ahead.north - back.north
    const length = Math.hypot(east, north)
    return { frame, across: length > 0 ? ([north / length, -east / length] as const) : ([1, 0] as const) }
  })
}

function uprightPoints(upright: Upright, base: number): EarthPoint[] {
  const frame = localFrame(upright.at, base)
  const radius = upright.width / 2
  return [...circlePoints(frame, radius, 0), ...circlePoints(frame, radius * UPRIGHT_TAPER, upright.height)]
}

function summitPoints(summit: Summit, base: number): EarthPoint[] {
  const frame = localFrame(summit.at, base)
  return [...circlePoints(frame, summit.width / 2, 0), toEarth(frame, 0, 0, summit.height)]
}

function spanPoints(span: SpanLandmark, base: number): EarthPoint[] {
  const tops = spanTops(span)
  const half = span.width / 2
  return spanStations(span, base).flatMap(({ frame, across }, index) =>
    [-half, half].flatMap((aside) =>
      [0, tops[index] ?? span.height].map((up) => toEarth(frame, across[0] * aside, across[1] * aside, up)),
    ),
  )
}

function buildingPoints(building: Building, base: number): EarthPoint[] {
  return building.footprint.flatMap((at) => {
    const frame = localFrame(at, base)
    return [frame.origin, toEarth(frame, 0, 0, building.height)]
  })
}

function pointsOf(landmark: Landmark, base: number): EarthPoint[] {
  if (landmark.kind === 'upright') return uprightPoints(landmark, base)
  if (landmark.kind === 'summit') return summitPoints(landmark, base)
  if (landmark.kind === 'span') return spanPoints(landmark, base)
  return buildingPoints(landmark, base)
}

/**
 * The bounding points, earth-centred; `base` is the foot's height in metres above the ellipsoid. Never empty. Laid once for as long as
 * the landmark stays as it is.
 */
export const landmarkBoundingPoints: (landmark: Landmark, base: number) => readonly EarthPoint[] = keptWith(pointsOf)

const middles = new WeakMap<readonly LatLon[], LatLon>()

/**
 * The landmark's middle on the ground, to which its sightline is drawn: mean of its points, wrapped about the first. Found once for each
 * list of points: every part of an assessment asks for it.
 */
export function landmarkMiddle(points: readonly LatLon[]): LatLon | null {
  const [first] = points
  if (first === undefined) return null
  if (points.length === 1) return first
  const known = middles.get(points)
  if (known !== undefined) return known
  const middle = meanOf(points, first)
  middles.set(points, middle)
  return middle
}

function meanOf(points: readonly LatLon[], first: LatLon): LatLon {
  const frame = localFrame(first, 0)
  let east = 0
  let north = 0
  let up = 0
  for (const at of points) {
    const local = toLocal(frame, localFrame(at, 0).origin)
    east += local.east
    north += local.north
    up += local.up
  }
  const count = points.length
  return placeOf(frame, east / count, north / count, up / count)
}

function placeOf(frame: LocalFrame, east: number, north: number, up: number): LatLon {
  return placeUnder(toEarth(frame, east, north, up))
}
