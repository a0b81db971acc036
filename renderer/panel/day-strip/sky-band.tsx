/** The sky of the day: twilight in steps of grey, the sun's height as a band, noon, the moon's line with its disc. */
import { computed } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { moonPhase, sunAt } from '#core/light/sky.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import { formatClock, formatDay } from '#core/time/civil.ts'
import { steady } from '#renderer/job/steady.ts'
import { degreesText } from '#renderer/text/figure.ts'
import { daylight } from '#renderer/state/plan/daylight.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { MoonDisc } from './moon-disc.tsx'
import { BOX, type Sample, bandPath, highest, curvePath, skySteps } from './sky-curve.ts'
import { curves } from './strip-signals.ts'
import { shareOf } from './time-axis.ts'
import { hiddenSpans, upText } from './up-times.ts'

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
  const { day, at, top, sun, moon } = drawn
  return {
    steps: skySteps(at, day, events.sun).map(({ from, until, level }, index) => (
      // oxlint-disable-next-line react/no-array-index-key -- they move with the light; each keeps its element
      <Span key={index} day={day} from={from} until={until} kind={`sky-${level}`} />
    )),
    fill: <path class="sun-fill" d={bandPath(day, sun, top)} />,
    lines: (
      <>
        <path class="sun-line" d={curvePath(day, sun, top)} />
        <path class="moon-line" d={curvePath(day, moon, top)} />
        <path class="horizon-line" d={`M0 ${BOX.height}H${BOX.width}`} />
      </>
    ),
  }
})

interface SpanProps {
  readonly day: DayLight['day']
  readonly from: number
  readonly until: number
  readonly kind: string
  readonly children?: ComponentChildren
}

function Span({ day, from, until, kind, children }: SpanProps) {
  const across = (instant: number): number => shareOf(day, instant) * BOX.width
  return (
    <rect
      class={kind}
      x={across(from).toFixed(2)}
      width={(across(until) - across(from)).toFixed(2)}
      height={BOX.height}
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
  const { day, top, moon } = drawn
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
          <Span key={from} day={day} from={from} until={until} kind="sun-behind">
            <title>{stripWords.behindGround(formatClock(from, today.zone), formatClock(until, today.zone))}</title>
          </Span>
        ))}
        {shapes.lines}
      </svg>
      <Noon today={today} />
      <Moon today={today} heights={moon} top={top} />
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
      {stripWords.noon(clock)}
    </span>
  )
}

/** As it looks where it stands highest; its lit share is told for the chosen instant alone, which this picture doesn't follow. */
function Moon({ today, heights, top }: { today: DayLight; heights: readonly Sample[]; top: number }) {
  const at = curves.value?.at
  const peak = highest(heights)
  if (peak === null || at === undefined) return null
  const phase = moonPhase(at, peak.instant)
  return (
    <span
      class="moon-place"
      style={{ left: percent(shareOf(today.day, peak.instant)), top: percent(1 - Math.min(1, peak.altitude / top)) }}
      title={stripWords.moonHint(formatClock(peak.instant, today.zone), degreesText(peak.altitude))}
    >
      <MoonDisc phase={phase} />
    </span>
  )
}
