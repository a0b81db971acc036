/** The painter draws from far to near, leaves out faces that look away, and obeys the planes between parts. */
import { describe, expect, test } from 'vitest'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { Part, Solid } from '#core/scene/solid.ts'
import { at, ball, box, divide, part } from '#core/scene/solid/shape.ts'
import type { Lighting } from '#renderer/view/lens-picture/lighting.ts'
import { normalOf, paintOrder } from '#renderer/view/lens-picture/painter.ts'
import type { See } from '#renderer/view/lens-picture/camera-transform.ts'

/** A camera at the given place that looks north, level. */
function from(place: LocalPoint): See {
  return (point) => ({ right: point.east - place.east, up: point.up - place.up, depth: point.north - place.north })
}

const SOUTH = at(-10, 0, 0)

/** A sun behind the camera's left shoulder. */
const LIGHTING: Lighting = {
  sun: { right: -0.6, up: 0.48, depth: -0.64 },
  zenith: { right: 0, up: 1, depth: 0 },
  hazy: false,
  even: 2,
  round: 1,
}

function radii(solid: Solid, see: See): number[] {
  return paintOrder(solid, see, LIGHTING).flatMap(({ items }) =>
    items.map((item) => (item.kind === 'ball' ? item.radius : 0)),
  )
}

function mark(ahead: number, right: number, radius: number): Part {
  return part(ball('hue', at(ahead, right, 0), radius))
}

test('parts are drawn from far to near, whatever their order in the solid', () => {
  const solid = [mark(5, 0, 3), mark(9, 0, 1), mark(7, 0, 2)]
  expect(radii(solid, from(SOUTH))).toEqual([1, 2, 3])
})

test('of a box seen square on only the near side is drawn', () => {
  const [seen] = paintOrder([part(box('hue', [0, 2], [-1, 1], [-1, 1]))], from(SOUTH), LIGHTING)
  expect(seen?.items).toHaveLength(1)
  const [face] = seen?.items ?? []
  if (face?.kind !== 'face') throw new Error('a face')
  for (const point of face.points) expect(point.depth).toBe(10)
})

test('of a box seen from above and aside three sides are drawn', () => {
  const [seen] = paintOrder([part(box('hue', [0, 2], [-1, 1], [-1, 1]))], from(at(-10, -8, 6)), LIGHTING)
  expect(seen?.items).toHaveLength(3)
})

test('the normal of a face that runs anticlockwise before the lens points to the lens', () => {
  const face = [
    { right: 0, up: 0, depth: 5 },
    { right: 1, up: 0, depth: 5 },
    { right: 1, up: 1, depth: 5 },
    { right: 0, up: 1, depth: 5 },
  ]
  expect(normalOf(face)).toEqual({ right: 0, up: 0, depth: -2 })
})

test('a box is brightest where it looks most to the sun, round things have the tone of their side to the camera', () => {
  const items = [...box('hue', [0, 2], [-1, 1], [-1, 1]), ball('ink', at(0, 0, 3), 0.2)]
  const [seen] = paintOrder([part(items)], from(at(-10, -8, 6)), LIGHTING)
  // Cosines of incidence: 0.64 for the side toward the camera, 0.6 for the left one, 0.48 for the top, by the sun's own parts.
  const shades = (seen?.items ?? []).map((item) => `${item.kind} ${item.shade}`)
  expect(shades.toSorted((one, other) => one.localeCompare(other))).toEqual(['ball 1', 'face 1', 'face 2', 'face 2'])
})

describe('a plane between parts', () => {
  // The front part's middle is farther away than the back part's: distance alone would draw them in the wrong order.
  const solid = [divide(at(0, 1, 0), at(0, 1, 0), [mark(20, 1.1, 2)], [mark(5, 0, 1)])]

  test('draws the part on the lens side last', () => {
    expect(radii(solid, from(at(-10, 9, 0)))).toEqual([1, 2])
  })

  test('and the other way about from the other side', () => {
    expect(radii(solid, from(at(-10, -9, 0)))).toEqual([2, 1])
  })
})
