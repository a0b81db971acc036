/** The painter's order: items of a solid as the camera has them, back to front, those that face away left out, each with its shade. */
import type { CameraPoint } from '#core/frame/projection.ts'
import type { Block, Face, Item, Material, Solid } from '#core/scene/solid.ts'
import { type Lighting, toneStep } from './lighting.ts'
import type { See } from './camera-transform.ts'

export interface PictureFace {
  readonly kind: 'face'
  readonly material: Material
  readonly shade: number
  readonly points: readonly CameraPoint[]
}

export interface SeenRod {
  readonly kind: 'rod'
  readonly material: Material
  readonly shade: number
  readonly points: readonly CameraPoint[]
  readonly widths: readonly number[]
  readonly closed: boolean
}

export interface SeenBall {
  readonly kind: 'ball'
  readonly material: Material
  readonly shade: number
  readonly centre: CameraPoint
  readonly radius: number
}

export type SeenItem = PictureFace | SeenRod | SeenBall

/** Items of one part, in order, and the depth of its middle along the axis, metres. */
export interface SeenPart {
  readonly depth: number
  readonly items: readonly SeenItem[]
}

/** What every item is seen by. */
interface Look {
  readonly see: See
  readonly lighting: Lighting
}

/** Parts from far to near. */
export function paintOrder(solid: Solid, see: See, lighting: Lighting): SeenPart[] {
  return ordered(solid, { see, lighting }).flatMap(({ parts }) => parts)
}

interface Ranked {
  readonly range: number
  readonly parts: readonly SeenPart[]
}

function ordered(solid: Solid, look: Look): Ranked[] {
  return solid.map((block) => rank(block, look)).toSorted((one, other) => other.range - one.range)
}

function rank(block: Block, look: Look): Ranked {
  if (block.kind === 'part') return rankItems(block.items, look)
  const { see } = look
  const foot = see(block.at)
  const tip = see({
    east: block.at.east + block.normal.east,
    north: block.at.north + block.normal.north,
    up: block.at.up + block.normal.up,
  })
  // The lens is the origin: it lies on the front side when the normal points toward it.
  const toward =
    (tip.right - foot.right) * foot.right + (tip.up - foot.up) * foot.up + (tip.depth - foot.depth) * foot.depth
  const front = ordered(block.front, look)
  const back = ordered(block.back, look)
  const inOrder = toward < 0 ? [...back, ...front] : [...front, ...back]
  const range = inOrder.reduce((sum, one) => sum + one.range, 0) / Math.max(1, inOrder.length)
  return { range, parts: inOrder.flatMap(({ parts }) => parts) }
}

interface Placed {
  readonly range: number
  readonly depth: number
  readonly seen: readonly SeenItem[]
}

function rankItems(items: readonly Item[], look: Look): Ranked {
  const placed = items.map((item) => placeItem(item, look))
  let range = 0
  let depth = 0
  for (const one of placed) {
    range += one.range / placed.length
    depth += one.depth / placed.length
  }
  placed.sort((one, other) => other.range - one.range)
  return { range, parts: [{ depth, items: placed.flatMap(({ seen }) => seen) }] }
}

function middleOf(points: readonly CameraPoint[]): CameraPoint {
  let right = 0
  let up = 0
  let depth = 0
  for (const point of points) {
    right += point.right
    up += point.up
    depth += point.depth
  }
  const count = points.length
  return { right: right / count, up: up / count, depth: depth / count }
}

function placeItem(item: Item, look: Look): Placed {
  const { material } = item
  const { see, lighting } = look
  const shade = lighting.round
  if (item.kind === 'ball') {
    const centre = see(item.centre)
    return placedAt(centre, [{ kind: 'ball', material, shade, centre, radius: item.radius }])
  }
  const points = item.points.map(see)
  const middle = middleOf(points)
  if (item.kind === 'face') return placedAt(middle, seenFaces(item, points, middle, look))
  const { widths, closed } = item
  return placedAt(middle, [{ kind: 'rod', material, shade, points, widths, closed }])
}

function placedAt(middle: CameraPoint, seen: readonly SeenItem[]): Placed {
  return { range: Math.hypot(middle.right, middle.up, middle.depth), depth: middle.depth, seen }
}

/** The face and what is painted on it; nothing when it looks away. */
function seenFaces(face: Face, points: readonly CameraPoint[], middle: CameraPoint, look: Look): PictureFace[] {
  const normal = normalOf(points)
  const toward = normal.right * middle.right + normal.up * middle.up + normal.depth * middle.depth
  if (toward >= 0) return []
  const shade = toneStep(normal, look.lighting)
  const own: PictureFace = { kind: 'face', material: face.material, shade, points }
  const painted = face.painted ?? []
  return [
    own,
    ...painted.map((one): PictureFace => ({
      kind: 'face',
      material: one.material,
      shade,
      points: one.points.map(look.see),
    })),
  ]
}

/**
 * Outward normal, of length twice the area (Newell's sum, good for corners not quite in one plane). Right, up and depth
 * are a left-handed set, whence the sign.
 */
export function normalOf(points: readonly CameraPoint[]): CameraPoint {
  let right = 0
  let up = 0
  let depth = 0
  let before = points.at(-1)
  for (const point of points) {
    if (before === undefined) break
    right -= (before.up - point.up) * (before.depth + point.depth)
    up -= (before.depth - point.depth) * (before.right + point.right)
    depth -= (before.right - point.right) * (before.up + point.up)
    before = point
  }
  return { right, up, depth }
}
