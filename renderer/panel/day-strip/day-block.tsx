/** The left of the strip: the day in words and as a field, steps by day and week, where the sun is, the clock, the light conditions. */
import { formatDay } from '#core/time/civil.ts'
import { Icon, type IconName } from '#renderer/part/icon.tsx'
import { degreesText, rounded } from '#renderer/text/figure.ts'
import { day, daylight } from '#renderer/state/plan/daylight.ts'
import { dayBoard } from '#renderer/state/plan/calm-board.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { DateField } from '#renderer/part/date-field.tsx'
import { goDays, goNow, goToDate } from '#renderer/state/act/go-day.ts'
import { LightChips } from './light-chips.tsx'
import { directText, upText } from './up-times.ts'
import { ZoneChooser } from './zone-chooser.tsx'

function DayName() {
  return <h2 class="strip-day-name">{day.value === null ? '' : formatDay(day.value.date)}</h2>
}

/** A refused date is given up when the board goes to another day: it was meant for the one left behind. */
function StripDate() {
  const date = day.value?.date
  return date === undefined ? null : (
    <DateField label={stripWords.day} hideLabel date={date} near={date} by={date} onTake={goToDate} />
  )
}

function StepButton({ icon, name, days }: { icon: IconName; name: string; days: number }) {
  return (
    <button type="button" class="icon-button" aria-label={name} title={name} onClick={() => goDays(days)}>
      <Icon name={icon} />
    </button>
  )
}

/** Follows the chosen instant; when the sun is up, and on the subject, stands in its hint. */
function SunWords() {
  const sun = dayBoard.assessment.value?.light.sun
  const today = daylight.value
  if (sun === undefined || today === null) return null
  const azimuth = `${rounded(sun.azimuth, 0) === '360' ? '0' : rounded(sun.azimuth, 0)}°`
  const up = upText(today.sun, today.day, today.zone)
  const direct = directText(today.sun, today.direct.subject, today.day, today.zone)
  const altitude = degreesText(sun.apparent >= 0 ? sun.apparent : -sun.altitude)
  const [short, full] =
    sun.apparent >= 0
      ? [stripWords.sunPlace(altitude, azimuth), stripWords.sunPlace(altitude, azimuth)]
      : [stripWords.sunPlaceDown(altitude, azimuth), stripWords.sunPlaceBelow(altitude, azimuth)]
  return (
    <p class="strip-line" title={stripWords.sunLine(full, direct === null ? up : `${up}, ${direct}`)}>
      {short}
    </p>
  )
}

export function DayBlock() {
  return (
    <div class="day-block">
      <div class="strip-row">
        <DayName />
        <button type="button" class="button now-button" title={stripWords.nowHint} onClick={goNow}>
          {stripWords.now}
        </button>
      </div>
      <div class="strip-row">
        <StepButton icon="week-earlier" name={stripWords.weekEarlier} days={-7} />
        <StepButton icon="earlier" name={stripWords.earlier} days={-1} />
        <StripDate />
        <StepButton icon="later" name={stripWords.later} days={1} />
        <StepButton icon="week-later" name={stripWords.weekLater} days={7} />
      </div>
      <div class="strip-row strip-said">
        <SunWords />
        <ZoneChooser />
      </div>
      <LightChips />
    </div>
  )
}
