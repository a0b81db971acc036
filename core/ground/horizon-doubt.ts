/** Unknown ground in a look toward the sky: whether it could stand above what is known, and how far off it begins. */
import type { Crossings, GridLine } from './grid-line.ts'
import { highestAcross, stripUnknown } from './line-strips.ts'
import { type Look, couldRise } from './horizon-look.ts'
import { GROUND_REACH, HIGHEST_GROUND, REACH_SLACK, gapsOf, lastEnd } from './rings.ts'

/** Whether a strip holds unknown ground that still matters. */
export function stripIsDoubtful(
  look: Look,
  line: GridLine,
  strip: number,
  from: number,
  to: number,
  near: number,
): boolean {
  if (look.certainDoubt || !couldRise(look, HIGHEST_GROUND, near, Infinity)) return false
  return stripUnknown(line, look.maxima.fine, strip, from, to)
}

/** Weighs the unknown among a fine strip's crossings. */
export function doubtAt(look: Look, line: GridLine, strip: number, from: number, to: number, met: Crossings): void {
  let [first, known] = [-1, 0]
  for (let at = 0; at < met.count; at++) {
    if (first === -1 && met.unknown[at] === 1) first = at
    if (!Number.isNaN(met.heights[at] ?? Number.NaN)) known++
  }
  if (first === -1) return
  const distance = met.distances[first] as number
  if (known === 0) {
    doubt(look, HIGHEST_GROUND, distance)
    return
  }
  // A hole within known ground: it rises no more over the highest around it than the blocks are wide, a slope of 45 degrees.
  const { fine } = look.maxima
  const minor = (major: number): number => line.minor0 + line.lean * (major - line.major0)
  const highest = highestAcross(line, fine, strip, minor(from), minor(to))
  doubt(look, Math.min(HIGHEST_GROUND, highest + fine.span * line.grid.cell), distance)
}

/** Where no ring lies: before the first stretch, between two, and short of the reach behind the last. */
export function doubtBeyond(look: Look, lines: readonly GridLine[]): void {
  for (const gap of gapsOf(lines, 1)) doubt(look, HIGHEST_GROUND, gap)
  const covered = lastEnd(lines)
  if (covered < GROUND_REACH - REACH_SLACK) doubt(look, HIGHEST_GROUND, covered)
}

function doubt(look: Look, highest: number, at: number): void {
  const rise = highest - look.eye.elevation
  const slope = at > 0 || rise < 0 ? rise / Math.max(at, 1) - look.curve * at : Infinity
  if (slope > look.steepest) look.doubts.push({ slope, at })
  if (highest === HIGHEST_GROUND) look.certainDoubt = true
}

/** Metres to the nearest unknown ground that could stand above what was found; NaN where none could. */
export function nearestDoubt(look: Look): number {
  let nearest = Number.NaN
  for (const { slope, at } of look.doubts) if (slope > look.steepest && !(at >= nearest)) nearest = at
  return nearest
}
