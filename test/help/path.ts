/** Reads back the outlines of a drawn path: a first corner, the ways from each to the next, and lines told outright. */
export interface Corner {
  readonly x: number
  readonly y: number
}

/** All corners of all outlines, in the drawing's units. */
export function cornersOf(path: string): Corner[] {
  const corners: Corner[] = []
  for (const [, verb, text] of path.matchAll(/([MlLHV])([^MlLHVZ]*)/gu)) {
    const figures = (text ?? '').trim().split(/\s+/u).map(Number)
    const step = verb === 'H' || verb === 'V' ? 1 : 2
    for (let index = 0; index < figures.length; index += step) {
      const from = corners.at(-1) ?? { x: 0, y: 0 }
      const [one = Number.NaN, two = Number.NaN] = figures.slice(index, index + step)
      if (verb === 'H') corners.push({ x: one, y: from.y })
      else if (verb === 'V') corners.push({ x: from.x, y: one })
      else if (verb === 'l') corners.push({ x: from.x + one, y: from.y + two })
      else corners.push({ x: one, y: two })
    }
  }
  return corners
}
