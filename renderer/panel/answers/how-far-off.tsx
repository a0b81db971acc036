/** How far off may it be? The tightest tolerance with what then fails, the next ones, and every way of being off. */
import type { Plan } from '#core/plan/plan.ts'
import { MOVES, type Move } from '#core/tolerance/moves.ts'
import type { Sensitivity } from '#core/tolerance/sensitivity.ts'
import { type Tolerances, tightest } from '#core/tolerance/tolerance.ts'
import { metres } from '#renderer/text/figure.ts'
import { BigFigure, Fold, Question } from '#renderer/part/question.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { sensitivity } from '#renderer/state/plan/sensitivity.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { sensitivityWords } from '#renderer/words/en-sensitivity.ts'
import { failingText, failureText, offsetText, tightText, toleranceText } from '#renderer/text/tolerance-text.ts'

const say = sensitivityWords

/** How many are told before the table. */
const TOLD = 3

export function HowFarOff() {
  const shown = sensitivity.value
  return (
    <Question title={say.question}>
      {shown === null ? (
        <p class="hint">{say.working}</p>
      ) : (
        <div class={shown.current ? 'far-off' : 'far-off far-off-stale'} aria-busy={!shown.current}>
          {shown.found === null ? <p class="hint">{say.notFramed}</p> : <Found plan={shown.plan} found={shown.found} />}
        </div>
      )}
    </Question>
  )
}

function Found({ plan, found }: { readonly plan: Plan; readonly found: Sensitivity }) {
  const { units } = settings.value
  const [first, ...next] = tightest(found.off, TOLD)
  const failing = failingText(plan, found.failing)
  if (found.held.length === 0) return <Warnings sentences={[say.nothingHeld, ...(failing === null ? [] : [failing])]} />
  return (
    <>
      {first === undefined ? (
        <BigFigure figure={say.loose} note={say.looseNote(metres(found.off['camera-farther'].limit, units))} />
      ) : (
        <BigFigure
          figure={offsetText(first.move, first.offset, units)}
          note={say.fails(say.ways[first.move], failureText(plan, first.fails))}
        />
      )}
      {next.length === 0 ? null : (
        <ul class="far-off-next">
          {next.map((tight) => (
            <li key={tight.move}>{tightText(plan, tight, units)}</li>
          ))}
        </ul>
      )}
      <Warnings sentences={failing === null ? [] : [failing]} />
      <Places off={found.off} />
      <Others off={found.off} />
      <Fold title={say.table.every}>
        <EveryWay plan={plan} off={found.off} />
        <p class="hint">{say.order}</p>
      </Fold>
    </>
  )
}

function Cell({ off, move }: { readonly off: Tolerances; readonly move: Move }) {
  return (
    <td class={off[move].offset === null ? 'far-off-free' : ''}>
      {toleranceText(move, off[move], settings.value.units)}
    </td>
  )
}

const PLACES = ['subject', 'camera'] as const
const SIDES = ['nearer', 'farther', 'left', 'right'] as const

function Places({ off }: { readonly off: Tolerances }) {
  const { table } = say
  return (
    <table class="figures far-off-places">
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
              <Cell key={side} off={off} move={`${thing}-${side}`} />
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

function Others({ off }: { readonly off: Tolerances }) {
  const { table } = say
  return (
    <>
      <table class="figures far-off-others">
        <caption class="unseen">{table.caption}</caption>
        <tbody>
          {OTHERS.map(([thing, one, oneWay, other, otherWay]) => (
            <tr key={thing}>
              <th scope="row">{table[thing]}</th>
              <Cell off={off} move={one} />
              <th scope="col">{table[oneWay]}</th>
              <Cell off={off} move={other} />
              <th scope="col">{table[otherWay]}</th>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">{table.note}</p>
    </>
  )
}

function EveryWay({ plan, off }: { readonly plan: Plan; readonly off: Tolerances }) {
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
              {toleranceText(move, off[move], units)} {say.ways[move]}
            </th>
            <td>{off[move].fails === null ? table.nothing : failureText(plan, off[move].fails)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
