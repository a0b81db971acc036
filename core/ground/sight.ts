/** Whether one point sees another over the ground: the straight line between them held against every crossing it could touch. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { type BlockMaxima, type MaximaLevel, maximaOf } from './block-maxima.ts'
import type { ElevationGrid, GridPoint } from './elevation-grid.ts'
import { AT_END, type Crossings, type GridLine, crossingsBetween, distanceAt, roomForCrossings } from './grid-line.ts'
import { stripAt, stripEnd, stripMaximum, stripUnknown } from './line-strips.ts'
import { ringLines } from './rings.ts'

/** A point on the grid's plane and its metres above the sea. */
export interface Raised extends GridPoint {
  readonly elevation: number
}

/** Whether two eyes are one and the same point; two that are not there count as one. */
export function sameEye(one: Raised | null, other: Raised | null): boolean {
  if (one === null || other === null) return one === other
  return one.east === other.east && one.north === other.north && one.elevation === other.elevation
}

/** Metres that the ground bulges above the straight line between two ends of equal elevation, refraction taken off. */
export function bulge(distance: number, whole: number, refraction: number): number {
  return (distance * (whole - distance) * (1 - refraction)) / (2 * MEAN_EARTH_RADIUS)
}

/** Metres above the sea of the line of sight at a distance along it; the same from either end. */
export function sightElevation(from: number, to: number, distance: number, whole: number, refraction: number): number {
  return from + ((to - from) * distance) / whole - bulge(distance, whole, refraction)
}

/** What a walk along a line does with it: blocks it may skip, crossings it looks at. */
export interface Walk {
  /** Whether the walk may pass over blocks no higher than `highest` between two distances. */
  readonly passes: (highest: number, from: number, to: number) => boolean
  /** Whether it must still be told of unknown ground. */
  readonly seeksUnknown: () => boolean
  /** Looks at the crossings; true ends the walk. */
  readonly meets: (crossings: Crossings) => boolean
}

const FINE_CELLS = 8

/** Scratch: every walk fills it again and none keeps it. */
const crossings = roomForCrossings(FINE_CELLS)

/** Leads a walk along a line, coarse blocks first, then fine ones, then crossings, near to far. True when the walk ended early. */
function walkLine(line: GridLine, maxima: BlockMaxima, walk: Walk): boolean {
  return throughStrips(line, maxima.coarse, line.enter, line.leave, walk, (from, to) =>
    throughStrips(line, maxima.fine, from, to, walk, (start, end) => {
      crossingsBetween(line, start, end, crossings)
      return walk.meets(crossings)
    }),
  )
}

/** Leads a walk along the stretches of a line over rings, in their order. True when it ended early. */
export function walkRings(lines: readonly GridLine[], walk: Walk): boolean {
  return lines.some((line) => walkLine(line, maximaOf(line.grid), walk))
}

function throughStrips(
  line: GridLine,
  level: MaximaLevel,
  from: number,
  to: number,
  walk: Walk,
  within: (from: number, to: number) => boolean,
): boolean {
  let here = from
  while (here !== to) {
    const strip = stripAt(line, level, here)
    const end = stripEnd(line, level, strip, to)
    const highest = stripMaximum(line, level, strip, here, end)
    const skipped =
      walk.passes(highest, distanceAt(line, here), distanceAt(line, end)) &&
      !(walk.seeksUnknown() && stripUnknown(line, level, strip, here, end))
    if (!skipped && within(here, end)) return true
    here = end
  }
  return false
}

/** Metres of slack by which a block must stay below a line: far more than rounding, far less than matters. */
const SLACK = 1e-6

/** The lowest that a line of sight runs between two distances, never too high: it sags between its ends like a parabola. */
export function lowestBetween(
  from: number,
  to: number,
  whole: number,
  refraction: number,
  start: number,
  end: number,
): number {
  const ends = Math.min(
    sightElevation(from, to, start, whole, refraction),
    sightElevation(from, to, end, whole, refraction),
  )
  return ends - bulge((end - start) / 2, end - start, refraction) - SLACK
}

/**
 * Whether a point is seen from another; a line that just touches the ground sees. Unknown ground hides nothing here. What lies within
 * a millionth of a cell of either end is that end.
 */
export function sees(grid: ElevationGrid, eye: Raised, point: Raised, refraction: number): boolean {
  const whole = Math.hypot(point.east - eye.east, point.north - eye.north)
  const nearest = AT_END * grid.cell
  const hidden = walkRings(ringLines(grid, eye, point), {
    passes: (highest, from, to) =>
      highest <= lowestBetween(eye.elevation, point.elevation, whole, refraction, from, to),
    seeksUnknown: () => false,
    meets: (met) => {
      for (let at = 0; at < met.count; at++) {
        const distance = met.distances[at] as number
        if (distance < nearest || distance > whole - nearest) continue
        const height = met.heights[at] as number
        if (height > sightElevation(eye.elevation, point.elevation, distance, whole, refraction)) return true
      }
      return false
    },
  })
  return !hidden
}
