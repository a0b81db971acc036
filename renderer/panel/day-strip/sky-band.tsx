/** The sky of the day behind everything else on the strip: twilight in steps of grey, the sun's height as a low figure, noon. */
import { computed } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { sunAt } from '#core/light/sky.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import { formatClock, formatDay } from '#core/time/civil.ts'
import { steady } from '#renderer/job/steady.ts'
import { degreesText } from '#renderer/text/figure.ts'
import { daylight } from '#renderer/state/plan/daylight.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { BOX, bandPath, skySteps } from './sky-curve.ts'
import { curves } from './strip-signals.ts'
import { shareOf } from './time-axis.ts'
import { hiddenSpans, upText } from './up-times.ts'

/** The part of the strip's height that the sun's figure takes at the most. */
const LOW = 0.45

const percent = (part: number): string => `${(part * 100).toFixed(3)}%`

/** By identity the same for as long as it is the same day at the same place. */
const daySun = steady(() => {
  const today = daylight.value
  return today === null ? null : { day: today.day, sun: today.sun }
})

/** What the place and the day alone decide: a thing that is moved there changes neither. */
const sky = computed(() => {
  const drawn = curves.value
  const events = daySun.value
  if (drawn === null || events === null || events.day !== drawn.day) return null
  const { day, at, top, sun } = drawn
  return {
    steps: skySteps(at, day, events.sun).map(({ from, until, level }, index) => (
      // oxlint-disable-next-line react/no-array-index-key -- they move with the light; each keeps its element
      <Span key={index} day={day} from={from} until={until} kind={`sky-${level}`} />
    )),
    fill: <path class="sun-fill" d={bandPath(day, sun, top / LOW)} />,
  }
})

interface SpanProps {
  readonly day: DayLight['day']
  readonly from: number
  readonly until: number
  readonly kind: string
  /** No higher than the sun's figure. */
  readonly low?: boolean
  readonly children?: ComponentChildren
}

function Span({ day, from, until, kind, low = false, children }: SpanProps) {
  const across = (instant: number): number => shareOf(day, instant) * BOX.width
  return (
    <rect
      class={kind}
      x={across(from).toFixed(2)}
      width={(across(until) - across(from)).toFixed(2)}
      y={low ? BOX.height * (1 - LOW) : 0}
      height={low ? BOX.height * LOW : BOX.height}
    >
      {children}
    </rect>
  )
}

export function SkyBand() {
  const drawn = curves.value
  const today = daylight.value
  const shapes = sky.value
  if (drawn === null || today === null || shapes === null || today.day !== drawn.day) return null
  const { day } = drawn
  return (
    <div class="sky-band">
      <svg
        viewBox={`0 0 ${BOX.width} ${BOX.height}`}
        preserveAspectRatio="none"
        role="img"
        aria-label={stripWords.skyLabel(
          formatDay(day.date),
          upText(today.sun, day, today.zone),
          upText(today.moon, day, today.zone),
        )}
      >
        {shapes.steps}
        {shapes.fill}
        {hiddenSpans(today.sun, today.direct.subject, day).map(({ from, until }) => (
          <Span key={from} day={day} from={from} until={until} kind="sun-behind" low>
            <title>{stripWords.behindGround(formatClock(from, today.zone), formatClock(until, today.zone))}</title>
          </Span>
        ))}
      </svg>
      <Noon today={today} />
    </div>
  )
}

function Noon({ today }: { today: DayLight }) {
  const { noon } = today.sun
  const at = curves.value?.at
  if (noon === null || at === undefined) return null
  const clock = formatClock(noon, today.zone)
  const altitude = apparentAltitude(sunAt(at, noon).altitude)
  const hint =
    altitude >= 0
      ? stripWords.noonHint(clock, degreesText(altitude))
      : stripWords.noonBelow(clock, degreesText(-altitude))
  return (
    <span class="noon" style={{ left: percent(shareOf(today.day, noon)) }} title={hint}>
      <span class="unseen">{stripWords.noon(clock)}</span>
    </span>
  )
}
