/** How far off it may be, on the sheet: what fails first, and how far subject, camera, lens and clock may be off each way. */
import type { Plan } from '#core/plan/plan.ts'
import type { PlanTolerances } from '#core/tolerance/plan-tolerances.ts'
import { type SheetTolerances, sheetTolerances } from '#core/sheet/content.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { failureText, offsetText, toleranceText } from '#renderer/text/tolerance-text.ts'
import { toleranceWords } from '#renderer/words/en-tolerance.ts'

const { sheet: say, and } = toleranceWords

interface TolerancesProps {
  readonly plan: Plan
  /** Null when nothing is framed: the sheet says so where the frame would be. */
  readonly tolerances: PlanTolerances | null
  readonly units: UnitSystem
}

function firstTexts({ plan, units }: TolerancesProps, { first }: SheetTolerances): string {
  if (first.length === 0) return say.nothing
  return first
    .map(({ move, offset, fails }) =>
      toleranceWords.fails(
        `${say.of[move]} ${say.off(offsetText(move, offset, units), say.sides[move])}`,
        failureText(plan, fails),
      ),
    )
    .join(' · ')
}

function rowText(row: SheetTolerances['rows'][number], units: UnitSystem): string {
  const texts = row.tolerances.map(([move, tolerance]) =>
    say.off(toleranceText(move, tolerance, units), say.sides[move]),
  )
  return `${say.things[row.of]} ${texts.join(and)}`
}

export function TolerancesPart(props: TolerancesProps) {
  const { plan, tolerances, units } = props
  if (tolerances === null) return null
  const found = sheetTolerances(tolerances)
  return (
    <section class="sheet-part sheet-tolerance">
      <h2>{say.title}</h2>
      <dl>
        <div>
          <dt>{say.first}</dt>
          <dd>{firstTexts(props, found)}</dd>
        </div>
        <div class="sheet-tolerance-each">
          <dt>{say.eachWay}</dt>
          <dd>{found.rows.map((row) => rowText(row, units)).join(' · ')}</dd>
        </div>
        {found.failing.length === 0 ? null : (
          <div>
            <dt>{say.left}</dt>
            <dd>{found.failing.map((failing) => failureText(plan, failing)).join(and)}</dd>
          </div>
        )}
      </dl>
    </section>
  )
}
