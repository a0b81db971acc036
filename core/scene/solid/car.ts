/** The car: a hatchback's body on four wheels, with glass all round. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { Face, Solid } from '#core/scene/solid.ts'
import type { Subject } from '#core/scene/subject.ts'
import { onFlank, onWheels, scaledOutline, softened } from './car-body.ts'
import { at, divide, face, loft, part, patch } from './shape.ts'

function carCabin(size: Subject): Solid {
  const { length, width, height } = size
  const row = (back: number, ahead: number, half: number, up: number): LocalPoint[] => [
    at(ahead * length, -half * width, up * height),
    at(back * length, -half * width, up * height),
    at(back * length, half * width, up * height),
    at(ahead * length, half * width, up * height),
  ]
  const rows = [row(-0.45, 0.2, 0.46, 0.63), row(-0.3, 0.045, 0.385, 0.96), row(-0.24, -0.01, 0.33, 1)]
  const [floor, roof, ...walls] = loft('hue', rows)
  if (floor === undefined || roof === undefined) throw new Error('a loft has two ends')
  // The first four walls stand between belt and roof edge: left, rear, right, front.
  const glazed = walls.map((wall, index) => {
    if (index > 3) return wall
    const isFlank = index === 0 || index === 2
    if (!isFlank) return { ...wall, painted: [patch('glass', wall.points, [0.07, 0.93], [0.12, 0.9])] }
    const panes: [number, number][] =
      index === 0
        ? [
            [0.13, 0.49],
            [0.535, 0.84],
          ]
        : [
            [0.16, 0.465],
            [0.51, 0.87],
          ]
    return { ...wall, painted: panes.map((pane) => patch('glass', wall.points, pane, [0.1, 0.86])) }
  })
  return [part(glazed, roof)]
}

export function carSolid(size: Subject): Solid {
  const { width, height, length } = size
  const radius = Math.min(height * 0.225, length * 0.085)
  const floor = height * 0.13
  const outline = scaledOutline(size, [
    [-0.475, 0.13],
    [-0.5, 0.3],
    [-0.492, 0.56],
    [-0.465, 0.635],
    [0.2, 0.65],
    [0.4, 0.585],
    [0.475, 0.5],
    [0.5, 0.38],
    [0.495, 0.2],
    [0.47, 0.13],
  ])
  const half = width / 2
  const body = softened(outline, half, width * 0.035, () => [
    onFlank(size, half, 'glass', [
      [-0.46, 0.13],
      [0.46, 0.13],
      [0.46, 0.185],
      [-0.46, 0.185],
    ]),
    onFlank(size, half, 'pale', [
      [0.42, 0.47],
      [0.483, 0.43],
      [0.48, 0.47],
      [0.43, 0.53],
    ]),
    onFlank(size, half, 'glass', [
      [-0.488, 0.45],
      [-0.44, 0.47],
      [-0.45, 0.56],
      [-0.483, 0.56],
    ]),
    onFlank(size, half, 'glass', [
      [-0.12, 0.52],
      [-0.07, 0.52],
      [-0.07, 0.54],
      [-0.12, 0.54],
    ]),
    onFlank(size, half, 'glass', [
      [-0.055, 0.2],
      [-0.052, 0.2],
      [-0.052, 0.63],
      [-0.055, 0.63],
    ]),
  ])
  const lamp = (right: number, ahead: number, up: number): Face => {
    const [inner, outer] = [right * width * 0.28, right * width * 0.44].toSorted((a, b) => a - b) as [number, number]
    const x = ahead * length
    const corners = [
      at(x, inner, up * height),
      at(x, outer, up * height),
      at(x, outer, (up + 0.07) * height),
      at(x, inner, (up + 0.07) * height),
    ]
    return ahead > 0 ? face('pale', corners.toReversed()) : face('glass', corners)
  }
  const grille = face(
    'glass',
    [
      [-0.26, 0.24],
      [0.26, 0.24],
      [0.24, 0.34],
      [-0.24, 0.34],
    ]
      .map(([right = 0, up = 0]) => at(length * 0.499, right * width, up * height))
      .toReversed(),
  )
  const ends: Solid = [
    divide(
      at(length * 0.47, 0, 0),
      at(1, 0, 0),
      [part(lamp(1, 0.497, 0.41), lamp(-1, 0.497, 0.41), grille)],
      [divide(at(-length * 0.47, 0, 0), at(-1, 0, 0), [part(lamp(1, -0.499, 0.46), lamp(-1, -0.499, 0.46))], [body])],
    ),
  ]
  const shell: Solid = [divide(at(0, 0, height * 0.64), at(0, 0, 1), carCabin(size), ends)]
  return onWheels(size, [length * 0.3, -length * 0.29], radius, floor, shell)
}
