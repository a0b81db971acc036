/** When the sun first and last stands over the ground, at each thing and on the flat, with the gaps between. */
import type { DayLight } from '#core/plan/day-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import { metres } from '#renderer/text/figure.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { groundWords as say } from '#renderer/words/en-ground.ts'
import { upSpans } from '#core/light/day-events.ts'
import { type LightTimes, lightPlaces, lightTimes, spanClock } from '#renderer/text/ground-text.ts'

interface DirectSunProps {
  readonly plan: Plan
  readonly today: DayLight
}

export function DirectSun({ plan, today }: DirectSunProps) {
  const rows = lightPlaces(plan).map(
    ([place, name]) => [name, lightTimes(today.direct[place], today.day, today.zone)] as const,
  )
  return (
    <>
      <table class="figures ground-table">
        <thead>
          <tr>
            <th scope="col">{say.light.caption}</th>
            <th scope="col">{say.light.first}</th>
            <th scope="col">{say.light.last}</th>
          </tr>
        </thead>
        <tbody>
          <SunRow name={say.light.flat} times={lightTimes(upSpans(today.sun, today.day), today.day, today.zone)} />
          {rows.map(([name, times]) => (
            <SunRow key={name} name={name} times={times} />
          ))}
        </tbody>
      </table>
      <Gaps rows={rows} today={today} />
      <Unsure rows={rows} />
    </>
  )
}

function Unsure({ rows }: { readonly rows: readonly (readonly [string, LightTimes])[] }) {
  const nearest = rows.reduce((least, [, { unsure }]) => Math.min(least, unsure ?? Infinity), Infinity)
  return nearest === Infinity ? null : <p class="hint">{say.light.unsure(metres(nearest, settings.value.units))}</p>
}

function SunRow({ name, times }: { readonly name: string; readonly times: LightTimes }) {
  return (
    <tr>
      <th scope="row">{name}</th>
      {times.instead === null ? (
        <>
          <td>{times.first}</td>
          <td>{times.last}</td>
        </>
      ) : (
        <td colSpan={2}>{times.instead}</td>
      )}
    </tr>
  )
}

function Gaps({
  rows,
  today,
}: {
  readonly rows: readonly (readonly [string, LightTimes])[]
  readonly today: DayLight
}) {
  return (
    <>
      {rows.map(([name, { gaps }]) =>
        gaps.length === 0 ? null : (
          <p key={name} class="hint">
            {say.light.between(name, gaps.map((gap) => spanClock(gap, today.zone)).join(', '))}
          </p>
        ),
      )}
    </>
  )
}
