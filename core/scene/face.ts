/** The sides of things: flat faces of subject and landmark, each with the direction it looks toward. */
import { type LocalFrame, type LocalPoint, localFrame, toEarth, toLocal } from '#core/geo/local-frame.ts'
import { degrees, wrapBearing } from '#core/units/angle.ts'
import { subjectPoint } from './box.ts'
import type { Building, Landmark, SpanLandmark, Summit, Upright } from './landmark.ts'
import { landmarkPoints } from './landmark.ts'
import { UPRIGHT_TAPER } from './bounding-points.ts'
import type { Subject } from './subject.ts'

export interface ThingFace {
  /** The same for the same side whenever the thing keeps its points: 'front', 'facet-5', 'segment-0-left', 'side-3', 'roof'. */
  readonly id: string
  /** Bearing it looks toward, 0..360; null for one that looks up. */
  readonly bearing: number | null
  /** A side, not a roof or top. The sloping flanks of a summit are sides. */
  readonly upright: boolean
  /** Unit, outward; in the thing's frame. */
  readonly normal: LocalPoint
  /** Metres in the thing's frame, anticlockwise seen from outside. */
  readonly corners: readonly LocalPoint[]
  /** Square metres. */
  readonly area: number
}

export interface PlacedFaces {
  /** At the landmark's first point, at its foot. */
  readonly frame: LocalFrame
  readonly faces: readonly ThingFace[]
}

/** Into how many flat faces a round thing is cut; the first looks north, the others follow clockwise. */
const ROUND_FACES = 16
/** Square metres below which a side is none: two corners at one place. */
const LEAST_AREA = 1e-6
/** Metres: a footprint thinner than this all along has no sides. Points along one parallel bow out by less. */
const LEAST_THICKNESS = 0.01
/** Metres: a segment shorter than this has no direction. */
const LEAST_LENGTH = 1e-3

/** Normal and area by Newell's sum over the edges, which also serves corners that are not quite in one plane. */
function addFace(faces: ThingFace[], id: string, upright: boolean, corners: readonly LocalPoint[]): void {
  let east = 0
  let north = 0
  let up = 0
  let from = corners.at(-1)
  if (from === undefined) return
  for (const to of corners) {
    east += (from.north - to.north) * (from.up + to.up)
    north += (from.up - to.up) * (from.east + to.east)
    up += (from.east - to.east) * (from.north + to.north)
    from = to
  }
  const twice = Math.sqrt(east * east + north * north + up * up)
  if (twice < 2 * LEAST_AREA) return
  const normal = { east: east / twice, north: north / twice, up: up / twice }
  const bearing = upright ? wrapBearing(degrees(Math.atan2(east, north))) : null
  faces.push({ id, bearing, upright, normal, corners, area: twice / 2 })
}

/** The box around the subject, in the frame of the place where it stops. Left and right are its own, looking ahead. */
export function subjectFaces(subject: Subject, heading: number): ThingFace[] {
  const ahead = subject.length / 2
  const right = subject.width / 2
  const at = (forward: number, aside: number): [low: LocalPoint, high: LocalPoint] => [
    subjectPoint(heading, forward, aside, 0),
    subjectPoint(heading, forward, aside, subject.height),
  ]
  const frontRight = at(ahead, right)
  const frontLeft = at(ahead, -right)
  const rearLeft = at(-ahead, -right)
  const rearRight = at(-ahead, right)
  const faces: ThingFace[] = []
  addWall(faces, 'front', frontRight, frontLeft)
  addWall(faces, 'rear', rearLeft, rearRight)
  addWall(faces, 'left', frontLeft, rearLeft)
  addWall(faces, 'right', rearRight, frontRight)
  addFace(faces, 'top', false, [frontRight[1], frontLeft[1], rearLeft[1], rearRight[1]])
  return faces
}

type Post = readonly [low: LocalPoint, high: LocalPoint]

/** A wall between two upright posts, the first of them on the left as seen from outside. */
function addWall(faces: ThingFace[], id: string, left: Post, right: Post): void {
  addFace(faces, id, true, [left[0], right[0], right[1], left[1]])
}

/** Corner `index` of a level ring: corners lie half a face before and after the bearing that a face looks toward. */
function ringCorner(index: number, radius: number, up: number): LocalPoint {
  const turn = ((index - 0.5) / ROUND_FACES) * 2 * Math.PI
  return { east: Math.sin(turn) * radius, north: Math.cos(turn) * radius, up }
}

function uprightFaces(upright: Upright): ThingFace[] {
  const foot = upright.width / 2
  const post = (index: number): Post => [
    ringCorner(index, foot, 0),
    ringCorner(index, foot * UPRIGHT_TAPER, upright.height),
  ]
  const faces: ThingFace[] = []
  for (let index = 0; index < ROUND_FACES; index++) addWall(faces, `facet-${index}`, post(index + 1), post(index))
  return faces
}

function summitFaces(summit: Summit): ThingFace[] {
  const radius = summit.width / 2
  const top = { east: 0, north: 0, up: summit.height }
  const faces: ThingFace[] = []
  for (let index = 0; index < ROUND_FACES; index++)
    addFace(faces, `flank-${index}`, true, [ringCorner(index + 1, radius, 0), ringCorner(index, radius, 0), top])
  return faces
}

/** A post at a place given in a frame of its own, told in the thing's frame: it stands upright where it is. */
function postAt(thing: LocalFrame, own: LocalFrame, east: number, north: number, height: number): Post {
  return [toLocal(thing, toEarth(own, east, north, 0)), toLocal(thing, toEarth(own, east, north, height))]
}

interface Segment {
  readonly index: number
  readonly leftStart: Post
  readonly rightStart: Post
  readonly leftEnd: Post
  readonly rightEnd: Post
}

/** Segments that have a direction; each is offset square to itself, so that its sides look exactly square to its line. */
function spanSegments(span: SpanLandmark, base: number, thing: LocalFrame): Segment[] {
  const half = span.width / 2
  const frames = span.line.map((at) => localFrame(at, base))
  return frames.slice(1).flatMap((end, index) => {
    const start = frames[index]
    if (start === undefined) return []
    const ahead = toLocal(start, end.origin)
    const length = Math.hypot(ahead.east, ahead.north)
    if (length < LEAST_LENGTH) return []
    const back = toLocal(end, start.origin)
    const backLength = Math.hypot(back.east, back.north)
    const [east, north] = [(ahead.north / length) * half, (-ahead.east / length) * half]
    const [eastEnd, northEnd] = [(-back.north / backLength) * half, (back.east / backLength) * half]
    return {
      index,
      leftStart: postAt(thing, start, -east, -north, span.height),
      rightStart: postAt(thing, start, east, north, span.height),
      leftEnd: postAt(thing, end, -eastEnd, -northEnd, span.height),
      rightEnd: postAt(thing, end, eastEnd, northEnd, span.height),
    }
  })
}

/**
 * Both long sides of each segment, left and right of the line's direction. A suspension bridge or a girder counts as the plane
 * of its towers and cables, from the foot to the full height, though most of that plane is air: light strikes what is in it at
 * the same angle. A wall has its two ends and its top besides.
 */
function spanFaces(span: SpanLandmark, base: number, thing: LocalFrame): ThingFace[] {
  const segments = spanSegments(span, base, thing)
  const faces: ThingFace[] = []
  for (const { index, leftStart, rightStart, leftEnd, rightEnd } of segments) {
    addWall(faces, `segment-${index}-left`, leftEnd, leftStart)
    addWall(faces, `segment-${index}-right`, rightStart, rightEnd)
    if (span.form === 'wall')
      addFace(faces, `segment-${index}-roof`, false, [leftStart[1], rightStart[1], rightEnd[1], leftEnd[1]])
  }
  const first = segments[0]
  const last = segments.at(-1)
  if (span.form !== 'wall' || first === undefined || last === undefined) return faces
  addWall(faces, 'end-0', first.leftStart, first.rightStart)
  addWall(faces, 'end-1', last.rightEnd, last.leftEnd)
  return faces
}

/** Twice the area within a ring of posts (anticlockwise positive), and its perimeter. */
function measureRing(posts: readonly Post[]): { twice: number; perimeter: number } {
  let twice = 0
  let perimeter = 0
  let from = posts.at(-1)
  for (const to of posts) {
    if (from !== undefined) {
      twice += from[0].east * to[0].north - to[0].east * from[0].north
      perimeter += Math.hypot(to[0].east - from[0].east, to[0].north - from[0].north)
    }
    from = to
  }
  return { twice, perimeter }
}

/** A side for every edge, numbered by the corner it begins at, whichever way round the corners were set; and the roof. */
function buildingFaces(building: Building, base: number, thing: LocalFrame): ThingFace[] {
  const posts = building.footprint.map((at) => postAt(thing, localFrame(at, base), 0, 0, building.height))
  const { twice, perimeter } = measureRing(posts)
  if (posts.length < 3 || Math.abs(twice) <= LEAST_THICKNESS * perimeter) return []
  const faces: ThingFace[] = []
  posts.forEach((post, index) => {
    const next = posts[(index + 1) % posts.length] ?? post
    if (twice > 0) addWall(faces, `side-${index}`, post, next)
    else addWall(faces, `side-${index}`, next, post)
  })
  const roof = posts.map(([, high]) => high)
  addFace(faces, 'roof', false, twice > 0 ? roof : roof.toReversed())
  return faces
}

/**
 * The landmark's faces; `base` is the foot's height in metres above the ellipsoid. Null when it has no place; no faces when its
 * points bound nothing: a footprint without area, a span whose points are all at one place.
 */
export function landmarkFaces(landmark: Landmark, base: number): PlacedFaces | null {
  const [first] = landmarkPoints(landmark)
  if (first === undefined) return null
  const frame = localFrame(first, base)
  if (landmark.kind === 'upright') return { frame, faces: uprightFaces(landmark) }
  if (landmark.kind === 'summit') return { frame, faces: summitFaces(landmark) }
  if (landmark.kind === 'span') return { frame, faces: spanFaces(landmark, base, frame) }
  return { frame, faces: buildingFaces(landmark, base, frame) }
}
