/** The shadow that hills cast at one position of the sun, in one sweep away from it. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import type { ElevationGrid } from './elevation-grid.ts'

export const LIT = 0
export const IN_SHADE = 1
/** The cell's own ground is unknown. */
export const SHADE_UNKNOWN = 2

/** Degrees under which the sun may stand below the level somewhere on a grid 100 km wide. */
const LOW_SUN = 1
/** Rays carried together when lines run across the rows, so that what is read of each row is read in turn. */
const RAYS_TOGETHER = 16
/** Metres by which ground may stand below a ray and still be touched by it. */
const GRAZE = 1e-6

/** Degrees at the grid's centre: azimuth from true north, altitude as it appears there (of the disc's upper edge: last light). */
export interface SunOverGrid {
  readonly azimuth: number
  readonly altitude: number
}

/**
 * Rays run parallel over the plane of the grid. Lines are the grid lines they mostly cross, counted from the sun's side; on each line
 * further from the sun a ray stands `drift` cells further along (places) and `fall` metres lower.
 */
interface Sweep {
  readonly grid: ElevationGrid
  readonly lines: number
  readonly places: number
  /** Index of line 0, place 0 in `heights`, and the steps from there. */
  readonly origin: number
  readonly lineStride: number
  readonly placeStride: number
  /** Cells along by line towards the sun, 0..1. */
  readonly drift: number
  /** Metres lower by line away from the sun. */
  readonly fall: number
  /** Metres by which the plane stands above the curved ground, by line and by place. */
  readonly lineDrop: Float64Array
  readonly placeDrop: Float64Array
}

/**
 * LIT, IN_SHADE or SHADE_UNKNOWN by cell. Parallel rays are swept one cell apart and cells told between them, so the edge of a shadow
 * may lie a cell off; for drawing, not for the minute of first light. The earth's curve, less what refraction takes back, is in the
 * heights. Unknown ground and what lies beyond the grid cast no shadow, but a sun below the level must clear the lowest ground's own bulge.
 */
export function hillShadow(grid: ElevationGrid, sun: SunOverGrid, refraction: number): Uint8Array {
  const shade = new Uint8Array(grid.columns * grid.rows)
  sweepRays(sweepOf(grid, sun, refraction), shade)
  if (sun.altitude < LOW_SUN) behindTheBulge(grid, sun, refraction, shade)
  return shade
}

function sweepOf(grid: ElevationGrid, sun: SunOverGrid, refraction: number): Sweep {
  const { columns, rows, cell } = grid
  const east = Math.sin(sun.azimuth * RADIANS_PER_DEGREE)
  const north = Math.cos(sun.azimuth * RADIANS_PER_DEGREE)
  const byRows = Math.abs(north) >= Math.abs(east)
  const curve = (1 - refraction) / (2 * MEAN_EARTH_RADIUS)
  const columnDrop = Float64Array.from({ length: columns }, (_, column) => curve * (grid.west + column * cell) ** 2)
  const rowDrop = Float64Array.from({ length: rows }, (_, row) => curve * (grid.north - row * cell) ** 2)
  // The sun's side comes first; along a line, places are counted so that a ray moves towards higher ones as it nears the sun.
  const linesBackward = byRows ? north < 0 : east > 0
  const placesBackward = byRows ? east < 0 : north > 0
  const [lineDrop, placeDrop] = byRows ? [rowDrop, columnDrop] : [columnDrop, rowDrop]
  const [lines, places] = byRows ? [rows, columns] : [columns, rows]
  const [line, place] = byRows ? [columns, 1] : [1, columns]
  const [along, across] = byRows ? [Math.abs(north), Math.abs(east)] : [Math.abs(east), Math.abs(north)]
  return {
    grid,
    lines,
    places,
    origin: (linesBackward ? (lines - 1) * line : 0) + (placesBackward ? (places - 1) * place : 0),
    lineStride: linesBackward ? -line : line,
    placeStride: placesBackward ? -place : place,
    drift: across / along,
    fall: (cell / along) * Math.tan(sun.altitude * RADIANS_PER_DEGREE),
    lineDrop: linesBackward ? lineDrop.toReversed() : lineDrop,
    placeDrop: placesBackward ? placeDrop.toReversed() : placeDrop,
  }
}

/**
 * Rays one cell apart run through the whole grid; each carries the height at which the ground it met so far casts its shadow. A cell is
 * told by the two rays it lies between. Where lines run across the rows, a few rays are carried through before the next few.
 */
function sweepRays(sweep: Sweep, shade: Uint8Array): void {
  const rays = sweep.places + Math.floor((sweep.lines - 1) * sweep.drift)
  const together = Math.abs(sweep.placeStride) === 1 ? rays : RAYS_TOGETHER
  const cast = new Float64Array(together + 1)
  for (let first = 0; first < rays; first += together) {
    cast.fill(-Infinity)
    const end = Math.min(first + together, rays)
    for (let line = 0; line < sweep.lines; line++) sweepLine(sweep, line, first, end, cast, shade)
  }
}

/** Passes the rays from `firstRay` to `endRay`, both included, over one line, and tells the cells between them. */
function sweepLine(
  sweep: Sweep,
  line: number,
  firstRay: number,
  endRay: number,
  cast: Float64Array,
  shade: Uint8Array,
): void {
  const { places, placeStride, fall, placeDrop } = sweep
  const heights = sweep.grid.heights
  const drifted = Math.floor(line * sweep.drift)
  const share = line * sweep.drift - drifted
  const from = Math.max(0, firstRay - drifted)
  const end = Math.min(places, endRay - drifted)
  if (from >= end) return
  const lineDrop = sweep.lineDrop[line] as number
  let cell = sweep.origin + line * sweep.lineStride + from * placeStride
  let ray = from + drifted - firstRay
  let left = (cast[ray] as number) - fall
  let before = from > 0 ? heightAt(sweep, line, from - 1) : heightAt(sweep, line, 0)
  for (let place = from; place < end; place++) {
    const own = (heights[cell] as number) - lineDrop - (placeDrop[place] as number)
    const right = (cast[ray + 1] as number) - fall
    if (left + share * (right - left) > own + GRAZE) shade[cell] = IN_SHADE
    else if (own !== own) shade[cell] = SHADE_UNKNOWN
    const ground = own + share * (before - own)
    cast[ray] = ground > left ? ground : left
    left = right
    before = own
    cell += placeStride
    ray++
  }
  // The ray past the last cell; beyond the grid's edge the ground goes on level.
  const own = end < places ? heightAt(sweep, line, end) : before
  const ground = own + share * (before - own)
  cast[ray] = ground > left ? ground : left
}

function heightAt(sweep: Sweep, line: number, place: number): number {
  const height = sweep.grid.heights[sweep.origin + line * sweep.lineStride + place * sweep.placeStride] as number
  return height - (sweep.lineDrop[line] as number) - (sweep.placeDrop[place] as number)
}

/** Puts in the shade what a sun under its level reaches only through ground that lies everywhere as low as the lowest known. */
function behindTheBulge(grid: ElevationGrid, sun: SunOverGrid, refraction: number, shade: Uint8Array): void {
  const { heights, columns, rows, cell } = grid
  const curve = (1 - refraction) / (2 * MEAN_EARTH_RADIUS)
  if (curve <= 0) return
  const lowest = heights.reduce((low, height) => (height < low ? height : low), Infinity)
  const rise = Math.tan(sun.altitude * RADIANS_PER_DEGREE)
  const east = Math.sin(sun.azimuth * RADIANS_PER_DEGREE)
  const north = Math.cos(sun.azimuth * RADIANS_PER_DEGREE)
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const index = row * columns + column
      // The level leans away from that of the centre; a ray that falls at `there` comes lowest after there / 2 curve metres.
      const away = (grid.west + column * cell) * east + (grid.north - row * cell) * north
      const there = rise + 2 * curve * away
      const clear = 4 * curve * ((heights[index] as number) - lowest)
      if (there < 0 && there * there > clear) shade[index] = IN_SHADE
    }
  }
}
