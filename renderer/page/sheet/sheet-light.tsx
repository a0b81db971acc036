/** When: the planned time, what sun and moon do that day, the light windows, and the light at the planned time. */
import type { Span } from '#core/light/crossing.ts'
import type { ComponentChildren } from 'preact'
import type { MoonDay, SunDay } from '#core/light/day-events.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { BodyReading } from '#core/plan/light-reading.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type Zone, formatClock, formatDay, formatOffset, zoneName } from '#core/time/civil.ts'
import type { UnitSystem } from '#core/units/length.ts'
import {
  fromText,
  landmarkFaceName,
  momentDoubtAway,
  shadowText,
  spanText,
  subjectSidesName,
  thingText,
} from '#renderer/text/light-text.ts'
import { bearing, degreesText, share } from '#renderer/text/figure.ts'
import { wishName } from '#renderer/text/wish-names.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { inARow } from './in-a-row.ts'
import { SmallStrip } from './small-strip.tsx'

const { light: say } = sheetWords

interface SheetLightProps {
  readonly plan: Plan
  readonly assessment: Assessment
  readonly daylight: DayLight
  readonly units: UnitSystem
  /** What else belongs to the day: the ground that takes the sun. */
  readonly children: ComponentChildren
}

function clocks(instants: readonly number[], zone: Zone): string {
  return instants.map((instant) => formatClock(instant, zone)).join(', ')
}

/** "sun up 04:41–20:34", or its rises and sets where the day has none or more than one of either. */
export function sunDayText(sun: SunDay, zone: Zone): string[] {
  const [rise] = sun.rise
  const [set] = sun.set
  const dawn = sun.twilights
    .filter(({ kind, side }) => kind === 'civil' && side === 'dawn')
    .map(({ instant }) => instant)
  const dusk = sun.twilights
    .filter(({ kind, side }) => kind === 'civil' && side === 'dusk')
    .map(({ instant }) => instant)
  const simple = sun.rise.length === 1 && sun.set.length === 1 && rise !== undefined && set !== undefined && rise < set
  const state =
    sun.state === 'up-all-day'
      ? [say.upAllDay]
      : sun.state === 'down-all-day'
        ? [say.downAllDay]
        : simple
          ? [say.sunTimes(formatClock(rise, zone), formatClock(set, zone))]
          : [
              ...(sun.rise.length === 0 ? [] : [say.rises(clocks(sun.rise, zone))]),
              ...(sun.set.length === 0 ? [] : [say.sets(clocks(sun.set, zone))]),
            ]
  return [
    ...(dawn.length === 0 ? [] : [say.dawn(clocks(dawn, zone))]),
    ...state,
    ...(dusk.length === 0 ? [] : [say.dusk(clocks(dusk, zone))]),
  ]
}

export function moonDayText(moon: MoonDay, zone: Zone): string[] {
  if (moon.state === 'up-all-day') return [say.moonUp]
  if (moon.state === 'down-all-day') return [say.moonDown]
  return [
    ...(moon.rise.length === 0 ? [] : [say.moonRises(clocks(moon.rise, zone))]),
    ...(moon.set.length === 0 ? [] : [say.moonSets(clocks(moon.set, zone))]),
  ]
}

function windowTexts(plan: Plan, daylight: DayLight): string[] {
  const { wishes, common } = daylight.windows
  if (wishes.length === 0) return [say.noWishes]
  const times = (spans: readonly Span[]): string =>
    spans.length === 0 ? say.never : spans.map((span) => spanText(span, daylight.zone)).join(', ')
  return [
    `${say.all} ${times(common)}`,
    ...(wishes.length === 1 ? [] : wishes.map(({ kind, spans }) => `${wishName(kind, plan)} ${times(spans)}`)),
  ]
}

/** "23.4° high at 281.5° true"; whether ground hides it while it is up. */
function bodyText({ apparent, altitude, azimuth, behindGround }: BodyReading): string {
  const at = bearing(azimuth)
  if (apparent < 0) return say.below(degreesText(-altitude), at)
  return `${say.high(degreesText(apparent), at)}${behindGround ? `, ${say.behind}` : ''}`
}

function bodiesTexts({ light }: Assessment): string[] {
  const { lit, waxing } = light.moon.phase
  return [`${say.sun} ${bodyText(light.sun)}`, `${say.moon} ${bodyText(light.moon)}, ${say.phase(share(lit), waxing)}`]
}

function momentTexts(plan: Plan, assessment: Assessment, units: UnitSystem): string[] {
  const { light } = assessment
  return [
    `${subjectSidesName(plan)}: ${thingText(light.subject)}`,
    ...(light.landmark === null ? [] : [`${landmarkFaceName(plan, light.landmark)}: ${thingText(light.landmark)}`]),
    // In a row of sentences what both would say by night is said once, and by itself.
    ...(light.sun.up
      ? [
          `${lightWords.from.toLowerCase()} ${fromText(light)}`,
          `${lightWords.shadow.toLowerCase()} ${say.trueShadow(shadowText(light.subjectShadow, light, units))}`,
        ]
      : [lightWords.sunDown]),
    ...(momentDoubtAway(light) === null ? [] : [groundWords.sheet.unsureNow]),
  ]
}

/** What the day's light is, row by row: its title and its text. */
export function lightRows({
  plan,
  assessment,
  daylight,
  units,
}: Omit<SheetLightProps, 'children'>): readonly (readonly [string, string])[] {
  const { zone } = daylight
  return [
    [say.day, inARow([...sunDayText(daylight.sun, zone), ...moonDayText(daylight.moon, zone)])],
    [say.windows, inARow(windowTexts(plan, daylight))],
    [say.bodies, inARow(bodiesTexts(assessment))],
    [say.atTime, inARow(momentTexts(plan, assessment, units))],
  ]
}

/** "UTC+2, Europe/Somewhere"; a zone of the open sea is named by its offset already. */
export function zoneText(instant: number, zone: Zone): string {
  const [offset, name] = [formatOffset(instant, zone), zoneName(zone)]
  return name.startsWith(offset) ? name : say.zone(offset, name)
}

export function SheetLight({ plan, assessment, daylight, units, children }: SheetLightProps) {
  const { zone, day } = daylight
  const { when } = plan.spot
  const name = formatDay(day.date)
  return (
    <section class="sheet-part sheet-light">
      <h2>
        {say.title}: <strong>{say.planned(name, formatClock(when, zone), zoneText(when, zone))}</strong>
      </h2>
      <SmallStrip plan={plan} daylight={daylight} dayName={name} />
      <dl>
        {lightRows({ plan, assessment, daylight, units }).map(([title, text]) => (
          <div key={title}>
            <dt>{title}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {children}
    </section>
  )
}
