/** Items of one tone share a path where that changes nothing of what covers what. */
import { expect, test } from 'vitest'
import type { Material } from '#core/scene/solid.ts'
import { layersOf } from '#renderer/view/lens-picture/layers.ts'
import type { SeenItem } from '#renderer/view/lens-picture/painter.ts'
import type { Sheet } from '#renderer/view/lens-picture/pen.ts'

const SHEET: Sheet = {
  middleX: 0,
  middleY: 0,
  scale: 1,
  bounds: { left: -500, top: -500, right: 500, bottom: 500 },
  thinnest: 0,
}

function face(material: Material, ...corners: readonly (readonly [number, number])[]): SeenItem {
  return { kind: 'face', material, shade: 0, points: corners.map(([right, up]) => ({ right, up, depth: 1 })) }
}

function square(material: Material, x: number): SeenItem {
  return face(material, [x, 0], [x + 10, 0], [x + 10, 10], [x, 10])
}

function count(items: readonly SeenItem[], slack?: number): number {
  return layersOf([{ depth: 1, items }], SHEET, slack).length
}

test('a later item slips under what it does not touch', () => {
  expect(count([square('hue', 0), square('ink', 30), square('hue', 60)])).toBe(2)
})

test('one that covers what lies between keeps its place', () => {
  expect(count([square('hue', 0), square('ink', 8), square('hue', 16)])).toBe(3)
  expect(count([square('hue', 0), square('ink', 8), square('hue', 16)], 0.4)).toBe(3)
})

test('with slack what overlaps by a hair counts as apart', () => {
  const items = [square('hue', 0), square('ink', 9.7), square('hue', 19.4)]
  expect(count(items)).toBe(3)
  expect(count(items, 0.4)).toBe(2)
})

test('slanting things whose boxes overlap are apart when they are', () => {
  const slanting = (material: Material, x: number): SeenItem =>
    face(material, [x, 0], [x + 4, 0], [x + 24, 20], [x + 20, 20])
  expect(count([slanting('hue', 0), slanting('ink', 6), slanting('hue', 12)], 0.4)).toBe(2)
  expect(count([slanting('hue', 0), slanting('ink', 3), slanting('hue', 6)], 0.4)).toBe(3)
})

test('a hollow outline is not taken for apart by an edge of its own hollow', () => {
  // A horseshoe, and a square within its arm: one of the horseshoe's inner edges has all of the square on its far side.
  const shoe = face('ink', [0, 0], [30, 0], [30, 30], [20, 30], [20, 10], [10, 10], [10, 30], [0, 30])
  expect(
    count([face('hue', [100, 0], [101, 0], [101, 1]), shoe, face('hue', [22, 12], [28, 12], [28, 28], [22, 28])], 0.4),
  ).toBe(3)
})
