/** Simple shapes from which solids are put together: rods, tyres, boxes and lofts. Points are told ahead, right, up. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { Ball, Divide, Face, Item, Material, Part, Rod, Solid } from '#core/scene/solid.ts'

export function at(ahead: number, right: number, up: number): LocalPoint {
  return { east: right, north: ahead, up }
}

export function part(...items: readonly (Item | readonly Item[])[]): Part {
  return { kind: 'part', items: items.flat() }
}

export function rod(material: Material, width: number, ...points: readonly LocalPoint[]): Rod {
  return { kind: 'rod', material, points, widths: points.map(() => width), closed: false }
}

/** A rod that grows thinner or thicker: pairs of point and width. */
export function limb(material: Material, ...stations: readonly (readonly [LocalPoint, number])[]): Rod {
  return {
    kind: 'rod',
    material,
    points: stations.map(([point]) => point),
    widths: stations.map(([, width]) => width),
    closed: false,
  }
}

export function ball(material: Material, centre: LocalPoint, radius: number): Ball {
  return { kind: 'ball', material, centre, radius }
}

const CORNERS = 40

/** Points of a circle that stands along the length, clockwise seen from the right: up, ahead, down, back. */
export function wheelCircle(ahead: number, right: number, up: number, radius: number, corners = CORNERS): LocalPoint[] {
  return Array.from({ length: corners }, (_, index) => {
    const turn = (index / corners) * 2 * Math.PI
    return at(ahead + radius * Math.sin(turn), right, up + radius * Math.cos(turn))
  })
}

/** A tyre: a closed rod whose outer edge has the given radius. */
export function tyre(ahead: number, right: number, up: number, radius: number, width: number): Rod {
  const points = wheelCircle(ahead, right, up, radius - width / 2)
  return { kind: 'rod', material: 'dark', points, widths: points.map(() => width), closed: true }
}

export function face(material: Material, points: readonly LocalPoint[], painted: readonly Face[] = []): Face {
  return painted.length === 0 ? { kind: 'face', material, points } : { kind: 'face', material, points, painted }
}

/** A profile (ahead, up), clockwise seen from the right, stretched across from `left` to `right`. */
export function extrusion(
  material: Material,
  profile: readonly (readonly [number, number])[],
  left: number,
  right: number,
  painted: { readonly right?: readonly Face[]; readonly left?: readonly Face[] } = {},
): Face[] {
  const rightSide = profile.map(([ahead, up]) => at(ahead, right, up))
  const leftSide = profile.map(([ahead, up]) => at(ahead, left, up))
  return [
    face(material, rightSide.toReversed(), painted.right),
    face(material, leftSide, painted.left),
    ...band(material, leftSide, rightSide),
  ]
}

/** Faces between two closed rows of corners; `near`, seen from its own end, runs clockwise. */
export function band(material: Material, far: readonly LocalPoint[], near: readonly LocalPoint[]): Face[] {
  return near.map((corner, index) => {
    const next = (index + 1) % near.length
    const [a, b, c] = [near[next], far[next], far[index]]
    if (a === undefined || b === undefined || c === undefined) throw new Error('rows of unequal length')
    return face(material, [corner, a, b, c])
  })
}

export function box(
  material: Material,
  ahead: readonly [number, number],
  right: readonly [number, number],
  up: readonly [number, number],
): Face[] {
  const profile = [
    [ahead[0], up[0]],
    [ahead[0], up[1]],
    [ahead[1], up[1]],
    [ahead[1], up[0]],
  ] as const
  return extrusion(material, profile, right[0], right[1])
}

/** One closed row of a loft, lying level: centre ahead and right, height, half measures ahead and right. */
export type LevelRow = readonly [ahead: number, right: number, up: number, halfAhead: number, halfRight: number]

/** A rounded body through level ellipses, from the lowest up, closed at both ends. */
export function column(material: Material, rows: readonly LevelRow[], corners = 14): Face[] {
  const rings = rows.map(([ahead, right, up, halfAhead, halfRight]) =>
    Array.from({ length: corners }, (_, index) => {
      const turn = (index / corners) * 2 * Math.PI
      return at(ahead + halfAhead * Math.cos(turn), right - halfRight * Math.sin(turn), up)
    }),
  )
  return loft(material, rings)
}

/** One closed row of a loft across the length: place ahead, centre right and up, half measures right and up. */
export type CrossRow = readonly [ahead: number, right: number, up: number, halfRight: number, halfUp: number]

/** A rounded body through upright ellipses, from the front back, closed at both ends. */
export function barrel(material: Material, rows: readonly CrossRow[], corners = 14): Face[] {
  const rings = rows.map(([ahead, right, up, halfRight, halfUp]) =>
    Array.from({ length: corners }, (_, index) => {
      const turn = (index / corners) * 2 * Math.PI
      return at(ahead, right - halfRight * Math.sin(turn), up + halfUp * Math.cos(turn))
    }),
  )
  return loft(material, rings)
}

/** Rows between the given ones, on a smooth curve through them (Catmull and Rom), so that a body looks grown, not cut. */
export function smoothed<Row extends readonly number[]>(rows: readonly Row[], between: number): Row[] {
  return rows.slice(1).flatMap((next, index) => {
    const here = rows[index] ?? next
    const before = rows[index - 1] ?? here
    const after = rows[index + 2] ?? next
    const inner = Array.from({ length: between }, (_, step) => {
      const t = (step + 1) / (between + 1)
      return here.map((from, axis) => {
        const [a, b, c] = [before[axis] ?? from, next[axis] ?? from, after[axis] ?? from]
        return from + 0.5 * t * (b - a + t * (2 * a - 5 * from + 4 * b - c + t * (3 * (from - b) + c - a)))
      }) as unknown as Row
    })
    return index === 0 ? [here, ...inner, next] : [...inner, next]
  })
}

/** A body through closed rows of equal count. Seen along the way the rows go, their corners run clockwise. */
export function loft(material: Material, rows: readonly (readonly LocalPoint[])[]): Face[] {
  const first = rows[0]
  const last = rows.at(-1)
  if (first === undefined || last === undefined) return []
  const sides = rows.slice(1).flatMap((row, index) => band(material, row, rows[index] ?? row))
  return [face(material, first.toReversed()), face(material, last), ...sides]
}

export function divide(where: LocalPoint, normal: LocalPoint, front: Solid, back: Solid): Divide {
  return { kind: 'divide', at: where, normal, front, back }
}

/** The same items on the other side. */
export function mirrored(items: readonly Item[]): Item[] {
  return items.map(mirrorItem)
}

function mirrorItem(item: Item): Item {
  const turn = (point: LocalPoint): LocalPoint => ({ ...point, east: -point.east })
  if (item.kind === 'ball') return { ...item, centre: turn(item.centre) }
  if (item.kind === 'rod') return { ...item, points: item.points.map(turn) }
  return mirrorFace(item, turn)
}

function mirrorFace(one: Face, turn: (point: LocalPoint) => LocalPoint): Face {
  const turned = { ...one, points: one.points.map(turn).toReversed() }
  return one.painted === undefined
    ? turned
    : { ...turned, painted: one.painted.map((painted) => mirrorFace(painted, turn)) }
}

/** A patch of a four-cornered face, told by shares along its first side (0..1) and its second (0..1). */
export function patch(
  material: Material,
  corners: readonly LocalPoint[],
  along: readonly [number, number],
  over: readonly [number, number],
): Face {
  const [a, b, c, d] = corners
  if (a === undefined || b === undefined || c === undefined || d === undefined)
    throw new Error('a patch needs four corners')
  const place = (s: number, t: number): LocalPoint => mix(mix(a, b, s), mix(d, c, s), t)
  return face(material, [
    place(along[0], over[0]),
    place(along[1], over[0]),
    place(along[1], over[1]),
    place(along[0], over[1]),
  ])
}

/** The point a share of the way from one to another. */
export function mix(from: LocalPoint, to: LocalPoint, share: number): LocalPoint {
  return {
    east: from.east + (to.east - from.east) * share,
    north: from.north + (to.north - from.north) * share,
    up: from.up + (to.up - from.up) * share,
  }
}
