/** The rows side by side that tell of the ground: how much of the landmark shows, what is hidden, how tight the line runs, direct sun. */
import { clearanceText, levelSourceText, lightTimes, shownFigure } from '#renderer/text/ground-text.ts'
import { slopeText, tiltSourceText } from '#renderer/text/tilt-text.ts'
import { elevation, metres } from '#renderer/text/figure.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import type { Column, RowKind } from './compare-row.ts'

const { rows: names } = groundWords
const { unknown } = sheetWords
const NOTHING = { figure: null, text: unknown }

/** The first or last instant of direct sun on the subject, as hours into its own day so that spots of other days compare. */
function directSun({ daylight }: Column, which: 'first' | 'last') {
  const { day, zone, direct } = daylight
  const spans = direct.subject
  if (spans === null) return NOTHING
  const times = lightTimes(spans, day, zone)
  const instant = which === 'first' ? spans[0]?.from : spans.at(-1)?.until
  return { figure: instant === undefined ? null : instant - day.start, text: times.instead ?? times[which] }
}

export const GROUND_ROWS: readonly RowKind[] = [
  {
    group: 'ground',
    name: names.shown,
    better: 'more',
    read: ({ assessment }) => {
      const shown = assessment.ground?.landmarkShown ?? null
      return shown === null ? NOTHING : { figure: shown, text: shownFigure(shown).toLowerCase() }
    },
  },
  {
    group: 'ground',
    name: names.hidden,
    better: 'less',
    read: ({ assessment }, units) => {
      const hidden = assessment.ground?.toLandmark?.hidden ?? null
      if (hidden === null) return NOTHING
      return { figure: hidden, text: hidden === 0 ? names.nothing : metres(hidden, units) }
    },
  },
  {
    group: 'ground',
    name: names.clearance,
    better: 'more',
    read: ({ plan, line }, units) => {
      const text = line === null ? null : clearanceText(plan, line, units)
      if (line === null || text === null) return NOTHING
      return { figure: line.tightest?.clearance ?? Number.MAX_VALUE, text }
    },
  },
  { group: 'ground', name: names.first, better: null, read: (column) => directSun(column, 'first') },
  { group: 'ground', name: names.last, better: null, read: (column) => directSun(column, 'last') },
  {
    group: 'ground',
    name: names.level,
    better: null,
    read: ({ assessment: { under } }, units) => {
      const { elevation: level, from } = under.stop
      const source = levelSourceText(under.stop, units)
      return from === 'assumed' ? NOTHING : { figure: level, text: names.sourced(elevation(level, units), source) }
    },
  },
  {
    group: 'ground',
    name: names.slope,
    better: null,
    read: ({ assessment: { under } }) => {
      const [text, source] = [slopeText(under.stop), tiltSourceText(under.stop)]
      return text === null || source === null
        ? NOTHING
        : { figure: under.stop.slope.value, text: names.sourced(text, source) }
    },
  },
]
