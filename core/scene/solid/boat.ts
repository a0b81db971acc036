/** The boat on its trailer: hull in the hue, a small cabin, the drawbar ahead. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { Part, Solid } from '#core/scene/solid.ts'
import type { Subject } from '#core/scene/subject.ts'
import { at, box, divide, face, loft, part, patch, rod, tyre } from './shape.ts'

/** Along the length, then half width at gunwale and chine, then heights of gunwale, chine and keel; shares of the box. */
const STATIONS = [
  [0.4, 0.01, 0.008, 0.8, 0.66, 0.5],
  [0.36, 0.16, 0.07, 0.79, 0.56, 0.37],
  [0.28, 0.31, 0.2, 0.775, 0.49, 0.3],
  [0.14, 0.43, 0.33, 0.755, 0.43, 0.27],
  [-0.05, 0.47, 0.39, 0.735, 0.41, 0.26],
  [-0.25, 0.47, 0.4, 0.72, 0.4, 0.26],
  [-0.44, 0.44, 0.38, 0.715, 0.4, 0.26],
] as const

function hull(size: Subject): Part {
  const { length: l, width: w, height: h } = size
  const rows = STATIONS.map(([along, gunwale, chine, top, turn, keel]): LocalPoint[] => [
    at(along * l, -gunwale * w, top * h),
    at(along * l, gunwale * w, top * h),
    at(along * l, gunwale * 0.985 * w, (top - 0.05) * h),
    at(along * l, chine * w, turn * h),
    at(along * l, 0, keel * h),
    at(along * l, -chine * w, turn * h),
    at(along * l, -gunwale * 0.985 * w, (top - 0.05) * h),
  ])
  // Seen from the bow the right side lies to the left: the rows run the other way about.
  const faces = loft(
    'hue',
    rows.map((row) => row.toReversed()),
  )
  const perRow = 7
  return part(
    faces.map((one, index) => {
      const place = (index - 2) % perRow
      if (index < 2) return one
      // Deck and rubbing strake.
      if (isDeck(one.points, h)) return { ...one, material: 'pale' as const }
      return place < 0 ? one : isStrake(one.points, h) ? { ...one, material: 'ink' as const } : one
    }),
  )
}

function isDeck(points: readonly LocalPoint[], height: number): boolean {
  return (
    points.every((point) => point.up > height * 0.71) &&
    points.some((point) => point.east < 0) &&
    points.some((point) => point.east > 0)
  )
}

function isStrake(points: readonly LocalPoint[], height: number): boolean {
  const ups = points.map((point) => point.up)
  return Math.min(...ups) > height * 0.66 && Math.max(...ups) - Math.min(...ups) < height * 0.075
}

function cabin(size: Subject): Solid {
  const { length: l, width: w, height: h } = size
  const row = (back: number, ahead: number, half: number, up: number): LocalPoint[] => [
    at(ahead * l, -half * w, up * h),
    at(back * l, -half * w, up * h),
    at(back * l, half * w, up * h),
    at(ahead * l, half * w, up * h),
  ]
  const [floor, roof, ...walls] = loft('pale', [row(-0.16, 0.16, 0.32, 0.735), row(-0.14, 0.06, 0.27, 0.955)])
  if (floor === undefined || roof === undefined) throw new Error('a loft has two ends')
  const glazed = walls.map((wall) => ({ ...wall, painted: [patch('glass', wall.points, [0.1, 0.9], [0.3, 0.86])] }))
  return [
    divide(
      at(0, 0, h * 0.955),
      at(0, 0, 1),
      [
        part(box('hue', [-0.17 * l, 0.075 * l], [-0.29 * w, 0.29 * w], [0.955 * h, 0.975 * h])),
        part(rod('ink', h * 0.012, at(-0.1 * l, 0, 0.975 * h), at(-0.1 * l, 0, 0.994 * h))),
      ],
      [part(glazed)],
    ),
  ]
}

function trailer(size: Subject): Solid {
  const { length: l, width: w, height: h } = size
  const beam = h * 0.045
  const radius = Math.min(h * 0.13, l * 0.045)
  const axle = -0.12 * l
  const up = h * 0.21
  const rails = [-1, 1].map((hand) =>
    rod('ink', beam, at(-0.42 * l, hand * w * 0.28, up), at(0.16 * l, hand * w * 0.28, up), at(0.36 * l, 0, up)),
  )
  const bunks = [-0.36, -0.1, 0.12].map((place) =>
    rod(
      'ink',
      beam * 0.8,
      at(place * l, -w * 0.34, up + h * 0.06),
      at(place * l, 0, up),
      at(place * l, w * 0.34, up + h * 0.06),
    ),
  )
  const wheels = [-1, 1].map((hand) => {
    const right = hand * w * 0.43
    return part(
      tyre(axle, right, radius, radius, radius * 0.5),
      { ...tyre(axle, right, radius, radius * 0.55, radius * 0.5), material: 'pale' as const },
      rod(
        'ink',
        radius * 0.24,
        ...[-1.2, -0.7, -0.2, 0.3, 0.8, 1.2].map((turn) =>
          at(axle + radius * 1.2 * Math.sin(turn), right, radius + radius * 1.2 * Math.cos(turn)),
        ),
      ),
    )
  })
  return [
    part(...rails, ...bunks, rod('ink', beam, at(axle, -w * 0.42, radius), at(axle, w * 0.42, radius))),
    part(
      rod('ink', beam, at(0.3 * l, 0, up), at(0.485 * l, 0, up)),
      rod('ink', beam * 1.5, at(0.485 * l, 0, up), at(0.493 * l, 0, up - h * 0.01)),
      rod('ink', beam * 0.7, at(0.42 * l, 0, up + h * 0.1), at(0.42 * l, 0, h * 0.06)),
      tyre(0.42 * l, 0, h * 0.04, h * 0.04, h * 0.03),
      rod('ink', beam * 0.9, at(0.39 * l, 0, up), at(0.405 * l, 0, h * 0.52)),
    ),
    ...wheels,
  ]
}

function motor(size: Subject): Solid {
  const { length: l, width: w, height: h } = size
  return [
    part(box('ink', [-0.492 * l, -0.447 * l], [-w * 0.09, w * 0.09], [h * 0.62, h * 0.82])),
    part(
      rod('ink', h * 0.05, at(-0.468 * l, 0, h * 0.64), at(-0.474 * l, 0, h * 0.34)),
      face('ink', [at(-0.495 * l, 0, h * 0.36), at(-0.46 * l, 0, h * 0.36), at(-0.478 * l, 0, h * 0.28)]),
      face('ink', [at(-0.495 * l, 0, h * 0.36), at(-0.478 * l, 0, h * 0.28), at(-0.46 * l, 0, h * 0.36)]),
    ),
  ]
}

export function boatOnTrailerSolid(size: Subject): Solid {
  const { length: l, width: w, height: h } = size
  const rails = part(
    [-1, 1].map((hand) =>
      rod(
        'pale',
        h * 0.012,
        at(0.12 * l, hand * w * 0.43, h * 0.84),
        at(0.28 * l, hand * w * 0.3, h * 0.87),
        at(0.385 * l, hand * w * 0.04, h * 0.89),
      ),
    ),
    [0.14, 0.27, 0.38].flatMap((place, index) =>
      [-1, 1].map((hand) => {
        const half = [0.42, 0.31, 0.05][index] ?? 0
        return rod(
          'pale',
          h * 0.012,
          at(place * l, hand * w * half, h * 0.77),
          at(place * l, hand * w * half, h * 0.87),
        )
      }),
    ),
  )
  const above: Solid = [divide(at(0, 0, h * 0.745), at(0, 0, 1), [...cabin(size), rails], [hull(size)])]
  const afloat: Solid = [divide(at(-0.443 * l, 0, 0), at(-1, 0, 0), motor(size), above)]
  return [divide(at(0, 0, h * 0.265), at(0, 0, 1), afloat, trailer(size))]
}
