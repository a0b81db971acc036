/** The van: a tall body on four wheels, windows along its flanks. */
import type { Face, Solid } from '#core/scene/solid.ts'
import type { Subject } from '#core/scene/subject.ts'
import { onFlank, onWheels, scaledOutline, softened } from './car-body.ts'
import { at, divide, face, part, patch } from './shape.ts'

export function vanSolid(size: Subject): Solid {
  const { width, height, length } = size
  const radius = Math.min(height * 0.145, length * 0.068)
  const half = width / 2
  const outline = scaledOutline(size, [
    [-0.49, 0.1],
    [-0.5, 0.2],
    [-0.49, 0.96],
    [-0.47, 1],
    [0.2, 1],
    [0.25, 0.96],
    [0.385, 0.56],
    [0.475, 0.47],
    [0.5, 0.4],
    [0.498, 0.16],
    [0.48, 0.1],
  ])
  const body = softened(outline, half, width * 0.04, () => [
    onFlank(size, half, 'glass', [
      [-0.475, 0.105],
      [0.475, 0.105],
      [0.475, 0.15],
      [-0.475, 0.15],
    ]),
    onFlank(size, half, 'glass', [
      [0.13, 0.57],
      [0.345, 0.57],
      [0.25, 0.87],
      [0.13, 0.87],
    ]),
    onFlank(size, half, 'glass', [
      [-0.14, 0.57],
      [0.095, 0.57],
      [0.095, 0.87],
      [-0.14, 0.87],
    ]),
    onFlank(size, half, 'glass', [
      [-0.455, 0.57],
      [-0.175, 0.57],
      [-0.175, 0.87],
      [-0.455, 0.87],
    ]),
    onFlank(size, half, 'glass', [
      [0.11, 0.16],
      [0.114, 0.16],
      [0.114, 0.92],
      [0.11, 0.92],
    ]),
    onFlank(size, half, 'glass', [
      [-0.16, 0.16],
      [-0.156, 0.16],
      [-0.156, 0.92],
      [-0.16, 0.92],
    ]),
    onFlank(size, half, 'pale', [
      [0.425, 0.385],
      [0.485, 0.37],
      [0.48, 0.42],
      [0.445, 0.45],
    ]),
    onFlank(size, half, 'glass', [
      [-0.488, 0.32],
      [-0.474, 0.32],
      [-0.474, 0.48],
      [-0.488, 0.48],
    ]),
  ])
  const screenOf = (item: Face): Face =>
    isScreen(item, length, height)
      ? { ...item, painted: [patch('glass', item.points, [0.1, 0.92], [0.06, 0.94])] }
      : item
  const glazed = part(body.items.map((item) => (item.kind === 'face' ? screenOf(item) : item)))
  const x = -length * 0.4975
  const rearWindows = [-1, 1].map((hand) => {
    const [a, b] = [hand * width * 0.04, hand * width * 0.42].toSorted((one, two) => one - two) as [number, number]
    return face('glass', [
      at(x, a, height * 0.58),
      at(x, b, height * 0.58),
      at(x, b, height * 0.86),
      at(x, a, height * 0.86),
    ])
  })
  const withRear: Solid = [divide(at(-length * 0.485, 0, 0), at(-1, 0, 0), [part(rearWindows)], [glazed])]
  const front = length * 0.4995
  const grille = face(
    'glass',
    [
      [-0.34, 0.24],
      [0.34, 0.24],
      [0.34, 0.31],
      [-0.34, 0.31],
    ]
      .map(([right = 0, up = 0]) => at(front, right * width, up * height))
      .toReversed(),
  )
  const withFront: Solid = [divide(at(length * 0.48, 0, 0), at(1, 0, 0), [part(grille)], withRear)]
  return onWheels(size, [length * 0.33, -length * 0.3], radius, height * 0.1, withFront)
}

/** The windscreen is the wide face between the roof's front edge and the bonnet. */
function isScreen(item: Face, length: number, height: number): boolean {
  const middle = item.points.reduce((sum, point) => sum + point.up, 0) / item.points.length / height
  const ahead = item.points.reduce((sum, point) => sum + point.north, 0) / item.points.length / length
  const wide = item.points.some((point) => point.east > 0) && item.points.some((point) => point.east < 0)
  return wide && item.points.length === 4 && ahead > 0.28 && ahead < 0.36 && middle > 0.6
}
