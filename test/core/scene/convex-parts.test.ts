/** A landmark's convex parts: within its bounding points, down to its foot and up to its top. */
import { describe, expect, test } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { toLocal } from '#core/geo/local-frame.ts'
import { convexParts } from '#core/scene/convex-parts.ts'
import { SPAN_FORMS, type Landmark, type SpanLandmark } from '#core/scene/landmark.ts'
import { landmarkBoundingPoints } from '#core/scene/bounding-points.ts'
import { bridgeAt } from '#test/help/plans.ts'

const AT = { lat: -41.2, lon: 12.4 }
const COMMON = { id: 'one', name: 'One', height: 30, baseElevation: 0, baseSlope: null, baseAspect: null }
const spanOf = (form: SpanLandmark['form']): SpanLandmark => ({ ...bridgeAt(AT, 40, 600), form })
const LANDMARKS: readonly Landmark[] = [
  ...SPAN_FORMS.map(spanOf),
  { ...COMMON, kind: 'upright', at: AT, width: 8 },
  { ...COMMON, kind: 'summit', at: AT, width: 800 },
  { ...COMMON, kind: 'building', footprint: [0, 90, 180, 270].map((turn) => destination(AT, turn, 20)) },
]

describe.each(LANDMARKS.map((landmark) => [landmark.kind + ('form' in landmark ? ` ${landmark.form}` : ''), landmark]))(
  '%s',
  (_, landmark) => {
    if (typeof landmark === 'string') throw new Error('a landmark follows its name')
    const base = 12
    const placed = convexParts(landmark, base)
    if (placed === null) throw new Error('it has a place')
    const points = placed.parts.flat()
    const boundingPoints = landmarkBoundingPoints(landmark, base).map((point) => toLocal(placed.frame, point))

    test('has parts of four corners or more', () => {
      expect(placed.parts.length).toBeGreaterThan(0)
      expect(placed.parts.every((part) => part.length >= 4)).toBe(true)
    })

    test.each(['east', 'north', 'up'] as const)('reaches as far as its bounding points: %s', (axis) => {
      const own = points.map((point) => point[axis])
      const whole = boundingPoints.map((point) => point[axis])
      // A leg stands a little out before and behind the pier it stands for.
      expect(Math.max(...own)).toBeCloseTo(Math.max(...whole), axis === 'up' ? 1 : -1)
      expect(Math.min(...own)).toBeCloseTo(Math.min(...whole), axis === 'up' ? 1 : -1)
    })
  },
)

test('a suspension bridge lets the light through under its deck, but for the legs of its towers', () => {
  const bridge = spanOf('suspension')
  const placed = convexParts(bridge, 0)
  const standing = placed?.parts.filter((part) => part.some(({ up }) => up < bridge.deckHeight / 2)) ?? []
  // Two towers of two legs each, 2.4 m thick.
  expect(standing).toHaveLength(4)
  for (const part of standing) {
    const [first] = part
    const reach = Math.max(
      ...part.map(({ east, north }) => Math.hypot(east - (first?.east ?? 0), north - (first?.north ?? 0))),
    )
    expect(reach).toBeLessThan(4)
  }
})

test('a span of one point, and a footprint of none, have no parts to stumble over', () => {
  expect(convexParts({ ...spanOf('wall'), line: [AT] }, 0)?.parts).toEqual([])
  expect(convexParts({ ...COMMON, kind: 'building', footprint: [] }, 0)).toBeNull()
})
