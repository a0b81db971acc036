/** What the frame cuts off a face, to the last digit: plane figures worked out by hand, weighed against a square of known size. */
import { describe, expect, test } from 'vitest'
import { makeView } from '#core/frame/projection.ts'
import { seenFaces } from '#core/frame/seen-faces.ts'
import { type LocalPoint, localFrame } from '#core/geo/local-frame.ts'
import type { ThingFace } from '#core/scene/face.ts'

const HERE = localFrame({ lat: 47, lon: 8 }, 0)
/** Looks level to the north with half an angle of 45 degrees every way: at unit depth the frame is two wide and two high. */
const VIEW = makeView({
  frame: HERE,
  bearing: 0,
  pitch: 0,
  imageDistance: 18,
  frameWidth: 36,
  frameHeight: 36,
  refraction: 0,
})

function face(id: string, normal: LocalPoint, corners: readonly LocalPoint[]): ThingFace {
  return { id, normal, corners, bearing: 180 } as unknown as ThingFace
}

/** On a wall ten metres off, by metres right and up: there the frame shows ten to every side. */
function onWall(id: string, corners: readonly (readonly [number, number])[]): ThingFace {
  return face(
    id,
    { east: 0, north: -1, up: 0 },
    corners.map(([east, up]) => ({ east, north: 10, up })),
  )
}

/** Four square metres in the middle of the wall. */
const SQUARE = onWall('square', [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
])

/** Square metres on the wall that show of a face, by its share beside the square's. */
function shown(of: ThingFace): number {
  const seen = seenFaces(VIEW, HERE, [of, SQUARE], 0)
  const share = seen.find((one) => one.face.id === of.id)?.share ?? 0
  return (4 * share) / (1 - share)
}

const turned = ([x, y]: readonly [number, number], quarters: number): readonly [number, number] =>
  quarters === 0 ? [x, y] : turned([-y, x], quarters - 1)

// A triangle of 50 square metres that leans out over the right border: its tip, half as long, is a quarter of a quarter of it.
const TIP_OUT = [
  [5, -5],
  [15, 0],
  [5, 5],
] as const
const TIP_IN = [
  [5, 0],
  [15, -5],
  [15, 5],
] as const

describe('a face', () => {
  test.each([0, 1, 2, 3])(
    'cut by a border shows what lies within, from whichever corner it is told (%d quarters round)',
    (quarters) => {
      for (let first = 0; first < 3; first++) {
        const from = (all: typeof TIP_OUT | typeof TIP_IN) =>
          [0, 1, 2].map((index) => turned(all[(first + index) % 3] ?? [0, 0], quarters))
        expect(shown(onWall('tip out', from(TIP_OUT)))).toBeCloseTo(50 - 12.5, 6)
        expect(shown(onWall('tip in', from(TIP_IN)))).toBeCloseTo(12.5, 6)
      }
    },
  )

  test('within the frame shows whole, as a triangle too', () => {
    const corners = [
      [2, 1],
      [8, 1],
      [2, 9],
    ] as const
    expect(shown(onWall('triangle', corners))).toBeCloseTo(24, 6)
  })

  test('that holds the whole frame shows as much as the frame has', () => {
    const corners = [
      [-50, -40],
      [60, -40],
      [0, 90],
    ] as const
    expect(shown(onWall('all', corners))).toBeCloseTo(400, 5)
  })

  test('cut at a corner of the frame loses it there, and beyond every border shows nothing', () => {
    // A square of eight around the frame's own upper right corner: a quarter of it is within.
    const around = [
      [6, 6],
      [14, 6],
      [14, 14],
      [6, 14],
    ] as const
    expect(shown(onWall('corner', around))).toBeCloseTo(16, 6)
    for (let quarters = 0; quarters < 4; quarters++) {
      const beyond = [
        [11, -5],
        [14, -5],
        [14, 5],
        [11, 5],
      ] as const
      expect(
        shown(
          onWall(
            'beyond',
            beyond.map((corner) => turned(corner, quarters)),
          ),
        ),
      ).toBe(0)
    }
  })

  test('of which nothing is told, or seen from behind, shows nothing', () => {
    const back = face('back', { east: 0, north: 1, up: 0 }, SQUARE.corners)
    const none = face('none', { east: 0, north: -1, up: 0 }, [])
    expect(seenFaces(VIEW, HERE, [back, none], 0)).toEqual([])
    expect(seenFaces(VIEW, HERE, [back, none, SQUARE], 0)).toEqual([{ face: SQUARE, share: 1 }])
  })
})

describe('a floor', () => {
  const UP = { east: 0, north: 0, up: 1 }
  /** A strip under the lens from behind it to far ahead, as wide to both sides as it lies deep. */
  const strip = (deep: number, from: number, to: number) =>
    face('floor', UP, [
      { east: -deep, north: from, up: -deep },
      { east: deep, north: from, up: -deep },
      { east: deep, north: to, up: -deep },
      { east: -deep, north: to, up: -deep },
    ])

  test('that runs on behind the lens shows from the lower border on', () => {
    // At depth d it stands 1 / d below the middle and as far to both sides: two triangles of 1 - 1 / 400 together, on the wall a hundredfold.
    expect(shown(strip(1, -5, 20))).toBeCloseTo(100 * (1 - 1 / 400), 5)
    expect(shown(strip(1, 2, 20))).toBeCloseTo(100 * (1 / 4 - 1 / 400), 5)
    expect(shown(strip(1, -20, -2))).toBe(0)
  })

  test('so near under the lens has no image within a centimetre of its plane', () => {
    // Five millimetres deep the lower border would show it from five millimetres on; it is seen from ten on, at half of the way down.
    for (const from of [-1, 0.001]) expect(shown(strip(0.005, from, 1))).toBeCloseTo(100 * (1 / 4 - 0.005 ** 2), 4)
  })
})
