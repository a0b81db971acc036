/** How far off may it be? The tightest tolerance with what then fails, the next ones, and every way of being off. */
import type { Plan } from '#core/plan/plan.ts'
import { MOVES, type Move } from '#core/tolerance/moves.ts'
import type { PlanTolerances } from '#core/tolerance/plan-tolerances.ts'
import { type Tolerances, tightest } from '#core/tolerance/tolerance.ts'
import { metres } from '#renderer/text/figure.ts'
import { AnswerFigure, Fold } from '#renderer/part/question.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { boardTolerances } from '#renderer/state/plan/board-tolerances.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { toleranceWords } from '#renderer/words/en-tolerance.ts'
import { failingText, failureText, offsetText, tightText, toleranceText } from '#renderer/text/tolerance-text.ts'

const say = toleranceWords

/** How many are told before the table. */
const TOLD = 3

export function HowFarOff() {
  const shown = boardTolerances.value
  return (
    <>
      {shown === null ? (
        <p class="hint">{say.working}</p>
      ) : (
        <div class={shown.current ? 'tolerance' : 'tolerance tolerance-stale'} aria-busy={!shown.current}>
          {shown.found === null ? <p class="hint">{say.notFramed}</p> : <Found plan={shown.plan} found={shown.found} />}
        </div>
      )}
    </>
  )
}

function Found({ plan, found }: { readonly plan: Plan; readonly found: PlanTolerances }) {
  const { units } = settings.value
  const [first, ...next] = tightest(found.tolerances, TOLD)
  const failing = failingText(plan, found.failing)
  if (found.held.length === 0) return <Warnings sentences={[say.nothingHeld, ...(failing === null ? [] : [failing])]} />
  return (
    <>
      {first === undefined ? (
        <AnswerFigure
          figure={say.loose}
          note={say.looseNote(metres(found.tolerances['camera-farther'].limit, units))}
        />
      ) : (
        <AnswerFigure
          figure={offsetText(first.move, first.offset, units)}
          note={say.fails(say.ways[first.move], failureText(plan, first.fails))}
        />
      )}
      {next.length === 0 ? null : (
        <ul class="tolerance-next">
          {next.map((tight) => (
            <li key={tight.move}>{tightText(plan, tight, units)}</li>
          ))}
        </ul>
      )}
      <Warnings sentences={failing === null ? [] : [failing]} />
      <Places tolerances={found.tolerances} />
      <Others tolerances={found.tolerances} />
      <Fold title={say.table.every}>
        <EveryWay plan={plan} tolerances={found.tolerances} />
        <p class="hint">{say.order}</p>
      </Fold>
    </>
  )
}

function Cell({ tolerances, move }: { readonly tolerances: Tolerances; readonly move: Move }) {
  return (
    <td class={tolerances[move].offset === null ? 'tolerance-free' : ''}>
      {toleranceText(move, tolerances[move], settings.value.units)}
    </td>
  )
}

const PLACES = ['subject', 'camera'] as const
const SIDES = ['nearer', 'farther', 'left', 'right'] as const

function Places({ tolerances }: { readonly tolerances: Tolerances }) {
  const { table } = say
  return (
    <table class="figures tolerance-places">
      <caption class="unseen">{table.caption}</caption>
      <thead>
        <tr>
          <td />
          {SIDES.map((side) => (
            <th key={side} scope="col">
              {table[side]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {PLACES.map((thing) => (
          <tr key={thing}>
            <th scope="row">{table[thing]}</th>
            {SIDES.map((side) => (
              <Cell key={side} tolerances={tolerances} move={`${thing}-${side}`} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

const OTHERS = [
  ['turned', 'subject-counter-clockwise', 'counterClockwise', 'subject-clockwise', 'clockwise'],
  ['lens', 'lens-lower', 'lower', 'lens-higher', 'higher'],
  ['clock', 'earlier', 'earlier', 'later', 'later'],
] as const

function Others({ tolerances }: { readonly tolerances: Tolerances }) {
  const { table } = say
  return (
    <>
      <table class="figures tolerance-others">
        <caption class="unseen">{table.caption}</caption>
        <tbody>
          {OTHERS.map(([thing, one, oneWay, other, otherWay]) => (
            <tr key={thing}>
              <th scope="row">{table[thing]}</th>
              <Cell tolerances={tolerances} move={one} />
              <th scope="col">{table[oneWay]}</th>
              <Cell tolerances={tolerances} move={other} />
              <th scope="col">{table[otherWay]}</th>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">{table.note}</p>
    </>
  )
}

function EveryWay({ plan, tolerances }: { readonly plan: Plan; readonly tolerances: Tolerances }) {
  const { table } = say
  const { units } = settings.value
  return (
    <table class="figures">
      <thead>
        <tr>
          <th scope="col">{table.offset}</th>
          <th scope="col">{table.fails}</th>
        </tr>
      </thead>
      <tbody>
        {MOVES.map((move) => (
          <tr key={move}>
            <th scope="row">
              {toleranceText(move, tolerances[move], units)} {say.ways[move]}
            </th>
            <td>{tolerances[move].fails === null ? table.nothing : failureText(plan, tolerances[move].fails)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
