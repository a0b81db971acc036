/** The chosen instant as a line across the strip, with its clock time; the one part that follows every move of the time. */
import { computed } from '@preact/signals'
import type { RefObject } from 'preact'
import { useEffect, useId } from 'preact/hooks'
import { clampInstant, formatClock, formatDay, formatOffset } from '#core/time/civil.ts'
import { degreesText } from '#renderer/text/figure.ts'
import { day, daylight } from '#renderer/state/plan/daylight.ts'
import { dayBoard } from '#renderer/state/plan/calm-board.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { steady } from '#renderer/job/steady.ts'
import { settleSteps } from '#renderer/state/act/live-change.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { MINUTE } from '#core/time/duration.ts'
import { stepTime } from './hold-time.ts'
import { daysOn } from '#renderer/state/act/other-day.ts'
import { dayMinutes, shareOf, snapped } from './time-axis.ts'
import { type TimeStep, timeStep } from './time-keys.ts'

/** Where a step leads; null when it leads nowhere, which is told. */
function steppedTo(step: TimeStep, when: number): number | null {
  const today = day.peek()
  if (today === null) return null
  if (step.by === 'minutes') return clampInstant(snapped(today, when) + step.count * MINUTE)
  if (step.by === 'days') {
    const there = daysOn(when, step.count, zone.peek())
    if (!there.ok) tell('fault', there.fault.message)
    else if (there.value.notice !== null) tell('done', there.value.notice)
    return there.ok ? there.value.instant : null
  }
  const sun = daylight.peek()?.sun
  const event = step.event === 'sunrise' ? sun?.rise[0] : sun?.set.at(-1)
  if (event === undefined) {
    tell('done', step.event === 'sunrise' ? stripWords.noSunrise : stripWords.noSunset)
    return null
  }
  return Math.min(snapped(today, event), today.end - MINUTE)
}

function onKey(event: KeyboardEvent): void {
  const step = timeStep(event)
  const now = plan.peek()
  if (step === null || now === null) return
  event.preventDefault()
  event.stopPropagation()
  const to = steppedTo(step, now.spot.when)
  if (to !== null) stepTime(to)
}

/** Where the line stands and what it says, another only with another instant. */
const instantShown = steady(() => {
  const when = plan.value?.spot.when
  const today = day.value
  if (when === undefined || today === null) return null
  const here = zone.value
  return { when, today, clock: formatClock(when, here), offset: formatOffset(when, here) }
})

/** How high the sun stands then: told, not watched. */
const sunShown = computed(() => {
  const sun = dayBoard.assessment.value?.light.sun
  if (sun === undefined) return ''
  return sun.apparent >= 0
    ? stripWords.sunHigh(degreesText(sun.apparent))
    : stripWords.sunBelow(degreesText(-sun.altitude))
})

export function TimeLine({ line }: { line: RefObject<HTMLDivElement | null> }) {
  const id = useId()
  useEffect(() => settleSteps, [])
  const shown = instantShown.value
  if (shown === null) return null
  const { when, today, clock, offset } = shown
  const left = `${(shareOf(today, when) * 100).toFixed(3)}%`
  return (
    <>
      <div
        ref={line}
        class="time-line"
        style={{ left }}
        role="slider"
        tabIndex={0}
        aria-orientation="horizontal"
        aria-label={stripWords.line}
        aria-valuemin={0}
        aria-valuemax={dayMinutes(today) - 1}
        aria-valuenow={Math.floor((when - today.start) / MINUTE)}
        aria-valuetext={stripWords.lineValue(formatDay(today.date), clock, offset, sunShown.value)}
        aria-describedby={id}
        title={stripWords.lineHint}
        onKeyDown={onKey}
        onBlur={settleSteps}
      />
      <span class="time-label" style={{ '--at': left }} aria-hidden="true" title={stripWords.lineHint}>
        {stripWords.label(clock, offset)}
      </span>
      <span class="unseen" id={id}>
        {stripWords.lineHint}
      </span>
    </>
  )
}
