/** Which faces of a thing the camera sees in its frame, and how much of the seen area each of them takes. */
import { type LocalFrame, toEarth, toLocal } from '#core/geo/local-frame.ts'
import type { ThingFace } from '#core/scene/face.ts'
import { NEAREST_DEPTH, type View, apparent, toCamera } from './projection.ts'

export interface SeenFace {
  readonly face: ThingFace
  /** Its part of all the seen area of the thing in the frame, 0..1. */
  readonly share: number
}

/**
 * A polygon before the lens as three lists: right and up in half frames at unit depth, and depth, so that the frame's edges are
 * the planes |right| = depth and |up| = depth and cutting comes before dividing.
 */
interface Cut {
  readonly right: number[]
  readonly up: number[]
  readonly depth: number[]
  count: number
}

/** Two polygons used in turns; nothing in them outlives a call. */
const FRONT: Cut = { right: [], up: [], depth: [], count: 0 }
const BACK: Cut = { right: [], up: [], depth: [], count: 0 }

/** Edge planes as inward sums of right, up, depth and a constant: near plane, then the frame's four sides. */
const PLANES = [
  [0, 0, 1, -NEAREST_DEPTH],
  [1, 0, 1, 0],
  [-1, 0, 1, 0],
  [0, 1, 1, 0],
  [0, -1, 1, 0],
] as const

function put(cut: Cut, right: number, up: number, depth: number): void {
  cut.right[cut.count] = right
  cut.up[cut.count] = up
  cut.depth[cut.count] = depth
  cut.count++
}

function place(view: View, frame: LocalFrame, face: ThingFace, refraction: number, into: Cut): void {
  into.count = 0
  const wide = (2 * view.imageDistance) / view.frameWidth
  const high = (2 * view.imageDistance) / view.frameHeight
  for (const corner of face.corners) {
    const seen = toCamera(view, apparent(view.frame, toEarth(frame, corner.east, corner.north, corner.up), refraction))
    put(into, seen.right * wide, seen.up * high, seen.depth)
  }
}

/** Sutherland and Hodgman's cut at one plane; gives back the list that holds the result. */
function cutAt(plane: (typeof PLANES)[number], from: Cut, spare: Cut): Cut {
  const [a, b, c, d] = plane
  const { right, up, depth, count } = from
  let outside = 0
  for (let index = 0; index < count; index++)
    if (a * (right[index] ?? 0) + b * (up[index] ?? 0) + c * (depth[index] ?? 0) + d < 0) outside++
  if (outside === 0) return from
  spare.count = 0
  if (outside === count) return spare
  let x = right[count - 1] ?? 0
  let y = up[count - 1] ?? 0
  let z = depth[count - 1] ?? 0
  let side = a * x + b * y + c * z + d
  for (let index = 0; index < count; index++) {
    const nextX = right[index] ?? 0
    const nextY = up[index] ?? 0
    const nextZ = depth[index] ?? 0
    const nextSide = a * nextX + b * nextY + c * nextZ + d
    if (side < 0 !== nextSide < 0) {
      const along = side / (side - nextSide)
      put(spare, x + (nextX - x) * along, y + (nextY - y) * along, z + (nextZ - z) * along)
    }
    if (nextSide >= 0) put(spare, nextX, nextY, nextZ)
    x = nextX
    y = nextY
    z = nextZ
    side = nextSide
  }
  return spare
}

/** Area in the frame, in quarter frames; anticlockwise positive. */
function areaOf(cut: Cut): number {
  const { right, up, depth, count } = cut
  if (count < 3) return 0
  const lastDepth = depth[count - 1] ?? 1
  let x = (right[count - 1] ?? 0) / lastDepth
  let y = (up[count - 1] ?? 0) / lastDepth
  let twice = 0
  for (let index = 0; index < count; index++) {
    const over = depth[index] ?? 1
    const nextX = (right[index] ?? 0) / over
    const nextY = (up[index] ?? 0) / over
    twice += x * nextY - nextX * y
    x = nextX
    y = nextY
  }
  return twice / 2
}

function areaInFrame(view: View, frame: LocalFrame, face: ThingFace, refraction: number): number {
  place(view, frame, face, refraction, FRONT)
  let cut = FRONT
  for (const plane of PLANES) {
    cut = cutAt(plane, cut, cut === FRONT ? BACK : FRONT)
    if (cut.count === 0) return 0
  }
  return areaOf(cut)
}

/**
 * The faces that look toward the lens and fall at least partly into the frame, in their given order; `frame` is the thing's own.
 * Empty when nothing of it is in the frame. What other faces of the same thing hide is right for convex things; the faces of a
 * concave footprint or of a bent span that stand before each other count whole, and what other things hide isn't taken off.
 */
export function seenFaces(view: View, frame: LocalFrame, faces: readonly ThingFace[], refraction: number): SeenFace[] {
  const lens = toLocal(frame, view.frame.origin)
  const seen: ThingFace[] = []
  const areas: number[] = []
  let all = 0
  for (const face of faces) {
    const { normal } = face
    const [corner] = face.corners
    if (corner === undefined) continue
    const before =
      normal.east * (lens.east - corner.east) +
      normal.north * (lens.north - corner.north) +
      normal.up * (lens.up - corner.up)
    if (before <= 0) continue
    const area = areaInFrame(view, frame, face, refraction)
    if (area <= 0) continue
    seen.push(face)
    areas.push(area)
    all += area
  }
  return seen.map((face, index) => ({ face, share: (areas[index] ?? 0) / all }))
}
