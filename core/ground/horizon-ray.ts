/** How high the ground stands against the sky in one direction after another, each helped by the one before. */
import { degrees } from '#core/units/angle.ts'
import { type MaximaLevel, maximaOf } from './block-maxima.ts'
import { AT_END, type GridLine, crossingsBetween, distanceAt, majorAt, minorLineBetween } from './grid-line.ts'
import { highestAcross, stripAt, stripEnd, stripUnknown } from './line-strips.ts'
import { doubtAt, doubtBeyond, stripIsDoubtful, nearestDoubt } from './horizon-doubt.ts'
import { type Look, couldRise } from './horizon-look.ts'
import { peaksMayRise, peaksWithin } from './horizon-peaks.ts'
import { ringRays } from './rings.ts'
import { alongBearing } from './true-north.ts'

/** Cells from the eye within which ground that peaks inside a cell stands out above the cell's edges. */
const NEAR_CELLS = 32

/** Finds the highest ground at an azimuth from true north, out to a distance in metres or to where the last ring ends. */
export function lookTowards(look: Look, azimuth: number, reach = Infinity): void {
  const way = alongBearing(look.axes, azimuth)
  const lines = ringRays(look.grid, look.eye, way.east, way.north, reach)
  const hint = look.distance
  look.steepest = -Infinity
  look.distance = Number.NaN
  look.tried = -1
  look.triedOn = null
  look.doubts.length = 0
  look.certainDoubt = false
  // What stood against the sky one step aside most likely does so here, and lets nearly all blocks be passed over.
  if (!Number.isNaN(hint)) for (const line of lines) tryStripAt(look, line, hint)
  for (const line of lines) {
    look.maxima = maximaOf(line.grid)
    overBlocks(look, line, look.maxima.coarse, line.enter, line.leave)
  }
  if (reach === Infinity) {
    doubtBeyond(look, lines)
    notBelowTheSea(look)
  }
  look.unknown = nearestDoubt(look)
  look.altitude = look.steepest === -Infinity ? Number.NaN : degrees(Math.atan(look.steepest))
}

/**
 * Wherever known ground ends, the earth goes on: nothing is seen lower than the horizon of the sea, or of the lowest ground known, for an eye
 * so high above it. The slope is that of the dip, sqrt(2 h (1 - k) / R) (Bowditch's and the Nautical Almanac's, 1.76' by the root
 * of the metres for their air; test/reference/curvature.test.ts).
 */
function notBelowTheSea(look: Look): void {
  const { aboveLowest, curve } = look
  const least = -2 * Math.sqrt(aboveLowest * curve)
  if (!(look.steepest < least)) return
  look.steepest = least
  look.distance = curve > 0 ? Math.sqrt(aboveLowest / curve) : Number.NaN
}

function tryStripAt(look: Look, line: GridLine, distance: number): void {
  look.maxima = maximaOf(line.grid)
  const { fine } = look.maxima
  const at = majorAt(line, distance)
  if (!((at - line.enter) * line.way >= 0 && (line.leave - at) * line.way > 0)) return
  const strip = stripAt(line, fine, at)
  const start = line.way > 0 ? Math.max(strip * fine.span, line.enter) : Math.min((strip + 1) * fine.span, line.enter)
  look.tried = strip
  look.triedOn = line
  meetCrossings(look, line, strip, start, stripEnd(line, fine, strip, line.leave))
}

/** Near to far over the blocks of one size; where the ground could rise, over the smaller blocks within. */
function overBlocks(look: Look, line: GridLine, level: MaximaLevel, from: number, to: number): void {
  const { major0, minor0, lean } = line
  const { fine } = look.maxima
  let here = from
  let minor = minor0 + lean * (here - major0)
  let near = distanceAt(line, here)
  const seeksUnknown = level.unknown !== null
  for (let strip = stripAt(line, level, here); here !== to; strip += line.way) {
    // Not even the highest ground of the grid would stand out from here on; a coarse block is soon enough to ask.
    if (level !== fine && !couldRise(look, look.maxima.top, near, Infinity) && !(seeksUnknown && !look.certainDoubt))
      return
    const end = stripEnd(line, level, strip, to)
    const next = minor0 + lean * (end - major0)
    const far = distanceAt(line, end)
    const rises = couldRise(look, highestAcross(line, level, strip, minor, next), near, far)
    if (level !== fine) {
      if (rises || (seeksUnknown && !look.certainDoubt && stripUnknown(line, level, strip, here, end)))
        overBlocks(look, line, fine, here, end)
    } else if (rises || (seeksUnknown && stripIsDoubtful(look, line, strip, here, end, near))) {
      if (strip !== look.tried || line !== look.triedOn) meetCrossings(look, line, strip, here, end)
    }
    here = end
    minor = next
    near = far
  }
}

function meetCrossings(look: Look, line: GridLine, strip: number, from: number, to: number): void {
  const near = (from - line.major0) * line.way < NEAR_CELLS
  const seeksUnknown = look.maxima.fine.unknown !== null
  if (!near && !seeksUnknown && Number.isInteger(from) && Number.isInteger(to)) {
    meetWhole(look, line, from, to)
    return
  }
  const met = look.crossings
  crossingsBetween(line, from, to, met)
  const nearest = AT_END * line.grid.cell
  const { curve } = look
  const { elevation } = look.eye
  let { steepest } = look
  for (let at = 0; at < met.count; at++) {
    const distance = met.distances[at] as number
    const rise = (met.heights[at] as number) - elevation - curve * distance * distance
    // Multiplied, since a division costs as much as all the rest.
    if (rise > steepest * distance && distance > nearest) {
      steepest = rise / distance
      look.distance = distance
    }
  }
  look.steepest = steepest
  if (seeksUnknown && !look.certainDoubt) doubtAt(look, line, strip, from, to, met)
  if (near && peaksMayRise(look, line, from, to)) peaksWithin(look, line, from)
}

/**
 * The crossings from one major line to another over known ground, as `crossingsBetween` finds them, each weighed at once and none
 * written down: it is here that a look around spends its time.
 */
function meetWhole(look: Look, line: GridLine, from: number, to: number): void {
  const { way, major0, minor0, lean, metres, majorStride, minorStride, minorLast } = line
  const { heights } = line.grid
  const { curve } = look
  const { elevation } = look.eye
  let { steepest, distance: at } = look
  let minor = minor0 + lean * (from - major0)
  for (let here = from; ; here += way) {
    const beside = Math.floor(minor)
    const first = beside < 0 ? 0 : beside < minorLast ? beside : minorLast - 1
    const post = here * majorStride + first * minorStride
    const low = heights[post] as number
    const distance = (here - major0) * way * metres
    const rise =
      low + (minor - first) * ((heights[post + minorStride] as number) - low) - elevation - curve * distance * distance
    if (rise > steepest * distance) {
      steepest = rise / distance
      at = distance
    }
    if (here === to) break
    const next = minor0 + lean * (here + way - major0)
    const met = minorLineBetween(minor, next)
    if (met >= 0 && met <= minorLast) {
      const cell = way > 0 ? here : here - 1
      const major = Math.max(cell, Math.min(major0 + (met - minor0) / lean, cell + 1))
      const side = cell * majorStride + met * minorStride
      const one = heights[side] as number
      const along = (major - major0) * way * metres
      const up =
        one + (major - cell) * ((heights[side + majorStride] as number) - one) - elevation - curve * along * along
      if (up > steepest * along) {
        steepest = up / along
        at = along
      }
    }
    minor = next
  }
  look.steepest = steepest
  look.distance = at
}
