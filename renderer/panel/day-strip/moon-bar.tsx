/** When the moon is up, as a bar with its disc; its lit share is that of the chosen instant, as everywhere on the board. */
import { computed } from '@preact/signals'
import { upSpans } from '#core/light/day-events.ts'
import { moonPhase } from '#core/light/sky.ts'
import { formatClock } from '#core/time/civil.ts'
import { steady } from '#renderer/job/steady.ts'
import { degreesText, share } from '#renderer/text/figure.ts'
import { moonPhaseText } from '#renderer/text/light-text.ts'
import { dayBoard } from '#renderer/state/plan/calm-board.ts'
import { daylight } from '#renderer/state/plan/daylight.ts'
import { chipWords } from '#renderer/words/en-light-chips.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { MoonDisc } from './moon-disc.tsx'
import { highest } from './sky-curve.ts'
import { curves } from './strip-signals.ts'
import { shareOf } from './time-axis.ts'
import { upText } from './up-times.ts'

/** By identity the same for as long as it is the same day at the same place: nothing that is dragged there moves the moon. */
const dayMoon = steady(() => {
  const today = daylight.value
  return today === null ? null : { day: today.day, zone: today.zone, moon: today.moon }
})

/** The day's moon: when it is up, how it looks where it is highest, and how that is told. */
const moonDay = computed(() => {
  const [drawn, today] = [curves.value, dayMoon.value]
  if (drawn === null || today === null || drawn.day !== today.day) return null
  const peak = highest(drawn.moon)
  if (peak === null) return null
  return {
    spans: upSpans(today.moon, today.day).map(({ from, until }) => ({
      left: shareOf(today.day, from) * 100,
      width: (shareOf(today.day, until) - shareOf(today.day, from)) * 100,
      // The disc stands in the stretch in which the moon is highest.
      highest: from <= peak.instant && peak.instant <= until,
    })),
    phase: moonPhase(drawn.at, peak.instant),
    hint: stripWords.moonHint(formatClock(peak.instant, today.zone), degreesText(peak.altitude)),
    up: upText(today.moon, today.day, today.zone),
  }
})

function Lit({ up, hint }: { readonly up: string; readonly hint: string }) {
  const light = dayBoard.assessment.value?.light
  const zone = daylight.value?.zone
  if (light === undefined || zone === undefined) return <>{chipWords.moonBar}</>
  return (
    <span title={`${stripWords.moonLineHint(moonPhaseText(light, zone), up)}. ${hint}`}>
      {chipWords.moon(share(light.moon.phase.lit))}
    </span>
  )
}

export function MoonBar() {
  const moon = moonDay.value
  if (moon === null) return null
  return (
    <div class="moon-row">
      {moon.spans.map((span) => (
        <span
          key={span.left}
          class="moon-bar"
          style={{ left: `${span.left.toFixed(3)}%`, width: `${span.width.toFixed(3)}%` }}
        >
          {span.highest ? (
            <>
              <MoonDisc phase={moon.phase} /> <Lit up={moon.up} hint={moon.hint} />
            </>
          ) : null}
        </span>
      ))}
    </div>
  )
}
