/** How the ground leans as words: its slope, the way it falls, and whether each was measured or read off the elevations. */
import type { GroundUnder, TiltFigure } from '#core/plan/ground-under.ts'
import { compassName } from '#core/units/compass.ts'
import { bearing, degreesText } from './figure.ts'
import { words } from '#renderer/words/en.ts'
import { groundWords } from '#renderer/words/en-ground.ts'

const { under: say } = groundWords
/** Degrees below which ground counts as level: half of the last figure told. */
const LEVEL = 0.5

function leanText(slope: number | null, aspect: number | null): string | null {
  if (slope === null) return aspect === null ? null : say.falls(compassName(aspect))
  if (slope < LEVEL) return say.level
  return aspect === null ? degreesText(slope, 0) : say.slopeToward(degreesText(slope, 0), compassName(aspect))
}

/** "12° to the south-east", "level", "falls to the south"; null where nothing is known. */
export function slopeText({ slope, aspect }: GroundUnder): string | null {
  return leanText(slope.value, aspect.value)
}

/** "measured", "from elevations", or which of the two is which; null where nothing is known. */
export function tiltSourceText({ slope, aspect }: GroundUnder): string | null {
  const from = slope.from ?? aspect.from
  if (from === null) return null
  if (aspect.from === null || aspect.from === from) return say.tiltSources[from]
  return from === 'measured' ? say.aspectRead : say.aspectMeasured
}

/** The source, and what the elevations say where something else was measured. */
export function tiltSourceAgainst(under: GroundUnder): string | null {
  const source = tiltSourceText(under)
  const measured = under.slope.from === 'measured' || under.aspect.from === 'measured'
  const read = leanText(under.slope.read, under.aspect.read)
  return source === null || !measured || read === null ? source : say.reads(source, read)
}

/** Under a field for a slope or an aspect: what the elevations say there, which counts for as long as nothing is entered. */
function hintOf(tilt: TiltFigure | undefined, print: (value: number) => string): string {
  const read = tilt?.read ?? null
  if (read === null) return words.answers.where.unknownHint
  return tilt?.from === 'measured' ? groundWords.readAgainst(print(read)) : groundWords.readHint(print(read))
}

export function slopeHint(under: GroundUnder | null | undefined): string {
  return hintOf(under?.slope, (value) => degreesText(value))
}

export function aspectHint(under: GroundUnder | null | undefined): string {
  return hintOf(under?.aspect, bearing)
}
