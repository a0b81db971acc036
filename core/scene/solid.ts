/** The solid: a thing's shape as plain data, in metres in the thing's own frame, for the drawing through the lens. */
import type { LocalPoint } from '#core/geo/local-frame.ts'

/** What a surface is made of; the drawing gives each its colour: the thing's own hue, ink, black rubber, glass, a lamp. */
export const MATERIALS = ['hue', 'ink', 'dark', 'glass', 'pale'] as const
export type Material = (typeof MATERIALS)[number]

/** A flat polygon. Its corners run anticlockwise seen from the side it looks toward; from behind it isn't seen. */
export interface Face {
  readonly kind: 'face'
  readonly material: Material
  readonly points: readonly LocalPoint[]
  /** Faces painted on it: windows, doors. They are seen when it is. */
  readonly painted?: readonly Face[]
}

/** A rod along a polyline, round in section, `widths` metres thick at each point. */
export interface Rod {
  readonly kind: 'rod'
  readonly material: Material
  readonly points: readonly LocalPoint[]
  readonly widths: readonly number[]
  readonly closed: boolean
}

/** A ball, drawn as a disc. */
export interface Ball {
  readonly kind: 'ball'
  readonly material: Material
  readonly centre: LocalPoint
  readonly radius: number
}

export type Item = Face | Rod | Ball

/** Items that are drawn from far to near by their middles; one part should be small or convex. */
export interface Part {
  readonly kind: 'part'
  readonly items: readonly Item[]
}

/** A plane between parts: those on the lens's side of it are drawn last, which no order by distance alone gets right. */
export interface Divide {
  readonly kind: 'divide'
  readonly at: LocalPoint
  /** Points toward `front`. */
  readonly normal: LocalPoint
  readonly front: Solid
  readonly back: Solid
}

export type Block = Part | Divide

/** Blocks in any order: the drawing sorts them from far to near. For a subject north is ahead, east is its right. */
export type Solid = readonly Block[]

export interface SolidBounds {
  readonly low: LocalPoint
  readonly high: LocalPoint
}

/** All items of a solid. */
export function itemsOf(solid: Solid): Item[] {
  return solid.flatMap((block) =>
    block.kind === 'part' ? block.items : [...itemsOf(block.back), ...itemsOf(block.front)],
  )
}

/** Calls with every point and the thickness around it, metres of radius. */
export function eachPoint(item: Item, visit: (point: LocalPoint, radius: number) => void): void {
  if (item.kind === 'ball') visit(item.centre, item.radius)
  else if (item.kind === 'rod') item.points.forEach((point, index) => visit(point, (item.widths[index] ?? 0) / 2))
  else {
    item.points.forEach((point) => visit(point, 0))
    item.painted?.forEach((face) => eachPoint(face, visit))
  }
}

/** The box around a solid, thickness of rods and balls included. */
export function solidBounds(solid: Solid): SolidBounds {
  const low = { east: Infinity, north: Infinity, up: Infinity }
  const high = { east: -Infinity, north: -Infinity, up: -Infinity }
  for (const item of itemsOf(solid)) {
    eachPoint(item, (point, radius) => {
      for (const axis of ['east', 'north', 'up'] as const) {
        low[axis] = Math.min(low[axis], point[axis] - radius)
        high[axis] = Math.max(high[axis], point[axis] + radius)
      }
    })
  }
  return { low, high }
}

/** The same solid with every point moved and every radius changed. */
export function mapSolid(
  solid: Solid,
  move: (point: LocalPoint) => LocalPoint,
  thick: (radius: number) => number,
): Solid {
  return solid.map((block) =>
    block.kind === 'part'
      ? { kind: 'part', items: block.items.map((item) => mapItem(item, move, thick)) }
      : {
          ...block,
          at: move(block.at),
          front: mapSolid(block.front, move, thick),
          back: mapSolid(block.back, move, thick),
        },
  )
}

function mapItem(item: Item, move: (point: LocalPoint) => LocalPoint, thick: (radius: number) => number): Item {
  if (item.kind === 'ball') return { ...item, centre: move(item.centre), radius: thick(item.radius) }
  if (item.kind === 'rod')
    return { ...item, points: item.points.map(move), widths: item.widths.map((width) => 2 * thick(width / 2)) }
  return mapFace(item, move)
}

function mapFace(face: Face, move: (point: LocalPoint) => LocalPoint): Face {
  const moved = { ...face, points: face.points.map(move) }
  return face.painted === undefined ? moved : { ...moved, painted: face.painted.map((one) => mapFace(one, move)) }
}
