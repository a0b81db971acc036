/** The motorcycle: fat tyres, tank and tail in the hue, engine and seat in ink. */
import type { Part, Solid } from '#core/scene/solid.ts'
import type { Subject } from '#core/scene/subject.ts'
import { at, ball, barrel, box, divide, limb, part, rod, tyre } from './shape.ts'

function wheel(ahead: number, radius: number, thick: number): Part {
  const spokes = Array.from({ length: 3 }, (_, index) => {
    const turn = (index / 3) * Math.PI
    const along = radius * 0.7 * Math.sin(turn)
    const up = radius * 0.7 * Math.cos(turn)
    return rod('pale', radius * 0.09, at(ahead - along, 0, radius - up), at(ahead + along, 0, radius + up))
  })
  const rim = { ...tyre(ahead, 0, radius, radius * 0.72, radius * 0.08), material: 'pale' as const }
  return part(
    ...spokes,
    rim,
    rod('ink', radius * 0.28, at(ahead, -thick * 0.4, radius), at(ahead, thick * 0.4, radius)),
    tyre(ahead, 0, radius, radius, thick),
  )
}

/** One side's fork leg, grip, mirror and exhaust. */
function side(size: Subject, hand: 1 | -1, front: number, radius: number): Part {
  const { length, width, height } = size
  const aside = hand * width * 0.12
  return part(
    rod('pale', height * 0.04, at(front, aside, radius), at(front - length * 0.13, aside, height * 0.78)),
    limb(
      'ink',
      [at(front - length * 0.14, 0, height * 0.8), height * 0.03],
      [at(front - length * 0.15, hand * width * 0.25, height * 0.86), height * 0.03],
      [at(front - length * 0.19, hand * width * 0.47, height * 0.85), height * 0.045],
    ),
    limb(
      'ink',
      [at(front - length * 0.16, hand * width * 0.3, height * 0.86), height * 0.015],
      [at(front - length * 0.15, hand * width * 0.37, height * 0.94), height * 0.015],
    ),
    ball('ink', at(front - length * 0.15, hand * width * 0.38, height * 0.96), height * 0.04),
    limb(
      'pale',
      [at(length * 0.1, hand * width * 0.16, height * 0.34), height * 0.05],
      [at(length * 0.06, hand * width * 0.2, height * 0.2), height * 0.05],
      [at(-length * 0.12, hand * width * 0.22, height * 0.2), height * 0.06],
      [at(-length * 0.36, hand * width * 0.25, height * 0.29), height * 0.085],
    ),
  )
}

export function motorcycleSolid(size: Subject): Solid {
  const { length, width, height } = size
  const radius = Math.min(height * 0.265, length * 0.15)
  const rear = -length / 2 + radius
  const front = length / 2 - radius
  const tank = barrel('hue', [
    [length * 0.19, 0, height * 0.7, width * 0.09, height * 0.06],
    [length * 0.15, 0, height * 0.72, width * 0.17, height * 0.1],
    [length * 0.03, 0, height * 0.71, width * 0.18, height * 0.1],
    [-length * 0.08, 0, height * 0.66, width * 0.1, height * 0.05],
  ])
  const tail = barrel('hue', [
    [-length * 0.08, 0, height * 0.58, width * 0.11, height * 0.06],
    [-length * 0.28, 0, height * 0.63, width * 0.12, height * 0.055],
    [-length * 0.44, 0, height * 0.7, width * 0.06, height * 0.025],
  ])
  const seat = barrel('ink', [
    [-length * 0.05, 0, height * 0.66, width * 0.1, height * 0.03],
    [-length * 0.16, 0, height * 0.655, width * 0.17, height * 0.04],
    [-length * 0.28, 0, height * 0.7, width * 0.14, height * 0.045],
    [-length * 0.4, 0, height * 0.735, width * 0.08, height * 0.02],
  ])
  const engine = box('ink', [-length * 0.1, length * 0.13], [-width * 0.2, width * 0.2], [height * 0.17, height * 0.4])
  const cylinders = [0.045, -0.045].map((place) =>
    rod('pale', height * 0.13, at(length * place, 0, height * 0.4), at(length * place * 1.9, 0, height * 0.54)),
  )
  const frame = part(
    rod('hue', height * 0.045, at(front - length * 0.14, 0, height * 0.76), at(length * 0.16, 0, height * 0.36)),
    rod('hue', height * 0.045, at(front - length * 0.14, 0, height * 0.76), at(-length * 0.1, 0, height * 0.58)),
    rod('hue', height * 0.045, at(-length * 0.1, 0, height * 0.58), at(-length * 0.1, 0, height * 0.26)),
    rod('ink', height * 0.05, at(-length * 0.1, 0, height * 0.27), at(rear, 0, radius)),
    rod('ink', height * 0.03, at(-length * 0.26, 0, height * 0.58), at(rear + length * 0.05, 0, radius)),
  )
  const nose = part(
    ball('ink', at(front - length * 0.075, 0, height * 0.75), height * 0.085),
    ball('pale', at(front - length * 0.055, 0, height * 0.75), height * 0.066),
  )
  const guard = Array.from({ length: 7 }, (_, index) => {
    const turn = -0.7 + index * 0.24
    return at(front + radius * 1.1 * Math.sin(turn), 0, radius + radius * 1.1 * Math.cos(turn))
  })
  const middle: Solid = [
    part(engine),
    part(cylinders),
    frame,
    part(tank),
    part(tail),
    part(seat),
    wheel(rear, radius, radius * 0.42),
    part(rod('hue', radius * 0.3, ...guard)),
    wheel(front, radius, radius * 0.36),
    nose,
  ]
  const toRight = at(0, 1, 0)
  const left: Solid = [divide(at(0, -width * 0.1, 0), at(0, -1, 0), [side(size, -1, front, radius)], middle)]
  return [divide(at(0, width * 0.1, 0), toRight, [side(size, 1, front, radius)], left)]
}
