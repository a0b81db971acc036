/** Subjects' solids: each fills its box exactly, closed faces look outward, and wheels stay on the ground. */
import { describe, expect, test } from 'vitest'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { type Face, itemsOf, solidBounds } from '#core/scene/solid.ts'
import { box, column, extrusion, part } from '#core/scene/solid/shape.ts'
import { fitted } from '#core/scene/solid/fit.ts'
import { subjectSolid } from '#core/scene/solid/subject-solid.ts'
import { SUBJECT_KINDS, SUBJECT_PRESETS } from '#core/scene/subject.ts'

const ODD_SIZES = [
  { length: 0.05, width: 0.02, height: 0.03 },
  { length: 12, width: 0.4, height: 0.5 },
  { length: 0.4, width: 0.5, height: 9 },
  { length: 30, width: 30, height: 0.1 },
]

function sizes(kind: (typeof SUBJECT_KINDS)[number]): { length: number; width: number; height: number }[] {
  return [SUBJECT_PRESETS[kind], ...ODD_SIZES]
}

describe.each(SUBJECT_KINDS)('the solid of a %s', (kind) => {
  test('has the bounds of the box, thickness included', () => {
    for (const size of sizes(kind)) {
      const { low, high } = solidBounds(subjectSolid({ kind, name: '', features: [], ...size }))
      const slack = 1e-9
      expect(Math.abs(low.north + size.length / 2)).toBeLessThan(slack)
      expect(Math.abs(high.north - size.length / 2)).toBeLessThan(slack)
      expect(Math.abs(low.east + size.width / 2)).toBeLessThan(slack)
      expect(Math.abs(high.east - size.width / 2)).toBeLessThan(slack)
      expect(Math.abs(low.up)).toBeLessThan(slack)
      expect(Math.abs(high.up - size.height)).toBeLessThan(slack)
    }
  })

  test('holds only finite points and thicknesses greater than 0', () => {
    for (const item of itemsOf(subjectSolid({ kind, name: '', features: [], ...SUBJECT_PRESETS[kind] }))) {
      const points = item.kind === 'ball' ? [item.centre] : item.points
      for (const point of points) expect(Number.isFinite(point.east + point.north + point.up)).toBe(true)
      if (item.kind === 'rod') {
        expect(item.widths).toHaveLength(item.points.length)
        for (const width of item.widths) expect(width).toBeGreaterThan(0)
      }
    }
  })
})

/** Volume enclosed by closed faces: positive when all look outward (divergence theorem over triangle fans). */
function volume(faces: readonly Face[]): number {
  let sum = 0
  for (const { points } of faces) {
    const [a] = points
    for (let index = 1; index + 1 < points.length; index++) {
      const [b, c] = [points[index], points[index + 1]]
      if (a === undefined || b === undefined || c === undefined) continue
      sum += triple(a, b, c) / 6
    }
  }
  return sum
}

function triple(a: LocalPoint, b: LocalPoint, c: LocalPoint): number {
  return (
    a.east * (b.north * c.up - b.up * c.north) +
    a.north * (b.up * c.east - b.east * c.up) +
    a.up * (b.east * c.north - b.north * c.east)
  )
}

describe('shapes', () => {
  test('a box encloses its volume with faces that look outward', () => {
    expect(volume(box('hue', [1, 3], [-1, 1], [5, 8]))).toBeCloseTo(12, 12)
  })

  test('an extrusion of a triangle encloses half its box', () => {
    const triangle = [
      [0, 0],
      [0, 2],
      [3, 0],
    ] as const
    expect(volume(extrusion('hue', triangle, -1, 1))).toBeCloseTo(6, 12)
  })

  test('a column of level ellipses encloses nearly an elliptic cylinder', () => {
    const faces = column(
      'hue',
      [
        [0, 0, 0, 2, 1],
        [0, 0, 5, 2, 1],
      ],
      64,
    )
    // The inscribed polygon of 64 corners has sin(2 pi / 64) / (2 pi / 64) of the ellipse's area.
    const part64 = Math.sin((2 * Math.PI) / 64) / ((2 * Math.PI) / 64)
    expect(volume(faces)).toBeCloseTo(Math.PI * 2 * 5 * part64, 9)
  })

  test('a solid without any extent along an axis is a bug and throws', () => {
    const flat = [part(box('hue', [0, 0], [-1, 1], [0, 1]))]
    expect(() => fitted(flat, { length: 1, width: 1, height: 1 })).toThrow('no extent')
  })
})
