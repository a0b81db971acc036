/** The strips of blocks that a straight line passes on its way over a grid, and the highest ground in them. */
import type { MaximaLevel } from './block-maxima.ts'
import type { GridLine } from './grid-line.ts'

/** Index of the block along the major axis that a line enters at a cell, seen in its direction. */
export function stripAt(line: GridLine, level: MaximaLevel, major: number): number {
  const strip = line.way > 0 ? Math.floor(major / level.span) : Math.ceil(major / level.span) - 1
  const last = (line.steep ? level.rows : level.columns) - 1
  return Math.max(0, Math.min(strip, last))
}

/** Where a line leaves a strip of blocks, or ends within it. */
export function stripEnd(line: GridLine, level: MaximaLevel, strip: number, leave: number): number {
  return line.way > 0 ? Math.min((strip + 1) * level.span, leave) : Math.max(strip * level.span, leave)
}

/** Metres above the sea of the highest post of the blocks that a line passes between two cells of one strip. */
export function stripMaximum(line: GridLine, level: MaximaLevel, strip: number, from: number, to: number): number {
  const { major0, minor0, lean } = line
  return highestAcross(line, level, strip, minor0 + lean * (from - major0), minor0 + lean * (to - major0))
}

/** The same, between two cells of the minor axis. */
export function highestAcross(line: GridLine, level: MaximaLevel, strip: number, minor: number, next: number): number {
  const stride = line.steep ? 1 : level.columns
  const start = strip * (line.steep ? level.columns : 1)
  const one = blockAcross(line, level, minor)
  const other = blockAcross(line, level, next)
  const height = level.heights[start + one * stride] as number
  if (one === other) return height
  // Since |lean| <= 1 a strip holds at most three blocks side by side, and three only by rounding.
  const beyond = level.heights[start + other * stride] as number
  const middle = level.heights[start + ((one + other) >> 1) * stride] as number
  return Math.max(height, beyond, middle)
}

/** Whether any post of those blocks is unknown. */
export function stripUnknown(line: GridLine, level: MaximaLevel, strip: number, from: number, to: number): boolean {
  if (level.unknown === null) return false
  const ends = [from, to].map((major) => blockAcross(line, level, line.minor0 + line.lean * (major - line.major0)))
  for (let block = Math.min(...ends); block <= Math.max(...ends); block++) {
    const index = line.steep ? strip * level.columns + block : block * level.columns + strip
    if (level.unknown[index] === 1) return true
  }
  return false
}

function blockAcross(line: GridLine, level: MaximaLevel, minor: number): number {
  const block = minor >> level.shift
  const last = (line.steep ? level.columns : level.rows) - 1
  return block < 0 ? 0 : block > last ? last : block
}
