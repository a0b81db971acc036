/** People: one standing, and two side by side. */
import type { Part, Rod, Solid } from '#core/scene/solid.ts'
import type { Subject } from '#core/scene/subject.ts'
import { type LevelRow, at, ball, column, divide, limb, part, smoothed } from './shape.ts'

interface Figure {
  /** Metres of the figure's middle to the right, of its height, and of its shoulders' width. */
  readonly right: number
  readonly height: number
  readonly shoulders: number
  readonly depth: number
  /** Legs in trousers, or a long skirt. */
  readonly wears: 'trousers' | 'skirt'
  readonly top: 'hue' | 'ink'
}

function leg(figure: Figure, hand: 1 | -1): Rod[] {
  const { right, height, shoulders, depth } = figure
  const x = right + hand * shoulders * 0.2
  const h = height
  const thick = Math.min(h * 0.1, depth * 0.6)
  return [
    limb(
      'ink',
      [at(0, x, h * 0.5), thick],
      [at(depth * 0.02, x, h * 0.28), thick * 0.72],
      [at(-depth * 0.06, x, h * 0.04), thick * 0.5],
    ),
    limb(
      'dark',
      [at(-depth * 0.14, x, h * 0.02), h * 0.04],
      [at(depth * 0.42, x + hand * shoulders * 0.05, h * 0.016), h * 0.032],
    ),
  ]
}

function arm(figure: Figure, hand: 1 | -1): Part {
  const { right, height: h, shoulders, depth } = figure
  const thick = Math.min(h * 0.052, shoulders * 0.17)
  const x = (share: number): number => right + hand * shoulders * share
  return part(
    limb(
      figure.top,
      [at(0, x(0.36), h * 0.8), thick * 1.15],
      [at(-depth * 0.08, x(0.43), h * 0.635), thick * 0.9],
      [at(depth * 0.1, x(0.44), h * 0.5), thick * 0.7],
    ),
    ball('pale', at(depth * 0.12, x(0.44), h * 0.475), thick * 0.48),
  )
}

function figureSolid(figure: Figure): Solid {
  const { right, height: h, shoulders: s, depth, wears, top } = figure
  const d = depth * 0.5
  const torsoRows: readonly LevelRow[] = [
    [0, right, h * 0.47, d * 0.62, s * 0.33],
    [0, right, h * 0.55, d * 0.58, s * 0.31],
    [0, right, h * 0.63, d * 0.52, s * 0.28],
    [d * 0.06, right, h * 0.74, d * 0.66, s * 0.37],
    [0, right, h * 0.8, d * 0.56, s * 0.41],
    [0, right, h * 0.835, d * 0.34, s * 0.26],
    [0, right, h * 0.85, d * 0.2, s * 0.1],
  ]
  const torso = column(top, smoothed(torsoRows, 1), 22)
  const skirt = column(
    top,
    [
      [0, right, h * 0.05, d * 0.98, s * 0.62],
      [0, right, h * 0.3, d * 0.74, s * 0.48],
      [0, right, h * 0.52, d * 0.58, s * 0.34],
      [0, right, h * 0.6, d * 0.5, s * 0.26],
    ],
    22,
  )
  const head = part(
    limb('pale', [at(0, right, h * 0.84), h * 0.05], [at(0, right, h * 0.87), h * 0.05]),
    limb('pale', [at(d * 0.1, right, h * 0.905), h * 0.075], [at(0, right, h * 0.945), h * 0.088]),
  )
  const hair = part(
    limb('ink', [at(-d * 0.14, right, h * 0.95), h * 0.088], [at(-d * 0.26, right, h * 0.915), h * 0.075]),
  )
  const hairTop = part(ball('ink', at(-d * 0.06, right, h * 0.9575), h * 0.0425))
  // A low brow: the hair lies behind and above the face.
  const crown: Solid = [divide(at(-d * 0.08, right, h * 0.92), at(-1, 0, 0.55), [hair, hairTop], [head])]
  const legs = wears === 'skirt' ? [part(skirt)] : [part(leg(figure, -1)), part(leg(figure, 1))]
  const trunk: Solid = [divide(at(0, right, h * 0.5), at(0, 0, 1), [part(torso)], legs)]
  const body: Solid = [
    divide(
      at(0, right + s * 0.34, 0),
      at(0, 1, 0),
      [arm(figure, 1)],
      [divide(at(0, right - s * 0.34, 0), at(0, -1, 0), [arm(figure, -1)], trunk)],
    ),
  ]
  return [divide(at(0, right, h * 0.84), at(0, 0, 1), crown, body)]
}

export function personSolid(size: Subject): Solid {
  const { length, width, height } = size
  return figureSolid({ right: 0, height, shoulders: width, depth: length, wears: 'trousers', top: 'hue' })
}

/** The two stand apart by a plane between them, so that whichever is nearer is drawn last. */
export function coupleSolid(size: Subject): Solid {
  const { length, width, height } = size
  const shoulders = width * 0.47
  const one = figureSolid({ right: width * 0.245, height, shoulders, depth: length, wears: 'trousers', top: 'ink' })
  const other = figureSolid({
    right: -width * 0.235,
    height: height * 0.93,
    shoulders: shoulders * 0.86,
    depth: length,
    wears: 'skirt',
    top: 'hue',
  })
  return [divide(at(0, 0, 0), at(0, 1, 0), one, other)]
}
