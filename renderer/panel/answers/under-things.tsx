/** The ground under each thing as a table: level and slope, and where each is known from. */
import type { GroundUnder, GroundUnderThings } from '#core/plan/ground-under.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { elevation } from '#renderer/text/figure.ts'
import { landmarkName, subjectName } from '#renderer/text/names.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { groundWords as say } from '#renderer/words/en-ground.ts'
import { differenceSentence, levelSourceAgainst } from '#renderer/text/ground-text.ts'
import { slopeText, tiltSourceAgainst } from '#renderer/text/tilt-text.ts'

type Row = readonly [string, GroundUnder]

function rowsOf(plan: Plan, under: GroundUnderThings): readonly Row[] {
  return [
    [say.under.standpoint, under.standpoint],
    [subjectName(plan.shoot.subject), under.stop],
    ...(under.landmark === null ? [] : [[landmarkName(plan.landmark), under.landmark] as const]),
  ]
}

/** Without elevations the table is worth its room only where something was measured. */
export function anyMeasured({ standpoint, stop, landmark }: GroundUnderThings): boolean {
  return [standpoint, stop, landmark].some(
    (under) => under !== null && [under.from, under.slope.from, under.aspect.from].includes('measured'),
  )
}

/** Where a measured level and the elevations are far apart. */
export function differences(plan: Plan, under: GroundUnderThings, units: UnitSystem): string[] {
  return rowsOf(plan, under).flatMap(([name, of]) => differenceSentence(name, of, units) ?? [])
}

interface UnderThingsProps {
  readonly plan: Plan
  readonly under: GroundUnderThings
}

export function UnderThings({ plan, under }: UnderThingsProps) {
  const { units } = settings.value
  return (
    <>
      <table class="figures ground-table">
        <thead>
          <tr>
            <th scope="col">{say.under.caption}</th>
            <th scope="col">{say.under.elevation}</th>
            <th scope="col">{say.under.slope}</th>
          </tr>
        </thead>
        <tbody>
          {rowsOf(plan, under).map(([name, of]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>
                {elevation(of.elevation, units)}
                <small>{levelSourceAgainst(of, units)}</small>
              </td>
              <td>
                {slopeText(of) ?? say.light.unknown}
                <small>{tiltSourceAgainst(of)}</small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">{say.under.note}</p>
    </>
  )
}
