/** Contours as the map draws them: lines in world coordinates, joined to as few arrays as can be, so that a worker hands them over whole. */
import { type ContourLabel, contourLabels } from '#core/ground/contour-labels.ts'
import { isStrongContour } from '#core/ground/contour-step.ts'
import { type ContourLine, contours } from '#core/ground/contours.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { WGS84_SEMI_MAJOR } from '#core/geo/local-frame.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { simplified } from '#core/geo/simplify.ts'
import { cutCorners } from '#renderer/view/sketch/curve.ts'
import { worldPixels } from '#renderer/view/sketch/world.ts'
import { type LaidGrid, worldAt } from './map-raster.ts'
import { WATER_LINE } from './water.ts'

/** Lines of one kind, one after the other: x, y, x, y in world coordinates. */
export interface PackedLines {
  readonly points: Float64Array
  /** Index in `points` at which each line ends. */
  readonly ends: Int32Array
}

export interface PlacedContourLabel {
  /** Metres above the sea. */
  readonly level: number
  /** World coordinates of its middle. */
  readonly x: number
  readonly y: number
  /** Degrees clockwise. */
  readonly turn: number
}

export interface ContourDrawing {
  readonly zoom: number
  /** Metres from line to line. */
  readonly step: number
  readonly fine: PackedLines
  readonly strong: PackedLines
  readonly shore: PackedLines
  readonly labels: readonly PlacedContourLabel[]
}

/** Pixels that a thinned line may lie beside its true place. */
const OFF = 0.3
/** A cell wider than this on the map shows its corners, which are then rounded. */
const WIDE_CELL = 5
/** Cells narrower than this tell no more than their neighbours: every second, third ... is taken. */
const NARROW_CELL = 1.2
/** Pixels on the map: a figure's length, along a line to the next, and between any two. */
const LABEL = { length: 24, spacing: 420, apart: 110 } as const

/** Cells of a grid: first included, last not. */
export interface Cells {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** The part of a grid within some cells, every `stride`th of them. It keeps the grid's plane, so its metres mean the same. */
export function contourPart(grid: ElevationGrid, cells: Cells, stride: number): ElevationGrid {
  const columns = Math.max(1, Math.ceil((cells.right - cells.left) / stride))
  const rows = Math.max(1, Math.ceil((cells.bottom - cells.top) / stride))
  const heights = new Float32Array(columns * rows)
  for (let row = 0; row < rows; row++) {
    const from = (cells.top + row * stride) * grid.columns + cells.left
    for (let column = 0; column < columns; column++)
      heights[row * columns + column] = grid.heights[from + column * stride] as number
  }
  return {
    centre: grid.centre,
    cell: grid.cell * stride,
    columns,
    rows,
    west: grid.west + cells.left * grid.cell,
    north: grid.north - cells.top * grid.cell,
    heights,
  }
}

/** Pixels of the map to a metre on the ground at the grid's centre. */
export function pixelsPerMetre(grid: ElevationGrid, zoom: number): number {
  return worldPixels(zoom) / (2 * Math.PI * WGS84_SEMI_MAJOR * Math.cos(grid.centre.lat * RADIANS_PER_DEGREE))
}

export function strideFor(grid: ElevationGrid, zoom: number): number {
  return Math.max(1, Math.ceil(NARROW_CELL / (pixelsPerMetre(grid, zoom) * grid.cell)))
}

/** `water` is 1 where a cell of the whole grid is open water: no contours there, and a shore around it. */
export function contourDrawing(
  laid: LaidGrid,
  water: Uint8Array,
  cells: Cells,
  step: number,
  zoom: number,
): ContourDrawing {
  const stride = strideFor(laid.grid, zoom)
  const part = contourPart(laid.grid, cells, stride)
  const scale = pixelsPerMetre(laid.grid, zoom)
  const lines = contours(dryPart(part, laid.grid, water, cells, stride, Number.NaN), step)
  const strong = lines.filter(({ level }) => isStrongContour(level, step))
  const room = { length: LABEL.length / scale, spacing: LABEL.spacing / scale, apart: LABEL.apart / scale }
  const pack = (some: readonly ContourLine[]): PackedLines => packed(laid, some, scale * part.cell > WIDE_CELL, zoom)
  return {
    zoom,
    step,
    fine: pack(lines.filter(({ level }) => !isStrongContour(level, step))),
    strong: pack(strong),
    shore: pack(shores(part, laid.grid, water, cells, stride)),
    labels: contourLabels(strong, room).map((label) => placed(laid, label)),
  }
}

/** Open water told as another height; NaN makes it unknown, so that no contour enters it. */
function dryPart(
  part: ElevationGrid,
  grid: ElevationGrid,
  water: Uint8Array,
  cells: Cells,
  stride: number,
  wet: number,
): ElevationGrid {
  const heights = part.heights.map((height, cell) => {
    const row = Math.floor(cell / part.columns)
    const column = cell - row * part.columns
    return water[(cells.top + row * stride) * grid.columns + cells.left + column * stride] === 1 ? wet : height
  })
  return { ...part, heights }
}

/** Metres that land is at least taken to stand above the water line, and water below it, so that the shore parts them everywhere. */
const LEAST_BANK = 0.05
/** So far apart that the line at 0 is the only one. */
const ONE_LEVEL = 20_000

function shores(
  part: ElevationGrid,
  grid: ElevationGrid,
  water: Uint8Array,
  cells: Cells,
  stride: number,
): ContourLine[] {
  const dry = dryPart(part, grid, water, cells, stride, -Infinity).heights
  const heights = part.heights.map((height, cell) => {
    const above = height - WATER_LINE
    return dry[cell] === -Infinity ? Math.min(-LEAST_BANK, above) : Math.max(LEAST_BANK, above)
  })
  return contours({ ...part, heights }, ONE_LEVEL)
}

function packed(laid: LaidGrid, lines: readonly ContourLine[], rounded: boolean, zoom: number): PackedLines {
  const drawn = lines.map((line) => drawnLine(laid, line, rounded, zoom)).filter(({ length }) => length >= 4)
  const points = new Float64Array(drawn.reduce((sum, { length }) => sum + length, 0))
  const ends = new Int32Array(drawn.length)
  let at = 0
  drawn.forEach((line, index) => {
    points.set(line, at)
    at += line.length
    ends[index] = at
  })
  return { points, ends }
}

function drawnLine(laid: LaidGrid, { points, closed }: ContourLine, rounded: boolean, zoom: number): Float64Array {
  const line = new Float64Array(points.length + (closed ? 2 : 0))
  for (let place = 0; place < points.length; place += 2) {
    const { x, y } = worldAt(laid, points[place] as number, points[place + 1] as number)
    line[place] = x
    line[place + 1] = y
  }
  if (closed) line.set(line.subarray(0, 2), points.length)
  const smooth = rounded ? cutCorners(cutCorners(line, closed), closed) : line
  return simplified(smooth, OFF / worldPixels(zoom))
}

function placed(laid: LaidGrid, { level, east, north, turn }: ContourLabel): PlacedContourLabel {
  return { level, turn, ...worldAt(laid, east, north) }
}

/** Buffers to hand over instead of copying. */
export function contourBuffers({ fine, strong, shore }: ContourDrawing): ArrayBufferLike[] {
  return [fine, strong, shore].flatMap(({ points, ends }) => [points.buffer, ends.buffer])
}
