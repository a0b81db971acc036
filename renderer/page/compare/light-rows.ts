/** The rows side by side that tell of the light: when each is planned, what is lit, and how long the wishes hold on that day. */
import { totalOf } from '#core/light/light-window.ts'
import { wishesMade } from '#core/light/light-wish.ts'
import { formatClock, formatOffset } from '#core/time/civil.ts'
import { dateText } from '#core/time/date-text.ts'
import { againstText, bodyText, fromText, shutterText, spanText, thingText } from '#renderer/text/light-text.ts'
import { share } from '#renderer/text/figure.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import type { RowKind } from './compare-row.ts'

const { rows: names, none: noneNoted } = sheetWords.compare
const { unknown, light: say } = sheetWords

function litFigure(lit: number | null | undefined, text: string) {
  return { figure: lit ?? null, text }
}

export const LIGHT_ROWS: readonly RowKind[] = [
  {
    group: 'light',
    name: names.when,
    better: null,
    read: ({ plan, daylight }) => {
      const { when } = plan.spot
      return `${dateText(daylight.day.date)}, ${formatClock(when, daylight.zone)} ${formatOffset(when, daylight.zone)}`
    },
  },
  {
    group: 'light',
    name: names.window,
    better: 'more',
    read: ({ plan, daylight }) => {
      if (wishesMade(plan.shoot.light).length === 0) return noneNoted
      const { common } = daylight.windows
      const minutes = totalOf(common) / 60_000
      const text = common.map((span) => spanText(span, daylight.zone)).join(', ')
      return { figure: minutes, text: text === '' ? say.noWindow : text }
    },
  },
  {
    group: 'light',
    name: names.subjectLit,
    better: null,
    read: ({ assessment }) => litFigure(assessment.light.subject.lit, thingText(assessment.light.subject)),
  },
  {
    group: 'light',
    name: names.landmarkLit,
    better: null,
    read: ({ assessment }) => {
      const { landmark } = assessment.light
      return landmark === null ? unknown : litFigure(landmark.lit, thingText(landmark))
    },
  },
  { group: 'light', name: names.lightFrom, better: null, read: ({ assessment }) => fromText(assessment.light) },
  { group: 'light', name: names.sun, better: null, read: ({ assessment }) => bodyText(assessment.light.sun) },
  {
    group: 'light',
    name: names.moon,
    better: null,
    read: ({ assessment }) => `${bodyText(assessment.light.moon)}, ${share(assessment.light.moon.phase.lit)} lit`,
  },
  {
    group: 'light',
    name: names.exposure,
    better: null,
    read: ({ assessment }) => {
      const { exposure } = assessment.light
      if (exposure.seconds === null) return unknown
      return againstText(exposure) ?? shutterText(exposure.seconds)
    },
  },
]
