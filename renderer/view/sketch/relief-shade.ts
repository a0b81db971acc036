/** Relief shading: soft light from the north-west on the elevation grid, made once per palette and laid on each tile. */
import { type PaintCanvas, freshCanvas, contextOf } from './canvas-context.ts'
import { type Relief, splineShares, splineSlopes } from './relief.ts'
import type { SketchPalette } from './sketch-palette.ts'
import type { SketchPen } from './sketch-pen.ts'
import { latitudeAt, worldY } from './world.ts'

/** Shaded points per post. */
const FINENESS = 2
/** Light from the north-west at 40 degrees above the horizon: the mapmaker's habit, whatever the sun does. */
const LIGHT = { east: -Math.SQRT1_2 * Math.cos(0.7), north: Math.SQRT1_2 * Math.cos(0.7), up: Math.sin(0.7) }
const EXAGGERATION = 1.5

const shadeByRelief = new WeakMap<Relief, Map<string, PaintCanvas>>()

function shadeImage(relief: Relief, palette: SketchPalette): PaintCanvas {
  let images = shadeByRelief.get(relief)
  if (images === undefined) {
    images = new Map()
    shadeByRelief.set(relief, images)
  }
  let image = images.get(palette.name)
  if (image === undefined) {
    image = render(relief, palette)
    images.set(palette.name, image)
  }
  return image
}

function render(relief: Relief, palette: SketchPalette): PaintCanvas {
  const columns = relief.columns * FINENESS
  const rows = relief.rows * FINENESS
  const canvas = freshCanvas(columns, rows)
  const context = contextOf(canvas)
  const image = context.createImageData(columns, rows)
  const broad = broadened(relief)
  const metresSouth = relief.degreesSouth * 111_200
  const metresEast = relief.degreesEast * 111_200 * Math.cos((relief.north * Math.PI) / 180)
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const place = (row * columns + column) * 4
      const [x, y] = [(column + 0.5) / FINENESS - 0.5, (row + 0.5) / FINENESS - 0.5]
      const [east, south] = slope(relief, broad, x, y)
      tintSlope(image.data, place, brightness(east / metresEast, south / metresSouth), palette)
    }
  }
  context.putImageData(image, 0, 0)
  return canvas
}

/** Heights in metres, detail softened: the land's own form mixed with a broader one, as a hand shades it. */
function broadened(relief: Relief): Float32Array {
  const { columns, rows, heights } = relief
  const fine: Float32Array = Float32Array.from(heights, (height) => height * relief.metresPerUnit)
  let wide = fine
  for (let round = 0; round < 3; round++) wide = meanAround(meanAround(wide, columns, rows, 1), columns, rows, columns)
  return fine.map((height, post) => height * 0.45 + (wide[post] ?? 0) * 0.55)
}

/** Running mean over seven posts along one axis. */
function meanAround(values: Float32Array, columns: number, rows: number, stride: number): Float32Array {
  const means = new Float32Array(values.length)
  const along = stride === 1 ? columns : rows
  const across = stride === 1 ? rows : columns
  const jump = stride === 1 ? columns : 1
  for (let line = 0; line < across; line++) {
    for (let at = 0; at < along; at++) {
      let sum = 0
      for (let off = -3; off <= 3; off++) {
        sum += values[line * jump + Math.min(along - 1, Math.max(0, at + off)) * stride] ?? 0
      }
      means[line * jump + at * stride] = sum / 7
    }
  }
  return means
}

/** Rise per post eastward and southward at a place between posts. */
function slope(relief: Relief, heights: Float32Array, x: number, y: number): readonly [number, number] {
  const column = Math.min(relief.columns - 3, Math.max(1, Math.floor(x)))
  const row = Math.min(relief.rows - 3, Math.max(1, Math.floor(y)))
  const [across, along] = [splineShares(x - column), splineSlopes(x - column)]
  const [down, downward] = [splineShares(y - row), splineSlopes(y - row)]
  let east = 0
  let south = 0
  for (let line = 0; line < 4; line++) {
    const start = (row - 1 + line) * relief.columns + column - 1
    let level = 0
    let rise = 0
    for (let post = 0; post < 4; post++) {
      const height = heights[start + post] ?? 0
      level += (across[post] ?? 0) * height
      rise += (along[post] ?? 0) * height
    }
    east += (down[line] ?? 0) * rise
    south += (downward[line] ?? 0) * level
  }
  return [east, south]
}

/** Light received against level ground: 0 as level, negative darker, positive brighter. */
function brightness(riseEast: number, riseSouth: number): number {
  const east = riseEast * EXAGGERATION
  const north = -riseSouth * EXAGGERATION
  const lit = (LIGHT.up - LIGHT.east * east - LIGHT.north * north) / Math.sqrt(1 + east * east + north * north)
  return Math.max(0, lit) / LIGHT.up - 1
}

/** One pixel of shading: the tint of slopes turned away or of those turned to the light, and how much of it. */
export function tintSlope(data: Uint8ClampedArray, place: number, light: number, palette: SketchPalette): void {
  const dark = light < 0
  const tint = dark ? palette.shade : palette.glow
  const reach = dark ? 1 - Math.exp(light * 1.5) : 1 - Math.exp(-light * 2.2)
  data[place] = tint[0]
  data[place + 1] = tint[1]
  data[place + 2] = tint[2]
  data[place + 3] = Math.round(reach * (dark ? palette.shadeStrength : palette.glowStrength) * 255)
}

/** Lays the shading over what the pen shows; the caller clips it to the land. */
export function drawRelief(pen: SketchPen, relief: Relief): void {
  const image = shadeImage(relief, pen.palette)
  const { context, scale, left, top, width, height } = pen
  const columnAt = (pixel: number): number => {
    const lon = (pixel / scale - 0.5) * 360
    return ((lon - relief.west) / relief.degreesEast + 0.5) * FINENESS
  }
  const rowAt = (pixel: number): number =>
    ((relief.north - latitudeAt(pixel / scale)) / relief.degreesSouth + 0.5) * FINENESS
  const west = Math.max(0, Math.floor(columnAt(left)) - 3)
  const east = Math.min(image.width, Math.ceil(columnAt(left + width)) + 3)
  const north = Math.max(0, Math.floor(rowAt(top)) - 3)
  const south = Math.min(image.height, Math.ceil(rowAt(top + height)) + 3)
  if (east <= west || south <= north) return
  const pixelX = (column: number): number =>
    ((relief.west + (column / FINENESS - 0.5) * relief.degreesEast) / 360 + 0.5) * scale - left
  const pixelY = (row: number): number =>
    worldY(relief.north - (row / FINENESS - 0.5) * relief.degreesSouth) * scale - top
  context.imageSmoothingEnabled = true
  context.imageSmoothingQuality = 'high'
  const [x, y] = [pixelX(west), pixelY(north)]
  context.drawImage(image, west, north, east - west, south - north, x, y, pixelX(east) - x, pixelY(south) - y)
}
