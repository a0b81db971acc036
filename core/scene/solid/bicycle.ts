/** Bicycles: the ordinary one, and the cargo bicycle with its box before the rider. */
import type { Part, Rod, Solid } from '#core/scene/solid.ts'
import type { Subject } from '#core/scene/subject.ts'
import { at, box, divide, face, loft, part, rod, tyre } from './shape.ts'

type Size = Pick<Subject, 'length' | 'width' | 'height'>

const SPOKES = 9

function wheel(ahead: number, radius: number, width: number): Part {
  const spokes: Rod[] = Array.from({ length: SPOKES }, (_, index) => {
    const turn = (index / SPOKES) * Math.PI + 0.2
    const east = (radius - width) * Math.sin(turn)
    const up = (radius - width) * Math.cos(turn)
    return rod('ink', radius * 0.008, at(ahead - east, 0, radius - up), at(ahead + east, 0, radius + up))
  })
  return part(
    ...spokes,
    rod('ink', radius * 0.16, at(ahead, -width, radius), at(ahead, width, radius)),
    tyre(ahead, 0, radius, radius, width),
  )
}

/** Handlebar of full width, its grips drawn back; `back` metres. */
function handlebar(ahead: number, up: number, width: number, back: number, thick: number): Rod {
  const half = width / 2
  return rod(
    'ink',
    thick,
    at(ahead - back, half, up),
    at(ahead, half * 0.45, up),
    at(ahead, -half * 0.45, up),
    at(ahead - back, -half, up),
  )
}

function saddle(ahead: number, up: number, size: number): Part {
  const rows = [
    [0.5, 0.09, 0],
    [0.05, 0.16, 0],
    [-0.3, 0.42, 0.02],
    [-0.5, 0.34, 0.04],
  ] as const
  return part(
    loft(
      'ink',
      rows.map(([along, half, lift]) => [
        at(ahead + along * size, 0, up + lift * size),
        at(ahead + along * size, -half * size * 0.55, up + lift * size - size * 0.03),
        at(ahead + along * size, 0, up + lift * size - size * 0.2),
        at(ahead + along * size, half * size * 0.55, up + lift * size - size * 0.03),
      ]),
    ),
  )
}

/** Cranks, chainring and pedals about the bottom bracket. */
function drive(ahead: number, up: number, rear: number, rearUp: number, unit: number): Part {
  const ring = unit * 0.1
  const crank = unit * 0.16
  return part(
    rod('ink', unit * 0.014, at(ahead, unit * 0.05, up + ring * 0.9), at(rear, unit * 0.05, rearUp + ring * 0.4)),
    rod('ink', unit * 0.014, at(ahead, unit * 0.05, up - ring * 0.9), at(rear, unit * 0.05, rearUp - ring * 0.4)),
    { ...tyre(ahead, unit * 0.05, up, ring, ring * 0.35), material: 'ink' },
    rod('ink', unit * 0.032, at(ahead, unit * 0.07, up), at(ahead + crank * 0.8, unit * 0.07, up - crank * 0.6)),
    rod('ink', unit * 0.032, at(ahead, -unit * 0.07, up), at(ahead - crank * 0.8, -unit * 0.07, up + crank * 0.6)),
    rod(
      'ink',
      unit * 0.04,
      at(ahead + crank * 0.8, unit * 0.07, up - crank * 0.6),
      at(ahead + crank * 0.8, unit * 0.17, up - crank * 0.6),
    ),
    rod(
      'ink',
      unit * 0.04,
      at(ahead - crank * 0.8, -unit * 0.07, up + crank * 0.6),
      at(ahead - crank * 0.8, -unit * 0.17, up + crank * 0.6),
    ),
  )
}

export function bicycleSolid(size: Size): Solid {
  const { length, width, height } = size
  const radius = Math.min(height * 0.325, length * 0.19)
  const rear = -length / 2 + radius
  const front = length / 2 - radius
  const base = front - rear
  const crank = rear + base * 0.39
  const unit = height
  const bottom = at(crank, 0, radius * 0.85)
  const cluster = at(crank - base * 0.125, 0, height * 0.75)
  const headTop = at(front - base * 0.295, 0, height * 0.83)
  const headLow = at(front - base * 0.255, 0, height * 0.69)
  const stem = at(front - base * 0.33, 0, height * 0.95)
  const tube = unit * 0.04
  const stay = (side: number): Rod[] => [
    rod('hue', tube * 0.5, at(rear, side * unit * 0.055, radius), at(crank, side * unit * 0.03, radius * 0.85)),
    rod(
      'hue',
      tube * 0.5,
      at(rear, side * unit * 0.055, radius),
      at(crank - base * 0.125, side * unit * 0.03, height * 0.73),
    ),
    rod(
      'ink',
      tube * 0.65,
      at(front - base * 0.24, side * unit * 0.045, height * 0.64),
      at(front - base * 0.1, side * unit * 0.05, height * 0.45),
      at(front, side * unit * 0.055, radius),
    ),
  ]
  return [
    wheel(rear, radius, unit * 0.042),
    wheel(front, radius, unit * 0.042),
    part(stay(-1)),
    part(stay(1)),
    part(
      rod('hue', tube, bottom, cluster),
      rod('hue', tube, cluster, headTop),
      rod('hue', tube * 1.15, bottom, headLow),
      rod('hue', tube * 1.2, headTop, headLow),
      rod('ink', tube * 0.75, cluster, at(crank - base * 0.155, 0, height * 0.89)),
      rod('ink', tube * 0.9, headTop, stem),
      rod(
        'ink',
        tube,
        at(front - base * 0.26, -unit * 0.045, height * 0.655),
        at(front - base * 0.26, unit * 0.045, height * 0.655),
      ),
    ),
    drive(crank, radius * 0.85, rear, radius, unit),
    saddle(crank - base * 0.165, height * 0.935, length * 0.15),
    part(
      rod('ink', tube * 0.9, stem, at(front - base * 0.29, 0, height * 0.975)),
      handlebar(front - base * 0.29, height * 0.98, width, length * 0.085, tube * 0.85),
    ),
  ]
}

/** The box: flared upward, open at the top, with a rim. */
function cargoBox(back: number, ahead: number, half: number, low: number, top: number): Solid {
  const row = (up: number, grow: number): ReturnType<typeof at>[] => [
    at(back - grow * 0.2, half + grow * 0.35, up),
    at(ahead + grow, half + grow * 0.35, up),
    at(ahead + grow, -half - grow * 0.35, up),
    at(back - grow * 0.2, -half - grow * 0.35, up),
  ]
  const foot = row(low, 0)
  const rim = row(top, (top - low) * 0.22)
  const inner = row(top + 0.001, (top - low) * 0.22 - half * 0.12)
  const [floor, lid, ...sides] = loft('hue', [foot, rim])
  if (floor === undefined || lid === undefined) throw new Error('a loft has two ends')
  return [part(sides, floor, { ...lid, material: 'pale', painted: [face('glass', inner)] })]
}

export function cargoBicycleSolid(size: Size): Solid {
  const { length, width, height } = size
  const big = Math.min(height * 0.285, length * 0.137)
  const small = big * 0.74
  const rear = -length / 2 + big
  const front = length / 2 - small
  const unit = height
  const tube = unit * 0.038
  const crank = rear + length * 0.17
  const column = length * -0.02
  const low = height * 0.2
  const bottom = at(crank, 0, big * 0.85)
  const cluster = at(crank - length * 0.06, 0, height * 0.62)
  const head = at(column - length * 0.012, 0, height * 0.6)
  const headLow = at(column + length * 0.012, 0, height * 0.4)
  const crown = at(front - length * 0.05, 0, height * 0.54)
  const boxBack = column + length * 0.055
  const boxAhead = front - small - length * 0.075
  const fork = (side: number): Rod[] => [
    rod('ink', tube * 0.6, at(rear, side * unit * 0.05, big), at(crank, side * unit * 0.03, big * 0.85)),
    rod(
      'ink',
      tube * 0.55,
      at(rear, side * unit * 0.05, big),
      at(crank - length * 0.06, side * unit * 0.03, height * 0.6),
    ),
    rod(
      'ink',
      tube * 0.8,
      at(front - length * 0.042, side * unit * 0.045, height * 0.48),
      at(front, side * unit * 0.05, small),
    ),
  ]
  const frame = part(
    rod('ink', tube, bottom, cluster),
    rod('ink', tube, cluster, headLow),
    rod('ink', tube * 1.2, bottom, at(column, 0, low)),
    rod('ink', tube * 1.2, head, headLow, at(column + length * 0.03, 0, low)),
    rod('ink', tube * 0.75, cluster, at(crank - length * 0.075, 0, height * 0.79)),
    rod('ink', tube * 0.8, head, at(column - length * 0.04, 0, height * 0.94)),
  )
  const beam = part(
    rod(
      'ink',
      tube * 1.25,
      at(column, 0, low),
      at(boxAhead, 0, low),
      at(front - length * 0.065, 0, height * 0.42),
      crown,
    ),
    rod('ink', tube, crown, at(front - length * 0.045, 0, height * 0.47)),
    rod(
      'ink',
      tube,
      at(front - length * 0.042, -unit * 0.045, height * 0.48),
      at(front - length * 0.042, unit * 0.045, height * 0.48),
    ),
  )
  const rider: Solid = [
    part(fork(-1).slice(0, 2)),
    part(fork(1).slice(0, 2)),
    wheel(rear, big, unit * 0.04),
    frame,
    drive(crank, big * 0.85, rear, big, unit * 0.9),
    saddle(crank - length * 0.078, height * 0.835, length * 0.105),
    part(box('ink', [rear - big * 0.5, crank - length * 0.09], [-unit * 0.06, unit * 0.06], [big * 2.08, big * 2.14])),
    part(handlebar(column - length * 0.035, height * 0.97, width, length * 0.07, tube * 0.85)),
  ]
  const foreWheel: Solid = [
    divide(
      at(0, 0, low + tube),
      at(0, 0, 1),
      [
        divide(
          at(boxAhead + length * 0.045, 0, 0),
          at(1, 0, -0.2),
          [wheel(front, small, unit * 0.04), part(fork(-1).slice(2)), part(fork(1).slice(2)), beam],
          cargoBox(boxBack, boxAhead, width * 0.42, low + tube, height * 0.6),
        ),
      ],
      [],
    ),
  ]
  return [divide(at(boxBack - length * 0.02, 0, 0), at(1, 0, -0.1), foreWheel, rider)]
}
