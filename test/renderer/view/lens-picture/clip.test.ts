/** Clipping keeps exactly what lies beyond the near plane and within the bounds. */
import { expect, test } from 'vitest'
import { clipNear, clipStretch, clipToBounds } from '#renderer/view/lens-picture/clip.ts'
import { turningArea } from '#renderer/view/lens-picture/outline.ts'

const square = [
  { right: -1, up: 0, depth: 1 },
  { right: 1, up: 0, depth: 1 },
  { right: 1, up: 0, depth: 5 },
  { right: -1, up: 0, depth: 5 },
]

test('a polygon wholly before the lens is left as it is', () => {
  expect(clipNear(square, 0.5)).toBe(square)
})

test('a polygon across the near plane is cut there, its crossing on the straight edge', () => {
  const kept = clipNear(square, 3)
  expect(kept).toHaveLength(4)
  expect(Math.min(...kept.map((point) => point.depth))).toBe(3)
  expect(kept.filter((point) => point.depth === 3).map((point) => point.right)).toEqual([-1, 1])
})

test('a polygon behind the lens is gone', () => {
  expect(clipNear(square.map((point) => ({ ...point, depth: -point.depth })))).toEqual([])
})

test('a corner alone beyond the plane leaves a triangle', () => {
  const triangle = [
    { right: 0, up: 0, depth: 10 },
    { right: 10, up: 0, depth: -10 },
    { right: 0, up: 10, depth: -10 },
  ]
  const kept = clipNear(triangle, 0)
  expect(kept).toHaveLength(3)
  expect(kept).toContainEqual({ right: 5, up: 0, depth: 0 })
  expect(kept).toContainEqual({ right: 0, up: 5, depth: 0 })
})

test('a stretch is shortened to the plane from either end', () => {
  const near = { right: 0, up: 0, depth: -1 }
  const far = { right: 4, up: 8, depth: 3 }
  expect(clipStretch(near, far, 1)?.[0]).toEqual({ right: 2, up: 4, depth: 1 })
  expect(clipStretch(far, near, 1)?.[1]).toEqual({ right: 2, up: 4, depth: 1 })
  expect(clipStretch(near, near, 1)).toBeNull()
})

test('a picture far larger than the bounds becomes the bounds', () => {
  const huge = [
    { x: -1e9, y: -1e9 },
    { x: 1e9, y: -1e9 },
    { x: 1e9, y: 1e9 },
    { x: -1e9, y: 1e9 },
  ]
  const kept = clipToBounds(huge, { left: 0, top: 0, right: 30, bottom: 20 })
  expect(Math.abs(turningArea(kept)) / 2).toBeCloseTo(600, 3)
})

test('a picture beside the bounds is gone', () => {
  const aside = [
    { x: 40, y: 0 },
    { x: 50, y: 0 },
    { x: 50, y: 10 },
  ]
  expect(clipToBounds(aside, { left: 0, top: 0, right: 30, bottom: 20 })).toEqual([])
})
