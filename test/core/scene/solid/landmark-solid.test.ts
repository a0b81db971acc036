/** Landmarks' solids stay within the bounding points from which fills are read, and touch them. */
import { describe, expect, test } from 'vitest'
import { type Extent, extentOf } from '#core/frame/framing.ts'
import { type View, apparent, makeView } from '#core/frame/projection.ts'
import { destination } from '#core/geo/geodesic.ts'
import { type LocalPoint, localFrame, toEarth } from '#core/geo/local-frame.ts'
import { SPAN_FORMS, type Landmark } from '#core/scene/landmark.ts'
import { landmarkBoundingPoints } from '#core/scene/bounding-points.ts'
import { eachPoint, itemsOf } from '#core/scene/solid.ts'
import { landmarkSolid } from '#core/scene/solid/landmark-solid.ts'

const HERE = { lat: -41.2, lon: 12.4 }
const BASE = 4

function along(bearing: number, distance: number, turned: number, metres: readonly number[]) {
  const middle = destination(HERE, bearing, distance)
  return metres.map((place) => destination(middle, bearing + turned, place))
}

function footprint(bearing: number, distance: number, corners: readonly (readonly [number, number])[]) {
  const middle = destination(HERE, bearing, distance)
  return corners.map(([x, y]) => destination(destination(middle, bearing + 25, x), bearing + 115, y))
}

const common = { id: 'mark', name: 'Mark', baseElevation: BASE, baseSlope: null, baseAspect: null }
const CASES: readonly (readonly [string, Landmark, number])[] = [
  ['stout tower', { ...common, kind: 'upright', at: destination(HERE, 30, 900), width: 20, height: 30 }, 30],
  ['lighthouse', { ...common, kind: 'upright', at: destination(HERE, 30, 900), width: 9, height: 40 }, 30],
  ['mast', { ...common, kind: 'upright', at: destination(HERE, 30, 900), width: 5, height: 120 }, 30],
  ['summit', { ...common, kind: 'summit', at: destination(HERE, 30, 9000), width: 1800, height: 600 }, 30],
  ...SPAN_FORMS.flatMap((form) =>
    (
      [
        [-170, 170],
        [-170, -100, 100, 170],
        [-200, -90, 0, 90, 150],
      ] as const
    ).map(
      (places) =>
        [
          `${form} of ${places.length} points`,
          { ...common, kind: 'span', form, line: along(200, 1400, 78, places), height: 60, deckHeight: 24, width: 12 },
          200,
        ] as const,
    ),
  ),
  [
    'girder without truss',
    {
      ...common,
      kind: 'span',
      form: 'girder',
      line: along(200, 1400, 78, [-90, 0, 90]),
      height: 18,
      deckHeight: 18,
      width: 9,
    },
    200,
  ],
  [
    'house',
    {
      ...common,
      kind: 'building',
      footprint: footprint(300, 800, [
        [0, 0],
        [30, 0],
        [30, 12],
        [0, 12],
      ]),
      height: 14,
    },
    300,
  ],
  [
    'house drawn the other way about',
    {
      ...common,
      kind: 'building',
      footprint: footprint(300, 800, [
        [0, 12],
        [30, 12],
        [30, 0],
        [0, 0],
      ]),
      height: 14,
    },
    300,
  ],
  [
    'block with a recess',
    {
      ...common,
      kind: 'building',
      footprint: footprint(300, 800, [
        [0, 0],
        [40, 0],
        [40, 25],
        [20, 25],
        [20, 50],
        [0, 50],
      ]),
      height: 22,
    },
    300,
  ],
]

function viewToward(bearing: number): View {
  const frame = localFrame(HERE, 6)
  return makeView({ frame, bearing, pitch: 1, imageDistance: 100, frameWidth: 36, frameHeight: 24, refraction: 0.13 })
}

/** Bounds of a solid in the frame, the thickness of its rods included as it is drawn. */
function solidExtent(view: View, landmark: Landmark): Extent {
  const placed = landmarkSolid(landmark, BASE)
  if (placed === null) throw new Error('no points')
  const points: LocalPoint[] = []
  for (const item of itemsOf(placed.solid)) {
    eachPoint(item, ({ east, north, up }, radius) => {
      const put = (e: number, n: number, u: number): void => {
        points.push(apparent(view.frame, toEarth(placed.frame, e, n, u), view.refraction))
      }
      if (radius === 0) put(east, north, up)
      else for (const sign of [-1, 1]) put(east, north, up + sign * radius)
    })
  }
  const extent = extentOf(view, points)
  if (extent === null) throw new Error('behind')
  return extent
}

describe.each(CASES)('%s', (_, landmark, bearing) => {
  const view = viewToward(bearing)
  const boundingPoints = extentOf(
    view,
    landmarkBoundingPoints(landmark, BASE).map((point) => apparent(view.frame, point, view.refraction)),
  )
  const solid = solidExtent(view, landmark)

  test('lies within the bounding points and touches it to one part in a hundred', () => {
    if (boundingPoints === null) throw new Error('behind')
    const wide = boundingPoints.right - boundingPoints.left
    const high = boundingPoints.top - boundingPoints.bottom
    // A tower's thickness along the line isn't in the bounding points: seen at a slant its near edge rises a hair above.
    const inside = 1e-3
    expect(solid.left).toBeGreaterThan(boundingPoints.left - inside * wide)
    expect(solid.right).toBeLessThan(boundingPoints.right + inside * wide)
    expect(solid.bottom).toBeGreaterThan(boundingPoints.bottom - inside * high)
    expect(solid.top).toBeLessThan(boundingPoints.top + inside * high)
    expect(solid.left).toBeLessThan(boundingPoints.left + 0.01 * wide)
    expect(solid.right).toBeGreaterThan(boundingPoints.right - 0.01 * wide)
    expect(solid.bottom).toBeLessThan(boundingPoints.bottom + 0.01 * high)
    expect(solid.top).toBeGreaterThan(boundingPoints.top - 0.01 * high)
  })
})

test('a main cable under a level deck hangs in a parabola: equal steps have equal second differences', () => {
  const landmark: Landmark = {
    ...common,
    kind: 'span',
    form: 'suspension',
    line: along(0, 1000, 90, [-170, -110, 110, 170]),
    height: 60,
    deckHeight: 20,
    width: 12,
  }
  const placed = landmarkSolid(landmark, BASE)
  const cables = itemsOf(placed?.solid ?? []).filter((item) => item.kind === 'rod' && (item.widths[0] ?? 0) > 0.9)
  const heights = cables
    .flatMap((item) => (item.kind === 'rod' ? [item.points[0]] : []))
    .filter((point) => point !== undefined && point.east > 61 && point.east < 270)
    .filter((point) => (point?.north ?? 0) > 0)
    .map((point) => point?.up ?? 0)
  const second = heights.slice(2).map((up, index) => up - 2 * (heights[index + 1] ?? 0) + (heights[index] ?? 0))
  expect(second.length).toBeGreaterThan(6)
  // The chord of 220 m over the curved earth bends the heights by less than a millimetre.
  for (const bend of second) expect(bend).toBeCloseTo(second[0] ?? 0, 3)
  expect(second[0]).toBeGreaterThan(0)
})
