/** Ground that peaks inside a cell near the eye, where it stands out above the crossings on the cell's edges. */
import { AT_END, type GridLine, distanceAt, majorAt } from './grid-line.ts'
import { stripAt, stripMaximum } from './line-strips.ts'
import { type Look, couldRise } from './horizon-look.ts'

/** Whether ground of a strip, wherever it peaks, could still stand above what its crossings gave. */
export function peaksMayRise(look: Look, line: GridLine, from: number, to: number): boolean {
  const { fine } = look.maxima
  const highest = stripMaximum(line, fine, stripAt(line, fine, from), from, to)
  return couldRise(look, highest, distanceAt(line, from), distanceAt(line, to))
}

/** Near the eye the bilinear ground may peak between two crossings: each cell is a parabola along the line. */
export function peaksWithin(look: Look, line: GridLine, from: number): void {
  const met = look.crossings
  // Strips meet on a grid line, so only the eye's own cell begins without a crossing.
  let distance = from === line.major0 ? 0 : Number.NaN
  let height = look.ground
  for (let at = 0; at < met.count; at++) {
    const nextDistance = met.distances[at] as number
    const nextHeight = met.heights[at] as number
    if (nextDistance - distance > AT_END * line.grid.cell) {
      peakOfCell(look, line, distance, height, nextDistance, nextHeight)
    }
    distance = nextDistance
    height = nextHeight
  }
}

/** Ground a + b d + c d^2 between two crossings of one cell: where seen from the eye it rises steepest, if that is inside. */
function peakOfCell(
  look: Look,
  line: GridLine,
  near: number,
  nearHeight: number,
  far: number,
  farHeight: number,
): void {
  const post = postBefore(line, (near + far) / 2)
  const { heights } = line.grid
  const one = heights[post] as number
  const along = heights[post + line.majorStride] as number
  const across = heights[post + line.minorStride] as number
  const opposite = heights[post + line.majorStride + line.minorStride] as number
  if (!couldRise(look, Math.max(one, along, across, opposite), near, far)) return
  const twist = ((one + opposite - along - across) * line.lean) / (line.metres * line.metres)
  const grade = (farHeight - nearHeight) / (far - near)
  const below = nearHeight - grade * near + twist * near * far - look.eye.elevation
  const bend = twist - look.curve
  if (!(below < 0 && bend < 0)) return
  const distance = Math.sqrt(below / bend)
  if (!(distance > near && distance < far)) return
  const slope = below / distance + grade - twist * (near + far) + bend * distance
  if (slope > look.steepest) {
    look.steepest = slope
    look.distance = distance
  }
}

/** The first of the four posts around a point of the line. */
function postBefore(line: GridLine, distance: number): number {
  const major = majorAt(line, distance)
  const first = Math.max(0, Math.min(Math.floor(major), line.majorLast - 1))
  const minor = Math.floor(line.minor0 + line.lean * (major - line.major0))
  return first * line.majorStride + Math.max(0, Math.min(minor, line.minorLast - 1)) * line.minorStride
}
