/** The figures side by side, as rows: for each spot its words, and which of them is best. */
import { type RowKind, figureOf, type CompareRow, type Column } from './compare-row.ts'
import type { Framing } from '#core/frame/framing.ts'
import { compareFigures, compareWords } from '#core/plan/compare.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { aperture, bearing, metres, millimetres, share } from '#renderer/text/figure.ts'
import { hazardsSeen } from '#renderer/text/hazard-text.ts'
import { lensTaken } from '#renderer/text/names.ts'
import { GROUND_ROWS } from './ground-rows.ts'
import { LIGHT_ROWS } from './light-rows.ts'
import { OFF_ROWS } from './tolerance-rows.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { spotWords } from '#renderer/words/en-spot.ts'

const { rows: names, yes, no, whole, cut, outside, none } = sheetWords.compare
const { unknown } = sheetWords

function yesNo(value: boolean) {
  return { figure: value ? 1 : 0, text: value ? yes : no }
}

/** How much of the landmark the frame shows: 2 whole, 1 cut, 0 not at all. */
function wholeness(framing: Framing | null) {
  if (framing === null || !framing.inFrame) return { figure: 0, text: outside }
  return framing.whole ? { figure: 2, text: whole } : { figure: 1, text: cut }
}

function onWishedSide(framing: Framing | null, axis: 'width' | 'height') {
  return figureOf(
    axis === 'width' ? framing?.widthFill : framing?.heightFill,
    (value) => `${share(value)} of the ${axis}`,
  )
}

const ROWS: readonly RowKind[] = [
  {
    group: 'lens',
    name: names.lens,
    better: null,
    read: ({ plan, assessment }) => lensTaken(plan.shoot.bag.lenses, assessment.lens) ?? sheetWords.noLens,
  },
  {
    group: 'lens',
    name: names.focal,
    better: null,
    read: ({ assessment }) => figureOf(assessment.focalLength, millimetres),
  },
  {
    group: 'lens',
    name: names.reaches,
    better: 'more',
    read: ({ assessment }) => yesNo(assessment.lens?.reaches === true),
  },
  {
    group: 'lens',
    name: names.subjectFill,
    better: null,
    read: ({ plan, assessment }) => onWishedSide(assessment.subject, plan.spot.shot.subjectFill.axis),
  },
  {
    group: 'lens',
    name: names.landmarkFill,
    better: null,
    read: ({ plan, assessment }) => onWishedSide(assessment.landmark, plan.spot.shot.landmarkFill.axis),
  },
  {
    group: 'lens',
    name: names.landmarkWhole,
    better: 'more',
    read: ({ assessment }) => wholeness(assessment.landmark),
  },
  {
    group: 'lens',
    name: names.proportion,
    better: null,
    read: ({ assessment }) => figureOf(assessment.proportion, (value) => `${value.toFixed(2)} : 1`),
  },
  {
    group: 'lens',
    name: names.toSubject,
    better: null,
    read: ({ assessment }, units) => figureOf(assessment.toSubject.distance, (value) => metres(value, units)),
  },
  {
    group: 'lens',
    name: names.toLandmark,
    better: null,
    read: ({ assessment }, units) => figureOf(assessment.toLandmark?.distance, (value) => metres(value, units)),
  },
  {
    group: 'lens',
    name: names.bearing,
    better: null,
    read: ({ assessment }) => figureOf(assessment.toLandmark?.bearing, bearing),
  },
  {
    group: 'sharp',
    name: names.aperture,
    better: 'less',
    read: ({ assessment }) => figureOf(assessment.sharp?.neededStop?.mark, aperture),
  },
  {
    group: 'sharp',
    name: names.endToEnd,
    better: 'more',
    read: ({ assessment }) => yesNo(assessment.sharp?.endToEnd === true),
  },
  {
    group: 'sharp',
    name: names.span,
    better: null,
    read: ({ assessment }, units) => figureOf(assessment.sharp?.span, (value) => metres(value, units)),
  },
  {
    group: 'sharp',
    name: names.dissolves,
    better: 'more',
    read: ({ assessment }, units) => figureOf(assessment.sharp?.landmark?.dissolves, (value) => metres(value, units)),
  },
  {
    group: 'sharp',
    name: names.blur,
    better: 'more',
    read: ({ assessment }) => figureOf(assessment.sharp?.landmark?.share, (value) => `${share(value)} of the width`),
  },
  ...LIGHT_ROWS,
  ...GROUND_ROWS,
  ...OFF_ROWS,
  {
    group: 'access',
    name: names.walk,
    better: 'less',
    read: ({ plan }) => figureOf(plan.spot.access.walkMinutes, (value) => `${value} min`),
  },
  { group: 'access', name: names.surface, better: null, read: ({ plan }) => plan.spot.access.surface || unknown },
  {
    group: 'access',
    name: names.permission,
    better: null,
    read: ({ plan }) =>
      [spotWords.permissions[plan.spot.permission.state], plan.spot.permission.whom].filter(Boolean).join(' · '),
  },
  {
    group: 'access',
    name: names.hazards,
    better: null,
    read: ({ plan }) => hazardsSeen(plan.spot).join(', ') || none,
  },
  { group: 'access', name: names.status, better: null, read: ({ plan }) => spotWords.statuses[plan.spot.status] },
  {
    group: 'access',
    name: names.stars,
    better: 'more',
    read: ({ plan }) => figureOf(plan.spot.stars, (value) => (value === 0 ? spotWords.noStars : '★'.repeat(value))),
  },
]

export function compareRows(columns: readonly Column[], units: UnitSystem): CompareRow[] {
  return ROWS.map(({ group, name, better, read }) => {
    const readings = columns.map((column) => read(column, units))
    const values = readings.map((reading) => (typeof reading === 'string' ? reading : reading.text))
    const figures = readings.map((reading) => (typeof reading === 'string' ? null : reading.figure))
    const worded = readings.every((reading) => typeof reading === 'string')
    return { group, name, values, compared: worded ? compareWords(values) : compareFigures(figures, better) }
  })
}
