/** An enlarged mask keeps its places and has a clear edge midway between what is so and what is not. */
import { expect, test } from 'vitest'
import { GRAIN, crispMask } from '#renderer/view/map/crisp-mask.ts'

/** Four pixels wide and high; the left two columns are so. A pixel is 40 wide on the map, the raster's corner at 100, 60. */
const raster = { west: 0, north: 0, pixel: 1, columns: 4, rows: 4 }
const on = { size: 40, left: -100, top: -60 }
const mask = new Uint8ClampedArray(16)
for (let pixel = 0; pixel < 16; pixel++) mask[pixel] = pixel % 4 < 2 ? 255 : 0

function at(x: number, y: number, box = { left: 0, top: 0, right: 400, bottom: 300 }): number {
  const { columns, bytes } = crispMask(mask, raster, on, box)
  const [column, row] = [Math.floor((x - box.left) / GRAIN), Math.floor((y - box.top) / GRAIN)]
  return bytes[(row * columns + column) * 4 + 3] ?? -1
}

test('is full up to the edge and empty past it', () => {
  expect([at(104, 100), at(150, 100), at(174, 100)]).toEqual([255, 255, 255])
  expect([at(186, 100), at(240, 100)]).toEqual([0, 0])
})

test('is empty beyond the raster on every side', () => {
  for (const [x, y] of [
    [90, 100],
    [270, 100],
    [120, 50],
    [120, 230],
  ] as const)
    expect(at(x, y)).toBe(0)
})

test('a box somewhere else shows the same places', () => {
  const box = { left: 130, top: 90, right: 230, bottom: 150 }
  expect([at(150, 100, box), at(174, 120, box), at(186, 120, box)]).toEqual([255, 255, 0])
})
