/** What car and van share: a body with softened edges, and the wheels it stands on. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { Face, Part, Solid } from '#core/scene/solid.ts'
import type { Subject } from '#core/scene/subject.ts'
import { at, divide, extrusion, face, loft, mirrored, part, wheelCircle } from './shape.ts'

type Outline = readonly (readonly [ahead: number, up: number])[]

/** The visible disc of a wheel on the right side, in its arch: tyre, rim, spokes. */
function disc(ahead: number, right: number, radius: number, floor: number): Part {
  const circle = (share: number): LocalPoint[] => wheelCircle(ahead, right, radius, radius * share, 32).toReversed()
  const spokes = Array.from({ length: 5 }, (_, index) => {
    const turn = ((index + 0.5) / 5) * 2 * Math.PI
    const spot = (reach: number, off: number): LocalPoint =>
      at(ahead + radius * reach * Math.sin(turn + off), right, radius + radius * reach * Math.cos(turn + off))
    return face('glass', [spot(0.22, 0.45), spot(0.56, 0.3), spot(0.56, -0.3), spot(0.22, -0.45)].toReversed())
  })
  const arch = circle(1.16).map((point) => ({ ...point, up: Math.max(point.up, floor) }))
  return part(face('glass', arch, [face('dark', circle(1)), face('pale', circle(0.66)), ...spokes]))
}

/** What is seen of a tyre under the body: the foot of its round, from its outer side inward. */
function tread(ahead: number, right: number, radius: number, floor: number, thick: number): Part {
  const reach = Math.acos(Math.max(-1, Math.min(1, 1 - floor / radius)))
  const foot = Array.from({ length: 9 }, (_, index) => {
    const turn = reach * (1 - index / 4)
    return [ahead - radius * Math.sin(turn), radius - radius * Math.cos(turn)] as const
  })
  return part(extrusion('dark', foot.toReversed(), right - thick, right))
}

/** The body on its wheels; `hubs` from front to rear. */
export function onWheels(
  size: Subject,
  hubs: readonly [number, number],
  radius: number,
  floor: number,
  body: Solid,
): Solid {
  const half = size.width / 2
  const outer = half * 0.985
  const thick = size.width * 0.12
  const discs = hubs.map((hub) => disc(hub, outer, radius, floor))
  const left = discs.map((one) => part(mirrored(one.items)))
  const treads = hubs.flatMap((hub) => [
    tread(hub, outer, radius, floor, thick),
    tread(hub, -outer + thick, radius, floor, thick),
  ])
  const sides: Solid = [
    divide(at(0, outer * 0.99, 0), at(0, 1, 0), discs, [divide(at(0, -outer * 0.99, 0), at(0, -1, 0), left, body)]),
  ]
  return [divide(at(0, 0, floor), at(0, 0, 1), sides, treads)]
}

/** A body of one outline (clockwise seen from the right) whose side edges are softened; `side` is painted on both flanks. */
export function softened(
  outline: Outline,
  half: number,
  chamfer: number,
  side: (corners: LocalPoint[]) => Face[],
): Part {
  const middle = { ahead: 0, up: 0 }
  for (const [ahead, up] of outline) {
    middle.ahead += ahead / outline.length
    middle.up += up / outline.length
  }
  const row = (right: number, shrink: number): LocalPoint[] =>
    outline.map(([ahead, up]) => {
      const inward = Math.hypot(ahead - middle.ahead, up - middle.up)
      const keep = 1 - shrink / inward
      return at(middle.ahead + (ahead - middle.ahead) * keep, right, middle.up + (up - middle.up) * keep)
    })
  const rows = [row(half, chamfer), row(half - chamfer, 0), row(chamfer - half, 0), row(-half, chamfer)]
  const [right, left, ...round] = loft('hue', rows)
  if (right === undefined || left === undefined) throw new Error('a loft has two ends')
  const painted = side([...right.points])
  return part({ ...right, painted }, { ...left, painted: mirrored(painted) as Face[] }, round)
}

export function scaledOutline(size: Subject, outline: Outline): Outline {
  return outline.map(([ahead, up]) => [ahead * size.length, up * size.height] as const)
}

/** A patch on the right flank, told by shares of length and height, anticlockwise seen from the right. */
export function onFlank(size: Subject, right: number, material: Face['material'], outline: Outline): Face {
  return face(
    material,
    scaledOutline(size, outline).map(([ahead, up]) => at(ahead, right, up)),
  )
}
