/** The upright's solid: a stout tower, a lighthouse or a mast, by how slender it is; all within the taper of the bounding points. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { Upright } from '#core/scene/landmark.ts'
import { UPRIGHT_TAPER } from '#core/scene/bounding-points.ts'
import type { Material, Part, Solid } from '#core/scene/solid.ts'
import { type LevelRow, at, column, divide, part, rod } from './shape.ts'

/** Height over width: below the first a tower with a parapet, above the second a mast, between them a lighthouse. */
const STOUT = 2.4
const SLENDER = 14
const CORNERS = 32

/** Storeys stacked on one another: each is drawn over those on the far side of the plane between them. */
function stacked(storeys: readonly { readonly top: number; readonly parts: readonly Part[] }[]): Solid {
  let pile: Solid = []
  storeys.forEach((storey, index) => {
    const floor = storeys[index - 1]?.top ?? 0
    pile = index === 0 ? storey.parts : [divide(at(0, 0, floor), at(0, 0, 1), storey.parts, pile)]
  })
  return pile
}

export function uprightSolid(upright: Upright): Solid {
  const { height, width } = upright
  const foot = width / 2
  /** Radius of the cone through the bounding points at a share of the height: nothing may stand out beyond it. */
  const limit = (share: number): number => foot * (1 - (1 - UPRIGHT_TAPER) * share)
  const storey = (material: Material, rows: readonly (readonly [share: number, part: number])[]): Part =>
    part(
      column(
        material,
        rows.map(([share, of]): LevelRow => [0, 0, share * height, limit(share) * of, limit(share) * of]),
        CORNERS,
      ),
    )
  const tip = rod('ink', foot * 0.06, at(0, 0, height * 0.9), at(0, 0, height - foot * 0.03))
  const slender = height / width
  if (slender > SLENDER) return mast(storey, tip)
  if (slender < STOUT) return stoutTower(storey, foot, height)
  return stacked([
    {
      top: 0.04 * height,
      parts: [
        storey('ink', [
          [0, 1],
          [0.04, 1],
        ]),
      ],
    },
    {
      top: 0.26 * height,
      parts: [
        storey('hue', [
          [0.04, 0.93],
          [0.26, 0.84],
        ]),
      ],
    },
    {
      top: 0.45 * height,
      parts: [
        storey('ink', [
          [0.26, 0.84],
          [0.45, 0.8],
        ]),
      ],
    },
    {
      top: 0.64 * height,
      parts: [
        storey('hue', [
          [0.45, 0.8],
          [0.64, 0.79],
        ]),
      ],
    },
    {
      top: 0.765 * height,
      parts: [
        storey('ink', [
          [0.64, 0.79],
          [0.765, 0.8],
        ]),
      ],
    },
    {
      top: 0.8 * height,
      parts: [
        storey('ink', [
          [0.765, 0.8],
          [0.785, 1],
          [0.8, 1],
        ]),
      ],
    },
    {
      top: 0.91 * height,
      parts: [
        storey('glass', [
          [0.8, 0.62],
          [0.91, 0.66],
        ]),
        gallery(limit(0.82), height),
      ],
    },
    {
      top: 0.97 * height,
      parts: [
        storey('ink', [
          [0.91, 0.82],
          [0.94, 0.6],
          [0.97, 0.1],
        ]),
      ],
    },
    { top: height, parts: [part(tip)] },
  ])
}

/** The rail around the lantern. */
function gallery(radius: number, height: number): Part {
  const ring = (share: number): LocalPoint[] =>
    Array.from({ length: 24 }, (_, index) => {
      const turn = (index / 24) * 2 * Math.PI
      return at(radius * 0.95 * Math.cos(turn), radius * 0.95 * Math.sin(turn), share * height)
    })
  const rail = ring(0.832)
  const widths = rail.map(() => radius * 0.05)
  return part({ kind: 'rod', material: 'ink', points: rail, widths, closed: true })
}

type StoreyMaker = (material: Material, rows: readonly (readonly [number, number])[]) => Part

function mast(storey: StoreyMaker, tip: ReturnType<typeof rod>): Solid {
  return stacked(
    [
      {
        top: 0,
        parts: [
          storey('hue', [
            [0, 1],
            [0.03, 0.62],
            [0.62, 0.42],
          ]),
        ],
      },
      {
        top: 0,
        parts: [
          storey('ink', [
            [0.62, 0.6],
            [0.635, 1],
            [0.67, 1],
            [0.685, 0.6],
          ]),
        ],
      },
      {
        top: 0,
        parts: [
          storey('hue', [
            [0.685, 0.36],
            [0.82, 0.3],
          ]),
        ],
      },
      {
        top: 0,
        parts: [
          storey('ink', [
            [0.82, 0.24],
            [0.93, 0.12],
          ]),
        ],
      },
      { top: 0, parts: [part(tip)] },
    ].map((one, index) => ({ ...one, top: [0.62, 0.685, 0.82, 0.93, 1][index] ?? 1 })),
  )
}

function stoutTower(storey: StoreyMaker, foot: number, height: number): Solid {
  const radius = foot * UPRIGHT_TAPER
  const merlons = Array.from({ length: 12 }, (_, index) => {
    const turn = ((index + 0.5) / 12) * 2 * Math.PI
    const inner = radius * 0.99 * Math.cos(turn)
    const thick = radius * 0.24
    return part(
      rod(
        'hue',
        thick,
        at(inner * 0.86, radius * 0.86 * Math.sin(turn), height * 0.92),
        at(inner * 0.86, radius * 0.86 * Math.sin(turn), height - thick / 2),
      ),
    )
  })
  return stacked([
    {
      top: 0.05 * height,
      parts: [
        storey('ink', [
          [0, 1],
          [0.05, 0.98],
        ]),
      ],
    },
    {
      top: 0.82 * height,
      parts: [
        storey('hue', [
          [0.05, 0.96],
          [0.82, 0.92],
        ]),
      ],
    },
    {
      top: 0.93 * height,
      parts: [
        storey('hue', [
          [0.82, 0.92],
          [0.86, 1],
          [0.93, 1],
        ]),
      ],
    },
    { top: height, parts: merlons },
  ])
}
