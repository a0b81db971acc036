/** Shadows that the sun casts on level ground: every part of a thing along the sun's way, then as the camera sees them lying. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { shadowOf } from '#core/light/shadow.ts'
import { type Ball, type Face, type Item, type Part, type Rod, type Solid, solidBounds } from '#core/scene/solid.ts'

/** An area on the ground of the thing's own frame. */
type Shade = readonly LocalPoint[]

/** A shadow's part, and how thick the thing is that casts it, metres; null for one with an extent of its own. */
export interface CastPart {
  readonly shade: Shade
  readonly thick: number | null
}

const ROUND = 12
/** A part counts as convex when no point of it stands out over the plane of a face by more than this share of its size. */
const BULGE = 0.04

function cross(a: LocalPoint, b: LocalPoint): LocalPoint {
  return {
    east: a.north * b.up - a.up * b.north,
    north: a.up * b.east - a.east * b.up,
    up: a.east * b.north - a.north * b.east,
  }
}

function dot(a: LocalPoint, b: LocalPoint): number {
  return a.east * b.east + a.north * b.north + a.up * b.up
}

function scaled(a: LocalPoint, by: number): LocalPoint {
  return { east: a.east * by, north: a.north * by, up: a.up * by }
}

function plus(a: LocalPoint, b: LocalPoint): LocalPoint {
  return { east: a.east + b.east, north: a.north + b.north, up: a.up + b.up }
}

/** Outward normal, of length twice the area. (Newell.) */
function normalOf({ points }: Face): LocalPoint {
  let sum: LocalPoint = { east: 0, north: 0, up: 0 }
  let before = points.at(-1)
  for (const point of points) {
    if (before !== undefined) sum = plus(sum, cross(before, point))
    before = point
  }
  return sum
}

/** Where the light carries a point to on the ground. */
function carried(point: LocalPoint, direction: LocalPoint): LocalPoint {
  const reach = Math.max(0, point.up) / direction.up
  return { east: point.east - reach * direction.east, north: point.north - reach * direction.north, up: 0 }
}

function isFace(item: Item): item is Face {
  return item.kind === 'face'
}

const convex = new WeakMap<Part, boolean>()

/** Looked at once for each part of a solid. */
function isConvex(part: Part, faces: readonly Face[]): boolean {
  const known = convex.get(part)
  if (known !== undefined) return known
  const points = faces.flatMap((face) => face.points)
  const made = faces.every((face) => {
    const normal = normalOf(face)
    const length = Math.sqrt(dot(normal, normal))
    const foot = face.points[0]
    if (foot === undefined || length === 0) return true
    const over = points.map((point) => (dot(normal, point) - dot(normal, foot)) / length)
    return Math.max(...over) <= BULGE * -Math.min(...over)
  })
  convex.set(part, made)
  return made
}

/** A convex body's shadow is the hull of its points; any other's is that of all its faces that look to the sun. */
function shadesOfFaces(part: Part, direction: LocalPoint): Shade[] {
  const faces = part.items.filter(isFace)
  if (faces.length === 0) return []
  if (faces.length > 1 && isConvex(part, faces)) {
    const hull = shadowOf(
      faces.flatMap((face) => face.points),
      direction,
    )
    return hull === null ? [] : [hull]
  }
  const turned = faces.filter((face) => dot(normalOf(face), direction) > 0)
  return turned.map((face) => face.points.map((point) => carried(point, direction)))
}

function shadesOfRod({ points, widths, closed }: Rod, direction: LocalPoint): CastPart[] {
  const parts: CastPart[] = []
  for (let index = closed ? 0 : 1; index < points.length; index++) {
    const before = (index + points.length - 1) % points.length
    const [from, to] = [points[before], points[index]]
    const [start, end] = [widths[before] ?? 0, widths[index] ?? 0]
    if (from === undefined || to === undefined) continue
    const across = cross(plus(to, scaled(from, -1)), direction)
    const length = Math.sqrt(dot(across, across))
    // Along the light it has no length.
    if (length === 0) continue
    const side = (point: LocalPoint, width: number): LocalPoint =>
      carried(plus(point, scaled(across, width / 2 / length)), direction)
    const shade = [side(from, start), side(to, end), side(to, -end), side(from, -start)]
    parts.push({ shade, thick: Math.max(start, end) })
  }
  return parts
}

/** Of a ball: the circle around it square to the light. */
function shadeOfBall({ centre, radius }: Ball, direction: LocalPoint): Shade {
  const level = Math.hypot(direction.east, direction.north)
  const aside: LocalPoint =
    level === 0
      ? { east: 1, north: 0, up: 0 }
      : { east: direction.north / level, north: -direction.east / level, up: 0 }
  const along = cross(direction, aside)
  return Array.from({ length: ROUND }, (_, index) => {
    const turn = (index / ROUND) * 2 * Math.PI
    const rim = plus(scaled(aside, radius * Math.cos(turn)), scaled(along, radius * Math.sin(turn)))
    return carried(plus(centre, rim), direction)
  })
}

function castOfPart(part: Part, direction: LocalPoint): CastPart[] {
  const whole = (shade: Shade): CastPart => ({ shade, thick: null })
  return [
    ...shadesOfFaces(part, direction).map(whole),
    ...part.items.flatMap((item) => (item.kind === 'rod' ? shadesOfRod(item, direction) : [])),
    ...part.items.flatMap((item) => (item.kind === 'ball' ? [whole(shadeOfBall(item, direction))] : [])),
  ]
}

function castOfSolid(solid: Solid, direction: LocalPoint): CastPart[] {
  return solid.flatMap((block) =>
    block.kind === 'part'
      ? castOfPart(block, direction)
      : [...castOfSolid(block.back, direction), ...castOfSolid(block.front, direction)],
  )
}

interface Cast {
  readonly direction: LocalPoint
  readonly parts: readonly CastPart[]
}

const casts = new WeakMap<Solid, Cast>()

/**
 * Where a solid's parts cast their shadows on the ground under it; `direction` points toward the sun in the solid's own frame.
 * None when the sun is too low, or the shadow longer, than can be told. Kept while solid and sun stay: a walk around the
 * subject only looks at them from elsewhere.
 */
export function castOf(solid: Solid, direction: LocalPoint): readonly CastPart[] {
  const known = casts.get(solid)
  if (known !== undefined && sameDirection(known.direction, direction)) return known.parts
  const top = { east: 0, north: 0, up: solidBounds(solid).high.up }
  const parts = shadowOf([top], direction) === null ? [] : castOfSolid(solid, direction)
  casts.set(solid, { direction, parts })
  return parts
}

function sameDirection(one: LocalPoint, other: LocalPoint): boolean {
  return one.east === other.east && one.north === other.north && one.up === other.up
}
