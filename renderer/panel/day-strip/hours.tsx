/** The hours under the sky, as the clock shows them, and where the clock itself is moved. */
import { rounded } from '#renderer/text/figure.ts'
import { day } from '#renderer/state/plan/daylight.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { clockMarks, hourTicks, shareOf } from './time-axis.ts'

function shiftText(minutes: number): string {
  const size = Math.abs(minutes)
  const span = size % 60 === 0 ? stripWords.hours(String(size / 60)) : stripWords.minutes(rounded(size, 1))
  return minutes > 0 ? stripWords.clockOn(span) : stripWords.clockBack(span)
}

export function HourMarks() {
  const today = day.value
  if (today === null) return null
  const at = (instant: number) => ({ left: `${(shareOf(today, instant) * 100).toFixed(3)}%` })
  return (
    <>
      <div class="hour-axis" aria-hidden="true">
        {hourTicks(today, zone.value).map(({ instant, hour, main }) => (
          <span key={instant} class={main ? 'axis-hour axis-hour-main' : 'axis-hour'} style={at(instant)}>
            {hour}
          </span>
        ))}
      </div>
      {clockMarks(today, zone.value).map(({ instant, minutes }) => (
        <span key={instant} class="clock-mark" style={at(instant)}>
          {shiftText(minutes)}
        </span>
      ))}
    </>
  )
}
