/** The day in small for the sheet: the sun's height as a grey band, twilight, the common window as a bar, the planned time as a line. */
import { SOFT_ENDS } from '#core/light/light-wish.ts'
import { sunAt } from '#core/light/sky.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import { civilTime, formatClock } from '#core/time/civil.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { HOUR } from '#core/time/duration.ts'
import { figure } from '#renderer/text/path-text.ts'

const WIDTH = 718
const BAND = 24
const HOURS = 11
const BAR = 7
/** Degrees at the band's top. */
const HIGHEST = 70
const SAMPLES = 96

interface SmallStripProps {
  readonly plan: Plan
  readonly daylight: DayLight
  readonly dayName: string
}

function across(daylight: DayLight, instant: number): number {
  const { start, end } = daylight.day
  return ((instant - start) / (end - start)) * WIDTH
}

/** Height in the band of an altitude: its foot is the level horizon. */
function rise(altitude: number): number {
  return BAND - (Math.max(0, Math.min(HIGHEST, altitude)) / HIGHEST) * (BAND - 3)
}

interface Sampled {
  readonly band: string
  readonly dark: readonly { readonly from: number; readonly until: number; readonly deep: boolean }[]
}

function sample(plan: Plan, daylight: DayLight): Sampled {
  const { start, end } = daylight.day
  const places: { x: number; altitude: number }[] = []
  for (let index = 0; index <= SAMPLES; index++) {
    const instant = start + ((end - start) * index) / SAMPLES
    places.push({ x: (WIDTH * index) / SAMPLES, altitude: sunAt(plan.spot.stop.at, instant).altitude })
  }
  const line = places.map(({ x, altitude }) => `L${figure(x)} ${figure(rise(altitude))}`).join('')
  const dark: { from: number; until: number; deep: boolean }[] = []
  for (const { x, altitude } of places) {
    if (altitude >= 0) continue
    const deep = altitude < SOFT_ENDS
    const last = dark.at(-1)
    const half = WIDTH / SAMPLES / 2
    if (last !== undefined && last.deep === deep && x - last.until <= half + 0.01) last.until = x + half
    else dark.push({ from: Math.max(0, x - half), until: x + half, deep })
  }
  return { band: `M0 ${BAND}${line}L${WIDTH} ${BAND}Z`, dark }
}

/** Full hours by the clock, every third with its figure. */
function hourMarks(daylight: DayLight): { readonly x: number; readonly text: string }[] {
  const { day, zone } = daylight
  const marks: { x: number; text: string }[] = []
  for (let instant = Math.ceil(day.start / HOUR) * HOUR; instant < day.end; instant += HOUR / 2) {
    const { hour, minute } = civilTime(instant, zone)
    if (minute === 0 && hour % 3 === 0 && hour > 0) marks.push({ x: across(daylight, instant), text: String(hour) })
  }
  return marks
}

export function SmallStrip({ plan, daylight, dayName }: SmallStripProps) {
  const { band, dark } = sample(plan, daylight)
  // The windows of the single conditions stand in words below: without their names bars tell nothing.
  const { common } = daylight.windows
  const height = BAND + HOURS + BAR
  const now = across(daylight, plan.spot.when)
  return (
    <svg
      class="sheet-strip"
      viewBox={`0 0 ${WIDTH} ${height}`}
      preserveAspectRatio="xMidYMin slice"
      role="img"
      aria-label={sheetWords.light.stripLabel(dayName)}
    >
      <rect class="strip-day" width={WIDTH} height={BAND} />
      {dark.map(({ from, until, deep }) => (
        <rect
          key={from}
          class={deep ? 'strip-night' : 'strip-dusk'}
          x={figure(from)}
          width={figure(Math.min(WIDTH, until) - from)}
          height={BAND}
        />
      ))}
      <path class="strip-sun" d={band} />
      {hourMarks(daylight).map(({ x, text }) => (
        <text key={text} class="strip-hour" x={figure(x)} y={BAND + 8.5}>
          {text}
        </text>
      ))}
      {common.map((span) => (
        <rect
          key={span.from}
          class="strip-all"
          x={figure(across(daylight, span.from))}
          y={BAND + HOURS + 1}
          width={figure(Math.max(1, across(daylight, span.until) - across(daylight, span.from)))}
          height={BAR - 2}
        />
      ))}
      <path class="strip-now" d={`M${figure(now)} 0V${height}`} />
      <text
        class="strip-now-text"
        x={figure(now + (now > WIDTH - 40 ? -3 : 3))}
        y={9}
        text-anchor={now > WIDTH - 40 ? 'end' : 'start'}
      >
        {formatClock(plan.spot.when, daylight.zone)}
      </text>
    </svg>
  )
}
