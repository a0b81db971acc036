/** The worker's work: its answers are the engine's, laid on the map; it goes in small steps and hands its arrays over. */
import { describe, expect, test } from 'vitest'
import { elevationAt } from '#core/ground/elevation-grid.ts'
import { IN_SHADE, LIT, hillShadow } from '#core/ground/hill-shadow.ts'
import { MAP_LIGHT } from '#core/ground/relief.ts'
import { viewshed } from '#core/ground/viewshed.ts'
import { HIDDEN, SEEN, UNKNOWN } from '#core/ground/viewshed-request.ts'
import { viewshedPreview } from '#core/ground/viewshed-preview.ts'
import { type AreaJob, type GroundJob, type GroundUpdate, WINDOWS_KEPT } from '#renderer/view/ground/ground-job.ts'
import { groundBuffers, groundWork } from '#renderer/view/ground/ground-work.ts'
import { laidGrid, worldAt } from '#renderer/view/ground/map-raster.ts'
import { type Masks, masksOf } from '#renderer/view/ground/masks.ts'
import { warped } from '#renderer/view/ground/warp.ts'
import type { Step } from '#renderer/job/messages.ts'
import { ringSender } from '#renderer/job/sent-rings.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const grid = mountains(301, 30)
const request = {
  east: 400,
  north: -200,
  height: (elevationAt(grid, 400, -200) ?? 0) + 25,
  targetHeight: 1.5,
  refraction: 0.13,
  radius: null,
}
const seas = { columns: 1, rows: 1, sea: new Uint8Array(1) }

function stepsFor(job: GroundJob, on = grid): Step<GroundUpdate>[] {
  const { take, stepsOf } = groundWork()
  take({ say: 'ground', ground: 1, rings: ringSender()(on).rings })
  const steps = stepsOf(job)
  const found: Step<GroundUpdate>[] = []
  for (let step = steps.next(); step.done !== true; step = steps.next()) found.push(step.value)
  return found
}

function masksFor(job: AreaJob, on = grid): Masks {
  const last = stepsFor(job, on).at(-1)
  if (last === undefined || !('masks' in last.update) || last.update.masks === null) throw new Error('no masks')
  return last.update.masks
}

/** For each pixel whose four cells agree: what they say, and how opaque it is. */
function agreed(masks: Masks, found: Uint8Array, on = grid): { value: number; veiled: number; unknown: number }[] {
  const { toGrid } = laidGrid(on)
  const { raster, veiled, unknown } = masks
  const pixels: { value: number; veiled: number; unknown: number }[] = []
  for (let row = 0; row < raster.rows; row += 7) {
    for (let column = 0; column < raster.columns; column += 7) {
      const { x, y } = warped(toGrid, column + 0.5, row + 0.5)
      const [left, top] = [Math.floor(x), Math.floor(y)]
      if (left < 0 || top < 0 || left > on.columns - 2 || top > on.rows - 2) continue
      const cell = top * on.columns + left
      const four = [cell, cell + 1, cell + on.columns, cell + on.columns + 1].map((at) => found[at])
      if (new Set(four).size > 1) continue
      const at = row * raster.columns + column
      pixels.push({ value: four[0] ?? -1, veiled: veiled[at] ?? -1, unknown: unknown?.[at] ?? 0 })
    }
  }
  return pixels
}

describe('an area', () => {
  test('the exact one veils what the viewshed hides and nothing else', () => {
    const pixels = agreed(masksFor({ kind: 'exact', ground: 1, request }), viewshed(grid, request))
    for (const value of [HIDDEN, SEEN])
      expect(pixels.filter((pixel) => pixel.value === value).length).toBeGreaterThan(50)
    for (const { value, veiled } of pixels) expect(veiled).toBe(value === HIDDEN ? 255 : 0)
  })

  test('the preview is the single pass, told apart from the exact one', () => {
    const preview = masksFor({ kind: 'preview', ground: 1, request })
    for (const { value, veiled } of agreed(preview, viewshedPreview(grid, request)))
      expect(veiled).toBe(value === HIDDEN ? 255 : 0)
    expect(preview.veiled).not.toEqual(masksFor({ kind: 'exact', ground: 1, request }).veiled)
  })

  test('the hills’ shadow veils the shade', () => {
    const sun = { azimuth: 250, altitude: 9 }
    const pixels = agreed(masksFor({ kind: 'shade', ground: 1, sun, refraction: 0.13 }), hillShadow(grid, sun, 0.13))
    for (const value of [IN_SHADE, LIT]) expect(pixels.some((pixel) => pixel.value === value)).toBe(true)
    for (const { value, veiled } of pixels) expect(veiled).toBe(value === IN_SHADE ? 255 : 0)
  })

  test('unknown ground is neither veiled nor clear', () => {
    const holed = groundOf(201, 20, (east, north) => (Math.hypot(east - 900, north) < 400 ? Number.NaN : 10))
    const level = { ...request, east: 0, north: 0, height: 12 }
    const masks = masksFor({ kind: 'exact', ground: 1, request: level }, holed)
    const pixels = agreed(masks, viewshed(holed, level), holed)
    const dotted = pixels.filter(({ value }) => value === UNKNOWN)
    expect(dotted.length).toBeGreaterThan(10)
    for (const { veiled, unknown } of dotted) expect([veiled, unknown]).toEqual([0, 255])
  })

  test('a veiled cell is drawn about its own place', () => {
    const laid = laidGrid(grid)
    for (const [column, row] of [
      [12, 250],
      [150, 151],
      [280, 30],
    ] as const) {
      const found = new Uint8Array(grid.columns * grid.rows).fill(SEEN)
      found[row * grid.columns + column] = HIDDEN
      const { raster, veiled } = masksOf(laid, found, { veiled: HIDDEN, unknown: UNKNOWN })
      let [weight, x, y] = [0, 0, 0]
      for (let pixel = 0; pixel < raster.columns * raster.rows; pixel++) {
        const opacity = veiled[pixel] ?? 0
        weight += opacity
        x += opacity * ((pixel % raster.columns) + 0.5)
        y += opacity * (Math.floor(pixel / raster.columns) + 0.5)
      }
      const place = worldAt(laid, grid.west + column * grid.cell, grid.north - row * grid.cell)
      expect(Math.abs(x / weight - (place.x - raster.west) / raster.pixel)).toBeLessThan(0.15)
      expect(Math.abs(y / weight - (place.y - raster.north) / raster.pixel)).toBeLessThan(0.15)
    }
  })

  test('the exact one tells its progress in many small steps and its pictures with the last alone', () => {
    const steps = stepsFor({ kind: 'exact', ground: 1, request })
    expect(steps.length).toBeGreaterThan(5)
    const shares = steps.map(({ share }) => share)
    expect(shares).toEqual(shares.toSorted((one, other) => one - other))
    expect(shares.at(-1)).toBe(1)
    const told = steps.map(({ update }) => 'masks' in update && update.masks !== null)
    expect(told.indexOf(true)).toBe(steps.length - 1)
  })

  test('its arrays are handed over, each once', () => {
    for (const job of [
      { kind: 'exact', ground: 1, request },
      { kind: 'relief', ground: 1, light: MAP_LIGHT, seas, palette: 'light' },
      { kind: 'contours', ground: 1, cells: { left: 0, top: 0, right: 301, bottom: 301 }, zoom: 13, seas },
    ] as const) {
      const last = stepsFor(job).at(-1)
      const buffers = last === undefined ? [] : groundBuffers(last.update)
      expect(buffers.length).toBeGreaterThan(0)
      expect(new Set(buffers).size).toBe(buffers.length)
      const [before] = buffers
      structuredClone(last?.update, { transfer: buffers as ArrayBuffer[] })
      expect(before?.byteLength).toBe(0)
    }
  })
})

describe('windows', () => {
  test('one that was never handed over, or was long ago, is refused by its number', () => {
    const { take, stepsOf } = groundWork()
    const send = ringSender(WINDOWS_KEPT)
    for (let ground = 1; ground <= WINDOWS_KEPT + 1; ground++) take({ say: 'ground', ground, rings: send(grid).rings })
    expect(() => stepsOf({ kind: 'exact', ground: 1, request })).toThrow(/number 1/u)
    expect(() => stepsOf({ kind: 'exact', ground: 99, request })).toThrow(/number 99/u)
    expect(stepsOf({ kind: 'exact', ground: WINDOWS_KEPT + 1, request }).next().done).toBe(false)
  })
})
